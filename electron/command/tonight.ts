import { samePlace } from '../../core/schedule/place.ts';
import { showMinutes } from '../../core/schedule/working-time.ts';
import { formatQuantity, isUnit, plainQuantity } from '../../core/units/quantity.ts';
import { chooseBuild, dayOption, withWorkbook, wrapped } from './open.ts';
import { type Given, UsageError, type Verb } from './verb.ts';

const widest = 110;

/** Hours as typed, in whole minutes. @throws UsageError unless they are a number above 0, at most 24. */
function minutesOption(given: Given): number | undefined {
  const text = given.text('hours');
  if (text === undefined) return undefined;
  const minutes = /^\d{1,2}([.,]\d{1,3})?$/.test(text) ? Math.round(Number(text.replace(',', '.')) * 60) : 0;
  if (minutes >= 1 && minutes <= 1440) return minutes;
  throw new UsageError(`--hours ${text}: hours above 0, at most 24, such as 3 or 1.5.`);
}

export const tonight: Verb = {
  name: 'tonight',
  summary: 'what can be done now with the parts and tools at hand, best first',
  usage: 'FILE',
  takes: [1, 1],
  options: {
    build: { type: 'string' },
    'as-of': { type: 'string' },
    hours: { type: 'string' },
    place: { type: 'string' },
  },
  optionHelp: [
    ['--hours N', 'hours of the session; without it what is left of today’s, else three'],
    ['--place NAME', 'only jobs of this place, and those that name none'],
    ['--build NAME', 'the build, by number or name, when there are several'],
    ['--as-of DAY', 'as it stood at the end of that day, YYYY-MM-DD'],
  ],
  examples: [
    'tonight drover.hoistday --hours 3',
    'tonight drover.hoistday --place garage',
    'tonight drover.hoistday --hours 1.5 --json',
  ],
  run: (given, room) =>
    withWorkbook(given, room, async (host) => {
      const minutes = minutesOption(given);
      const build = await chooseBuild(host, given);
      const asOf = dayOption(given, 'as-of');
      const place = given.text('place')?.trim();
      const found = await host.client.tonight.view({
        build,
        ...(asOf === undefined ? {} : { asOf }),
        ...(minutes === undefined ? {} : { minutes }),
        ...(place === undefined ? {} : { place }),
      });
      if (place !== undefined && !found.places.some((one) => samePlace(one, place))) {
        const known = found.places.length === 0 ? 'no open job names one' : found.places.join(', ');
        throw new UsageError(`--place ${place}: a place that an open job names (${known}).`);
      }
      const quantity = (milli: number, unit: string): string =>
        isUnit(unit) ? formatQuantity(milli, unit) : plainQuantity(milli);
      const under = (text: string): string[] => wrapped(text, widest - 4).map((line) => `    ${line}`);
      return {
        data: found,
        lines: [
          found.answer,
          ...(found.begin === '' ? [] : [found.begin]),
          `Hours: ${showMinutes(found.minutes)} (${found.minutesFrom}); ${showMinutes(found.minutesOver)} not filled.`,
          ...found.jobs.flatMap(({ job, says, who, fetch, torque, sheets, lines, consumables }, index) => [
            '',
            `${index + 1}. ${job.title}${who === '' ? '' : ` (for ${who})`}`,
            ...under(says),
            ...fetch.flatMap(({ binName, place, parts }) =>
              under(
                `from ${binName === '' ? 'no bin written down' : binName}${place === '' ? '' : ` (${place})`}: ` +
                  parts.map(({ milli, unit, description }) => `${quantity(milli, unit)} ${description}`).join(', '),
              ),
            ),
            ...torque.flatMap(({ id, name, says: far, lubricant }) =>
              under(`torque sheet ${id} ${name}: ${far}${lubricant === '' ? '' : ` Lubricant: ${lubricant}.`}`),
            ),
            ...sheets.flatMap(({ id, title, says: far }) => under(`measuring sheet ${id} ${title}: ${far}`)),
            ...lines.flatMap(({ id, name, says: far }) => under(`line to make ${id} ${name}: ${far}`)),
            ...(consumables.length === 0 ? [] : under(`uses up: ${consumables.join(', ')}`)),
          ]),
          ...(found.others.length === 0 ? [] : ['', 'Not here, or not yet:']),
          ...found.others.flatMap(({ title, says }) => under(`“${title}”: ${says}.`)),
          ...(found.unlocks.length === 0 ? [] : ['', 'What would let others begin:']),
          ...found.unlocks.flatMap(({ says }) => under(says)),
          '',
          ...wrapped(found.rule, widest),
          found.caution,
        ],
      };
    }),
};
