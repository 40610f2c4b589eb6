import { calculator, warning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { fastenerCaution, pitch } from './fasteners.ts';

export const torqueAngle = calculator({
  id: 'F6',
  slug: 'torque-angle',
  title: 'Torque plus angle',
  about: "What preload the angle of the maker's own tightening procedure adds: an estimate, never a source of angles.",
  inputs: {
    angle: {
      label: 'Angle',
      hint: "from the maker's procedure",
      dimension: 'angle',
      unit: 'deg',
      must: { above: 0 },
      usual: { to: 360 },
    },
    pitch,
    stress_area: { label: 'Stress area', dimension: 'area', unit: 'mm2', must: { above: 0 } },
    grip_length: { label: 'Grip length', dimension: 'length', unit: 'mm', must: { above: 0 } },
    modulus: {
      label: 'Modulus of elasticity of the bolt',
      dimension: 'stress',
      unit: 'MPa',
      must: { above: 0 },
      default: 205_000,
      defaultSource: 'steel, handbook figure from memory',
    },
    joint_compliance_ratio: {
      label: 'Compliance of the joint over that of the bolt',
      dimension: 'number',
      unit: '-',
      must: { atLeast: 0 },
      usual: { from: 0.2, to: 0.5 },
    },
    snug_preload: {
      label: 'Preload at the snug torque',
      dimension: 'force',
      unit: 'kN',
      must: { atLeast: 0 },
      optional: true,
    },
    max_preload: {
      label: 'Largest preload by yield',
      hint: 'from the calculator of that name',
      dimension: 'force',
      unit: 'kN',
      must: { above: 0 },
      optional: true,
    },
  },
  outputs: {
    preload_rise_elastic: { label: 'Rise of the preload, elastic', dimension: 'force', unit: 'kN' },
    preload_estimate: {
      label: 'Preload after the angle',
      hint: 'no more than the largest by yield',
      dimension: 'force',
      unit: 'kN',
    },
    passes_yield: { kind: 'yes-no', label: 'Passes yield' },
  },
  formula:
    'preload_rise_elastic = (angle/360°) · P/(bolt_compliance · (1 + joint_compliance_ratio)), bolt_compliance = ' +
    'grip_length/(modulus · stress_area); preload_estimate = snug_preload + the rise, capped at max_preload',
  source: 'Derived by hand: elastic bolt and joint in series. Estimate only.',
  notes: [
    'Elastic only. Torque-to-yield bolts are meant to pass yield, and the rise is less than shown from there on.',
    "Never make up an angle: this shows only what the maker's procedure implies.",
  ],
  caution: fastenerCaution,
  example: {
    angle: { value: 90, unit: 'deg' },
    pitch: { value: 1.25, unit: 'mm' },
    stress_area: { value: 61.2, unit: 'mm2' },
    grip_length: { value: 60, unit: 'mm' },
    modulus: { value: 205_000, unit: 'MPa' },
    joint_compliance_ratio: { value: 0.25 },
  },
  compute: (given) => {
    const { snug_preload: snug, max_preload: largest } = given;
    const compliance = given.grip_length / (given.modulus * given.stress_area);
    const advance = (given.angle / (2 * Math.PI)) * given.pitch;
    const rise = advance / (compliance * (1 + given.joint_compliance_ratio));
    // Without the snug preload the rise alone can still be known to pass yield, but not to stay below it.
    const reached = rise + (snug ?? 0);
    const past = largest === undefined ? undefined : exceeds(reached, largest);
    const known = snug !== undefined || past === true;
    return {
      outputs: {
        preload_rise_elastic: rise,
        preload_estimate: known ? Math.min(reached, largest ?? reached) : undefined,
        passes_yield: known ? past : undefined,
      },
      warnings:
        past === true
          ? [warning('Passes yield: the preload ends near the largest by yield, not at the elastic figure.')]
          : [],
    };
  },
});
