import { Refusal } from '../../core/refusal.ts';

/** Most minutes that one entry or guess holds, as the workbook keeps them. */
export const mostMinutes = 600_000;

/** Minutes as people say them: "45 min", "6 h", "3 h 20 min". */
export function hoursText(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** Hours, hours and minutes, or minutes; a bare figure is hours. */
const forms = [
  /^(?<hours>\d{1,5})\s*(?:h|hours?)?\s*[:\s]\s*(?<minutes>\d{1,2})\s*(?:min|minutes?|m)?$/,
  /^(?<hours>\d{1,5})\s*h\s*(?<minutes>\d{1,2})\s*(?:min|minutes?|m)?$/,
  /^(?<minutes>\d{1,6})\s*(?:min|minutes?|m)$/,
] as const;
const decimalHours = /^(\d{1,5})(?:[.,](\d{1,3}))?\s*(?:h|hours?)?$/;

function minutesIn(typed: string): number | null {
  for (const form of forms) {
    const found = form.exec(typed)?.groups;
    if (found === undefined) continue;
    const minutes = Number(found['minutes'] ?? 0);
    if (found['hours'] !== undefined && minutes > 59) return null;
    return Number(found['hours'] ?? 0) * 60 + minutes;
  }
  const found = decimalHours.exec(typed);
  if (found === null) return null;
  const [, whole = '0', decimals = ''] = found;
  // Whole thousandths of an hour, so that no fraction of a minute is lost on the way to the nearest one.
  const thousandths = Number(whole) * 1000 + Number(decimals.padEnd(3, '0'));
  return Math.floor((thousandths * 60 + 500) / 1000);
}

/**
 * A length of work as typed: "1.5" or "1.5 h" is an hour and a half, "1:30" and "1 h 30" too, "90 min" as well.
 * @returns whole minutes, a half minute up.
 * @throws Refusal `bad-input` naming `field`.
 */
export function readMinutes(text: string, field: string, zero = true): number {
  const minutes = minutesIn(text.trim().toLowerCase());
  if (minutes !== null && minutes <= mostMinutes && (zero || minutes > 0)) return minutes;
  throw new Refusal('bad-input', `“${text.trim()}” is no length of work. Nothing was changed.`, {
    field,
    accepted: `hours such as 1.5 or 1:30, or minutes such as 45 min, ${zero ? 'from 0' : 'above 0'} to 10 000 hours`,
  });
}
