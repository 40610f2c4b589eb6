import type { FitStop } from '../contract/fits.ts';
import type { OrderDraft } from '../contract/orders.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { fitsAgainstOrder, stopText } from './fit-stops.ts';

/** Why parts that don't fit are ordered all the same (empty: they aren't); or that the order was placed long ago. */
export type DespiteFits = { readonly despite: string } | 'history';

const partsOf = ({ lines }: Pick<OrderDraft, 'lines'>): number[] =>
  lines.flatMap(({ part }) => (part === null ? [] : [part]));

const clause = (text: string): string => text.trim().replace(/\.+$/, '');

function stopped(stops: readonly FitStop[]): Refusal {
  const [first] = stops;
  const more = new Set(stops.map(({ part }) => part)).size - 1;
  const others = more === 0 ? '' : ` ${more} more part line${more === 1 ? ' is' : 's are'} stopped, too.`;
  const tell = first === undefined || first.howToTell === '' ? '' : ` How to tell: ${clause(first.howToTell)}.`;
  return new Refusal(
    'not-allowed-from-here',
    `${first === undefined ? '' : stopText(first)}${tell}${others} Nothing was ordered. Nothing was changed.`,
    {
      field: 'despiteFits',
      accepted: 'a reason for ordering it all the same',
      detail: {
        parts: [...new Set(stops.map(({ part }) => part))],
        fits: stops.map(({ subject }) => `${subject.kind} ${subject.id}`),
        stops: stops.map(stopText),
        howToTell: stops.map(({ howToTell }) => howToTell),
        cautions: [...new Set(stops.map(({ caution }) => caution))],
      },
    },
  );
}

/**
 * Holds an order against the fits of its part lines, before anything of it is written. What isn't known, and what is let
 * through with a reason, is said in the act's notices.
 * @returns the reason for each part line that doesn't fit
 * @throws Refusal `not-allowed-from-here` naming `despiteFits`
 */
export function orderFits(writer: ActWriter, draft: OrderDraft, fits: DespiteFits): ReadonlyMap<number, string> {
  if (fits === 'history') return new Map();
  const { stops, notices } = fitsAgainstOrder(writer.connection, draft.build, partsOf(draft));
  writer.notices.push(...notices);
  if (stops.length === 0) return new Map();
  if (fits.despite === '') throw stopped(stops);
  writer.notices.push(...stops.map((stop) => `${stopText(stop)} Ordered all the same: ${fits.despite}`));
  return new Map(stops.map(({ part }) => [part, fits.despite]));
}

/** What is wrong with the part lines of an order that was placed long ago, by part line. */
export function wrongFitsOf(connection: Connection, draft: Pick<OrderDraft, 'build' | 'lines'>): Map<number, string[]> {
  const wrong = new Map<number, string[]>();
  for (const stop of fitsAgainstOrder(connection, draft.build, partsOf(draft)).stops) {
    wrong.set(stop.part, [...(wrong.get(stop.part) ?? []), `${stop.title}: ${stop.says}`]);
  }
  return wrong;
}

/** What is to be said of an order's fits before it is placed. */
export function fitNotices(connection: Connection, draft: Pick<OrderDraft, 'build' | 'lines'>): readonly string[] {
  const { stops, notices } = fitsAgainstOrder(connection, draft.build, partsOf(draft));
  return [...stops.map((stop) => `${stopText(stop)} The order is stopped unless a reason is given.`), ...notices];
}
