import type { JournalFilter } from '../../../core/contract/journal.ts';
import { isDate } from '../../../core/dates/calendar-date.ts';
import type { Params } from '../../app/route.tsx';
import { isKindGroup, type KindGroup, kindGroups } from './kind-groups.ts';

/** What the journal is narrowed to; kept in the address, so that a link brings the same entries. */
export interface Asked {
  readonly text: string;
  readonly groups: readonly KindGroup[];
  readonly part: number | null;
  readonly order: number | null;
  readonly vendor: number | null;
  readonly act: number | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly standingOnly: boolean;
  /** Only entries of the build chosen above; else of all builds, and of what they share. */
  readonly buildOnly: boolean;
}

const numberIn = (text: string | undefined): number | null => {
  const number = Number(text);
  return Number.isSafeInteger(number) && number > 0 ? number : null;
};
const dateIn = (text: string | undefined): string | null => (text !== undefined && isDate(text) ? text : null);

/** Reads the address; what can't be understood is left out. */
export function askedIn(params: Params): Asked {
  return {
    text: (params['text'] ?? '').slice(0, 200),
    groups: (params['kinds'] ?? '').split(',').filter(isKindGroup),
    part: numberIn(params['part']),
    order: numberIn(params['order']),
    vendor: numberIn(params['vendor']),
    act: numberIn(params['act']),
    from: dateIn(params['from']),
    to: dateIn(params['to']),
    standingOnly: params['standing'] === 'yes',
    buildOnly: params['builds'] === 'one',
  };
}

/** The address of what is asked. */
export function paramsOf(asked: Asked): Record<string, string | number | undefined> {
  return {
    text: asked.text,
    kinds: asked.groups.join(','),
    part: asked.part ?? undefined,
    order: asked.order ?? undefined,
    vendor: asked.vendor ?? undefined,
    act: asked.act ?? undefined,
    from: asked.from ?? undefined,
    to: asked.to ?? undefined,
    standing: asked.standingOnly ? 'yes' : undefined,
    builds: asked.buildOnly ? 'one' : undefined,
  };
}

/** The question to the workbook. While a past day is shown, nothing that happened after it is listed. */
export function filterOf(asked: Asked, build: number | null, asOf: string | null): JournalFilter {
  const to = asOf !== null && (asked.to === null || asked.to > asOf) ? asOf : asked.to;
  return {
    ...(asked.buildOnly && build !== null ? { build } : {}),
    ...(asked.text.trim() === '' ? {} : { text: asked.text }),
    ...(asked.groups.length === 0 ? {} : { kinds: asked.groups.flatMap((group) => [...kindGroups[group].kinds]) }),
    ...(asked.part === null ? {} : { part: asked.part }),
    ...(asked.order === null ? {} : { order: asked.order }),
    ...(asked.vendor === null ? {} : { vendor: asked.vendor }),
    ...(asked.act === null ? {} : { act: asked.act }),
    ...(asked.from === null ? {} : { from: asked.from }),
    ...(to === null ? {} : { to }),
    ...(asked.standingOnly ? { standingOnly: true } : {}),
  };
}

/** Whether anything but the build narrows the list. */
export const isNarrowed = (asked: Asked): boolean =>
  Object.values(paramsOf({ ...asked, buildOnly: false })).some((value) => value !== undefined && value !== '');
