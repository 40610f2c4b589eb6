import { describe, expect, it } from 'vitest';
import { velocityCheck } from '../../../core/calculators/e/velocity-check.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const byHand = 'derived by hand from the equation of this calculator';

checkCases(velocityCheck, [
  {
    case: 'suction, 12 L/min in 16 mm',
    inputs: 'flow 12 L/min; inside_diameter 16 mm; line_type suction',
    expected: 'velocity 0.994718394 m/s; min_inside_diameter 14.5673124 mm; ok true',
    tolerance: 1e-4,
    source: `${byHand}; limits: published hydraulic guidance: suction 2 to 4 ft/s, return 10 to 15 ft/s, pressure 15 to 25 ft/s`,
  },
  {
    case: 'suction, 25 L/min in 16 mm fails',
    inputs: 'flow 25 L/min; inside_diameter 16 mm; line_type suction',
    expected: 'velocity 2.07232999 m/s; min_inside_diameter 21.0261044 mm; ok false',
    tolerance: 1e-4,
    source: byHand,
    warns: /1\.2 m\/s/,
  },
  {
    case: 'pressure, 13 gal/min in 0.75 in',
    inputs: 'flow 13 gal/min; inside_diameter 0.75 in; line_type pressure',
    expected: 'velocity 9.44083544 ft/s; ok true',
    tolerance: 1e-4,
    source: `${byHand}; the published relation V = 0.3208 Q/A gives the same`,
  },
]);

describe('velocity check', () => {
  it.each(['suction', 'return', 'pressure'])('passes the smallest diameter it names, %s line', (line) => {
    const least = numberOf(
      velocityCheck,
      `flow 10 L/min; inside_diameter 5 mm; line_type ${line}`,
      'min_inside_diameter',
    );
    const ok = (mm: number) =>
      run(velocityCheck, `flow 10 L/min; inside_diameter ${mm} mm; line_type ${line}`).outputs['ok']?.value;
    expect(ok(least)).toBe(true);
    expect(ok(least * 0.999)).toBe(false);
  });

  it('refuses a kind of line it has no limit for', () => {
    expect(refusalOf(velocityCheck, 'flow 10 L/min; inside_diameter 5 mm; line_type vent')).toMatchObject({
      field: 'line_type',
    });
  });
});
