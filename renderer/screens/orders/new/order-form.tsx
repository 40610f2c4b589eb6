import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { OrderDraft } from '../../../../core/contract/orders.ts';
import type { Settings } from '../../../../core/contract/workbook.ts';
import { currencyCodes } from '../../../../core/money/currency.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { navigate } from '../../../app/route.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice, TextField } from '../../../parts/fields.tsx';
import { Form } from '../../../parts/form.tsx';
import { ActDay } from '../acts/act-day.tsx';
import { ChargesFields } from '../charges-fields.tsx';
import { RateField } from '../rate-field.tsx';
import { FitStops, useFitStops } from './fit-stops.tsx';
import { forgetDraft, leaveDraft, leftDraft } from './left-draft.ts';
import { LineFields } from './line-fields.tsx';
import { Needs } from './needs.tsx';
import { type Need, type NewDraft, orderOf, withNeeds, withSpare } from './new-draft.ts';
import { Preview, useLanding } from './preview.tsx';
import { VendorFields } from './vendor-fields.tsx';

export interface OrderFormProps {
  readonly build: number;
  readonly start: NewDraft;
  readonly settings: Settings;
  readonly needs: readonly Need[];
}

/** The form of a new order, with what it would cost beside it while it is typed. */
export function OrderForm({ build, start, settings, needs }: OrderFormProps) {
  const base = settings.currency;
  const { today } = useWorkspace();
  const [place] = useState(() => window.location.hash);
  // Back from looking at a fit: the order goes on as it was left.
  const [draft, setDraft] = useState<NewDraft>(() => leftDraft(place) ?? start);
  const [stopped, setStopped] = useState<string | null>(null);
  const set = (part: Partial<NewDraft>) => setDraft((now) => ({ ...now, ...part }));
  const order = orderOf(draft, build, base);
  const landing = useLanding(order, draft.on ?? today);
  const { busy, refusal, run } = useAct(
    (key, input: { on: string; paid: boolean; order: OrderDraft; despiteFits?: string }) =>
      api.orders.place({ key, ...input }),
  );
  const stops = useFitStops(
    build,
    draft.lines.flatMap(({ part }) => (part === null ? [] : [part])),
  );
  const send = async () => {
    if (order === null) {
      setStopped(draft.vendor === null ? 'Choose the vendor first.' : 'An order needs at least one line.');
      return;
    }
    setStopped(null);
    const despiteFits = draft.despiteFits.trim();
    const done = await run({
      on: draft.on ?? today,
      paid: draft.paid,
      order,
      ...(despiteFits === '' ? {} : { despiteFits }),
    });
    const made = done?.made[0];
    if (made === undefined) return;
    forgetDraft(place);
    navigate('/orders', { order: made });
  };
  const refused = refusal ?? (stopped === null ? null : { message: `${stopped} Nothing was changed.` });

  return (
    <div className="order-form">
      <Form
        submitLabel="Place the order"
        onSubmit={() => void send()}
        onCancel={() => {
          forgetDraft(place);
          navigate('/orders');
        }}
        busy={busy}
        refusal={refused}
      >
        <VendorFields
          vendor={draft.vendor}
          onChoose={({ id, currency }) => set({ vendor: id, ...(currency === null ? {} : { currency }) })}
        />
        <Needs
          needs={needs}
          vendor={draft.vendor}
          chosen={new Set(draft.lines.map(({ part }) => part))}
          onAdd={(added) => setDraft((now) => withNeeds(now, added, base))}
          onDrop={(part) => setDraft((now) => ({ ...now, lines: now.lines.filter((line) => line.part !== part) }))}
        />
        <LineFields
          lines={draft.lines}
          currency={draft.currency}
          base={base}
          stops={stops}
          landed={landing.state === 'ready' && !landing.stale ? landing.value.lines : []}
          onChange={(lines) => set({ lines })}
          onSpare={() => setDraft(withSpare)}
        />
        <h2>Charges and terms</h2>
        <ChargesFields draft={draft.charges} onChange={(charges) => set({ charges })} currency={draft.currency} />
        <div className="form-row">
          <ActDay value={draft.on} onChange={(on) => set({ on })} label="Ordered on" />
          <DateField
            name="promisedOn"
            label="Promised for, if known"
            value={draft.promisedOn}
            onChange={(promisedOn) => set({ promisedOn })}
            today={today}
          />
          <TextField
            name="number"
            label="Order number"
            value={draft.number}
            onChange={(number) => set({ number })}
            longest={80}
          />
        </div>
        <div className="form-row">
          <Choice
            name="currency"
            label="Currency of the order"
            value={draft.currency}
            onChange={(currency) => set({ currency: currency ?? base })}
            options={currencyCodes.map((code) => ({ value: code, label: code }))}
            required
          />
          {draft.currency !== base && (
            <RateField currency={draft.currency} value={draft.rate} onChange={(rate) => set({ rate })} />
          )}
          <TextField name="note" label="Note" value={draft.note} onChange={(note) => set({ note })} longest={2000} />
        </div>
        <Checkbox
          label="Paid in full now"
          checked={draft.paid}
          onChange={(event) => set({ paid: event.currentTarget.checked })}
        />
        <Preview
          landing={landing}
          currency={draft.currency}
          whole={order !== null}
          said={stops.map(({ says }) => says)}
        />
        {(stops.length > 0 || refusal?.field === 'despiteFits') && (
          <FitStops
            stops={stops}
            onLook={() => leaveDraft(place, draft)}
            reason={draft.despiteFits}
            onReason={(reason) => set({ despiteFits: reason })}
          />
        )}
      </Form>
    </div>
  );
}
