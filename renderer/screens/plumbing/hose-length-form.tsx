import { Button } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow, RecordValues } from '../../../core/contract/records.ts';
import { Refusal } from '../../../core/refusal.ts';
import { toSI } from '../../../core/units/measure.ts';
import { parseMeasure } from '../../../core/units/parse-measure.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { hoseNames, SuggestField } from './suggest-field.tsx';

/** A length as typed, in mm; a unit may stand behind it. @throws Refusal naming the field. */
function millimetres(text: string, field: string, whole: boolean): number {
  const { value, unit } = parseMeasure(text, 'length', { unit: 'mm', field });
  const exact = Number((toSI(value, unit, 'length') * 1000).toFixed(3));
  // Hose is never longer than it is written down to be.
  const mm = whole ? Math.floor(exact) : exact;
  if (mm > 0) return mm;
  throw new Refusal('bad-input', `The ${field} must be above zero. Nothing was changed.`, {
    field,
    accepted: 'a length such as 1200, or 47 in',
  });
}

function pieces(text: string): number {
  if (/^\d{1,4}$/.test(text.trim()) && Number(text) <= 1000) return Number(text);
  throw new Refusal('bad-input', 'The number of pieces can’t be read. Nothing was changed.', {
    field: 'count',
    accepted: 'a whole number from 0 to 1000',
  });
}

/** One length of hose at hand, new or changed; used up means 0 pieces, or retired. */
export function HoseLengthForm({ kept, onClose }: { readonly kept: RecordRow | null; readonly onClose: () => void }) {
  const before = kept === null ? null : (kept.values as unknown as RecordValues['hoseLength']);
  const [hose, setHose] = useState(before?.hose ?? '');
  const [boreMm, setBore] = useState(before?.boreMm ?? null);
  const [lengthMm, setLength] = useState(before?.lengthMm ?? null);
  const [count, setCount] = useState<number | null>(before?.count ?? 1);
  const [note, setNote] = useState(before?.note ?? '');
  const day = useActDay();
  const save = useAct((key, values: Partial<RecordValues['hoseLength']>) =>
    api.records.save({
      key,
      on: day.on,
      kind: 'hoseLength',
      values,
      ...(kept === null ? {} : { id: kept.id, revision: kept.revision }),
    }),
  );
  const retire = useAct((key, id: number) =>
    api.records.retire({ key, on: day.on, kind: 'hoseLength', id, reason: 'Used up' }),
  );
  const submit = async () => {
    if (lengthMm === null || count === null) return;
    if ((await save.run({ hose: hose.trim(), boreMm, lengthMm, count, note })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title={kept === null ? 'Hose at hand' : `Hose at hand: ${before?.hose}`}
      submitLabel={kept === null ? 'Keep the length' : 'Store the changes'}
      busy={save.busy}
      refusal={save.refusal ?? retire.refusal}
      onCancel={onClose}
      onSubmit={submit}
    >
      <SuggestField
        name="hose"
        label="Hose type and size"
        description="As the lines have it, such as 100R5 -8."
        required
        value={hose}
        options={hoseNames}
        onChange={setHose}
      />
      <ReadField
        name="lengthMm"
        label="Length, mm"
        description="Another unit may stand behind it: 47 in."
        required
        numeric
        value={lengthMm}
        onChange={setLength}
        read={(text) => millimetres(text, 'length', true)}
        write={String}
      />
      <ReadField
        name="boreMm"
        label="Bore, mm"
        description="Where the type doesn’t say it."
        numeric
        value={boreMm}
        onChange={setBore}
        read={(text) => millimetres(text, 'bore', false)}
        write={String}
      />
      <ReadField
        name="count"
        label="Pieces of that length"
        required
        numeric
        value={count}
        onChange={setCount}
        read={pieces}
        write={String}
      />
      <TextField name="note" label="Note" value={note} onChange={setNote} longest={400} />
      {day.field}
      {kept !== null && (
        <Button
          variant="subtle"
          loading={retire.busy}
          onClick={async () => (await retire.run(kept.id)) !== null && onClose()}
        >
          Used up: take it off the shelf
        </Button>
      )}
    </FormWindow>
  );
}
