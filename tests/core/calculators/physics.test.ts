/**
 * What physics says of whole ranges, where check cases stand at single points: which way a result moves with an input,
 * and that two calculators which answer opposite questions undo each other. No figure here comes from outside: each
 * line states a law, with all other inputs as in the calculator's example.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Calculator, Given } from '../../../core/calculators/calculator.ts';
import { findCalculator } from '../../../core/calculators/index.ts';
import { runCalculator } from '../../../core/calculators/run.ts';

function calculatorOf(id: string): Calculator {
  const found = findCalculator(id);
  if (found === undefined) throw new Error(`There is no calculator ${id}.`);
  return found;
}

type Inputs = Readonly<Record<string, Given>>;

function numberFrom(id: string, inputs: Inputs, output: string, unit: string): number {
  const value = runCalculator(calculatorOf(id), { inputs, units: { [output]: unit } }).outputs[output]?.value;
  if (typeof value !== 'number') throw new Error(`${id} gave no number ${output}.`);
  return value;
}

const declaredUnit = (id: string, output: string): string => {
  const found = calculatorOf(id).outputs[output];
  if (found === undefined || !('unit' in found)) throw new Error(`${id} has no number ${output}.`);
  return found.unit;
};

/** calculator, input, lowest and highest value, unit, output, and which way it goes when the input goes up. */
const laws: readonly (readonly [string, string, number, number, string, string, 'up' | 'down'])[] = [
  ['B1', 'bore', 40, 150, 'mm', 'displacement', 'up'],
  ['B1', 'stroke', 40, 150, 'mm', 'mean_piston_speed', 'up'],
  ['B1', 'rpm', 500, 12_000, 'rpm', 'mean_piston_speed', 'up'],
  ['B2', 'chamber', 20, 100, 'cc', 'compression_ratio', 'down'],
  ['B2', 'gasket_thickness', 0.3, 3, 'mm', 'compression_ratio', 'down'],
  ['B3', 'target_ratio', 6, 12, '-', 'chamber', 'down'],
  ['B4', 'overbore', 0.1, 4, 'mm', 'displacement_change', 'up'],
  ['C1', 'map_abs', 30, 500, 'kPa', 'mass_flow', 'up'],
  ['C1', 'charge_temp', -20, 120, 'degC', 'mass_flow', 'down'],
  ['C2', 'power', 150, 900, 'hp', 'map_abs', 'up'],
  ['C2', 'rpm', 3000, 9000, 'rpm', 'map_abs', 'down'],
  ['C3', 'inlet_loss', 0, 20, 'kPa', 'pressure_ratio', 'up'],
  ['C4', 'efficiency', 0.4, 0.9, '-', 'compressor_outlet_temp', 'down'],
  ['C4', 'pressure_ratio', 1.2, 4, '-', 'compressor_outlet_temp', 'up'],
  ['C5', 'inlet_abs', 70, 110, 'kPa', 'corrected_mass_flow', 'down'],
  ['C6', 'altitude', -400, 10_900, 'm', 'pressure', 'down'],
  ['C7', 'baro', 80, 108, 'kPa', 'cf_j1349', 'down'],
  ['C8', 'boost_gauge', 0, 40, 'psi', 'required_abs', 'up'],
  ['D1', 'ethanol', 0, 100, '%', 'afr_stoich', 'down'],
  ['D1', 'ethanol', 0, 100, '%', 'volume_factor_vs_petrol', 'up'],
  ['D3', 'power', 100, 1200, 'hp', 'injector_flow_at_rated', 'up'],
  ['D3', 'duty', 20, 100, '%', 'injector_flow_at_rated', 'down'],
  ['D3', 'actual_dp', 1, 8, 'bar', 'injector_flow_at_rated', 'down'],
  ['D4', 'injector_flow_at_rated', 200, 2500, 'cc/min', 'power', 'up'],
  ['D5', 'new_dp', 1, 8, 'bar', 'new_flow', 'up'],
  ['D7', 'power', 100, 1200, 'hp', 'pump_flow_required', 'up'],
  ['D7', 'boost_gauge', 0, 3, 'bar', 'pump_pressure_gauge', 'up'],
  ['E2', 'inside_diameter', 5, 60, 'mm', 'dp_friction', 'down'],
  ['E2', 'length', 0.1, 20, 'm', 'dp_friction', 'up'],
  ['E3', 'flow', 0.5, 200, 'L/min', 'velocity', 'up'],
  ['E4', 'inside_diameter', 5, 30, 'mm', 'full_bore_capacity', 'up'],
  ['E6', 'bend_angle', 10, 180, 'deg', 'min_hose_length', 'up'],
  ['F2', 'preload', 1, 60, 'kN', 'torque', 'up'],
  ['F3', 'mu_head', 0.05, 0.3, '-', 'torque', 'up'],
  ['F5', 'adapter_length', 0, 200, 'mm', 'wrench_setting', 'down'],
  ['F6', 'angle', 10, 120, 'deg', 'preload_rise_elastic', 'up'],
  ['F7', 'hole_strength', 100, 400, 'MPa', 'engagement_required', 'down'],
  ['H2', 'teeth_error', 1, 4, '-', 'crank_error', 'up'],
  ['I1', 'aspect', 25, 80, '%', 'free_diameter', 'up'],
  ['I2', 'gear_ratio', 0.6, 4, '-', 'road_speed', 'down'],
  ['J1', 'inside_diameter', 30, 120, 'mm', 'velocity', 'down'],
  ['J1', 'temperature', 0, 900, 'degC', 'velocity', 'up'],
  ['J2', 'afr', 6, 18, '-', 'exhaust_mass_flow', 'down'],
  ['J3', 'coolant_rise', 3, 20, 'dK', 'coolant_flow', 'down'],
  ['K1', 'awg', 0, 39, '-', 'area', 'down'],
  ['K2', 'current', 1, 40, 'A', 'voltage_drop', 'up'],
  ['K3', 'continuous_current', 1, 70, 'A', 'min_fuse', 'up'],
];

