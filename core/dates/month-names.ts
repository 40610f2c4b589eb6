/**
 * Month and weekday names in the languages that parts lists are kept in. The names are the platform's (Unicode CLDR);
 * spellings without umlauts are added because keyboards lack them.
 */
const monthLanguages = ['en', 'de', 'fr', 'es', 'it', 'nl'] as const;

/** Lower case without accents or full stops: how names are compared. */
function plainName(text: string): string {
  return text
    .normalize('NFD')
    .replace(/[\u0300-\u036f.]/g, '')
    .toLowerCase();
}

let months: Map<string, number> | undefined;
let weekdays: Set<string> | undefined;

function readNames(): { months: Map<string, number>; weekdays: Set<string> } {
  if (months !== undefined && weekdays !== undefined) return { months, weekdays };
  months = new Map([
    ['maerz', 3],
    ['sept', 9],
  ]);
  weekdays = new Set();
  for (const language of monthLanguages) {
    for (const width of ['long', 'short'] as const) {
      const monthName = new Intl.DateTimeFormat(language, { month: width, timeZone: 'UTC' });
      const dayName = new Intl.DateTimeFormat(language, { weekday: width, timeZone: 'UTC' });
      for (let month = 1; month <= 12; month += 1) {
        const name = plainName(monthName.format(new Date(Date.UTC(2026, month - 1, 15))));
        // Three letters are enough in every one of these languages but French, whose June and July begin alike.
        for (const key of language === 'fr' ? [name] : [name, name.slice(0, 3)]) {
          if (!months.has(key)) months.set(key, month);
        }
      }
      for (let day = 1; day <= 7; day += 1) {
        const name = plainName(dayName.format(new Date(Date.UTC(2026, 5, day))));
        weekdays.add(name);
        weekdays.add(name.slice(0, 3));
      }
    }
  }
  return { months, weekdays };
}

/** 1 to 12, or null when the word names no month. */
export function monthOfName(word: string): number | null {
  return readNames().months.get(plainName(word)) ?? null;
}

/** Whether a word is a day of the week. */
export function isWeekdayName(word: string): boolean {
  return readNames().weekdays.has(plainName(word));
}
