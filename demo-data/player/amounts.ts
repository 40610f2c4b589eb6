/**
 * Decimal text of the demo's own files as whole minor units. All its currencies have two digits.
 * @throws Error for text that isn't such an amount: a mistake in the demo's files.
 */
export function minorOf(text: string): number {
  const match = /^(-?)(\d+)(?:\.(\d{1,2}))?$/.exec(text);
  if (match === null) throw new Error(`“${text}” is not an amount`);
  const minor = Number(match[2]) * 100 + Number((match[3] ?? '').padEnd(2, '0'));
  return match[1] === '-' ? -minor : minor;
}

/** A price each as 1/10 000 of a minor unit. */
export const eachOf = (text: string): number => minorOf(text) * 10_000;

/** A quantity in thousandths. */
export const milliOf = (quantity: number): number => Math.round(quantity * 1000);

/** Hours in whole minutes. */
export const minutesOf = (hours: number): number => Math.round(hours * 60);
