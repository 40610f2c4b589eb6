import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deadTime } from '../../../core/calculators/d/dead-time.ts';
import { injectorFlowAtPressure } from '../../../core/calculators/d/injector-flow-at-pressure.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(injectorFlowAtPressure, [
  {
    case: '440 cc/min from 3 to 4 bar',
    inputs: 'flow 440 cc/min; dp 3 bar; new_dp 4 bar',
    expected: 'new_flow 508.068237 cc/min',
    tolerance: 1e-4,
    source: `${byHand} (square-root law from the orifice equation, Bernoulli)`,
  },
  {
    case: 'boost eats the difference: fixed rail 3 bar, 1 bar boost',
    inputs: 'flow 550 cc/min; dp 3 bar; new_dp 2 bar',
    expected: 'new_flow 449.07312 cc/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'test fluid 684 to fuel 785 kg/m3',
    inputs: 'flow 1300 cc/min; dp 3 bar; new_dp 3 bar; density_rated 684 kg/m3; density_actual 785 kg/m3',
    expected: 'new_flow 1213.49104 cc/min',
    tolerance: 1e-4,
    source: byHand,
  },
]);

checkCases(deadTime, [
  {
    case: '8000 rpm, 90 %, 1.0 ms',
    inputs: 'rpm 8000 rpm; duty 90 %; dead_time 1 ms',
    expected: 'cycle_time 15 ms; pulse_width 13.5 ms; effective_pulse 12.5 ms; effective_flow_fraction 83.3333333 %',
    tolerance: 1e-4,
    source: byHand,
    warns: /85 %/,
  },
  {
    case: '6500 rpm, 85 %, 0.8 ms',
    inputs: 'rpm 6500 rpm; duty 85 %; dead_time 0.8 ms',
    expected: 'cycle_time 18.4615385 ms; effective_flow_fraction 80.6666667 %',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'duty demanded at 7200 rpm',
    inputs: 'rpm 7200 rpm; dead_time 0.95 ms; flow_needed 1050 cc/min; injector_flow 1300 cc/min',
    expected: 'pulse_width 14.4115385 ms; duty 86.4692308 %',
    tolerance: 1e-4,
    source: byHand,
    warns: /85 %/,
  },
]);

const saidBy = (...asked: Parameters<typeof run>) => run(...asked).warnings.map(({ message }) => message);

describe('injector flow at another pressure', () => {
  it('comes back the way it went', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 100 }), fc.integer({ min: 10, max: 100 }), (from, to) => {
        const there = numberOf(injectorFlowAtPressure, `flow 440 cc/min; dp ${from} bar; new_dp ${to} bar`, 'new_flow');
        const back = `flow ${there.toFixed(12)} cc/min; dp ${to} bar; new_dp ${from} bar`;
        expect(numberOf(injectorFlowAtPressure, back, 'new_flow')).toBeCloseTo(440, 7);
      }),
    );
  });

  it('leaves the density out, and says so, when only one is given', () => {
    const answer = run(injectorFlowAtPressure, 'flow 440 cc/min; dp 3 bar; new_dp 3 bar; density_rated 684 kg/m3');
    expect(answer.outputs['new_flow']?.value).toBeCloseTo(440, 9);
    expect(answer.warnings).toMatchObject([{ message: expect.stringContaining('One density alone') }]);
  });

  it('warns of a factor above 2 and of a pressure above 5 bar, not at them', () => {
    expect(saidBy(injectorFlowAtPressure, 'flow 440 cc/min; dp 2.5 bar; new_dp 5 bar')).toEqual([]);
    expect(saidBy(injectorFlowAtPressure, 'flow 440 cc/min; dp 2.5 bar; new_dp 5.1 bar')).toHaveLength(2);
    expect(saidBy(injectorFlowAtPressure, 'flow 440 cc/min; dp 4 bar; new_dp 1.9 bar')).toHaveLength(1);
  });

  it('refuses a pressure that is not above zero', () => {
    expect(refusalOf(injectorFlowAtPressure, 'flow 440 cc/min; dp 0 bar; new_dp 3 bar').field).toBe('dp');
    expect(refusalOf(injectorFlowAtPressure, 'flow 440 cc/min; dp 3 bar; new_dp -1 bar').field).toBe('new_dp');
  });
});

describe('dead time and duty', () => {
  it('asks for the duty whose flow it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 9000 }),
        fc.integer({ min: 10, max: 60 }),
        fc.integer({ min: 30, max: 120 }),
        (rpm, percent, hundredths) => {
          const rest = `rpm ${rpm}; dead_time ${hundredths / 100} ms`;
          const duty = numberOf(
            deadTime,
            `${rest}; flow_needed ${percent * 10} cc/min; injector_flow 1000 cc/min`,
            'duty',
          );
          const fraction = numberOf(deadTime, `${rest}; duty ${duty.toFixed(12)} %`, 'effective_flow_fraction');
          expect(fraction).toBeCloseTo(percent, 8);
        },
      ),
    );
  });

  it('says that injectors cannot deliver what asks for more than 100 %', () => {
    const { warnings } = run(deadTime, 'rpm 7200; dead_time 1 ms; flow_needed 1000 cc/min; injector_flow 1000 cc/min');
    expect(warnings).toMatchObject([{ level: 'grave', message: expect.stringContaining('cannot deliver') }]);
  });

  it('warns of an effective pulse below 1.0 ms (common practice, no published source)', () => {
    // By hand: a cycle of 120 ms at 1000 rpm; 1.5 % of it is 1.8 ms, less 1 ms.
    expect(saidBy(deadTime, 'rpm 1000; duty 1.5 %; dead_time 1 ms')).toEqual([expect.stringContaining('1.0 ms')]);
  });

  it.each([
    ['rpm 8000 rpm; duty 5 %; dead_time 1 ms', 'dead_time'],
    ['rpm 0 rpm; duty 50 %; dead_time 1 ms', 'rpm'],
    ['rpm 8000 rpm; duty 0 %; dead_time 1 ms', 'duty'],
    ['rpm 8000 rpm; dead_time 1 ms; flow_needed 100 cc/min', 'injector_flow'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(deadTime, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
