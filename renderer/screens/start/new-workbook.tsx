import { useMemo, useState } from 'react';
import { currencyCodes } from '../../../core/money/currency.ts';
import { actKey, api } from '../../app/client.ts';
import { desktopBridge } from '../../app/desktop-bridge.ts';
import { navigate } from '../../app/route.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { useWorkbook } from './use-workbook.ts';

export interface NewWorkbookProps {
  /** What comes once it is made: the empty build, or the page that brings a list in. */
  readonly then: 'new' | 'bring in';
  readonly onClose: () => void;
}

/** "EUR Euro", in the order of their codes. */
function currencyChoices(language: string) {
  const names = new Intl.DisplayNames(language, { type: 'currency', fallback: 'none' });
  return currencyCodes.map((code) => ({ value: code, label: `${code} ${names.of(code) ?? ''}`.trim() }));
}

/** Name, currency and first build of a new workbook. */
export function NewWorkbook({ then, onClose }: NewWorkbookProps) {
  const locale = useLocale();
  const [name, setName] = useState('');
  const [currency, setCurrency] = useState<string | null>(locale.currency);
  const [build, setBuild] = useState('');
  const { busy, refusal, run } = useWorkbook();
  const bridge = desktopBridge();
  const currencies = useMemo(() => currencyChoices(locale.language), [locale.language]);

  const make = async () => {
    let path: string | null = null;
    if (bridge !== null) {
      path = await bridge.chooseWorkbookToCreate(name.trim());
      if (path === null) return;
    }
    const done = await run('new', async () => {
      const status = await api.workbook.create({
        name: name.trim(),
        currency: currency ?? locale.currency,
        ...(path === null ? {} : { path }),
      });
      await api.builds.create({ key: actKey(), on: status.today, values: { name: build.trim() } });
      return status;
    });
    if (done && then === 'bring in') navigate('/bring-in');
  };

  return (
    <FormWindow
      opened
      title={then === 'new' ? 'New workbook' : 'New workbook for a list'}
      submitLabel={then === 'new' ? 'Make the workbook' : 'Make the workbook and bring in the list'}
      onSubmit={() => void make()}
      onCancel={onClose}
      busy={busy !== null}
      refusal={refusal}
    >
      <TextField
        name="name"
        label="Name of the workbook"
        description="The file has the same name."
        value={name}
        onChange={setName}
        longest={80}
        required
        autoFocus
      />
      <TextField
        name="build"
        label="First build"
        description="The car and its engine in a few words, such as “1978 pickup, turbo six”."
        value={build}
        onChange={setBuild}
        longest={120}
        required
      />
      <Choice
        name="currency"
        label="Currency"
        description="All totals are kept in it; orders may be in others. It stays once the first amount is written."
        value={currency}
        onChange={setCurrency}
        options={currencies}
        required
      />
    </FormWindow>
  );
}
