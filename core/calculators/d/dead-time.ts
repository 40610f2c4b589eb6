import { calculator, graveWarning, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { duty, dutyLimit, dutyWarning, fuelCaution, injectorFlow } from './fuel-inputs.ts';

/** Effective pulse [s] below which injectors are not linear; common practice, no published source. */
const linearFrom = 1e-3;

/** Two revolutions of a four-stroke [s], 120/rpm, from rad/s. */
const cycleOf = (omega: number): number => (4 * Math.PI) / omega;

/** What a pulse tells, whichever way it was found. Times in s. */
function pulseOf(cycle: number, share: number, deadTime: number) {
  const pulse = share * cycle;
  const effective = pulse - deadTime;
  const warnings: Warning[] = [];
  if (exceeds(share, 1)) {
    warnings.push(graveWarning('Duty is above 100 %: these injectors cannot deliver this flow.'));
  } else if (exceeds(share, dutyLimit)) {
    warnings.push(warning(dutyWarning));
  }
  if (fallsShort(effective, linearFrom)) {
    warnings.push(warning('The effective pulse is below 1.0 ms, where injectors are not linear (common practice).'));
  }
  return {
    outputs: {
      cycle_time: cycle,
      pulse_width: pulse,
      effective_pulse: effective,
      effective_flow_fraction: effective / cycle,
    },
    warnings,
  };
}

export const deadTime = calculator({
  id: 'D6',
  slug: 'dead-time-and-duty',
  title: 'Dead time and duty',
  about: 'How much of an injector’s time is left once its dead time is off, or what duty a flow asks for.',
  inputs: {
    rpm: { label: 'Engine speed', dimension: 'rotation', unit: 'rpm', must: { above: 0 }, usual: { to: 20_000 } },
    duty,
    dead_time: {
      label: 'Dead time',
      hint: 'from the data sheet, at running voltage and pressure',
      dimension: 'time',
      unit: 'ms',
      must: { atLeast: 0 },
      usual: { from: 0.3, to: 2.5 },
    },
    flow_needed: { ...injectorFlow, label: 'Flow needed from each injector', usual: { to: 5000 } },
    injector_flow: { ...injectorFlow, label: 'Injector flow, held open' },
  },
  outputs: {
    duty: { label: 'Duty asked for', dimension: 'fraction', unit: '%' },
    cycle_time: { label: 'Time of a cycle', dimension: 'time', unit: 'ms' },
    pulse_width: { label: 'Pulse', dimension: 'time', unit: 'ms' },
    effective_pulse: { label: 'Effective pulse', dimension: 'time', unit: 'ms' },
    effective_flow_fraction: { label: 'Share of the full flow', dimension: 'fraction', unit: '%' },
  },
  formula:
    'cycle_time = 120 s/rpm; pulse_width = duty · cycle_time; effective_pulse = pulse_width − dead_time; ' +
    'effective_flow_fraction = effective_pulse/cycle_time; duty = flow_needed/injector_flow + dead_time/cycle_time',
  source:
    'Definition, sequential injection on a four-stroke; derived by hand. Limits: common practice, no published source.',
  notes: ['Dead time changes with voltage and pressure: take it from the data sheet at running voltage.'],
  caution: fuelCaution,
  example: {
    rpm: { value: 7200, unit: 'rpm' },
    dead_time: { value: 0.95, unit: 'ms' },
    flow_needed: { value: 1050, unit: 'cc/min' },
    injector_flow: { value: 1300, unit: 'cc/min' },
  },
  modes: [
    {
      name: 'flow',
      title: 'flow of a duty',
      needs: ['rpm', 'duty', 'dead_time'],
      compute: ({ rpm: omega, duty: share, dead_time }) => {
        const cycle = cycleOf(omega);
        if (!fallsShort(dead_time, share * cycle)) {
          refuseInput('dead_time', 'The dead time leaves nothing of the pulse.', 'a dead time below duty · cycle time');
        }
        return pulseOf(cycle, share, dead_time);
      },
    },
    {
      name: 'duty',
      title: 'duty of a flow',
      needs: ['rpm', 'dead_time', 'flow_needed', 'injector_flow'],
      compute: ({ rpm: omega, dead_time, flow_needed, injector_flow }) => {
        const cycle = cycleOf(omega);
        const share = flow_needed / injector_flow + dead_time / cycle;
        const { outputs, warnings } = pulseOf(cycle, share, dead_time);
        return { outputs: { duty: share, ...outputs }, warnings };
      },
    },
  ],
});
