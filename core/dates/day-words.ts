const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A day as sentences say it: 2026-03-04 → 4 Mar 2026. */
export function dayWords(date: string): string {
  const [year, month, day] = date.split('-');
  return `${Number(day)} ${months[Number(month) - 1] ?? month} ${year}`;
}
