/** Every question about whether a line stands its fluid, pressure and heat, and its answer. */
import type { Check } from './check.ts';
import { checkDrain } from './drain-checks.ts';
import { readFluid } from './fluid.ts';
import {
  checkBoost,
  checkCancelled,
  checkCoolant,
  checkFluid,
  checkInjection,
  checkInTank,
  checkTransmission,
} from './fluid-checks.ts';
import type { Hose } from './hose.ts';
import type { LineJoint } from './joint.ts';
import type { Line } from './line.ts';
import { checkPressure, checkTemperature, checkVacuum, hottestOf } from './pressure-checks.ts';
import { checkVelocity } from './velocity.ts';

/** The pieces of the adapters that the joints take. */
const adaptersOf = (joints: readonly LineJoint[]): readonly string[] =>
  joints.flatMap(({ verdict, adapters }) => (verdict === 'adapter' ? (adapters[0]?.pieces ?? []) : []));

/** All checks in a fixed order; one that doesn't apply says so, and none is left out. Drain rules come for drains. */
export function checkSuitability(line: Line, hose: Hose, joints: readonly LineJoint[]): readonly Check[] {
  const fluid = readFluid(line.fluid, { ethanolPercent: line.ethanolPercent, hottestC: hottestOf(line) });
  return [
    checkPressure(line, hose, adaptersOf(joints)),
    checkVacuum(line, hose, fluid.family),
    checkTemperature(line, hose),
    checkFluid(hose, fluid),
    checkInjection(line, hose, fluid),
    checkInTank(line, hose, fluid),
    checkBoost(hose, fluid),
    checkCoolant(line, hose, fluid),
    checkTransmission(line, hose, fluid),
    checkCancelled(hose),
    checkVelocity(line, hose),
    ...checkDrain(line, hose),
  ];
}
