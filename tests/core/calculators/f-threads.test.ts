import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tapDrill } from '../../../core/calculators/f/tap-drill.ts';
import { threadEngagement } from '../../../core/calculators/f/thread-engagement.ts';
import { checkCases, numberOf, refusalOf, run } from './check-cases.ts';

const engagement = "FED-STD-H28/2 and Machinery's Handbook stress-area method on nominal sizes; derived by hand";
const byHand = 'derived by hand from the equation of this calculator';

checkCases(threadEngagement, [
  {
    case: 'M10x1.5, same strength',
    inputs: 'diameter 10 mm; pitch 1.5 mm; bolt_strength 800 MPa; hole_strength 800 MPa',
    expected: 'engagement_equal_strength 5.8765415 mm; strength_ratio_j 0.717960171; engagement_required 5.8765415 mm',
    tolerance: 0.001,
    source: engagement,
  },
  {
    case: 'M10x1.5 class 8.8 in aluminium 250 MPa',
    inputs: 'diameter 10 mm; pitch 1.5 mm; bolt_strength 800 MPa; hole_strength 250 MPa',
    expected: 'strength_ratio_j 2.29747255; engagement_required 13.5011928 mm',
    tolerance: 0.001,
    source: engagement,
  },
  {
    case: 'M8x1.25 class 10.9 in iron 250 MPa',
    inputs: 'diameter 8 mm; pitch 1.25 mm; bolt_strength 1040 MPa; hole_strength 250 MPa',
    expected: 'engagement_required 13.8502579 mm',
    tolerance: 0.001,
    source: engagement,
  },
]);

checkCases(tapDrill, [
  {
    case: '2-56 drilled 0.0700 in',
    inputs: 'diameter 0.086 in; pitch 0.017857143 in; drill 0.07 in',
    expected: 'thread_pct 69 %',
    tolerance: 0.01,
    source: "Machinery's Handbook 31st ed., table of tap drill sizes and percentage of thread: 69 % (3/4 H basis)",
  },
  {
    case: 'M10x1.5 at 75 %',
    inputs: 'diameter 10 mm; pitch 1.5 mm; thread_pct 75 %',
    expected: 'drill 8.53858225 mm',
    tolerance: 1e-4,
    source: `${byHand}; close to the usual 8.5 mm drill`,
  },
  {
    case: 'M10x1.5 at 75 %, 5/8 H basis',
    inputs: 'diameter 10 mm; pitch 1.5 mm; thread_pct 75 %; basis 5/8H',
    expected: 'drill 8.7821515 mm',
    tolerance: 1e-4,
    source: `${byHand} (1.08253 form, ISO 68-1 and ASME B1.1 profile)`,
  },
  {
    case: 'M8x1.25 drilled 6.8 mm',
    inputs: 'diameter 8 mm; pitch 1.25 mm; drill 6.8 mm',
    expected: 'thread_pct 73.9008405 %',
    tolerance: 1e-4,
    source: byHand,
  },
]);

describe('thread engagement', () => {
  it('sends to an insert or a stud above two diameters', () => {
    const soft = (mpa: number) =>
      run(threadEngagement, `diameter 10 mm; pitch 1.5 mm; bolt_strength 800 MPa; hole_strength ${mpa} MPa`).warnings;
    expect(soft(250)).toEqual([]);
    expect(soft(150)).toEqual([expect.objectContaining({ message: expect.stringContaining('insert') })]);
  });

  it('needs no more in a hole that is stronger than the bolt', () => {
    const of = (mpa: number) =>
      numberOf(
        threadEngagement,
        `diameter 8 mm; pitch 1.25 mm; bolt_strength 800 MPa; hole_strength ${mpa} MPa`,
        'engagement_required',
      );
    expect(of(900)).toBe(of(1200));
    expect(of(400)).toBeGreaterThan(of(900));
  });

  it('refuses a pitch of half the diameter', () => {
    expect(
      refusalOf(threadEngagement, 'diameter 3 mm; pitch 1.5 mm; bolt_strength 800 MPa; hole_strength 250 MPa'),
    ).toMatchObject({ code: 'bad-input', field: 'pitch' });
  });
});

describe('tap drill', () => {
  it('goes to the drill and back, on either basis', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 85 }), fc.constantFrom('3/4H', '5/8H'), (share, basis) => {
        const m8 = `diameter 8 mm; pitch 1.25 mm; basis ${basis}`;
        const drill = numberOf(tapDrill, `${m8}; thread_pct ${share} %`, 'drill');
        expect(numberOf(tapDrill, `${m8}; drill ${drill.toFixed(12)} mm`, 'thread_pct')).toBeCloseTo(share, 8);
      }),
    );
  });

  it('shows the basis', () => {
    const words = (text: string) => run(tapDrill, text).outputs['basis_used']?.value;
    expect(words('diameter 8 mm; pitch 1.25 mm; drill 6.8 mm')).toMatch(/3\/4 H/);
    expect(words('diameter 8 mm; pitch 1.25 mm; drill 6.8 mm; basis 5/8H')).toMatch(/5\/8 H/);
  });

  it.each([
    ['drill 7.2 mm', 1],
    ['drill 7 mm', 0],
    ['drill 6.6 mm', 1],
    ['thread_pct 49 %', 1],
    ['thread_pct 85 %', 0],
    ['thread_pct 86 %', 1],
  ])('warns outside 50 to 85 %%: %s', (asked, count) => {
    expect(run(tapDrill, `diameter 8 mm; pitch 1.25 mm; ${asked}`).warnings).toHaveLength(count);
  });

  it.each([
    ['drill 8 mm', 'drill'],
    ['drill 0 mm', 'drill'],
    ['thread_pct 600 %', 'thread_pct'],
    ['thread_pct 0 %', 'thread_pct'],
  ])('refuses %s', (asked, field) => {
    expect(refusalOf(tapDrill, `diameter 8 mm; pitch 1.25 mm; ${asked}`)).toMatchObject({ code: 'bad-input', field });
  });
});
