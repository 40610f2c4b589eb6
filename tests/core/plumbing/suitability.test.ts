import { describe, expect, it } from 'vitest';
import { fieldsOf } from '../../../core/plumbing/fields.ts';
import { compatibility, readFluid, readMaterial } from '../../../core/plumbing/fluid.ts';
import { findHoseType, splitHoseText } from '../../../core/plumbing/hose.ts';
import { readLine } from '../../../core/plumbing/read-line.ts';
import { fluidRows, tubeMaterials } from '../../../core/plumbing/tables/fluid-compatibility.ts';
import { hoseTypes } from '../../../core/plumbing/tables/hose-types.ts';
import { takeOff } from '../../../core/plumbing/take-off.ts';

const straight = { route: 'straight', length: 600, c1: 30, c2: 30 };

/** The check of that name for a line with these fields. */
function check(id: string, more: Readonly<Record<string, unknown>>) {
  const found = takeOff(readLine(fieldsOf({ ...straight, ...more }))).checks.find((one) => one.id === id);
  if (found === undefined) throw new Error(`No check ${id}.`);
  return found;
}

describe('fluid and tube material', () => {
  it.each([
    // Letters: from memory, elastomer handbook practice, conservative.
    [{ fluid: 'fuel E10', hose_type: '100R14 -6' }, 'pass'],
    [{ fluid: 'fuel E10', tube_material: 'NBR' }, 'caution'],
    // US DOE handbook on E85 (E85-rated materials only); EASA 2008 biofuel safety study, as quoted publicly.
    [{ fluid: 'E85', tube_material: 'nitrile' }, 'fail'],
    [{ fluid: 'gasoline', ethanol_percent: 30, tube_material: 'NBR' }, 'fail'],
    [{ fluid: 'gasoline', tube_material: 'NBR' }, 'unknown'],
    [{ fluid: 'E85', hose_type: 'SAE 30R9' }, 'unknown'],
    [{ fluid: 'E85', tube_material: 'PTFE' }, 'pass'],
    [{ fluid: 'E100', tube_material: 'PTFE' }, 'unknown'],
    [{ fluid: 'M85', tube_material: 'FKM' }, 'fail'],
    [{ fluid: 'engine oil', tube_material: 'EPDM' }, 'fail'],
    [{ fluid: 'coolant', hose_type: '20R4', hose_class: 'D-3' }, 'pass'],
    [{ fluid: 'coolant', tube_material: 'FKM' }, 'fail'],
    [{ fluid: 'brake fluid DOT 4', tube_material: 'NBR' }, 'fail'],
    [{ fluid: 'DOT 5 silicone brake fluid', tube_material: 'EPDM' }, 'unknown'],
    [{ fluid: 'coolant', tube_material: 'ECO' }, 'unknown'],
    [{ fluid: 'hydraulic marmalade', tube_material: 'PTFE' }, 'unknown'],
    [{ tube_material: 'PTFE' }, 'unknown'],
    [{ fluid: 'engine oil', tube_material: 'leather' }, 'unknown'],
  ])('%o: %s', (more, verdict) => {
    expect(check('fluid', more).verdict).toBe(verdict);
  });

  it('says why nitrile and ethanol don’t go together, and what a mark doesn’t promise', () => {
    expect(check('fluid', { fluid: 'E85', tube_material: 'NBR' }).text).toContain(
      'Plain nitrile (NBR) is not sufficient for ethanol-rich fuel: it swells, softens and later cracks.',
    );
    expect(check('fluid', { fluid: 'E85', hose_type: '30R7' }).text).toContain('does not by itself promise');
    expect(check('fluid', { fluid: 'E10', tube_material: 'PTFE' }).text).toContain("the hose maker's data decides");
  });

  it('never makes more ethanol safer: for every material, E11-E85 is no better than E0-E10', () => {
    const order = 'AUBC';
    for (const material of tubeMaterials) {
      const { letter: low } = compatibility('gasoline E0-E10', material);
      const { letter: high } = compatibility('gasoline-ethanol E11-E85', material);
      expect(order.indexOf(high), material).toBeGreaterThanOrEqual(order.indexOf(low));
    }
  });

  it('knows every fluid and material by its own name', () => {
    for (const { fluid, letters } of fluidRows) {
      expect(readFluid(fluid).fluid).toBe(fluid);
      expect(letters).toHaveLength(tubeMaterials.length);
    }
    for (const material of tubeMaterials) expect(readMaterial(material)).toBe(material);
  });

  it.each([
    ['petrol E5', 'gasoline E0-E10'],
    ['E85', 'gasoline-ethanol E11-E85'],
    ['ethanol blend', 'gasoline-ethanol E11-E85'],
    ['gasoline with 10 % ethanol', 'gasoline E0-E10'],
    ['oil', 'engine oil'],
    ['ATF', 'mineral or PAO transmission oil'],
    ['water-methanol injection', 'water injection / methanol-water 50 %'],
    ['breather', 'crankcase vapour'],
  ])('reads %s as %s', (typed, fluid) => {
    expect(readFluid(typed).fluid).toBe(fluid);
  });

  it('takes the stricter row of boost air where the temperature lies between the two', () => {
    expect(readFluid('boost air', { hottestC: 120 }).fluid).toBe('boost air to 120 C with oil mist');
    expect(readFluid('boost air', { hottestC: 130 }).fluid).toBe('boost air above 150 C with oil mist');
    expect(readFluid('boost air').fluid).toBeUndefined();
  });
});

