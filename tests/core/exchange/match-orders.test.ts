import { describe, expect, it } from 'vitest';
import { matchOrdersToParts, type PartToMatch } from '../../../core/exchange/match-orders.ts';

const parts: PartToMatch[] = [
  {
    id: 'pump',
    description: 'oil pump, high volume',
    partNumber: 'OP-HV',
    vendor: 'Brightwater Fuel',
    quantityMilli: 1000,
  },
  {
    id: 'hose6',
    description: 'hose -6',
    vendor: 'Harbour Hose & Fitting',
    quantityMilli: 3000,
    orderedOn: '2026-05-01',
  },
  {
    id: 'hose10',
    description: 'hose -10',
    vendor: 'Harbour Hose & Fitting',
    quantityMilli: 3000,
    orderedOn: '2026-05-01',
  },
  { id: 'studA', description: 'head studs', partNumber: 'HS-11', quantityMilli: 10_000 },
  { id: 'studB', description: 'head studs, spare set', partNumber: 'hs 11', quantityMilli: 4000 },
];
const line = (row: number, description: string, more: Record<string, unknown> = {}) => ({
  row,
  description,
  vendor: '',
  quantityMilli: 1000,
  ...more,
});

describe('order lines find their parts', () => {
  it('by part number, whatever its punctuation', () => {
    const [match] = matchOrdersToParts([line(2, 'pump', { partNumber: 'op hv' })], parts);
    expect(match).toMatchObject({ partId: 'pump', how: 'part number' });
  });

  it('by likeness, helped by vendor, quantity and date', () => {
    const more = { vendor: 'HARBOUR HOSE & FITTING', quantityMilli: 3000, orderedOn: '2026-05-02' };
    const matches = matchOrdersToParts([line(2, 'Hose -10', more), line(3, 'volume oil pump high', more)], parts);
    expect(matches).toMatchObject([
      { partId: 'hose10', how: 'likeness' },
      { partId: 'pump', how: 'likeness' },
    ]);
    expect(matches[0]?.alternatives.map((other) => other.partId)).toContain('hose6');
  });

  it('one to one where several parts carry the number', () => {
    const matches = matchOrdersToParts(
      [
        line(2, 'head studs', { partNumber: 'HS-11', quantityMilli: 10_000 }),
        line(3, 'head studs', { partNumber: 'HS-11', quantityMilli: 4000 }),
        line(4, 'head studs', { partNumber: 'HS-11', quantityMilli: 2000 }),
      ],
      parts,
    );
    expect(matches.slice(0, 2).map((match) => match.partId)).toEqual(['studA', 'studB']);
    // A third order of the same number is for one of them again: split orders are common.
    expect(['studA', 'studB']).toContain(matches[2]?.partId);
  });

  it('or none, with nothing made up', () => {
    const [match] = matchOrdersToParts([line(9, 'floor jack')], parts);
    expect(match).toMatchObject({ row: 9, partId: null, how: 'none', score: 0 });
    expect(matchOrdersToParts([], parts)).toEqual([]);
    expect(matchOrdersToParts([line(2, 'x')], [])).toMatchObject([{ partId: null }]);
  });

  it('does not take a like-sounding part of the same vendor with another number', () => {
    const more = { vendor: 'Brightwater Fuel', partNumber: 'OP-STD' };
    const [match] = matchOrdersToParts([line(2, 'oil pump, high volume', more)], parts);
    expect(match?.partId).toBeNull();
    expect(match?.alternatives[0]?.partId).toBe('pump');
  });
});
