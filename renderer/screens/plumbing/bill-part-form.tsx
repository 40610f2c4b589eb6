import { useState } from 'react';
import type { LineNeedRow } from '../../../core/contract/plumbing.ts';
import type { RecordRow } from '../../../core/contract/records.ts';
import { itemKey } from '../../../core/plumbing/bill.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { Choice } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { usePartNames } from './part-names.ts';

interface BillPartFormProps {
  readonly need: LineNeedRow;
  readonly build: number;
  readonly onClose: () => void;
}

/** Says which part line a thing on the bill is, so that it is counted once. */
export function BillPartForm(props: BillPartFormProps) {
  const read = useRead(['records', props.build, null, 'billPart'], () =>
    api.records.list({ kind: 'billPart', build: props.build }),
  );
  return (
    <ReadView read={read} label="Reading what was said before">
      {(rows) => (
        <Named {...props} kept={rows.find(({ values }) => itemKey(String(values['item'])) === props.need.key)} />
      )}
    </ReadView>
  );
}

function Named({ need, build, onClose, kept }: BillPartFormProps & { readonly kept: RecordRow | undefined }) {
  const [part, setPart] = useState<number | null>(need.part);
  const day = useActDay();
  const parts = usePartNames();
  const act = useAct((key, chosen: number) =>
    api.records.save({
      key,
      on: day.on,
      kind: 'billPart',
      build,
      values: { item: need.text, part: chosen },
      ...(kept === undefined ? {} : { id: kept.id, revision: kept.revision }),
    }),
  );
  return (
    <FormWindow
      opened
      title="This is that part"
      submitLabel="It is this part"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => part !== null && (await act.run(part)) !== null && onClose()}
    >
      <p>
        {need.text}, for {need.lines.join('; ')}
      </p>
      <Choice
        name="part"
        label="Part line"
        required
        value={part === null ? null : String(part)}
        options={parts.map(({ id, description }) => ({ value: String(id), label: description }))}
        onChange={(chosen) => setPart(chosen === null ? null : Number(chosen))}
      />
      {day.field}
    </FormWindow>
  );
}
