import type { RecordRow } from '../../../core/contract/records.ts';
import { counted, dateText, moneyText } from '../../parts/formats.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';
import { torqueText } from '../../parts/torque.ts';
import { dayHoursText, weekHoursText } from '../../parts/week-hours.ts';
import type { FieldSpec, ListKind } from './kinds.ts';
import type { Names } from './names.ts';

export interface DecisionOption {
  readonly text: string;
  readonly costMinor: number | null;
}

export const optionsOf = (value: unknown): readonly DecisionOption[] =>
  Array.isArray(value) ? (value as readonly DecisionOption[]) : [];

/** A stored value in the words that the form uses; empty where nothing is known. */
export function valueText(field: FieldSpec, value: unknown, names: Names, locale: LocaleSettings): string {
  if (value === null || value === undefined || value === '') return field.none?.toLowerCase() ?? '';
  switch (field.type) {
    case 'day':
      return dateText(String(value), locale);
    case 'money':
      return moneyText(Number(value), locale);
    case 'torque':
      return torqueText(Number(value), locale.units);
    case 'flag':
      return value === true ? 'yes' : 'no';
    case 'whole':
      return field.unit === undefined || field.unit === '' ? String(value) : `${String(value)} ${field.unit}`;
    case 'options':
      return optionsOf(value)
        .map(({ text, costMinor }) => (costMinor === null ? text : `${text} (${moneyText(costMinor, locale)})`))
        .join(', ');
    case 'week':
      return weekHoursText(value as Parameters<typeof weekHoursText>[0]);
    case 'hours':
      return dayHoursText(value as Parameters<typeof dayHoursText>[0]) || 'off';
    case 'system':
    case 'phase':
    case 'job':
    case 'part':
    case 'person':
      return names[field.type].get(Number(value)) ?? '';
    default:
      return String(value);
  }
}

/** The bolts of a group by how far they are. */
export function boltCounts({ values, standing }: RecordRow): {
  all: number;
  loose: number;
  snug: number;
  final: number;
} {
  const number = (value: unknown): number => (typeof value === 'number' ? value : 0);
  const all = number(standing['bolts'] ?? values['count']);
  const snug = number(standing['snug']);
  const final = number(standing['final']);
  return { all, loose: all - snug - final, snug, final };
}

/** Where a record stands by its counts, in words; empty for kinds that have no counts. */
export function standingText(kind: ListKind, record: RecordRow): string {
  if (record.retiredOn !== null) return 'retired';
  switch (kind) {
    case 'tool':
      return record.standing['atHand'] === true ? 'at hand' : 'away';
    case 'decision':
      return record.standing['made'] === true ? 'decided' : 'open';
    case 'boltGroup': {
      const { all, loose, snug, final } = boltCounts(record);
      if (final === all) return `all ${all} final`;
      return [
        loose === 0 ? '' : `${loose} loose`,
        snug === 0 ? '' : `${snug} snug`,
        final === 0 ? '' : `${final} final`,
      ]
        .filter((text) => text !== '')
        .join(', ');
    }
    default:
      return '';
  }
}

/** The sentence over a list: how many there are and how they stand. */
export function listSentence(kind: ListKind, one: string, many: string, records: readonly RecordRow[]): string {
  const inUse = records.filter(({ retiredOn }) => retiredOn === null);
  const all = counted(inUse.length, one, many);
  const having = (test: (record: RecordRow) => boolean) => inUse.filter(test).length;
  switch (kind) {
    case 'tool': {
      const away = having(({ standing }) => standing['atHand'] !== true);
      return away === 0 ? `${all}, every one at hand.` : `${all}, ${away} away.`;
    }
    case 'decision': {
      const open = having(({ standing }) => standing['made'] !== true);
      return open === 0 ? `${all}, every one made.` : `${all}, ${open} still open.`;
    }
    case 'boltGroup': {
      const sums = inUse.map(boltCounts);
      const sum = (key: 'all' | 'final') => sums.reduce((total, counts) => total + counts[key], 0);
      return `${all} with ${counted(sum('all'), 'bolt', 'bolts')}, ${sum('final')} at final torque.`;
    }
    case 'vendor':
    case 'bin':
    case 'system':
    case 'phase': {
      const idle = having(({ uses }) => uses === 0);
      return idle === 0 ? `${all}.` : `${all}, ${idle} without anything in the workbook yet.`;
    }
    default:
      return `${all}.`;
  }
}
