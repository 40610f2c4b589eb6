/** Pressure, vacuum and temperature of a line against its hose, ends and adapters. */

import { exceeds, fallsShort } from '../calculators/limits.ts';
import { itemKey } from './bill.ts';
import { type Check, checkOf } from './check.ts';
import { named } from './field-labels.ts';
import type { FluidFamily } from './fluid.ts';
import type { Hose } from './hose.ts';
import type { Line } from './line.ts';
import { toTenth } from './round.ts';

/** Above this share of the hose's temperature limit, its pressure rating needs the maker's factor. */
const hotFrom = 0.8;

const typicalFigure = 'typical figure of the type: what is marked on the hose governs';

interface Rating {
  readonly of: string;
  readonly bar: number | undefined;
}

const isHot = (line: Line, hose: Hose): boolean => {
  const hottest = hottestOf(line);
  return hottest !== undefined && hose.maxC !== undefined && exceeds(hottest, hotFrom * hose.maxC.value);
};

/** The hotter of the fluid and what surrounds the hose. */
export function hottestOf({ tempMaxC, ambientMaxC }: Line): number | undefined {
  const given = [tempMaxC, ambientMaxC].filter((one) => one !== undefined);
  return given.length === 0 ? undefined : Math.max(...given);
}

/**
 * The assembly is rated as its weakest piece.
 * @param found adapters that the joints need; the line may name them too, with a rating.
 */
export function checkPressure(line: Line, hose: Hose, found: readonly string[]): Check {
  const { pass, caution, fail, unknown } = checkOf(
    'pressure',
    'Pressure',
    'SAE J517: the rating of an assembly is the lower of hose and fitting. Hot from 80 % of the limit: common practice, no published source',
  );
  const { pressureBar: asked, ends, adapters } = line;
  if (asked === undefined) return unknown(`Enter the highest pressure of the line (${named('pressure_bar')}, gauge).`);
  const factor = hose.choice.hotFactor ?? 1;
  const ratings: readonly Rating[] = [
    { of: 'hose', bar: hose.maxBar === undefined ? undefined : hose.maxBar.value * factor },
    ...ends.map(({ maxBar }, at) => ({ of: `end ${at + 1}`, bar: maxBar })),
    ...adapters.map(({ text, maxBar }) => ({ of: text, bar: maxBar })),
    ...found
      .filter((text) => !adapters.some((one) => itemKey(one.text) === itemKey(text)))
      .map((text) => ({ of: text, bar: undefined })),
  ];
  const weak = ratings.filter(({ bar }) => bar !== undefined && exceeds(asked, bar));
  if (weak.length > 0) {
    const list = weak.map(({ of, bar }) => `${of} ${toTenth(bar ?? 0)} bar`).join(', ');
    return fail(`${asked} bar is more than allowed: ${list}. The line can burst or blow off its end.`);
  }
  const missing = ratings.filter(({ bar }) => bar === undefined).map(({ of }) => of);
  if (missing.length > 0) {
    return unknown(`Enter the pressure rating of: ${missing.join(', ')}. What is known allows ${asked} bar.`);
  }
  const least = ratings.reduce((low, { bar }) => Math.min(low, bar ?? low), Number.POSITIVE_INFINITY);
  const figures = `${asked} bar, weakest piece ${toTenth(least)} bar`;
  if (isHot(line, hose) && hose.choice.hotFactor === undefined) {
    return caution(
      `${figures}, but the hose is above 80 % of its temperature limit: ask its maker for the pressure when hot (${named('hot_factor')}).`,
    );
  }
  return pass(`${figures}.${hose.maxBar?.basis === 'typical' ? ` The hose's is a ${typicalFigure}.` : ''}`);
}

const vacuumServices: readonly (Line['service'] | undefined)[] = ['suction', 'brake-servo'];

export function checkVacuum(line: Line, hose: Hose, family: FluidFamily | undefined): Check {
  const { pass, fail, unknown, none } = checkOf('vacuum', 'Vacuum', 'common practice, no published source');
  const { vacuumBar: asked = 0, service } = line;
  if (asked === 0 && !vacuumServices.includes(service) && family !== 'vacuum') return none('no vacuum in this line.');
  const rated = hose.choice.vacuumBar;
  if (rated === undefined) {
    return unknown(
      `This line sucks: use a hose with a stated vacuum rating, and enter it (${named('hose_vacuum_bar')}).`,
    );
  }
  if (rated === 0) return fail('The hose is not rated for vacuum: it collapses and closes the line.');
  if (asked === 0) return unknown(`Enter the vacuum of the line (${named('vacuum_bar')}, below the surrounding air).`);
  return exceeds(asked, rated)
    ? fail(`${asked} bar of vacuum is more than the ${rated} bar that the hose is rated for: it collapses.`)
    : pass(`${asked} bar of vacuum, hose rated ${rated} bar.`);
}

export function checkTemperature(line: Line, hose: Hose): Check {
  const { pass, fail, unknown } = checkOf(
    'temperature',
    'Temperature',
    hose.type?.source ?? 'figures given for the hose',
  );
  const hottest = hottestOf(line);
  const { maxC, minC } = hose;
  if (hottest !== undefined && maxC !== undefined && exceeds(hottest, maxC.value)) {
    return fail(`${hottest} °C is above the ${maxC.value} °C of the hose: it hardens, cracks and leaks.`);
  }
  if (line.tempMinC !== undefined && minC !== undefined && fallsShort(line.tempMinC, minC.value)) {
    return fail(`${line.tempMinC} °C is below the ${minC.value} °C of the hose: it stiffens and cracks.`);
  }
  const missing = [
    ...(line.tempMaxC === undefined ? [`the highest temperature of the fluid (${named('temp_max_C')})`] : []),
    ...(maxC === undefined ? [`the temperature limit of the hose (${named('hose_max_C')}, or its class)`] : []),
    ...(line.nearExhaust === true && line.ambientMaxC === undefined
      ? [`the temperature beside the exhaust (${named('ambient_max_C')})`]
      : []),
  ];
  if (missing.length > 0) return unknown(`Enter ${missing.join(', ')}.`);
  const beside = line.ambientMaxC === undefined ? ' Near an exhaust the heat around the hose counts too.' : '';
  const typical = maxC?.basis === 'typical' ? ` (${typicalFigure})` : '';
  return pass(`${hottest} °C, hose up to ${maxC?.value} °C${typical}.${beside}`);
}
