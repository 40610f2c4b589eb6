import { calculator, refuseInput, type Values } from '../calculator.ts';
import { diameter, fastenerCaution, pitch, refuseCoarseThread, stressArea } from './fasteners.ts';
import { strengthClasses, strengthOf } from './strength-classes.ts';

const inputs = {
  diameter,
  pitch,
  tpi: {
    label: 'Threads per inch',
    dimension: 'threadDensity',
    unit: 'TPI',
    must: { above: 0 },
    usual: { from: 4, to: 80 },
  },
  proof_stress: { label: 'Proof stress', dimension: 'stress', unit: 'MPa', must: { above: 0 }, optional: true },
  tensile_strength: { label: 'Tensile strength', dimension: 'stress', unit: 'MPa', must: { above: 0 }, optional: true },
  strength_class: {
    kind: 'choice',
    label: 'Strength class',
    hint: 'instead of the two strengths',
    choices: strengthClasses,
    optional: true,
  },
} as const;

/** Share of the proof load that a joint is tightened to; 0.75 seen in use, 0.90 from memory (Shigley). */
const reopened = 0.75;
const permanent = 0.9;

function loads(
  area: number,
  given: Pick<Values<typeof inputs>, 'diameter' | 'proof_stress' | 'tensile_strength' | 'strength_class'>,
) {
  const { proof_stress: proof, tensile_strength: tensile, strength_class: name } = given;
  if (name !== undefined && (proof ?? tensile) !== undefined) {
    refuseInput(
      'strength_class',
      'Strengths and a strength class are both given.',
      'either the class or the strengths',
    );
  }
  const table = name === undefined ? undefined : strengthOf(name, given.diameter, 'strength_class');
  const proofStress = proof ?? table?.proofStress;
  const tensileStrength = tensile ?? table?.tensileStrength;
  const proofLoad = proofStress === undefined ? undefined : area * proofStress;
  return {
    outputs: {
      stress_area: area,
      proof_load: proofLoad,
      ultimate_load: tensileStrength === undefined ? undefined : area * tensileStrength,
      preload_reopened: proofLoad === undefined ? undefined : reopened * proofLoad,
      preload_permanent: proofLoad === undefined ? undefined : permanent * proofLoad,
    },
  };
}

export const stressAreaAndProofLoad = calculator({
  id: 'F1',
  slug: 'proof-load',
  title: 'Stress area and proof load',
  about: 'What load a bolt bears without taking a set, and what preload to plan for.',
  inputs,
  outputs: {
    stress_area: { label: 'Stress area', dimension: 'area', unit: 'mm2' },
    proof_load: { label: 'Proof load', dimension: 'force', unit: 'kN' },
    ultimate_load: { label: 'Ultimate load', dimension: 'force', unit: 'kN' },
    preload_reopened: { label: 'Preload, joint to be reopened (75 %)', dimension: 'force', unit: 'kN' },
    preload_permanent: { label: 'Preload, permanent joint (90 %)', dimension: 'force', unit: 'kN' },
  },
  formula:
    'metric: d2 = d - 0.649519 P, d3 = d - 1.226869 P, stress_area = π/4 · ((d2 + d3)/2)²; inch: stress_area = ' +
    'π/4 · (d - 0.9743/n)²; proof_load = stress_area · proof_stress; ultimate_load = stress_area · tensile_strength',
  source:
    'ISO 898-1 (table seen in reproduction), ASME B1.1 for inch threads, SAE J429 for the grades (seen). Preloads of 75 % ' +
    'and 90 % of proof load: Shigley, Mechanical Engineering Design (0.75 seen in use).',
  notes: ['Published tables round the area to three digits, and the loads from it.'],
  caution: fastenerCaution,
  example: {
    diameter: { value: 10, unit: 'mm' },
    pitch: { value: 1.5, unit: 'mm' },
    proof_stress: { value: 580, unit: 'MPa' },
    tensile_strength: { value: 800, unit: 'MPa' },
  },
  modes: [
    {
      name: 'metric',
      title: 'metric thread',
      needs: ['diameter', 'pitch'],
      compute: (given) => {
        refuseCoarseThread('pitch', given.diameter, given.pitch);
        return loads(stressArea(given.diameter, given.pitch), given);
      },
    },
    {
      name: 'inch',
      title: 'inch thread',
      needs: ['diameter', 'tpi'],
      compute: (given) => {
        refuseCoarseThread('tpi', given.diameter, 1 / given.tpi);
        return loads((Math.PI / 4) * (given.diameter - 0.9743 / given.tpi) ** 2, given);
      },
    },
  ],
});
