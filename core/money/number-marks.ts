/**
 * The digits of an amount and the marks between them. A comma may stand before the cents or between thousands, and so
 * may a point; which one it is can often be seen, and where it can't, the caller is told so instead of being given a guess.
 */
export type DecimalMark = '.' | ',';

export type MarkedNumber =
  /** Plain decimal text with a point. `shows`: the decimal mark that this text gives away, if any. */
  | { readonly kind: 'number'; readonly plain: string; readonly shows: DecimalMark | null }
  /** One mark with three digits behind it: `mark` either groups or stands before the decimals. */
  | { readonly kind: 'ambiguous'; readonly mark: DecimalMark; readonly asDecimal: string; readonly asGrouped: string }
  | { readonly kind: 'error'; readonly reason: 'characters' | 'groups' };

const other = { '.': ',', ',': '.' } as const;

/**
 * Reads digits with `.`, `,`, `'` and blanks among them; no sign, no currency.
 * Rules: both marks present: the last is the decimal mark and occurs once. The apostrophe and blanks always group. One
 * kind several times groups. One kind once with three digits behind and one to three before (the first not 0) is
 * ambiguous, else it is the decimal mark. Groups are of three, or of two before a last three (12,34,567).
 */
export function readMarkedNumber(text: string): MarkedNumber {
  if (!/^[\d.,'’ ]*\d$/.test(text) || text.length > 60) return { kind: 'error', reason: 'characters' };
  const points = count(text, '.');
  const commas = count(text, ',');
  const alwaysGroups = /['’ ]/.test(text);

  if (points > 0 && commas > 0) {
    const mark: DecimalMark = text.lastIndexOf('.') > text.lastIndexOf(',') ? '.' : ',';
    if ((mark === '.' ? points : commas) !== 1) return { kind: 'error', reason: 'groups' };
    return split(text, mark, mark);
  }
  if (points + commas === 0) return split(text, null, null);

  const mark: DecimalMark = points > 0 ? '.' : ',';
  // The mark that comes several times groups, so the decimal mark of this hand is the other one.
  if (points + commas > 1) return split(text, null, other[mark]);
  const [before = '', after = ''] = text.split(mark);
  if (alwaysGroups || after.length !== 3 || before.length === 0 || before.length > 3 || before.startsWith('0')) {
    return split(text, mark, mark);
  }
  return { kind: 'ambiguous', mark, asDecimal: `${before}.${after}`, asGrouped: `${before}${after}` };
}

function split(text: string, mark: DecimalMark | null, shows: DecimalMark | null): MarkedNumber {
  const at = mark === null ? -1 : text.lastIndexOf(mark);
  const whole = at < 0 ? text : text.slice(0, at);
  const decimals = at < 0 ? '' : text.slice(at + 1);
  if (!/^\d*$/.test(decimals)) return { kind: 'error', reason: 'groups' };
  if (whole !== '' && !/^\d+$/.test(whole) && !wellGrouped(whole)) return { kind: 'error', reason: 'groups' };
  const digits = whole.replace(/\D/g, '').replace(/^0+(?=\d)/, '');
  return { kind: 'number', plain: `${digits === '' ? '0' : digits}${decimals === '' ? '' : `.${decimals}`}`, shows };
}

function wellGrouped(whole: string): boolean {
  return /^\d{1,3}([.,'’ ])\d{3}(?:\1\d{3})*$/.test(whole) || /^\d{1,2}(?:,\d{2})*,\d{3}$/.test(whole);
}

function count(text: string, mark: string): number {
  return text.split(mark).length - 1;
}
