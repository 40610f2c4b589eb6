import type { RecordRow, VariantChange } from '../../../core/contract/records.ts';
import { showMinutes } from '../../../core/schedule/working-time.ts';
import { counted, dateText, moneyText } from '../../parts/formats.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';
import { minutesAWeek } from '../../parts/week-windows.ts';

/** What the words of a change need to know of the build: what ids are called. */
export interface Names {
  readonly parts: readonly { readonly value: string; readonly label: string }[];
  readonly jobs: readonly RecordRow[];
  readonly people: readonly RecordRow[];
  readonly incomes: readonly RecordRow[];
}

export const changeKinds = [
  'hours',
  'income',
  'lead time',
  'job hours',
  'drop part',
  'swap part',
] as const satisfies readonly VariantChange['what'][];

export const kindWords: Readonly<Record<VariantChange['what'], string>> = {
  hours: 'Hours of the week',
  income: 'Income',
  'lead time': 'When a part is here',
  'job hours': 'Hours of a job',
  'drop part': 'Do without a part',
  'swap part': 'Another part instead',
};

function weekWords(windows: Extract<VariantChange, { what: 'hours' }>['windows']): string {
  try {
    return `${showMinutes(minutesAWeek(windows))} a week`;
  } catch {
    return 'times that overlap';
  }
}

/** A change as the page lists it, before it is worked out. */
export function changeText(change: VariantChange, names: Names, locale: LocaleSettings): string {
  const part = (id: number): string => names.parts.find(({ value }) => value === String(id))?.label ?? `part ${id}`;
  const named = (rows: readonly RecordRow[], id: number | null, field: string): string =>
    String(rows.find((row) => row.id === id)?.values[field] ?? '');
  switch (change.what) {
    case 'hours':
      return `${change.person === null ? 'Hours of the week' : `Hours of ${named(names.people, change.person, 'name')}`}: ${weekWords(change.windows)}`;
    case 'income':
      return `${change.income === null ? `More income, ${change.name === '' ? 'unnamed' : change.name}` : `Income ${named(names.incomes, change.income, 'name')}`}: ${moneyText(change.amountMinor, locale)} ${change.every === 'month' ? 'a month' : 'once'} from ${dateText(change.from, locale)}`;
    case 'lead time':
      return `${part(change.part)}: here in ${counted(change.days, 'day', 'days')}`;
    case 'job hours':
      return `${named(names.jobs, change.job, 'title')}: ${showMinutes(change.minutes)}`;
    case 'drop part':
      return `${part(change.part)}: done without`;
    case 'swap part':
      return [
        `${part(change.part)}: ${change.description === '' ? 'another one' : change.description}`,
        ...(change.priceMinor === null ? [] : [moneyText(change.priceMinor, locale)]),
        ...(change.days === null ? [] : [`here in ${counted(change.days, 'day', 'days')}`]),
      ].join(', ');
  }
}
