import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { Choice, TextField } from '../../../parts/fields.tsx';
import { Form } from '../../../parts/form.tsx';
import { counted } from '../../../parts/formats.ts';
import { ActDay } from '../acts/act-day.tsx';
import { allCame, boxOf, type LineCount, linesInBox, uncounted } from './box-draft.ts';
import { BoxLineFields } from './box-line-fields.tsx';

export interface BoxFormProps {
  readonly order: number;
  /** Lines with units to come. */
  readonly lines: readonly OrderDetail['lines'][number][];
  readonly onDone: () => void;
}

/** The count of a box, line by line, then where it is put. */
export function BoxForm({ order, lines, onDone }: BoxFormProps) {
  const { today } = useWorkspace();
  const [counts, setCounts] = useState<readonly LineCount[]>(() => uncounted(lines));
  const [bin, setBin] = useState<string | null>(null);
  const [leave, setLeave] = useState(false);
  const [note, setNote] = useState('');
  const [on, setOn] = useState<string | null>(today);
  const bins = useRead(['records', 'bin'], () => api.records.list({ kind: 'bin' }));
  const { busy, refusal, run } = useAct((key, day: string) =>
    api.orders.receiveBox({
      key,
      order,
      on: day,
      lines: boxOf(counts, lines),
      bin: bin === null ? null : Number(bin),
      leaveForInspection: leave,
      note: note.trim(),
    }),
  );
  const change = (next: LineCount) => setCounts((now) => now.map((count) => (count.line === next.line ? next : count)));
  const send = async () => {
    if ((await run(on ?? today)) !== null) onDone();
  };
  const inBox = linesInBox(counts);
  const sentIndex = new Map(boxOf(counts, lines).map(({ line }, index) => [line, index]));

  return (
    <div className="box-form">
      <Form
        submitLabel={inBox === 0 ? 'Receive the box' : `Receive ${counted(inBox, 'line', 'lines')}`}
        onSubmit={() => void send()}
        onCancel={onDone}
        busy={busy}
        refusal={refusal}
      >
        {lines.length > 1 && (
          <Button
            className="box-all"
            onClick={() =>
              setCounts((now) =>
                now.map((count) => {
                  const line = lines.find(({ id }) => id === count.line);
                  return line === undefined ? count : allCame(count, line);
                }),
              )
            }
          >
            Everything to come is here and good
          </Button>
        )}
        <ol className="box-lines">
          {lines.map((line) => {
            const count = counts.find((item) => item.line === line.id);
            if (count === undefined) return null;
            const index = sentIndex.get(line.id);
            return (
              <BoxLineFields
                key={line.id}
                line={line}
                count={count}
                onChange={change}
                field={index === undefined ? `line ${line.id}` : `lines.${index}`}
              />
            );
          })}
        </ol>
        <div className="form-row">
          <Choice
            name="bin"
            label="Put in bin"
            value={bin}
            onChange={setBin}
            none="No bin noted"
            options={
              bins.state === 'ready'
                ? bins.value.map(({ id, values }) => ({ value: `${id}`, label: String(values['name']) }))
                : []
            }
          />
          <ActDay value={on} onChange={setOn} label="Came on" />
        </div>
        <Checkbox
          label="Leave the good ones for inspection"
          description="They count as in hand, to inspect, until they are accepted."
          checked={leave}
          onChange={(event) => setLeave(event.currentTarget.checked)}
        />
        <TextField name="note" label="Note" value={note} onChange={setNote} longest={2000} />
      </Form>
    </div>
  );
}
