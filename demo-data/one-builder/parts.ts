import type { DemoPart, SystemParts } from '../types.ts';
import { block } from './parts/block.ts';
import { cooling } from './parts/cooling.ts';
import { drivetrain } from './parts/drivetrain.ts';
import { fuel } from './parts/fuel.ts';
import { head } from './parts/head.ts';
import { ignition } from './parts/ignition.ts';
import { induction } from './parts/induction.ts';
import { mounts } from './parts/mounts.ts';
import { oil } from './parts/oil.ts';
import { turbo } from './parts/turbo.ts';
import { valvetrain } from './parts/valvetrain.ts';
import { wiring } from './parts/wiring.ts';

/** The whole list, system by system. */
export const partsBySystem: readonly SystemParts[] = [
  block,
  head,
  valvetrain,
  induction,
  turbo,
  fuel,
  oil,
  cooling,
  ignition,
  wiring,
  drivetrain,
  mounts,
];

export const parts: readonly DemoPart[] = partsBySystem.flatMap((system) => system.parts);

/** Slugs of the parts that a job uses, for steps that fit them all. */
export function partsOf(job: string, without: readonly string[] = []): string[] {
  return parts.filter((part) => part.job === job && !without.includes(part.slug)).map(({ slug }) => slug);
}
