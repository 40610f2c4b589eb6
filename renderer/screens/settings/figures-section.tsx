import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { Settings } from '../../../core/contract/workbook.ts';
import { currencyCodes } from '../../../core/money/currency.ts';
import { Refusal } from '../../../core/refusal.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { Form } from '../../parts/form.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import type { RefusalWords } from '../../parts/refusal-note.tsx';
import { useSaveSettings } from './use-settings.ts';

type FigureSettings = Omit<Settings, 'weekWindows'>;

const dateForms = ['d Mon yyyy', 'dd/mm/yyyy', 'mm/dd/yyyy', 'yyyy-mm-dd'] as const;
const taxBases = [
  { value: 'goods', label: 'The goods only' },
  { value: 'goods+freight', label: 'Goods and freight' },
  { value: 'all', label: 'Everything on the order' },
] as const;
const weekStarts = [
  { value: 'monday', label: 'Monday' },
  { value: 'sunday', label: 'Sunday' },
  { value: 'saturday', label: 'Saturday' },
] as const;
const unitChoices = [
  { value: 'metric', label: 'Metric' },
  { value: 'inch', label: 'Inch' },
] as const;

/** A percentage as the workbook keeps it: plain decimal text. */
function readPercentage(text: string): string {
  const plain = text.trim().replace(',', '.').replace(/ ?%$/, '');
  if (/^\d{1,2}(\.\d{1,4})?$/.test(plain)) return plain;
  throw new Refusal('bad-input', `The tax rate “${text.trim()}” can't be taken. Nothing was changed.`, {
    field: 'settings.taxRate',
    accepted: 'a percentage from 0 to 99.9999, such as 8.25',
  });
}

/** The name under which the workbook refuses a setting. */
const at = (name: keyof Settings): string => `settings.${name}`;

/** The currency can't be changed once amounts stand in it: the refusal says so, and the field is shut from then on. */
const currencyLocked = (refusal: RefusalWords | null): boolean => refusal?.field === at('currency');

/** Currency, dates, units, tax, and who makes the entries. */
export function FiguresSection({ settings, readOnly }: { readonly settings: Settings; readonly readOnly: boolean }) {
  const { weekWindows: _, ...own } = settings;
  const [values, setValues] = useState<FigureSettings>(own);
  const [locked, setLocked] = useState(false);
  const { today } = useWorkspace();
  const { language } = useLocale();
  const save = useSaveSettings();
  const set = (change: Partial<FigureSettings>) => setValues((before) => ({ ...before, ...change }));
  const names = new Intl.DisplayNames(language, { type: 'currency', fallback: 'none' });
  const refusedCurrency = currencyLocked(save.refusal);
  if (refusedCurrency && !locked) {
    setLocked(true);
    set({ currency: settings.currency });
  }
  return (
    <Form
      submitLabel="Save these settings"
      busy={save.busy}
      refusal={save.refusal}
      onSubmit={() => void save.run(values)}
    >
      <div className="settings-fields">
        <Choice
          name={at('currency')}
          label="Currency of all totals"
          description={
            locked
              ? `Locked: amounts in ${settings.currency} have been written.`
              : 'It is locked once the first amount is written; orders may be in others at any time.'
          }
          value={values.currency}
          onChange={(currency) => currency !== null && set({ currency })}
          options={currencyCodes.map((code) => ({ value: code, label: `${code} ${names.of(code) ?? ''}`.trim() }))}
          disabled={locked || readOnly}
          required
        />
        <Choice
          name={at('dateForm')}
          label="Dates are written"
          value={values.dateForm}
          onChange={(dateForm) => dateForm !== null && set({ dateForm })}
          options={dateForms.map((form) => ({ value: form, label: dateText(today, { dateForm: form }) }))}
          disabled={readOnly}
          required
        />
        <Choice
          name={at('weekStart')}
          label="The week begins on"
          value={values.weekStart}
          onChange={(weekStart) => weekStart !== null && set({ weekStart })}
          options={weekStarts}
          disabled={readOnly}
          required
        />
        <Choice
          name={at('units')}
          label="Units"
          value={values.units}
          onChange={(units) => units !== null && set({ units })}
          options={unitChoices}
          disabled={readOnly}
          required
        />
        <ReadField
          name={at('taxRate')}
          label="Tax rate that orders start with"
          value={values.taxRate}
          onChange={(taxRate) => taxRate !== null && set({ taxRate })}
          read={readPercentage}
          write={(rate) => rate}
          suffix="%"
          numeric
          disabled={readOnly}
          required
        />
        <Choice
          name={at('taxBase')}
          label="Tax is counted on"
          value={values.taxBase}
          onChange={(taxBase) => taxBase !== null && set({ taxBase })}
          options={taxBases}
          disabled={readOnly}
          required
        />
        <TextField
          name={at('author')}
          label="Who makes the entries here"
          description="Stands beside every entry in the journal."
          value={values.author}
          onChange={(author) => set({ author })}
          longest={80}
          disabled={readOnly}
        />
      </div>
      <Checkbox
        size="md"
        label="Prices include the tax"
        checked={values.taxIncluded}
        disabled={readOnly}
        onChange={(event) => set({ taxIncluded: event.currentTarget.checked })}
      />
    </Form>
  );
}
