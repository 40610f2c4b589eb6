import { dayWords } from '../../dates/day-words.ts';
import { showMinutes } from '../../schedule/working-time.ts';
import { formatQuantity, isUnit, plainQuantity } from '../../units/quantity.ts';

export { dayWords };

/** What an entry says, in words: the journal, the why panel and the start page all say it like this. */
export interface EntryWords {
  readonly kind: string;
  readonly quantityMilli: number | null;
  readonly unit: string;
  readonly description: string;
  readonly payload: Readonly<Record<string, unknown>>;
  readonly subjectName: string;
  readonly note: string;
}

export const quantityWords = (milli: number, unit: string): string =>
  isUnit(unit) ? formatQuantity(milli, unit) : `${plainQuantity(milli)} ${unit}`.trim();

const word = (payload: EntryWords['payload'], key: string): string => {
  const value = payload[key];
  return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
};

const spoken: Record<string, string> = {
  'need-added': 'needed',
  'need-changed': 'need changed',
  'need-dropped': 'no longer needed',
  quoted: 'quoted',
  ordered: 'ordered',
  acknowledged: 'acknowledged by the vendor',
  'back-ordered': 'on back-order',
  promised: 'promise changed',
  shipped: 'on the way',
  chased: 'chased',
  repriced: 'price corrected',
  received: 'received',
  'over-delivered': 'more than ordered came',
  accepted: 'accepted',
  rejected: 'rejected',
  'sent-back': 'sent back',
  exchanged: 'exchange agreed',
  refunded: 'refunded',
  cancelled: 'cancelled',
  paid: 'paid',
  'deposit-paid': 'core deposit paid',
  'old-unit-sent': 'old unit sent in',
  'deposit-refunded': 'core deposit refunded',
  'deposit-kept': 'core deposit kept by the vendor',
  'came-in': 'came in',
  'put-in-bin': 'put in a bin',
  allocated: 'allocated',
  released: 'released to the shelf',
  'trial-fitted': 'trial-fitted',
  fitted: 'fitted',
  'taken-off': 'taken off',
  snugged: 'snugged',
  verified: 'at final torque or verified',
  'verification-withdrawn': 'verification withdrawn',
  lent: 'lent out',
  'came-back': 'came back',
  'given-back': 'given back to its owner',
  lost: 'lost',
  scrapped: 'scrapped',
  consumed: 'used up',
  'found-again': 'found again',
  moved: 'moved',
  budgeted: 'budget',
  'contingency-drawn': 'contingency drawn',
  'job-planned': 'job planned',
  'job-done': 'job done',
  'job-reopened': 'job open again',
  'job-dropped': 'job dropped',
  hours: 'hours worked',
  'tool-listed': 'tool listed',
  'tool-at-hand': 'tool at hand',
  'tool-away': 'tool away',
  'tool-dropped': 'tool dropped',
  'decision-listed': 'decision to make',
  'decision-made': 'decided',
  'decision-reopened': 'decision open again',
  'decision-dropped': 'decision dropped',
  'bolts-listed': 'bolts listed',
  'bolts-snugged': 'bolts snug',
  'bolts-final': 'bolts at final torque',
  'bolts-loosened': 'bolts loosened',
  'bolts-dropped': 'bolts dropped',
  'bolt-turned': 'bolt tightened',
  'bolts-rechecked': 'bolts rechecked',
  waived: 'waived for the hoist check',
  'waiver-ended': 'waiver ended',
  'gate-passed': 'engine in',
  measured: 'measured',
  'line-step': 'step of making a line',
  'job-started': 'job started',
  'job-stopped': 'job stopped',
  'forecast-kept': 'forecast kept',
  imported: 'list brought in',
  record: 'record changed',
};

/** The plain word for a kind of entry. */
export const kindWords = (kind: string): string => spoken[kind] ?? kind;

/** Kinds about one thing: how many is no news. */
const isOne = /^(job|tool|decision|waive|gate|line-step|forecast)/;

/** What a kept forecast said of its first gate. */
function forecastSaid(payload: EntryWords['payload']): string {
  const [gate] = (payload['gates'] ?? []) as readonly { name: string; p50On: string; p80On: string }[];
  if (gate === undefined) return '';
  return `${gate.name} as likely as not by ${dayWords(gate.p50On)}, four times of five by ${dayWords(gate.p80On)}`;
}

/** One line for one entry, such as "8 each received: head stud kit". */
export function entryText(entry: EntryWords): string {
  const { kind, payload, subjectName, quantityMilli } = entry;
  if (kind === 'reversal')
    return `${payload['restored'] === true ? 'restored' : 'taken back'}: ${kindWords(word(payload, 'of'))}${about(entry)}`;
  if (kind === 'line-step') return stepText(payload, subjectName);
  const quantity =
    quantityMilli === null || quantityMilli === 0 || isOne.test(kind)
      ? ''
      : `${quantityWords(Math.abs(quantityMilli), entry.unit)} `;
  const more = [
    word(payload, 'reason'),
    'promisedOn' in payload
      ? payload['promisedOn'] === null
        ? 'no date promised'
        : `promised for ${dayWords(word(payload, 'promisedOn'))}`
      : '',
    word(payload, 'owner') === '' ? '' : `from ${word(payload, 'owner')}`,
    /^(hours|job-stopped)$/.test(kind) && typeof payload['minutes'] === 'number' ? showMinutes(payload['minutes']) : '',
    word(payload, 'by') === '' ? '' : `by ${word(payload, 'by')}`,
    word(payload, 'choice'),
    kind === 'forecast-kept' ? forecastSaid(payload) : '',
    word(payload, 'to') === '' ? '' : `to ${word(payload, 'to')}`,
    word(payload, 'despiteFits') === '' ? '' : `although it does not fit: ${word(payload, 'despiteFits')}`,
  ].filter((text) => text !== '');
  const what =
    kind === 'record'
      ? [word(payload, 'record'), word(payload, 'name'), word(payload, 'did') || 'changed']
          .filter((text) => text !== '')
          .join(' ')
      : kindWords(kind);
  const subject = subjectName === '' ? about(entry) : `: ${subjectName}`;
  return `${quantity}${what}${subject}${more.length === 0 ? '' : ` (${more.join(', ')})`}`;
}

/** A step of making a line: "cut square ticked off on turbo drain (by Ray)". */
function stepText(payload: EntryWords['payload'], line: string): string {
  const copies = payload['copies'];
  const copy = typeof copies === 'number' && copies > 1 ? `, copy ${word(payload, 'copy')}` : '';
  const by = word(payload, 'by') === '' ? '' : `by ${word(payload, 'by')}`;
  const more = [by, word(payload, 'note')].filter((text) => text !== '').join(', ');
  const did = payload['done'] === true ? 'ticked off' : 'opened again';
  const name = line === '' ? word(payload, 'name') : line;
  return `${word(payload, 'title')} ${did} on ${name}${copy}${more === '' ? '' : ` (${more})`}`;
}

const about = ({ description }: EntryWords): string => (description === '' ? '' : `: ${description}`);
