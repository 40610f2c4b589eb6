/** Lines that drain by their own weight. Rules of thumb that turbocharger makers publish; there is no standard. */

import { exceeds, fallsShort } from '../calculators/limits.ts';
import { type Check, checkOf } from './check.ts';
import { named } from './field-labels.ts';
import type { Hose } from './hose.ts';
import type { DrainFacts, Line } from './line.ts';
import { smallestBore } from './velocity.ts';

const source = 'rule of thumb, published by turbocharger makers, no standard';
const usualDash = 10;
const largeDash = 12;
/** Least slope, and most tilt of the outlet from straight down [deg]. */
const steepEnough = 15;
const outletWithin = 15;
/** Bent ends up to this are preferred [deg]. */
const gentleEnd = 45;

function checkDrainBore(line: Line, hose: Hose, { housingHoleMm: hole, boresMm }: DrainFacts): Check {
  const { pass, fail, unknown } = checkOf('drain-bore', 'Drain bore', source);
  const bores = boresMm ?? [];
  const narrower = bores.findIndex((bore, at) => at > 0 && fallsShort(bore, bores[at - 1] ?? 0));
  if (narrower > 0) {
    return fail(`The bore narrows from ${bores[narrower - 1]} to ${bores[narrower]} mm downstream: oil backs up.`);
  }
  const known = [smallestBore(line, hose), ...bores].filter((one) => one !== undefined);
  if (known.length === 0)
    return unknown(`Enter the bore of the hose (${named('bore')}), and of the ends where it is smaller.`);
  if (hole === undefined) return unknown(`Enter the drain hole of the housing (${named('drain.housing_hole_mm')}).`);
  const least = Math.min(...known);
  return fallsShort(least, hole)
    ? fail(`The bore of ${least} mm is smaller than the drain hole of ${hole} mm: oil backs up into the housing.`)
    : pass(`Smallest bore ${least} mm, drain hole ${hole} mm.`);
}

function checkDrainSize({ hose: { dash } }: Line, { largeFrame = false }: DrainFacts): Check {
  const { pass, caution, unknown } = checkOf('drain-size', 'Usual drain size', source);
  const least = largeFrame ? largeDash : usualDash;
  if (dash === undefined) return unknown(`Enter the dash size; usual is -${least} or larger.`);
  return dash < least
    ? caution(`-${dash} is below the usual -${least}${largeFrame ? ' of a large frame' : ''}.`)
    : pass(`-${dash}, usual from -${least}.`);
}

function checkOutlet({ outletAngleDeg: angle }: DrainFacts): Check {
  const { pass, fail, unknown } = checkOf('drain-outlet', 'Outlet points down', source);
  if (angle === undefined)
    return unknown(`Enter how far the outlet is from straight down (${named('drain.outlet_angle_deg')}).`);
  return exceeds(angle, outletWithin)
    ? fail(`The outlet is ${angle}° from straight down, more than ${outletWithin}°: turn the housing.`)
    : pass(`The outlet is ${angle}° from straight down.`);
}

function checkSlope({ minSlopeDeg: slope }: DrainFacts): Check {
  const { pass, caution, fail, unknown } = checkOf('drain-slope', 'Falls all the way', source);
  if (slope === undefined)
    return unknown(`Enter the flattest slope on the way (${named('drain.min_slope_deg')}, 0 is level).`);
  if (!exceeds(slope, 0)) return fail('A piece is level or rises: oil stands there and backs up.');
  return fallsShort(slope, steepEnough)
    ? caution(`The flattest piece falls by ${slope}°; ${steepEnough}° or more is better.`)
    : pass(`The flattest piece falls by ${slope}°.`);
}

function checkEntry({ entryAboveOilMm: height }: DrainFacts): Check {
  const { pass, fail, unknown } = checkOf('drain-entry', 'Enters above the oil', source);
  if (height === undefined) {
    return unknown(
      `Enter how far above the running oil level the drain enters (${named('drain.entry_above_oil_mm')}).`,
    );
  }
  return exceeds(height, 0)
    ? pass(`It enters ${height} mm above the running oil level; keep it away from what the crankshaft throws.`)
    : fail('It enters at or below the running oil level: oil stands in the drain.');
}

function checkDrainEnds({ ends }: Line): Check {
  const { pass, caution } = checkOf('drain-ends', 'Gentle ends', source);
  const sharp = ends.filter(({ angleDeg }) => exceeds(angleDeg, gentleEnd));
  return sharp.length === 0
    ? pass(`No end turns by more than ${gentleEnd}°.`)
    : caution(`An end turns by ${Math.max(...sharp.map(({ angleDeg }) => angleDeg))}°: prefer ${gentleEnd}° or less.`);
}

/** All rules for a gravity drain; none for other lines. */
export function checkDrain(line: Line, hose: Hose): readonly Check[] {
  if (line.service !== 'drain') return [];
  const facts = line.drain ?? {};
  const rules = [
    checkDrainBore(line, hose, facts),
    checkDrainSize(line, facts),
    checkOutlet(facts),
    checkSlope(facts),
    checkEntry(facts),
    checkDrainEnds(line),
  ];
  const { pass, caution } = checkOf('drain-help', 'Crankcase and pump', source);
  return [
    ...rules,
    rules.some(({ verdict }) => verdict === 'fail')
      ? caution('Where the drain can not be made to fall freely, use a scavenge pump. Keep crankcase pressure low.')
      : pass('Keep crankcase pressure low: it holds the oil back.'),
  ];
}
