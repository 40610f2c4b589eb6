import { calculator, type Warning, warning } from '../calculator.ts';
import { fallsShort } from '../limits.ts';

const straight = (label: string) =>
  ({
    label,
    hint: 'left free, twice the outside diameter of the hose',
    dimension: 'length',
    unit: 'mm',
    must: { atLeast: 0 },
    optional: true,
  }) as const;

export const bendRadius = calculator({
  id: 'E6',
  slug: 'bend-radius',
  title: 'Bend radius',
  about: 'Whether a hose may bend that tightly, and how long it must be at least for the bend.',
  inputs: {
    bend_radius: {
      label: 'Bend radius',
      hint: 'to the inside of the bend, as in hose tables',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    min_bend_radius: {
      label: 'Smallest bend radius allowed',
      hint: "from the hose maker's table",
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    hose_od: { label: 'Outside diameter of the hose', dimension: 'length', unit: 'mm', must: { above: 0 } },
    bend_angle: {
      label: 'Bend angle',
      dimension: 'angle',
      unit: 'deg',
      must: { above: 0 },
      usual: { to: 360 },
    },
    straight_1: straight('Straight at the first fitting'),
    straight_2: straight('Straight at the second fitting'),
    two_planes: {
      kind: 'yes-no',
      label: 'Bends in two planes',
      default: false,
      defaultSource: 'one bend lies in one plane',
    },
  },
  outputs: {
    min_hose_length: { label: 'Smallest hose length', dimension: 'length', unit: 'mm' },
    ok: { kind: 'yes-no', label: 'Bend allowed' },
  },
  formula:
    'ok = bend_radius ≥ min_bend_radius; min_hose_length = bend_angle [rad] · (min_bend_radius + hose_od/2) + straight_1 + straight_2',
  source: 'Derived by hand. Straights of twice the hose diameter: SAE J1273 practice (from memory).',
  notes: [],
  example: {
    bend_radius: { value: 60, unit: 'mm' },
    min_bend_radius: { value: 50, unit: 'mm' },
    hose_od: { value: 17, unit: 'mm' },
    bend_angle: { value: 180, unit: 'deg' },
    straight_1: { value: 40, unit: 'mm' },
    straight_2: { value: 40, unit: 'mm' },
  },
  compute: (given) => {
    const { bend_radius: radius, min_bend_radius: least, hose_od: od, straight_1: first, straight_2: second } = given;
    const ok = !fallsShort(radius, least);
    const warnings: Warning[] = [];
    if (!ok) warnings.push(warning('The bend is tighter than the hose allows.'));
    if (given.two_planes) {
      warnings.push(warning('A bend in two planes twists the hose: part it with a clamp, or turn the fittings.'));
    }
    return {
      outputs: { min_hose_length: given.bend_angle * (least + od / 2) + (first ?? 2 * od) + (second ?? 2 * od), ok },
      warnings,
      notes:
        first === undefined || second === undefined
          ? ['A straight not given is taken as twice the outside diameter of the hose (SAE J1273 practice).']
          : [],
    };
  },
});
