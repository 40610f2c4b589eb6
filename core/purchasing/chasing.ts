/** Whom to write to, and why: promises that passed, back-orders that grew old, claims that nobody settled. */
import { daysBetween } from '../dates/calendar-date.ts';

/** A vendor is to be asked when a promise has passed, or a back-order is this old and nobody asked for a week. */
const chaseAfterDays = 14;
const askAgainDays = 7;

export interface OpenLine {
  readonly order: number;
  readonly description: string;
  readonly promisedOn: string | null;
  readonly pastPromiseDays: number | null;
  readonly ageDays: number | null;
  readonly chasedOn: string | null;
}

export interface ChaseWords {
  readonly day: (date: string) => string;
}

/** Why a line is to be asked about today, in words; null when it isn't. Common practice, no published source. */
export function chaseReason(line: OpenLine, words: ChaseWords): string | null {
  const late = line.pastPromiseDays ?? 0;
  if (line.promisedOn !== null && late > 0) return `${late} ${late === 1 ? 'day' : 'days'} past its promise`;
  if (line.ageDays === null || line.ageDays < chaseAfterDays) return null;
  const promise = line.promisedOn === null ? 'no date promised' : `promised for ${words.day(line.promisedOn)}`;
  return `on back-order for ${line.ageDays} days, ${promise}`;
}

/** Whether somebody asked so lately that an answer may still come. */
export const askedLately = (chasedOn: string | null, day: string): boolean =>
  chasedOn !== null && daysBetween(chasedOn, day) < askAgainDays;

/** How long a line has kept us waiting, to sort by. */
export const waitedDays = (line: OpenLine): number => Math.max(line.pastPromiseDays ?? 0, line.ageDays ?? 0);

export interface LetterOrder {
  readonly number: string;
  readonly orderedOn: string;
  readonly lines: readonly { readonly what: string; readonly why: string }[];
}

export interface Letter {
  readonly vendorName: string;
  readonly account: string;
  readonly author: string;
  readonly orders: readonly LetterOrder[];
  /** What is still owed for goods that went back, in words. */
  readonly claims: readonly string[];
}

/** The text to send: every line that is asked about, under its order. */
export function chaseLetter({ vendorName, account, author, orders, claims }: Letter, words: ChaseWords): string {
  const asked = orders.flatMap(({ number, orderedOn, lines }) => [
    `${number === '' ? 'Our order' : `Order ${number}`} of ${words.day(orderedOn)}`,
    ...lines.map(({ what, why }) => `- ${what}: ${why}`),
    '',
  ]);
  const owed =
    claims.length === 0 ? [] : ['Goods that went back and aren’t settled yet:', ...claims.map((one) => `- ${one}`), ''];
  const ask = [
    ...(orders.length === 0
      ? []
      : ['On which day will each of these leave you, and is there another part that would do if one won’t come?']),
    ...(claims.length === 0 ? [] : ['When may I count on the replacement or the refund?']),
  ];
  return [
    `To ${vendorName}${account === '' ? '' : `, account ${account}`}`,
    '',
    ...(orders.length === 0 ? [] : ['I am waiting for these:', '']),
    ...asked,
    ...owed,
    ...ask,
    '',
    'Thank you',
    ...(author === '' ? [] : [author]),
  ].join('\n');
}
