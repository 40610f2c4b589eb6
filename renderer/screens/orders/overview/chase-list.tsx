import { Button } from '@mantine/core';
import { IconClipboardText, IconPhone } from '@tabler/icons-react';
import { useState } from 'react';
import type { ChaseRow } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import { ReadView } from '../../../parts/read-view.tsx';
import type { Reading } from '../reading.ts';

/** Whom to write to today and why, with a text to copy and the act to note that they were asked. */
export function ChaseTexts({ reading }: { readonly reading: Reading }) {
  const { build, asOf } = reading;
  const chasing = useRead(['orders', build, asOf, 'chasing'], () => api.orders.chasing(reading));
  const [asked, setAsked] = useState<ChaseRow | null>(null);
  return (
    <ReadView read={chasing} label="Reading whom to write to">
      {({ answer, rows }) => (
        <>
          <p>{answer}</p>
          {rows.map((row) => (
            <Vendor
              key={`${row.vendor} ${row.text}`}
              row={row}
              onAsked={asOf === undefined ? () => setAsked(row) : null}
            />
          ))}
          {asked !== null && <AskedForm row={asked} onClose={() => setAsked(null)} />}
        </>
      )}
    </ReadView>
  );
}

function Vendor({ row, onAsked }: { readonly row: ChaseRow; readonly onAsked: (() => void) | null }) {
  const [text, setText] = useState(row.text);
  const [copied, setCopied] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setCopied('The text is on the clipboard.');
    } catch {
      setCopied('The clipboard can’t be reached here: mark the text below and copy it by hand.');
    }
  };
  const heading = `chase-${row.vendor}`;
  return (
    <section className="chase-vendor" aria-labelledby={heading}>
      <h2 id={heading}>
        <Link to="/lists" params={{ vendor: row.vendor }}>
          {row.vendorName}
        </Link>
      </h2>
      <p>
        {row.why}
        {row.contact !== '' && `. Contact: ${row.contact}`}
      </p>
      <ul>
        {row.orders.map(({ order, number, lines }) => (
          <li key={order}>
            <Link to="/orders" params={{ order }}>
              {number === '' ? 'Order without a number' : `Order ${number}`}
            </Link>
            {lines.length > 0 && `: ${lines.map(({ description, why }) => `${description}, ${why}`).join('; ')}`}
          </li>
        ))}
      </ul>
      <div className="chase-acts not-printed">
        <Button leftSection={<IconClipboardText aria-hidden size="1.1em" />} onClick={() => void copy()}>
          Copy the text <span className="only-heard">to {row.vendorName}</span>
        </Button>
        {onAsked !== null && (
          <Button leftSection={<IconPhone aria-hidden size="1.1em" />} onClick={onAsked}>
            They were asked… <span className="only-heard">{row.vendorName}</span>
          </Button>
        )}
        <span role="status">{copied}</span>
      </div>
      <TextField
        name={`text-${row.vendor}`}
        label="Text to send"
        value={text}
        onChange={setText}
        long
        longest={20_000}
      />
    </section>
  );
}

function AskedForm({ row, onClose }: { readonly row: ChaseRow; readonly onClose: () => void }) {
  const { today } = useWorkspace();
  const [on, setOn] = useState<string | null>(today);
  const [note, setNote] = useState('');
  const { busy, refusal, run } = useAct((key, input: { on: string; note: string }) =>
    api.orders.chaseAll({ key, orders: row.orders.map(({ order }) => order), ...input }),
  );
  const send = async () => {
    if ((await run({ on: on ?? today, note: note.trim() })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={`${row.vendorName} was asked`}
      submitLabel="Note it"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <p>Noted on every order that was asked about; they stay off this list for a week.</p>
      <TextField name="note" label="What they said" value={note} onChange={setNote} long longest={2000} autoFocus />
      <DateField name="on" label="Asked on" value={on} onChange={setOn} today={today} required />
    </FormWindow>
  );
}
