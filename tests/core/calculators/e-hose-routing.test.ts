import { describe, expect, it } from 'vitest';
import { bendRadius } from '../../../core/calculators/e/bend-radius.ts';
import { hoseCutLength } from '../../../core/calculators/e/hose-cut-length.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(hoseCutLength, [
  {
    case: '600 mm with two ends',
    inputs: 'assembly_length 600 mm; cutoff_1 25 mm; cutoff_2 32 mm',
    expected: 'cut_length 543 mm',
    tolerance: 1e-6,
    source: byHand,
  },
  {
    case: '24 in with 2 % slack',
    inputs: 'assembly_length 24 in; cutoff_1 1.1 in; cutoff_2 0.9 in; slack 2 %',
    expected: 'cut_length 22.48 in',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'zero allowance',
    inputs: 'assembly_length 410 mm; cutoff_1 0 mm; cutoff_2 0 mm',
    expected: 'cut_length 410 mm',
    tolerance: 1e-9,
    source: byHand,
  },
  {
    case: 'allowances longer than the hose',
    inputs: 'assembly_length 60 mm; cutoff_1 40 mm; cutoff_2 30 mm',
    rejected: 'assembly_length',
    source: 'rule of the calculator: cut length must be above zero',
  },
]);

checkCases(bendRadius, [
  {
    case: 'U-bend',
    inputs:
      'bend_radius 60 mm; min_bend_radius 50 mm; hose_od 17 mm; bend_angle 180 deg; straight_1 40 mm; straight_2 40 mm',
    expected: 'min_hose_length 263.78317 mm; ok true',
    tolerance: 1e-4,
    source: byHand,
  },
  {
    case: 'too tight',
    inputs:
      'bend_radius 45 mm; min_bend_radius 65 mm; hose_od 22 mm; bend_angle 90 deg; straight_1 45 mm; straight_2 45 mm',
    expected: 'min_hose_length 209.380521 mm; ok false',
    tolerance: 1e-4,
    source: byHand,
    warns: /tighter/,
  },
  {
    case: 'inch',
    inputs:
      'bend_radius 4 in; min_bend_radius 4 in; hose_od 0.9 in; bend_angle 120 deg; straight_1 2 in; straight_2 1.5 in',
    expected: 'min_hose_length 12.8200582 in; ok true',
    tolerance: 1e-4,
    source: `${byHand}; equal counts as allowed`,
  },
]);

describe('hose cut length', () => {
  const plain = 'assembly_length 600 mm; cutoff_1 25 mm; cutoff_2 32 mm';

  it('warns of a hose shorter than its bend needs, and of slack above 10 %', () => {
    expect(run(hoseCutLength, `${plain}; min_hose_length 543 mm`).warnings).toEqual([]);
    expect(run(hoseCutLength, `${plain}; min_hose_length 544 mm`).warnings).toHaveLength(1);
    expect(run(hoseCutLength, `${plain}; slack 10 %`).warnings).toEqual([]);
    expect(run(hoseCutLength, `${plain}; slack 11 %`).warnings).toHaveLength(1);
  });

  it.each([
    ['assembly_length 600 mm; cutoff_1 -1 mm; cutoff_2 32 mm', 'cutoff_1'],
    ['assembly_length 600 mm; cutoff_1 1 mm; cutoff_2 -1 mm', 'cutoff_2'],
    [`${plain}; slack -1 %`, 'slack'],
    ['assembly_length 57 mm; cutoff_1 25 mm; cutoff_2 32 mm', 'assembly_length'],
  ])('refuses %s', (inputs, field) => {
    expect(refusalOf(hoseCutLength, inputs)).toMatchObject({ code: 'bad-input', field });
  });
});

describe('bend radius', () => {
  const plain = 'bend_radius 60 mm; min_bend_radius 50 mm; hose_od 17 mm; bend_angle 180 deg';

  it('takes a straight that is not given as twice the hose diameter, and says so', () => {
    expect(numberOf(bendRadius, plain, 'min_hose_length')).toBeCloseTo(
      numberOf(bendRadius, `${plain}; straight_1 34 mm; straight_2 34 mm`, 'min_hose_length'),
      9,
    );
    expect(run(bendRadius, plain).notes.join()).toMatch(/twice/);
    expect(run(bendRadius, `${plain}; straight_1 34 mm; straight_2 34 mm`).notes).toEqual([]);
  });

  it('warns of a bend in two planes', () => {
    expect(run(bendRadius, plain).warnings).toEqual([]);
    expect(run(bendRadius, `${plain}; two_planes true`).warnings).toHaveLength(1);
  });

  it('refuses a hose without thickness', () => {
    expect(
      refusalOf(bendRadius, 'bend_radius 60 mm; min_bend_radius 50 mm; hose_od 0 mm; bend_angle 180 deg'),
    ).toMatchObject({ field: 'hose_od' });
  });
});
