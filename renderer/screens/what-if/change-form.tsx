import { useState } from 'react';
import type { VariantChange } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, MoneyField, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { MinutesField } from '../../parts/minutes-field.tsx';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { minutesAWeek, type WeekWindow } from '../../parts/week-windows.ts';
import { WeekWindowsField } from '../../parts/week-windows-field.tsx';
import { changeKinds, kindWords, type Names } from './change-words.ts';
import { DaysField } from './days-field.tsx';

interface Draft {
  readonly what: VariantChange['what'];
  readonly subject: string | null;
  readonly windows: readonly WeekWindow[] | null;
  readonly name: string;
  readonly amountMinor: number | null;
  readonly every: 'once' | 'month';
  readonly from: string | null;
  readonly days: number | null;
  readonly minutes: number | null;
}

const newIncome = 'new';
const everyone = 'everyone';

const needed = (field: string, accepted: string): RefusalWords => ({
  message: 'This is still empty. Nothing was changed.',
  field,
  accepted,
});

/** What was typed as a change, or what is lacking. */
function read(draft: Draft, today: string, usual: readonly WeekWindow[]): VariantChange | RefusalWords {
  const subject = draft.subject === null ? null : Number(draft.subject);
  switch (draft.what) {
    case 'hours': {
      const windows = [...(draft.windows ?? usual)];
      minutesAWeek(windows);
      return {
        what: 'hours',
        person: draft.subject === null || draft.subject === everyone ? null : Number(draft.subject),
        windows,
      };
    }
    case 'income':
      if (draft.amountMinor === null) return needed('amountMinor', 'what comes in, 0 for nothing more');
      return {
        what: 'income',
        income: draft.subject === null || draft.subject === newIncome ? null : Number(draft.subject),
        name: draft.name.trim(),
        amountMinor: draft.amountMinor,
        every: draft.every,
        from: draft.from ?? today,
        until: null,
      };
    case 'job hours':
      if (subject === null) return needed('subject', 'a job of the plan');
      if (draft.minutes === null) return needed('minutes', 'hours of work, such as 2 h 30 min');
      return { what: 'job hours', job: subject, minutes: draft.minutes };
    default: {
      if (subject === null) return needed('subject', 'a part line of the build');
      if (draft.what === 'drop part') return { what: 'drop part', part: subject };
      if (draft.what === 'lead time') {
        return draft.days === null
          ? needed('days', 'whole days from 0 to 2000')
          : { what: 'lead time', part: subject, days: draft.days };
      }
      return {
        what: 'swap part',
        part: subject,
        description: draft.name.trim(),
        priceMinor: draft.amountMinor,
        days: draft.days,
      };
    }
  }
}

/** What another page asked to try out: the kind of change and whom it is about. */
export interface AskedChange {
  readonly what: VariantChange['what'];
  readonly subject: string;
}

export interface ChangeFormProps {
  readonly names: Names;
  /** What the form begins with, where another page asked for it. */
  readonly asked?: AskedChange | null;
  readonly onAdd: (change: VariantChange) => void;
  readonly onClose: () => void;
}

/** One thing that would be otherwise. */
export function ChangeForm({ names, asked = null, onAdd, onClose }: ChangeFormProps) {
  const { today } = useWorkspace();
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  const [refusal, setRefusal] = useState<RefusalWords | null>(null);
  const [draft, setDraft] = useState<Draft>({
    what: asked?.what ?? 'hours',
    subject: asked?.subject ?? null,
    windows: null,
    name: '',
    amountMinor: null,
    every: 'month',
    from: today,
    days: null,
    minutes: null,
  });
  const set = (change: Partial<Draft>) => {
    setRefusal(null);
    setDraft((now) => ({ ...now, ...change }));
  };
  const usual = settings.state === 'ready' ? settings.value.weekWindows : [];
  const submit = () => {
    try {
      const change = read(draft, today, usual);
      if ('what' in change) {
        onAdd(change);
        onClose();
      } else setRefusal(change);
    } catch (error) {
      setRefusal(refusalWords(error));
    }
  };
  const { what } = draft;
  const records = (rows: Names['jobs'], field: string) =>
    rows.map(({ id, values }) => ({ value: String(id), label: String(values[field]) }));
  return (
    <FormWindow
      opened
      title="What would be otherwise"
      submitLabel="Try it"
      onSubmit={submit}
      onCancel={onClose}
      busy={false}
      refusal={refusal}
    >
      <Choice
        name="what"
        label="What changes"
        value={what}
        onChange={(kind) => kind !== null && set({ what: kind, subject: null })}
        options={changeKinds.map((kind) => ({ value: kind, label: kindWords[kind] }))}
        required
        autoFocus
      />
      {what === 'hours' && (
        <>
          {names.people.length > 0 && (
            <Choice
              name="subject"
              label="Whose hours"
              value={draft.subject ?? everyone}
              onChange={(subject) => set({ subject })}
              options={[{ value: everyone, label: 'The week of the settings' }, ...records(names.people, 'name')]}
            />
          )}
          {settings.state === 'ready' && (
            <WeekWindowsField windows={draft.windows ?? usual} onChange={(windows) => set({ windows })} />
          )}
        </>
      )}
      {what === 'income' && (
        <>
          <Choice
            name="subject"
            label="Which income"
            value={draft.subject ?? newIncome}
            onChange={(subject) => set({ subject })}
            options={[{ value: newIncome, label: 'One more' }, ...records(names.incomes, 'name')]}
          />
          <TextField
            name="name"
            label="What it is"
            value={draft.name}
            onChange={(name) => set({ name })}
            longest={80}
          />
          <MoneyField
            name="amountMinor"
            label="Amount"
            value={draft.amountMinor}
            onChange={(amountMinor) => set({ amountMinor })}
            required
          />
          <div className="form-row">
            <Choice
              name="every"
              label="How often"
              value={draft.every}
              onChange={(every) => every !== null && set({ every })}
              options={[
                { value: 'month', label: 'Every month' },
                { value: 'once', label: 'Once' },
              ]}
            />
            <DateField
              name="from"
              label="From"
              value={draft.from}
              onChange={(from) => set({ from })}
              today={today}
              required
            />
          </div>
        </>
      )}
      {what === 'job hours' && (
        <>
          <Choice
            name="subject"
            label="Job"
            value={draft.subject}
            onChange={(subject) => set({ subject })}
            options={records(names.jobs, 'title')}
            required
          />
          <MinutesField
            name="minutes"
            label="Hours of work"
            value={draft.minutes}
            onChange={(minutes) => set({ minutes })}
            required
          />
        </>
      )}
      {(what === 'lead time' || what === 'drop part' || what === 'swap part') && (
        <Choice
          name="subject"
          label="Part"
          value={draft.subject}
          onChange={(subject) => set({ subject })}
          options={names.parts}
          required
        />
      )}
      {what === 'swap part' && (
        <>
          <TextField
            name="name"
            label="What instead"
            value={draft.name}
            onChange={(name) => set({ name })}
            longest={300}
          />
          <MoneyField
            name="amountMinor"
            label="Price of the whole line"
            description="Empty: as it stands."
            value={draft.amountMinor}
            onChange={(amountMinor) => set({ amountMinor })}
          />
        </>
      )}
      {(what === 'lead time' || what === 'swap part') && (
        <DaysField
          name="days"
          label="Days until it is here, once ordered"
          {...(what === 'swap part' ? { description: 'Empty: as it stands.' } : { required: true })}
          value={draft.days}
          onChange={(days) => set({ days })}
        />
      )}
    </FormWindow>
  );
}
