import { describe, expect, it } from 'vitest';
import { checkBend } from '../../../core/plumbing/bend.ts';
import { fieldsOf } from '../../../core/plumbing/fields.ts';
import { describeHose } from '../../../core/plumbing/hose.ts';
import { lengthsOf } from '../../../core/plumbing/lengths.ts';
import { readLine } from '../../../core/plumbing/read-line.ts';
import { toTenth } from '../../../core/plumbing/round.ts';
import { takeOffCases } from './take-off-cases.ts';

describe('take-off cases', () => {
  it.each(takeOffCases)('$id: $text', ({ input, expected }) => {
    const line = readLine(fieldsOf(input));
    const hose = describeHose(line.hose);
    const lengths = lengthsOf(line, hose);
    const bend = checkBend(line, hose, lengths);
    expect(toTenth(lengths.freeHoseMm)).toBe(expected.free_hose_mm);
    expect(toTenth(lengths.cutExactMm)).toBe(expected.cut_exact_mm);
    expect(lengths.cutMm).toBe(expected.cut_mm);
    expect(lengths.toleranceText).toBe(expected.tolerance_mm);
    expect(bend?.insideRadiusMm === undefined ? undefined : toTenth(bend.insideRadiusMm)).toBe(
      expected.inside_radius_mm,
    );
    expect(bend?.verdict).toBe(expected.bend);
    expect(bend?.leads ?? []).toEqual(
      expected.leads === undefined
        ? expected.lead1 === undefined
          ? []
          : [expected.lead1, expected.lead2]
        : [expected.leads],
    );
  });
});
