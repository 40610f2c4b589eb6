import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { torqueText } from '../../parts/torque.ts';
import { TorqueField } from '../../parts/torque-field.tsx';
import { useActDay, useWho } from './act-day.tsx';
import { WholeField } from './small-fields.tsx';
import { boltCounts } from './value-text.ts';

type Stage = 'snug' | 'final' | 'loose';

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** Bolts of a group brought to snug or to final torque, or loosened again. */
export function BoltsForm({ group, onClose }: { readonly group: RecordRow; readonly onClose: () => void }) {
  const { units } = useLocale();
  const counts = boltCounts(group);
  const most: Readonly<Record<Stage, number>> = {
    snug: counts.loose,
    final: counts.loose + counts.snug,
    loose: counts.snug + counts.final,
  };
  const stages = (['snug', 'final', 'loose'] as const).filter((stage) => most[stage] > 0);
  const [to, setTo] = useState<Stage>(stages[0] ?? 'snug');
  const [count, setCount] = useState<number | null>(most[to]);
  const [torque, setTorque] = useState<number | null>(null);
  const [wrench, setWrench] = useState('');
  const [reason, setReason] = useState('');
  const day = useActDay();
  const who = useWho(to === 'loose' ? 'Who loosened them' : 'Who tightened them');
  const written = typeof group.values['torqueMilliNm'] === 'number' ? group.values['torqueMilliNm'] : null;
  const source = text(group.values['source']);
  const sequence = text(group.values['sequence']);
  const act = useAct((key, on: string) =>
    api.records.bolts({
      key,
      on,
      boltGroup: group.id,
      to,
      count: count ?? 0,
      by: who.by,
      wrench,
      torqueMilliNm: to === 'loose' ? null : torque,
      reason,
    }),
  );
  const labels: Readonly<Record<Stage, string>> = { snug: 'Snug', final: 'Final torque', loose: 'Loose again' };
  return (
    <FormWindow
      opened
      title={text(group.values['name'])}
      submitLabel={`Record ${count ?? 0} as ${labels[to].toLowerCase()}`}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>
        {counts.all} bolts: {counts.loose} loose, {counts.snug} snug, {counts.final} at final torque.
        {sequence !== '' && ` Sequence: ${sequence}.`}
      </p>
      <Choice
        name="to"
        label="Brought to"
        value={to}
        onChange={(stage) => {
          const next = stage ?? to;
          setTo(next);
          setCount(most[next]);
        }}
        options={stages.map((value) => ({ value, label: labels[value] }))}
        required
      />
      <WholeField
        name="count"
        label="How many bolts"
        description={`At most ${most[to]}.`}
        value={count}
        onChange={setCount}
        least={1}
        most={Math.max(1, most[to])}
        required
        autoFocus
      />
      {to !== 'loose' && (
        <>
          <TorqueField
            name="torqueMilliNm"
            label="Torque used"
            value={torque}
            onChange={setTorque}
            description={
              written === null
                ? 'No torque is written down for this group.'
                : `Written down: ${torqueText(written, units)}${source === '' ? ', without a source' : `, from ${source}`}.`
            }
          />
          <Caution>
            The maker’s manual gives the torque, the steps and the sequence; where it differs from this, it governs.
          </Caution>
          <TextField name="wrench" label="Wrench" value={wrench} onChange={setWrench} longest={120} />
        </>
      )}
      {to === 'loose' && (
        <TextField
          name="reason"
          label="Why they came loose"
          value={reason}
          onChange={setReason}
          longest={400}
          required
        />
      )}
      {who.field}
      {day.field}
    </FormWindow>
  );
}
