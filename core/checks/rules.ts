/** The few steps between calculators that are no calculator of their own. All values in SI. */
import { Refusal } from '../refusal.ts';
import type { Dimension } from '../units/dimensions.ts';

interface Outcome {
  readonly si: number;
  readonly dimension: Dimension;
  readonly unit: string;
  /** Said beside the figure. */
  readonly says: string;
}

const lacking = (message: string, field: string): never => {
  throw new Refusal('bad-input', `${message} Nothing was changed.`, { field });
};

/** Pitches of the coarse series by nominal diameter in mm: ISO 261 (from memory). */
const coarse: Readonly<Record<number, number>> = {
  3: 0.5,
  4: 0.7,
  5: 0.8,
  6: 1,
  7: 1,
  8: 1.25,
  10: 1.5,
  12: 1.75,
  14: 2,
  16: 2,
  18: 2.5,
  20: 2.5,
  22: 2.5,
  24: 3,
};

/** Diameter and pitch in m of a thread written M10x1.25, M10 or 3/8-16. @throws Refusal when it can't be read. */
export function readThread(text: string): { readonly diameter: number; readonly pitch: number } {
  const metric = /^\s*M\s?(\d{1,2}(?:[.,]\d)?)(?:\s*[x×*-]\s*(\d(?:[.,]\d{1,2})?))?\b/i.exec(text);
  if (metric !== null) {
    const diameter = Number(metric[1]?.replace(',', '.'));
    const pitch = metric[2] === undefined ? coarse[diameter] : Number(metric[2].replace(',', '.'));
    if (pitch !== undefined) return { diameter: diameter / 1000, pitch: pitch / 1000 };
  }
  const inch = /^\s*(?:(\d)[ -])?(\d{1,2})\/(\d{1,2})\s*[-x]\s*(\d{1,2})\b/.exec(text);
  if (inch !== null) {
    const diameter = Number(inch[1] ?? 0) + Number(inch[2]) / Number(inch[3]);
    return { diameter: diameter * 0.0254, pitch: 0.0254 / Number(inch[4]) };
  }
  return lacking(`The thread “${text}” can't be read; write it as M10x1.25 or 3/8-16.`, 'thread');
}

/**
 * What a pump delivers at a pressure, by the one or two points of its curve that are known: between two points along
 * the straight line; below a single point at least the flow of that point, since flow falls as pressure rises.
 * @throws Refusal when the pressure lies beyond what is known.
 */
export function pumpFlowAt(
  pressure: number,
  points: readonly { readonly at: number; readonly flow: number }[],
): { readonly flow: number; readonly says: string } {
  const sorted = [...points].sort((a, b) => a.at - b.at);
  const above = sorted.find(({ at }) => at >= pressure * (1 - 1e-9));
  const bar = (pascal: number): string => `${Number((pascal / 1e5).toPrecision(3))} bar gauge`;
  if (above === undefined) {
    const most = sorted.at(-1);
    return lacking(
      `The pump's flow at ${bar(pressure)} is not known: the highest pressure it is stated for is ${bar(most?.at ?? 0)}.`,
      'pump flow',
    );
  }
  const below = sorted.findLast(({ at }) => at < pressure);
  if (below === undefined) {
    const exact = Math.abs(above.at - pressure) <= 1e-9 * above.at;
    return { flow: above.flow, says: exact ? '' : `as stated for ${bar(above.at)}, which is more` };
  }
  const share = (pressure - below.at) / (above.at - below.at);
  return { flow: below.flow + share * (above.flow - below.flow), says: `at ${bar(pressure)}, between its two points` };
}

/** Names of the values of a rule that must be there; others may be missing. */
export const ruleNeeds = {
  product: ['lambda', 'stoich'],
  sum: ['barometer', 'boost'],
  'pump curve': ['pressure', 'flow', 'at'],
  'bore of a pipe': ['outside', 'wall'],
  'thread diameter': ['thread'],
  'thread pitch': ['thread'],
} as const;

/** Dimension that each value of a rule is read in. */
export const ruleDimensions: Readonly<Record<string, Dimension>> = {
  lambda: 'number',
  stoich: 'number',
  barometer: 'pressureAbsolute',
  boost: 'pressureGauge',
  pressure: 'pressureGauge',
  flow: 'volumeFlow',
  at: 'pressureGauge',
  secondFlow: 'volumeFlow',
  secondAt: 'pressureGauge',
  outside: 'length',
  wall: 'length',
};

/** Works a rule out from SI values. @throws Refusal in words when it can't be. */
export function applyRule(rule: keyof typeof ruleNeeds, si: Readonly<Record<string, number>>, thread: string): Outcome {
  const at = (name: string): number => si[name] ?? 0;
  switch (rule) {
    case 'product':
      return { si: at('lambda') * at('stoich'), dimension: 'number', unit: '-', says: 'lambda times stoichiometric' };
    case 'sum':
      return {
        si: at('barometer') + at('boost'),
        dimension: 'pressureAbsolute',
        unit: 'kPa',
        says: 'boost over the barometer',
      };
    case 'pump curve': {
      const second = si['secondFlow'] !== undefined && si['secondAt'] !== undefined;
      const points = [
        { at: at('at'), flow: at('flow') },
        ...(second ? [{ at: at('secondAt'), flow: at('secondFlow') }] : []),
      ];
      const { flow, says } = pumpFlowAt(at('pressure'), points);
      return { si: flow, dimension: 'volumeFlow', unit: 'L/h', says };
    }
    case 'bore of a pipe': {
      const bore = at('outside') - 2 * at('wall');
      if (bore <= 0) return lacking('The walls of the pipe leave no bore.', 'wall thickness');
      return { si: bore, dimension: 'length', unit: 'mm', says: 'outside less both walls' };
    }
    case 'thread diameter':
      return { si: readThread(thread).diameter, dimension: 'length', unit: 'mm', says: `of ${thread}` };
    default:
      return { si: readThread(thread).pitch, dimension: 'length', unit: 'mm', says: `of ${thread}` };
  }
}
