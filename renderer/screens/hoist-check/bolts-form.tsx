import { useState } from 'react';
import type { Blocker } from '../../../core/contract/gate.ts';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct, useRead } from '../../app/data.tsx';
import { useActDay, useWho } from '../../parts/act-day.tsx';
import { Choice, QuantityField, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution, Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { torqueText } from '../../parts/torque.ts';
import { TorqueField } from '../../parts/torque-field.tsx';
import { Window } from '../../parts/window.tsx';
import type { ActFormProps } from './pass-form.tsx';

type Stage = 'snug' | 'final';

/** Bolts of a group brought to snug or to final torque: how many, who, which wrench, what torque. */
export function BoltsForm({ build, blocker, onClose }: ActFormProps & { readonly blocker: Blocker }) {
  const groups = useRead(['records', build, 'boltGroup'], () => api.records.list({ kind: 'boltGroup', build }));
  const group = groups.state === 'ready' ? groups.value.find(({ id }) => id === blocker.subject.id) : undefined;
  if (group !== undefined) return <Fields group={group} title={blocker.title} onClose={onClose} />;
  return (
    <Window opened title={blocker.title} onClose={onClose}>
      {groups.state === 'loading' && <Loading label="Reading the bolts" />}
      {groups.state === 'refused' && <RefusalNote refusal={groups.refusal} onRetry={groups.retry} />}
      {groups.state === 'ready' && <p>This group is no longer listed: look at the check again.</p>}
    </Window>
  );
}

const whole = (value: unknown): number => (typeof value === 'number' ? value : 0);

function Fields({ group, title, onClose }: { group: RecordRow; title: string; onClose: () => void }) {
  const { units } = useLocale();
  const { values, standing } = group;
  const all = whole(values['count']);
  const final = whole(standing['final']);
  const loose = Math.max(0, all - final - whole(standing['snug']));
  const asked = typeof values['torqueMilliNm'] === 'number' ? values['torqueMilliNm'] : null;
  const source = typeof values['source'] === 'string' ? values['source'] : '';
  const sequence = typeof values['sequence'] === 'string' ? values['sequence'] : '';

  const [to, setTo] = useState<Stage | null>(loose > 0 ? 'snug' : 'final');
  const most = to === 'snug' ? loose : all - final;
  const [countMilli, setCountMilli] = useState<number | null>(most * 1000);
  const [torque, setTorque] = useState<number | null>(loose > 0 ? null : asked);
  const [wrench, setWrench] = useState('');
  const day = useActDay();
  const who = useWho({ label: 'Who tightened them' });
  const choose = (stage: Stage | null) => {
    setTo(stage);
    setCountMilli((stage === 'snug' ? loose : all - final) * 1000);
    setTorque(stage === 'final' ? asked : null);
  };
  const act = useAct((key, on: string) =>
    api.records.bolts({
      key,
      on,
      boltGroup: group.id,
      to: to ?? 'final',
      count: (countMilli ?? 0) / 1000,
      by: who.by,
      wrench,
      torqueMilliNm: torque,
      reason: '',
    }),
  );
  return (
    <FormWindow
      opened
      title={title}
      submitLabel={to === 'final' ? 'Record final torque' : 'Record as snug'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <p>
        {all} bolts: {loose} loose, {whole(standing['snug'])} snug, {final} at final torque.
        {sequence !== '' && ` Sequence: ${sequence}.`}
      </p>
      <Choice
        name="to"
        label="Brought to"
        value={to}
        onChange={choose}
        options={[
          { value: 'snug', label: 'Snug' },
          { value: 'final', label: 'Final torque' },
        ]}
        required
      />
      <QuantityField
        name="count"
        label="How many bolts"
        value={countMilli}
        onChange={setCountMilli}
        unit="each"
        description={`At most ${most}.`}
        required
      />
      <TorqueField
        name="torqueMilliNm"
        label="Torque used"
        value={torque}
        onChange={setTorque}
        description={
          asked === null
            ? 'No torque is written down for this group.'
            : `Written down: ${torqueText(asked, units)}${source === '' ? ', without a source' : `, from ${source}`}.`
        }
      />
      <Caution>
        The maker's manual gives the torque, the steps and the sequence; where it differs from this, it governs.
      </Caution>
      <TextField name="wrench" label="Wrench" value={wrench} onChange={setWrench} longest={120} />
      {who.field}
      {day.field}
    </FormWindow>
  );
}
