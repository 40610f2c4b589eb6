/** Fluids and tube materials by the names that people write, and what the one does to the other. */
import { named } from './field-labels.ts';
import {
  type CompatibilityLetter,
  type Fluid,
  fluidRows,
  type TubeMaterial,
  tubeMaterials,
} from './tables/fluid-compatibility.ts';

/** The family decides which other rules apply. */
export type FluidFamily = 'fuel' | 'oil' | 'coolant' | 'brake' | 'transmission' | 'boost' | 'vapour' | 'vacuum' | 'mix';

const families: Readonly<Record<Fluid, FluidFamily>> = {
  'gasoline E0-E10': 'fuel',
  'gasoline-ethanol E11-E85': 'fuel',
  'methanol blends': 'fuel',
  'diesel / biodiesel up to 7 %': 'fuel',
  'engine oil': 'oil',
  'water-glycol coolant': 'coolant',
  'glycol brake fluid (DOT 3/4/5.1)': 'brake',
  'mineral or PAO transmission oil': 'transmission',
  'boost air to 120 C with oil mist': 'boost',
  'boost air above 150 C with oil mist': 'boost',
  'crankcase vapour': 'vapour',
  'vacuum (air)': 'vacuum',
  'water injection / methanol-water 50 %': 'mix',
};

export interface FluidRead {
  readonly fluid?: Fluid | undefined;
  readonly family?: FluidFamily | undefined;
  /** What has to be said before the fluid is known, where the family alone is. */
  readonly missing?: string | undefined;
}

const known = (fluid: Fluid): FluidRead => ({ fluid, family: families[fluid] });
const fuelUnknown = (missing: string): FluidRead => ({ family: 'fuel', missing });

const gasoline = /\b(?:gasoline|petrol|fuel|gas)\b|\be\s?\d{1,3}\b/;

function readGasoline(text: string, ethanolPercent: number | undefined): FluidRead {
  const said = (/\be\s?(\d{1,3})\b/.exec(text) ?? /(\d{1,3})\s?%/.exec(text))?.[1];
  const share = ethanolPercent ?? (said === undefined ? undefined : Number(said));
  if (share === undefined)
    return fuelUnknown(`the share of ethanol (E10, E85 …, or ${named('ethanol_percent')}): read the pump`);
  if (share <= 10) return known('gasoline E0-E10');
  if (share <= 85) return known('gasoline-ethanol E11-E85');
  return fuelUnknown('what the hose maker says of more than 85 % ethanol, which the table does not cover');
}

function readBoost(hottestC: number | undefined): FluidRead {
  if (hottestC === undefined) return { family: 'boost', missing: `the highest temperature (${named('temp_max_C')})` };
  // Between the two rows of the table, the stricter one.
  return known(hottestC <= 120 ? 'boost air to 120 C with oil mist' : 'boost air above 150 C with oil mist');
}

/**
 * The fluid that somebody wrote. A fluid that isn't known is not refused: its checks answer "unknown".
 * @param ethanolPercent goes before a share in the text.
 */
export function readFluid(
  typed: string | undefined,
  more: { readonly ethanolPercent?: number | undefined; readonly hottestC?: number | undefined } = {},
): FluidRead {
  if (typed === undefined) return { missing: 'the fluid' };
  const text = typed.trim().toLowerCase();
  const exact = fluidRows.find(({ fluid }) => fluid.toLowerCase() === text);
  if (exact !== undefined) {
    const share = more.ethanolPercent;
    return families[exact.fluid] === 'fuel' && share !== undefined && exact.fluid.startsWith('gasoline')
      ? readGasoline(text, share)
      : known(exact.fluid);
  }
  if (/water.?injection|water.?methanol|methanol.?water/.test(text))
    return known('water injection / methanol-water 50 %');
  if (/methanol|\bm\s?\d{2,3}\b/.test(text)) return known('methanol blends');
  if (/biodiesel/.test(text)) return fuelUnknown('the share of biodiesel: the table ends at 7 %');
  if (/diesel/.test(text)) return known('diesel / biodiesel up to 7 %');
  if (/brake|\bdot\s?(?:3|4|5\.1)\b/.test(text)) {
    return /silicone|\bdot\s?5(?!\.1)/.test(text)
      ? { family: 'brake', missing: 'what the hose maker says of silicone brake fluid, which the table does not cover' }
      : known('glycol brake fluid (DOT 3/4/5.1)');
  }
  if (/transmission|gearbox|\batf\b/.test(text)) return known('mineral or PAO transmission oil');
  if (/boost|charge air|intercooler/.test(text)) return readBoost(more.hottestC);
  if (/crankcase|breather|blow.?by/.test(text)) return known('crankcase vapour');
  if (/vacuum/.test(text)) return known('vacuum (air)');
  if (/coolant|glycol|antifreeze/.test(text)) return known('water-glycol coolant');
  if (/^(?:engine |motor )?oil$|\bengine oil\b|\bmotor oil\b/.test(text)) return known('engine oil');
  if (/ethanol|flex.?fuel/.test(text)) {
    // Named without its share, ethanol is taken as the larger one: the stricter row.
    const shared = more.ethanolPercent !== undefined || /\be\s?\d{1,3}\b|\d\s?%/.test(text);
    return shared ? readGasoline(text, more.ethanolPercent) : known('gasoline-ethanol E11-E85');
  }
  if (gasoline.test(text)) return readGasoline(text, more.ethanolPercent);
  return { missing: `what “${typed}” does to the hose, which is in no table here: ask the hose maker` };
}

const materialWords: readonly (readonly [RegExp, TubeMaterial])[] = [
  [/^(?:hnbr|hydrogenated nitrile)$/, 'HNBR'],
  [/^(?:nbr|(?:plain )?nitrile(?: rubber)?)$/, 'NBR'],
  [/^(?:eco|epichlorohydrin)$/, 'ECO'],
  [/^(?:cr|chloroprene|polychloroprene)$/, 'CR'],
  [/^epdm$/, 'EPDM'],
  [/^(?:fvmq|fluoro.?silicone)$/, 'FVMQ'],
  [/^(?:vmq|(?:plain )?silicone|vmq \(silicone\))$/, 'VMQ (silicone)'],
  [/^(?:fkm|fpm|fluoro.?elastomer|fluorocarbon rubber)$/, 'FKM'],
  [/^ptfe$/, 'PTFE'],
  [/^(?:pa.?12|polyamide.?12|nylon.?12)$/, 'PA12'],
  [/^(?:cpe|chlorinated polyethylene)$/, 'CPE'],
];

/** A tube material by its symbol or name; undefined for one that isn't in the table. */
export function readMaterial(typed: string | undefined): TubeMaterial | undefined {
  const text = typed?.trim().toLowerCase();
  return text === undefined ? undefined : materialWords.find(([words]) => words.test(text))?.[1];
}

/** The letter of the compatibility table, and where it is from. */
export function compatibility(
  fluid: Fluid,
  material: TubeMaterial,
): { readonly letter: CompatibilityLetter; readonly source: string } {
  const row = fluidRows.find((one) => one.fluid === fluid);
  const letter = row?.letters.charAt(tubeMaterials.indexOf(material)) as CompatibilityLetter | undefined;
  if (row === undefined || letter === undefined) throw new Error(`No row for ${fluid}.`);
  return { letter, source: row.source };
}
