import { rejectReasons } from '../../../../core/ledger/entry.ts';
import { DateField } from '../../../parts/date-field.tsx';
import { Choice, MoneyField, QuantityField, TextField } from '../../../parts/fields.tsx';
import { Caution } from '../../../parts/notes.tsx';
import type { Names } from '../names.ts';
import type { ActSpec, Asked } from './act-specs.ts';

/** All that forms of acts ask for; each act uses what it asks for and leaves the rest. */
export interface ActAnswers {
  readonly quantityMilli: number | null;
  readonly on: string | null;
  readonly reason: string;
  readonly rejectReason: (typeof rejectReasons)[number] | null;
  readonly bin: string | null;
  readonly owner: string;
  readonly dueOn: string | null;
  readonly valueMinor: number | null;
  readonly by: string;
  /** Newton metres in thousandths. */
  readonly torqueMilliNm: number | null;
  readonly to: 'shelf' | 'allocated' | 'rejected' | 'scrapped' | null;
}

export interface ActFieldProps {
  /** The field takes the focus when the form opens. */
  readonly first: boolean;
  readonly spec: ActSpec;
  readonly answers: ActAnswers;
  readonly onAnswers: (answers: ActAnswers) => void;
  readonly names: Names;
  readonly today: string;
}

const places = {
  acceptedTo: [
    { value: 'shelf', label: 'On the shelf' },
    { value: 'allocated', label: 'Set aside for this build' },
  ],
  takenTo: [
    { value: 'allocated', label: 'Set aside, to go on again' },
    { value: 'shelf', label: 'Back on the shelf' },
    { value: 'rejected', label: 'Rejected' },
    { value: 'scrapped', label: 'Scrapped' },
  ],
} as const;

/** One of the fields that an act asks for. */
export function ActField({ asked, ...props }: ActFieldProps & { readonly asked: Asked }) {
  const { spec, answers, names, today, first } = props;
  const set = (change: Partial<ActAnswers>) => props.onAnswers({ ...answers, ...change });
  const required = spec.needs.includes(asked);
  switch (asked) {
    case 'reason':
      return (
        <TextField
          name="reason"
          autoFocus={first}
          label="Why"
          value={answers.reason}
          onChange={(reason) => set({ reason })}
          required={required}
          longest={400}
        />
      );
    case 'rejectReason':
      return (
        <Choice
          name="rejectReason"
          autoFocus={first}
          label="What is wrong"
          value={answers.rejectReason}
          onChange={(rejectReason) => set({ rejectReason })}
          options={rejectReasons.map((reason) => ({ value: reason, label: reason }))}
          required={required}
        />
      );
    case 'bin':
      return (
        <Choice
          name="bin"
          autoFocus={first}
          label="Bin"
          value={answers.bin}
          onChange={(bin) => set({ bin })}
          options={names.bin.options}
          none={spec.act === 'bin' ? 'No bin' : 'Where it is now'}
        />
      );
    case 'owner':
      return (
        <TextField
          name="owner"
          autoFocus={first}
          label={spec.act === 'lend' ? 'Lent to' : 'Whose it is'}
          value={answers.owner}
          onChange={(owner) => set({ owner })}
          required={required}
          longest={120}
        />
      );
    case 'dueOn':
      return (
        <DateField
          name="dueOn"
          autoFocus={first}
          label={spec.act === 'settle by exchange' ? 'Replacement promised for' : 'Due back on'}
          value={answers.dueOn}
          onChange={(dueOn) => set({ dueOn })}
          today={today}
          required={required}
        />
      );
    case 'value':
      return (
        <MoneyField
          name="valueMinor"
          autoFocus={first}
          label="Worth, in all"
          description="Leave empty when it costs the build nothing."
          value={answers.valueMinor}
          onChange={(valueMinor) => set({ valueMinor })}
        />
      );
    case 'by':
      return (
        <TextField
          name="by"
          autoFocus={first}
          label="Done by"
          value={answers.by}
          onChange={(by) => set({ by })}
          longest={80}
        />
      );
    case 'torque':
      return (
        <>
          <QuantityField
            name="torqueMilliNm"
            label="Torque reached, N·m"
            value={answers.torqueMilliNm}
            onChange={(torqueMilliNm) => set({ torqueMilliNm })}
            unit="N·m"
          />
          <Caution>
            The vehicle or part maker’s manual governs torque, sequence and whether a bolt may be used again.
          </Caution>
        </>
      );
    case 'takenTo':
    case 'acceptedTo':
      return (
        <Choice
          name="to"
          autoFocus={first}
          label="Where it goes"
          value={answers.to}
          onChange={(to) => set({ to })}
          options={places[asked]}
          required
        />
      );
  }
}