describe('a result moves the way that physics says', () => {
  it.each(laws)('%s: with more %s (%d to %d %s), %s goes %s', (...law) => {
    const [id, name, low, high, unit, output, way] = law;
    const { example, inputs } = calculatorOf(id);
    const whole = inputs[name]?.kind === 'integer';
    const value = whole ? fc.integer({ min: low, max: high }) : fc.double({ min: low, max: high, noNaN: true });
    const at = (one: number) =>
      numberFrom(id, { ...example, [name]: { value: one, unit } }, output, declaredUnit(id, output));
    fc.assert(
      fc.property(value, value, (one, other) => {
        const [less, more] = one < other ? [one, other] : [other, one];
        // Nearer than this, rounding decides.
        fc.pre(more - less > (high - low) * 1e-6);
        const rise = at(more) - at(less);
        expect(way === 'up' ? rise : -rise).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it('D1: a blend is no lighter than petrol and no heavier than ethanol', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (share) => {
        const density = numberFrom('D1', { ethanol: { value: share, unit: '%' } }, 'density', 'kg/m3');
        expect(density).toBeGreaterThanOrEqual(745 - 1e-9);
        expect(density).toBeLessThanOrEqual(792 + 1e-9);
      }),
    );
  });
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = (got: number, wanted: number, slack = 1e-9) =>
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(slack * Math.max(Math.abs(wanted), 1e-12));

/** Asks for `output`, gives it back as the input of the same name elsewhere, and hands out what comes of it. */
function back(
  from: string,
  given: Inputs,
  output: string,
  unit: string,
  to: string,
  others: Inputs,
  wanted: string,
  wantedUnit: string,
  as = output,
): number {
  const value = numberFrom(from, given, output, unit);
  return numberFrom(to, { ...others, [as]: { value, unit } }, wanted, wantedUnit);
}

/** The example without the inputs named. */
function exampleWithout(id: string, ...names: readonly string[]): Record<string, Given> {
  return Object.fromEntries(Object.entries(calculatorOf(id).example).filter(([name]) => !names.includes(name)));
}

describe('opposite questions undo each other', () => {
  it('A2: gauge from absolute from gauge', () => {
    fc.assert(
      fc.property(between(-0.9, 5), between(60, 108), (gauge, baro) => {
        const air = { baro: { value: baro, unit: 'kPa' } };
        fc.pre(gauge * 100 + baro > 1);
        near(
          back('A2', { ...air, gauge: { value: gauge, unit: 'bar' } }, 'absolute', 'psi', 'A2', air, 'gauge', 'bar') +
            10,
          gauge + 10,
        );
      }),
    );
  });

  it('A5: volume flow and mass flow', () => {
    fc.assert(
      fc.property(between(1, 400), between(600, 900), (flow, density) => {
        const fuel = { density: { value: density, unit: 'kg/m3' } };
        const given = { ...fuel, mass_flow: { value: flow, unit: 'lb/h' } };
        near(back('A5', given, 'volume_flow', 'cc/min', 'A5', fuel, 'mass_flow', 'lb/h'), flow);
      }),
    );
  });

  it('A10: pitch and threads per inch', () => {
    fc.assert(
      fc.property(between(4, 80), (tpi) => {
        near(back('A10', { tpi: { value: tpi, unit: 'TPI' } }, 'pitch', 'mm', 'A10', {}, 'tpi', 'TPI'), tpi);
      }),
    );
  });

  it('B2 and B3: chamber and compression ratio', () => {
    const engine = exampleWithout('B2', 'chamber');
    fc.assert(
      fc.property(between(25, 90), (chamber) => {
        const given = { ...engine, chamber: { value: chamber, unit: 'cc' } };
        near(back('B2', given, 'compression_ratio', '-', 'B3', engine, 'chamber', 'cc', 'target_ratio'), chamber, 1e-9);
      }),
    );
  });

  it('C2 and C1: manifold pressure for a power, and the air at that pressure', () => {
    const engine = exampleWithout('C2', 'power', 'bsfc', 'afr', 'baro');
    fc.assert(
      fc.property(between(120, 900), (power) => {
        const given = { ...exampleWithout('C2'), power: { value: power, unit: 'hp' } };
        const air = numberFrom('C2', given, 'air_mass_flow', 'kg/s');
        near(back('C2', given, 'map_abs', 'kPa', 'C1', engine, 'mass_flow', 'kg/s'), air);
      }),
    );
  });

  it('D3 and D4: injectors for a power, and the power they are good for', () => {
    const rest = exampleWithout('D3', 'power');
    fc.assert(
      fc.property(between(50, 1500), (power) => {
        const given = { ...rest, power: { value: power, unit: 'hp' } };
        near(back('D3', given, 'injector_flow_at_rated', 'cc/min', 'D4', rest, 'power', 'hp'), power);
      }),
    );
  });

  it('D5: to another pressure and back', () => {
    fc.assert(
      fc.property(between(50, 3000), between(1, 8), between(1, 8), (flow, dp, other) => {
        const bar = (value: number) => ({ value, unit: 'bar' });
        const given = { flow: { value: flow, unit: 'cc/min' }, dp: bar(dp), new_dp: bar(other) };
        const turned = { dp: bar(other), new_dp: bar(dp) };
        near(back('D5', given, 'new_flow', 'cc/min', 'D5', turned, 'new_flow', 'cc/min', 'flow'), flow);
      }),
    );
  });

  it.each([
    ['F2', 'preload', 'torque', { diameter: { value: 10, unit: 'mm' }, nut_factor: { value: 0.2 } }],
    [
      'F3',
      'preload',
      'torque',
      {
        pitch: { value: 1.5, unit: 'mm' },
        pitch_diameter: { value: 9.026, unit: 'mm' },
        mu_thread: { value: 0.12 },
        mu_head: { value: 0.12 },
        head_od: { value: 16, unit: 'mm' },
        hole: { value: 11, unit: 'mm' },
      },
    ],
  ] as const)('%s: torque and preload', (id, _from, _to, rest: Inputs) => {
    fc.assert(
      fc.property(between(0.5, 80), (preload) => {
        const given = { ...rest, preload: { value: preload, unit: 'kN' } };
        near(back(id, given, 'torque', 'lbf*ft', id, rest, 'preload', 'kN'), preload);
      }),
    );
  });

  it('F8: tap drill and share of full thread', () => {
    const rest = { diameter: { value: 10, unit: 'mm' }, pitch: { value: 1.5, unit: 'mm' } };
    fc.assert(
      fc.property(between(50, 80), (share) => {
        const given = { ...rest, thread_pct: { value: share, unit: '%' } };
        near(back('F8', given, 'drill', 'mm', 'F8', rest, 'thread_pct', '%'), share, 1e-7);
      }),
    );
  });

  it('D6: the pulse that a duty gives asks for that duty again', () => {
    fc.assert(
      fc.property(between(2000, 9000), between(30, 100), (rpm, duty) => {
        const rest = { rpm: { value: rpm, unit: 'rpm' }, dead_time: { value: 1, unit: 'ms' } };
        const given = { ...rest, duty: { value: duty, unit: '%' } };
        const fraction = numberFrom('D6', given, 'effective_flow_fraction', '%');
        fc.pre(fraction > 1);
        const asked = {
          ...rest,
          flow_needed: { value: fraction * 10, unit: 'cc/min' },
          injector_flow: { value: 1000, unit: 'cc/min' },
        };
        near(numberFrom('D6', asked, 'duty', '%'), duty, 1e-8);
      }),
    );
  });

  it('G5: the lash that an exact shim leaves is the lash aimed at', () => {
    fc.assert(
      fc.property(between(1, 4), between(0.05, 0.6), between(0.1, 0.4), (old, measured, target) => {
        const mm = (value: number) => ({ value, unit: 'mm' });
        const given = { old_shim: mm(old), measured_lash: mm(measured), target_lash: mm(target), shim_step: mm(0.001) };
        const left = numberFrom('G5', given, 'resulting_lash', 'mm');
        expect(Math.abs(left - target)).toBeLessThanOrEqual(0.000_501);
      }),
    );
  });
});
