import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dashSize } from '../../../core/calculators/a/dash-size.ts';
import { injectorFlowConversion } from '../../../core/calculators/a/injector-flow.ts';
import { threadPitch } from '../../../core/calculators/a/thread-pitch.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const exact = 'exact definition (NIST SP 811 Appendix B bold factor, or product of exact factors)';
const byHand = 'derived by hand from the equation of this calculator';

checkCases(injectorFlowConversion, [
  {
    case: '120 lb/h at 720 kg/m3',
    inputs: 'mass_flow 120 lb/h; density 720 kg/m3',
    expected: 'volume_flow 1259.97881 cc/min',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: '1000 cc/min at 720 kg/m3 (the common 10.5 factor)',
    inputs: 'volume_flow 1000 cc/min; density 720 kg/m3',
    expected: 'mass_flow 95.2396973 lb/h',
    tolerance: 1e-4,
    source: `${byHand}; 453.59237/(60x0.720)=10.4999 cc/min per lb/h, the factor 10.5 of common practice belongs to density 0.72 only`,
  },
  {
    case: '1300 cc/min at 785 kg/m3',
    inputs: 'volume_flow 1300 cc/min; density 785 kg/m3',
    expected: 'mass_flow 134.989043 lb/h',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'zero density',
    inputs: 'mass_flow 50 lb/h; density 0 kg/m3',
    rejected: 'density',
    source: 'rule of the calculator: density must be above zero',
  },
]);

checkCases(dashSize, [
  { case: 'dash 6', inputs: 'dash 6', expected: 'nominal 0.375 in', tolerance: 1e-9, source: exact },
  { case: 'dash 10 in mm', inputs: 'dash 10', expected: 'nominal 15.875 mm', tolerance: 1e-9, source: exact },
  { case: '1/2 in to dash', inputs: 'nominal 0.5 in', expected: 'dash 8', tolerance: 1e-9, source: exact },
]);

checkCases(threadPitch, [
  { case: '20 TPI', inputs: 'tpi 20 TPI', expected: 'pitch 1.27 mm', tolerance: 1e-6, source: exact },
  { case: '18 TPI', inputs: 'tpi 18 TPI', expected: 'pitch 1.41111111 mm', tolerance: 1e-6, source: exact },
  { case: '1.25 mm', inputs: 'pitch 1.25 mm', expected: 'tpi 20.32 TPI', tolerance: 1e-6, source: exact },
  { case: '1.5 mm', inputs: 'pitch 1.5 mm', expected: 'tpi 16.9333333 TPI', tolerance: 1e-6, source: exact },
]);

describe('injector flow', () => {
  it('always shows the density used', () => {
    expect(run(injectorFlowConversion, 'mass_flow 120 lb/h; density 0.72 g/cc').notes[0]).toBe(
      'Worked with a density of 720 kg/m³.',
    );
  });

  it.each([
    ['mass_flow 50 lb/h; volume_flow 500 cc/min; density 720 kg/m3', 'volume_flow'],
    ['density 720 kg/m3', 'mass_flow'],
    ['mass_flow 50 lb/h', 'density'],
    ['mass_flow -1 lb/h; density 720 kg/m3', 'mass_flow'],
    ['mass_flow 50 lb/h; density -720 kg/m3', 'density'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(injectorFlowConversion, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it.each([
    [600, 0],
    [900, 0],
    [599, 1],
    [901, 1],
  ])('of a density of %d kg/m³ warns %d times', (density, warnings) => {
    expect(run(injectorFlowConversion, `mass_flow 50 lb/h; density ${density} kg/m3`).warnings).toHaveLength(warnings);
  });

  it('is its own inverse', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 600, max: 900 }), (flow, density) => {
        const mass = numberOf(
          injectorFlowConversion,
          `volume_flow ${flow} cc/min; density ${density} kg/m3`,
          'mass_flow',
        );
        const back = numberOf(
          injectorFlowConversion,
          `mass_flow ${mass.toFixed(9)} lb/h; density ${density} kg/m3`,
          'volume_flow',
        );
        expect(back).toBeCloseTo(flow, 5);
      }),
    );
  });
});

describe('dash size', () => {
  it('of 10 mm lies between two, and says so', () => {
    const { outputs, warnings } = run(dashSize, 'nominal 10 mm');
    expect(outputs['dash_below']?.value).toBe(6);
    expect(outputs['dash_above']?.value).toBe(7);
    expect(outputs['dash']?.value).toBeCloseTo(160 / 25.4, 9);
    expect(warnings[0]?.message).toContain('between dash 6 and dash 7');
  });

  it('comes back for every dash, in inches and in millimetres', () => {
    for (let dash = 2; dash <= 32; dash += 1) {
      for (const unit of ['in', 'mm', 'thou']) {
        const nominal = numberOf(dashSize, `dash ${dash}`, 'nominal', unit);
        expect(run(dashSize, `nominal ${nominal} ${unit}`)).toMatchObject({
          outputs: { dash: { value: dash } },
          warnings: [],
        });
      }
    }
  });

  it.each([
    ['dash 6.5', 'dash'],
    ['dash 0', 'dash'],
    ['dash -4', 'dash'],
    ['nominal 0 in', 'nominal'],
    ['dash 6; nominal 0.5 in', 'nominal'],
    ['', 'dash'],
  ])('refuses “%s”', (inputs, field) => {
    expect(refusalOf(dashSize, inputs)).toMatchObject({ code: 'bad-input', field });
  });

  it('warns of a dash outside 2 to 32', () => {
    expect(run(dashSize, 'dash 1').warnings).toHaveLength(1);
    expect(run(dashSize, 'dash 2').warnings).toEqual([]);
    expect(run(dashSize, 'dash 32').warnings).toEqual([]);
    expect(run(dashSize, 'dash 33').warnings).toHaveLength(1);
  });
});

describe('thread pitch', () => {
  it.each([
    ['tpi 20 TPI', /metric pitch of 1.25 mm/], // 1.6 % off
    ['tpi 13 TPI', /metric pitch of 2 mm/], // 2.3 % off: 1/2-13 against M12 × 2
    ['pitch 1.25 mm', /20 threads per inch/],
    ['pitch 2 mm', /13 threads per inch/],
  ])('warns of a near match: %s', (inputs, said) => {
    expect(run(threadPitch, inputs).warnings.map(({ message }) => message)).toEqual([expect.stringMatching(said)]);
  });

  it('says nothing where no standard pitch is near', () => {
    expect(run(threadPitch, 'tpi 18 TPI').warnings).toEqual([]); // 1.411 mm: 5.9 % from 1.5 mm
    expect(run(threadPitch, 'pitch 1.5 mm').warnings).toEqual([]); // 16.93: 5.8 % from 16
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 80 }), (tpi) => {
        const pitch = numberOf(threadPitch, `tpi ${tpi}`, 'pitch');
        expect(numberOf(threadPitch, `pitch ${pitch} mm`, 'tpi')).toBeCloseTo(tpi, 9);
      }),
    );
  });

  it.each([
    ['tpi 0 TPI', 'tpi'],
    ['pitch -1 mm', 'pitch'],
    ['tpi 20 mm', 'tpi'],
    ['tpi 20 TPI; pitch 1 mm', 'pitch'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(threadPitch, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});
