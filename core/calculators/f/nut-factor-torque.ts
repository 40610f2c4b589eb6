import { calculator, graveWarning, refuseInput } from '../calculator.ts';
import { fallsShort } from '../limits.ts';
import { diameter, dryTorque, fastenerCaution, preload, torque, torqueScatter } from './fasteners.ts';
import { nutFactors, type Surface, surfaces } from './nut-factors.ts';

/** Below this, a torque from a list for dry threads stretches the bolt too far. */
const slipperyBelow = 0.12;

/** The nut factor to use, and the words that must stand beside every figure from it. */
function nutFactorOf(given: number | undefined, surface: Surface | undefined): { factor: number; words: string } {
  if (given !== undefined) {
    return { factor: given, words: `K ${Number(given.toPrecision(4))}, ${surface ?? 'surface not stated'}` };
  }
  if (surface === undefined) {
    refuseInput(
      'nut_factor',
      'The nut factor is missing, and so is the surface to take it from.',
      'a nut factor of 0.08 to 0.40, or a surface',
    );
  }
  return { factor: nutFactors[surface], words: `K ${nutFactors[surface]}, ${surface}` };
}

export const nutFactorTorque = calculator({
  id: 'F2',
  slug: 'nut-factor-torque',
  title: 'Torque with nut factor',
  about: 'What torque gives a preload, or what preload a torque gives, by one factor for all the friction.',
  inputs: {
    diameter,
    nut_factor: {
      label: 'Nut factor K',
      hint: 'or choose a surface',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      usual: { from: 0.08, to: 0.4 },
      optional: true,
    },
    surface: {
      kind: 'choice',
      label: 'Surface',
      hint: 'gives the nut factor, if none is given',
      choices: surfaces,
      optional: true,
    },
    preload,
    torque,
    torque_is_dry: dryTorque,
    proof_load: {
      label: 'Proof load',
      hint: 'from the stress area calculator',
      dimension: 'force',
      unit: 'kN',
      must: { above: 0 },
    },
    preload_fraction: {
      label: 'Share of the proof load',
      dimension: 'fraction',
      unit: '%',
      must: { above: 0 },
      usual: { to: 90, because: 'permanent joints, Shigley' },
      default: 75,
      defaultSource: 'joints to be reopened, Shigley (seen in use)',
    },
  },
  outputs: {
    torque: { label: 'Torque', dimension: 'torque', unit: 'N*m' },
    preload: { label: 'Preload', dimension: 'force', unit: 'kN' },
    basis: { kind: 'text', label: 'Reckoned with' },
  },
  formula: 'torque = K · d · preload; preload = torque/(K · d); suggested torque = K · d · share · proof_load',
  source: 'Shigley, Mechanical Engineering Design, K from table 8-15 (seen).',
  notes: [torqueScatter],
  caution: fastenerCaution,
  example: {
    nut_factor: { value: 0.18 },
    diameter: { value: 10, unit: 'mm' },
    preload: { value: 25, unit: 'kN' },
  },
  modes: [
    {
      name: 'torque',
      title: 'torque from preload',
      needs: ['diameter', 'preload'],
      may: ['nut_factor', 'surface'],
      compute: (given) => {
        const { factor, words } = nutFactorOf(given.nut_factor, given.surface);
        return { outputs: { torque: factor * given.diameter * given.preload, basis: words } };
      },
    },
    {
      name: 'preload',
      title: 'preload from torque',
      needs: ['diameter', 'torque'],
      may: ['nut_factor', 'surface', 'torque_is_dry'],
      compute: (given) => {
        const { factor, words } = nutFactorOf(given.nut_factor, given.surface);
        return {
          outputs: { preload: given.torque / (factor * given.diameter), basis: words },
          warnings:
            given.torque_is_dry && fallsShort(factor, slipperyBelow)
              ? [graveWarning('A torque meant for dry threads stretches the bolt too far at a nut factor below 0.12.')]
              : [],
        };
      },
    },
    {
      name: 'suggested',
      title: 'suggested torque from proof load',
      needs: ['diameter', 'proof_load'],
      may: ['nut_factor', 'surface', 'preload_fraction'],
      compute: (given) => {
        const { factor, words } = nutFactorOf(given.nut_factor, given.surface);
        const planned = given.preload_fraction * given.proof_load;
        const share = `${Number((given.preload_fraction * 100).toPrecision(4))} % of the proof load`;
        return {
          outputs: { torque: factor * given.diameter * planned, preload: planned, basis: `${words}, ${share}` },
        };
      },
    },
  ],
});
