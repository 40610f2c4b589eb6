import { Refusal } from '../../../core/refusal.ts';

/**
 * A number from 0, as typed; a comma may stand for the point.
 * @throws Refusal `bad-input` naming the field
 */
export function readNumber(text: string, label: string, field: string): number {
  const value = Number(text.trim().replace(',', '.'));
  if (Number.isFinite(value) && value >= 0) return value;
  throw new Refusal('bad-input', `The ${label} “${text.trim()}” is no number from 0. Nothing was changed.`, {
    field,
    accepted: 'a number such as 0.1 or 2',
  });
}