describe('pressure, vacuum and temperature', () => {
  const rated = { end1: { max_bar: 100 }, end2: { max_bar: 80 }, hose_type: '100R5 -8' };
  it.each([
    // SAE J517: the rating of an assembly is the lower of hose and fitting. 100R5 -8: 140 bar (typical).
    ['pressure', { ...rated, pressure_bar: 80 }, 'pass'],
    ['pressure', { ...rated, pressure_bar: 90 }, 'fail'],
    ['pressure', { ...rated, pressure_bar: 50, adapters: [{ text: 'reducer', max_bar: 40 }] }, 'fail'],
    ['pressure', { ...rated, pressure_bar: 50, adapters: [{ text: 'reducer' }] }, 'unknown'],
    ['pressure', { hose_type: '100R5 -8', pressure_bar: 200 }, 'fail'],
    ['pressure', { hose_type: '100R5 -8', pressure_bar: 5 }, 'unknown'],
    ['pressure', rated, 'unknown'],
    // Above 80 % of the temperature limit without the maker's factor: common practice, no published source.
    ['pressure', { ...rated, pressure_bar: 50, temp_max_C: 81 }, 'caution'],
    ['pressure', { ...rated, pressure_bar: 50, temp_max_C: 80 }, 'pass'],
    ['pressure', { ...rated, pressure_bar: 50, temp_max_C: 95, hot_factor: 0.5 }, 'pass'],
    ['pressure', { ...rated, pressure_bar: 75, temp_max_C: 95, hot_factor: 0.5 }, 'fail'],
    ['vacuum', { service: 'suction' }, 'unknown'],
    ['vacuum', { service: 'suction', hose_vacuum_bar: 0.8, vacuum_bar: 0.3 }, 'pass'],
    ['vacuum', { vacuum_bar: 0.9, hose_vacuum_bar: 0.8 }, 'fail'],
    ['vacuum', { service: 'brake-servo', hose_vacuum_bar: 0 }, 'fail'],
    ['vacuum', { service: 'return' }, 'pass'],
    ['temperature', { ...rated, temp_max_C: 100 }, 'pass'],
    ['temperature', { ...rated, temp_max_C: 101 }, 'fail'],
    ['temperature', { ...rated, temp_max_C: 90, ambient_max_C: 160 }, 'fail'],
    ['temperature', { ...rated, temp_max_C: 90, near_exhaust: true }, 'unknown'],
    ['temperature', { ...rated, temp_max_C: 90, temp_min_C: -45 }, 'fail'],
    ['temperature', rated, 'unknown'],
  ])('%s of %o: %s', (id, more, verdict) => {
    expect(check(id, more).verdict).toBe(verdict);
  });
});

describe('what single hose types are made for', () => {
  it.each([
    // SAE J30: 0.34 MPa, from memory.
    ['fuel-pressure', { fluid: 'E10', hose_type: '30R7', pressure_bar: 4 }, 'fail'],
    ['fuel-pressure', { fluid: 'E10', hose_type: '30R7', pressure_bar: 0.4 }, 'pass'],
    ['fuel-pressure', { fluid: 'E10', hose_type: '30R7' }, 'unknown'],
    ['fuel-pressure', { fluid: 'E10', hose_type: '30R9', pressure_bar: 4 }, 'pass'],
    // SAE J30: 30R10 is the submersible type (scope seen).
    ['in-tank', { fluid: 'E10', hose_type: '30R10', in_tank: true }, 'pass'],
    ['in-tank', { fluid: 'E10', hose_type: '30R9', in_tank: true }, 'fail'],
    // Oil mist on plain silicone: common practice, no published source.
    ['oil-mist', { fluid: 'boost air', temp_max_C: 110, tube_material: 'silicone' }, 'caution'],
    ['oil-mist', { fluid: 'boost air', temp_max_C: 110, tube_material: 'fluorosilicone' }, 'pass'],
    // SAE J20-2022 (public summary): class A to 175, B to 100, D-3 to 150 °C.
    ['coolant-class', { fluid: 'coolant', hose_type: '20R4', hose_class: 'B', temp_max_C: 110 }, 'fail'],
    ['coolant-class', { fluid: 'coolant', hose_type: '20R4', hose_class: 'class A', temp_max_C: 110 }, 'pass'],
    ['coolant-class', { fluid: 'coolant', hose_type: '20R3', temp_max_C: 110 }, 'unknown'],
    // SAE J1532 (public summary): type B for add-on coolers only; classes 125, 150, 165 °C.
    ['transmission', { fluid: 'transmission oil', hose_type: 'J1532 type B', hose_class: '1' }, 'unknown'],
    ['transmission', { fluid: 'ATF', hose_type: 'J1532 type B', hose_class: '1', add_on_cooler: false }, 'fail'],
    ['transmission', { fluid: 'ATF', hose_type: 'J1532 type B', hose_class: '1', add_on_cooler: true }, 'pass'],
    ['temperature', { hose_type: 'SAE J1532 type A', hose_class: '1', temp_max_C: 130 }, 'fail'],
    ['pressure', { hose_type: 'J1532 type B', pressure_bar: 12 }, 'fail'],
    // SAE J1019, cancelled in September 2007 (scope seen in a public copy).
    ['cancelled-mark', { hose_type: 'J1019' }, 'caution'],
  ])('%s of %o: %s', (id, more, verdict) => {
    expect(check(id, more).verdict).toBe(verdict);
  });
});

