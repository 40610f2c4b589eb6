import { useState } from 'react';
import type { PartActInput } from '../../../../core/contract/parts.ts';
import { api } from '../../../app/client.ts';
import { useAct } from '../../../app/data.tsx';
import { useReading, useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { QuantityField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import type { Names } from '../names.ts';
import { type ActAnswers, ActField } from './act-fields.tsx';
import type { ActSpec } from './act-specs.ts';
import { type ActTarget, targetWords } from './act-target.ts';

export interface ActWindowProps {
  readonly spec: ActSpec;
  readonly target: ActTarget;
  readonly names: Names;
  readonly onClose: () => void;
}

const send = (key: string, input: Omit<PartActInput, 'key'>) => api.parts.act({ key, ...input });

/** What goes to the workbook: only the fields that the act asks for, and of those only what was answered. */
export function actInput(
  spec: ActSpec,
  target: ActTarget,
  answers: ActAnswers,
  place: { readonly build: number; readonly today: string },
): Omit<PartActInput, 'key'> {
  const { quantityMilli, reason, owner, by } = answers;
  const asks = (asked: ActSpec['asks'][number]) => spec.asks.includes(asked);
  const binGiven = asks('bin') && (answers.bin !== null || spec.act === 'bin');
  return {
    build: place.build,
    act: spec.act,
    on: answers.on ?? place.today,
    items: target.rows.map(({ id }) => ({
      part: id,
      ...(target.rows.length === 1 && quantityMilli !== null && spec.act !== 'bin' ? { quantityMilli } : {}),
      ...(target.lot === undefined ? {} : { lot: target.lot }),
    })),
    ...(asks('reason') && reason.trim() !== '' ? { reason } : {}),
    ...(asks('rejectReason') && answers.rejectReason !== null ? { rejectReason: answers.rejectReason } : {}),
    ...(binGiven ? { bin: answers.bin === null ? null : Number(answers.bin) } : {}),
    ...(asks('owner') && owner.trim() !== '' ? { owner } : {}),
    ...(asks('dueOn') && answers.dueOn !== null ? { dueOn: answers.dueOn } : {}),
    ...(asks('value') && answers.valueMinor !== null ? { valueMinor: answers.valueMinor } : {}),
    ...(asks('by') && by.trim() !== '' ? { by } : {}),
    ...(asks('torque') && answers.torqueMilliNm !== null ? { torqueMilliNm: answers.torqueMilliNm } : {}),
    ...((asks('takenTo') || asks('acceptedTo')) && answers.to !== null ? { to: answers.to } : {}),
  };
}

/** Asks what an act needs to know and does it, on all lines or on none. */
export function ActWindow({ spec, target, names, onClose }: ActWindowProps) {
  const { today } = useWorkspace();
  const reading = useReading();
  const [answers, setAnswers] = useState<ActAnswers>({
    quantityMilli: target.mostMilli ?? null,
    on: today,
    reason: '',
    rejectReason: null,
    bin: target.rows.length === 1 && target.rows[0]?.bin ? String(target.rows[0].bin) : null,
    owner: '',
    dueOn: null,
    valueMinor: null,
    by: '',
    torqueMilliNm: null,
    to: spec.asks.includes('takenTo') ? 'allocated' : 'shelf',
  });
  const act = useAct(send);
  const submit = async () => {
    if (reading === null) return;
    if ((await act.run(actInput(spec, target, answers, { build: reading.build, today }))) !== null) onClose();
  };
  const [only] = target.rows.length === 1 ? target.rows : [];
  const words = targetWords(target);
  return (
    <FormWindow
      opened
      title={`${spec.label}: ${words}`}
      submitLabel={`${spec.label}: ${words}`}
      onSubmit={submit}
      onCancel={onClose}
      busy={act.busy}
      refusal={act.refusal}
      blocks={spec.act === 'lose' || spec.act === 'scrap'}
    >
      {only !== undefined && spec.act !== 'bin' && (
        <QuantityField
          name="quantityMilli"
          label="How many"
          description="Leave empty for all that can be moved."
          value={answers.quantityMilli}
          onChange={(quantityMilli) => setAnswers({ ...answers, quantityMilli })}
          unit={only.unit}
          autoFocus
        />
      )}
      {spec.asks.map((asked, at) => (
        <ActField
          key={asked}
          asked={asked}
          first={at === 0 && (only === undefined || spec.act === 'bin')}
          spec={spec}
          answers={answers}
          onAnswers={setAnswers}
          names={names}
          today={today}
        />
      ))}
      <DateField
        name="on"
        label="Day"
        value={answers.on}
        onChange={(on) => setAnswers({ ...answers, on })}
        today={today}
        required
      />
      {only === undefined && <LineList target={target} />}
    </FormWindow>
  );
}

/** The lines that the act is about, folded away: a last look before many are changed. */
export function LineList({ target }: { readonly target: ActTarget }) {
  const most = 200;
  return (
    <details className="parts-lines">
      <summary>The {target.rows.length.toLocaleString()} lines</summary>
      <ul>
        {target.rows.slice(0, most).map(({ id, description }) => (
          <li key={id}>{description}</li>
        ))}
        {target.rows.length > most && <li>and {(target.rows.length - most).toLocaleString()} more</li>}
      </ul>
    </details>
  );
}
