import { calculator, refuseInput, type Warning, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { exceeds } from '../limits.ts';
import { insideLimits, limitInputs } from './limits-of-size.ts';
import { nearestStep } from './nearest-step.ts';

/** A change of shim above this is unusual [m]. */
const unusualChange = 0.5e-3;

export const valveLashShim = calculator({
  id: 'G5',
  slug: 'valve-lash-shim',
  title: 'Valve lash shim',
  about: 'The shim that brings a valve from its measured lash to the wanted one.',
  inputs: {
    old_shim: { label: 'Fitted shim', hint: 'measured', dimension: 'length', unit: 'mm', must: { above: 0 } },
    measured_lash: { label: 'Measured lash', dimension: 'length', unit: 'mm', must: { atLeast: 0 } },
    target_lash: { label: 'Wanted lash', dimension: 'length', unit: 'mm', must: { atLeast: 0 } },
    shim_step: {
      label: 'Step of the shims to be had',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    ...limitInputs,
  },
  outputs: {
    new_shim_exact: { label: 'New shim, exact', dimension: 'length', unit: 'mm' },
    new_shim: { label: 'New shim, nearest step', dimension: 'length', unit: 'mm' },
    resulting_lash: { label: 'Lash with that shim', dimension: 'length', unit: 'mm' },
    in_limits: { kind: 'yes-no', label: 'That lash is inside the limits' },
  },
  formula:
    'new_shim_exact = old_shim + measured_lash − target_lash; new_shim = the nearest multiple of shim_step, a tie to the ' +
    'thinner; resulting_lash = old_shim + measured_lash − new_shim',
  source: 'Lash and shim together stay the same; derived by hand.',
  notes: ['After rounding, check that the resulting lash is inside the limits.'],
  caution: makersValueGoverns,
  example: {
    old_shim: { value: 2.45, unit: 'mm' },
    measured_lash: { value: 0.32, unit: 'mm' },
    target_lash: { value: 0.2, unit: 'mm' },
    shim_step: { value: 0.05, unit: 'mm' },
  },
  compute: ({ old_shim: old, measured_lash: measured, target_lash: target, shim_step: step, ...limits }) => {
    const exact = old + measured - target;
    const shim = nearestStep(exact, step);
    if (!(exact > 0) || !(shim > 0)) {
      refuseInput(
        'target_lash',
        'No shim is thin enough for this lash.',
        'a lash below the fitted shim and the measured lash together, in steps no coarser than the shim itself',
      );
    }
    const resulting = old + measured - shim;
    const inside = insideLimits(resulting, limits);
    const warnings: Warning[] = [];
    if (measured === 0) {
      warnings.push(
        warning(
          'No lash at all leaves the true gap unknown; the valve may be held open. Fit a thinner shim and measure again.',
        ),
      );
    }
    if (exceeds(Math.abs(shim - old), unusualChange)) {
      warnings.push(warning('The shim changes by more than 0.5 mm: measure shim and lash again.'));
    }
    if (inside === false) warnings.push(warning('With the nearest shim to be had, the lash is outside the limits.'));
    return {
      outputs: { new_shim_exact: exact, new_shim: shim, resulting_lash: resulting, in_limits: inside },
      warnings,
    };
  },
});