describe('bore and flow', () => {
  // v = 21.22 Q/D², derived by hand: 30 l/min in 16 mm is 2.487 m/s. Guides: see the velocity calculator.
  it('uses the velocity calculator', () => {
    const found = check('velocity', { service: 'return', flow_l_min: 30, bore_mm: 16 });
    expect(found).toMatchObject({ verdict: 'pass', text: expect.stringContaining('2.49 m/s in 16 mm') as string });
    expect(check('velocity', { service: 'suction', flow_l_min: 30, bore_mm: 16 }).verdict).toBe('caution');
  });

  it('is open, and holds nothing up, without a flow', () => {
    expect(check('velocity', { service: 'return', bore_mm: 16 })).toMatchObject({ verdict: 'unknown', optional: true });
  });
});

describe('gravity drains', () => {
  const drain = {
    housing_hole_mm: 12,
    outlet_angle_deg: 10,
    min_slope_deg: 20,
    entry_above_oil_mm: 30,
  };
  const line = { fluid: 'engine oil', hose_type: '100R6 -10' };
  // Rules of thumb published by turbocharger makers, no standard.
  it.each([
    ['drain-bore', {}, 'pass'],
    ['drain-bore', { housing_hole_mm: 19 }, 'fail'],
    ['drain-bore', { bores_mm: [16, 15] }, 'fail'],
    ['drain-size', {}, 'pass'],
    ['drain-size', { large_frame: true }, 'caution'],
    ['drain-outlet', { outlet_angle_deg: 16 }, 'fail'],
    ['drain-outlet', { outlet_angle_deg: 15 }, 'pass'],
    ['drain-slope', { min_slope_deg: 0 }, 'fail'],
    ['drain-slope', { min_slope_deg: 10 }, 'caution'],
    ['drain-slope', { min_slope_deg: 15 }, 'pass'],
    ['drain-slope', { min_slope_deg: null }, 'unknown'],
    ['drain-entry', { entry_above_oil_mm: 0 }, 'fail'],
    ['drain-entry', {}, 'pass'],
    ['drain-help', {}, 'pass'],
    ['drain-help', { min_slope_deg: -2 }, 'caution'],
  ])('%s with %o: %s', (id, more, verdict) => {
    expect(check(id, { ...line, drain: { ...drain, ...more } }).verdict).toBe(verdict);
  });

  it('prefers gentle ends', () => {
    expect(check('drain-ends', { ...line, drain, end1: { angle: 90 } }).verdict).toBe('caution');
    expect(check('drain-ends', { ...line, drain, end1: { angle: 45 } }).verdict).toBe('pass');
  });
});

describe('hose types', () => {
  it('are found by every name, in any case', () => {
    for (const { id, also } of hoseTypes) {
      for (const name of [id, ...also]) expect(findHoseType(name.toLowerCase())?.id).toBe(id);
    }
  });

  it.each([
    ['100R5 -8', '100R5', 8],
    ['100R14 dash 06', '100R14', 6],
    ['SAE 30R9', 'SAE 30R9', undefined],
    ['SAE J1532 type A', 'SAE J1532 type A', undefined],
    ['100R1AT / 1SN -6', '100R1AT / 1SN', 6],
  ])('%s splits', (text, type, dash) => {
    expect(splitHoseText(text)).toEqual({ type, ...(dash === undefined ? {} : { dash }) });
  });

  it('grow with their dash: larger bore, larger radius, no higher pressure', () => {
    for (const { id, sizes } of hoseTypes) {
      for (const [at, size] of sizes.entries()) {
        const before = sizes[at - 1];
        if (before === undefined) continue;
        expect(size.dash, id).toBeGreaterThan(before.dash);
        expect(size.maxBar, id).toBeLessThanOrEqual(before.maxBar);
        expect(size.minBendRadiusMm, id).toBeGreaterThanOrEqual(before.minBendRadiusMm);
        if (size.boreMm !== undefined) expect(size.boreMm, id).toBeGreaterThan(before.boreMm ?? 0);
        if (size.outsideMm !== undefined) expect(size.outsideMm, id).toBeGreaterThan(before.outsideMm ?? 0);
      }
    }
  });
});
