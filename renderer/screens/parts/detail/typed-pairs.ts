import type { PartRow } from '../../../../core/contract/parts.ts';
import type { Names } from '../names.ts';

/** What a person typed about the line, in words; what was left empty isn't listed. */
export function typedPairs(row: PartRow, names: Names): readonly (readonly [term: string, words: string])[] {
  const flags = [
    row.optional ? 'can be left out' : '',
    row.needsVerification ? 'needs a final check' : '',
    row.stretchOnce ? 'stretches once, never used again' : '',
  ].filter(Boolean);
  const pairs: readonly (readonly [string, string])[] = [
    ['Part number', row.partNumber],
    ['Maker', row.maker],
    ['System', names.system.nameOf(row.system)],
    ['Phase', names.phase.nameOf(row.phase)],
    ['Job', names.job.nameOf(row.job)],
    ['Vendor', names.vendor.nameOf(row.vendor)],
    ['Bin', names.bin.nameOf(row.bin)],
    ['Priority', String(row.priority)],
    ['Marked', flags.join(', ')],
    ['Link', row.link],
    ['Note', row.note],
  ];
  return pairs.filter(([, words]) => words !== '');
}
