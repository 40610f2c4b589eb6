import { describe, expect, it } from 'vitest';
import { checkSheet, sheetDimension } from '../../../core/measuring/sheet-rules.ts';
import { Refusal } from '../../../core/refusal.ts';

const none = { least: null, most: null, source: '' };
const sound = { unit: 'mm', places: ['1', '2'], readings: ['a', 'b'], limits: none, clearance: none, fit: null };
const fit = { way: 'shim', target: 0.2, step: 0.05, sizes: [], now: [] } as const;

function refusal(sheet: Parameters<typeof checkSheet>[0]): Refusal {
  try {
    checkSheet(sheet);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('It was accepted.');
}

describe('a measuring sheet', () => {
  it('is accepted when it can be filled in', () => {
    expect(() => checkSheet(sound)).not.toThrow();
    expect(() => checkSheet({ ...sound, limits: { least: 0.2, most: 0.2, source: '' } })).not.toThrow();
    expect(() => checkSheet({ ...sound, fit: { ...fit, now: [0, null, 0.4] } })).not.toThrow();
  });

  it.each([
    ['a unit that is none', { unit: 'banana' }, 'unit'],
    ['a place named twice', { places: ['1', '2', '1'] }, 'places'],
    ['a reading named twice', { readings: ['a', 'a'] }, 'readings'],
    ['limits the wrong way round', { limits: { least: 0.3, most: 0.2, source: '' } }, 'limits'],
    ['limits of a clearance the wrong way round', { clearance: { least: 0.3, most: 0.2, source: '' } }, 'clearance'],
    ['a shim of no thickness', { fit: { ...fit, sizes: [{ name: '', size: 0, count: 1 }] } }, 'fit'],
    ['less than nothing in a place', { fit: { ...fit, now: [-0.4] } }, 'fit'],
  ])('is refused with %s', (_, change, field) => {
    const refused = refusal({ ...sound, ...change });
    expect(refused.code).toBe('bad-input');
    expect(refused.field).toBe(field);
    expect(refused.accepted).not.toBe('');
    expect(refused.message).toMatch(/Nothing was changed\.$/);
  });

  it('measures what its unit measures', () => {
    expect(sheetDimension('thou')).toBe('length');
    expect(sheetDimension('cc')).toBe('volume');
  });
});
