import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readTakeOffSet } from '../../../core/plumbing/take-off-set.ts';
import { Refusal } from '../../../core/refusal.ts';

const names = [
  'route length spacing a b x y r c1 c2 od rmin k move t1 t2 turn_deg dash quantity hose_type bore_mm fluid service',
  'ethanol_percent pressure_bar vacuum_bar temp_max_C temp_min_C ambient_max_C hose_class tube_material hot_factor',
  'flow_l_min from_port to_port end1 end2 adapters drain sleeve clock_deg hose_stock in_stock on_list kerf_mm lines',
]
  .join(' ')
  .split(' ');

const odd = fc.oneof(
  fc.constantFrom(
    'straight',
    'u',
    'corner',
    'offset',
    'measured',
    'drain',
    'E85',
    '100R6 -10',
    'JIC -6',
    '',
    '1/0',
    'NaN',
  ),
  fc.integer({ min: -2, max: 2000 }),
  fc.double(),
  fc.boolean(),
  fc.constantFrom(null, [], {}, [{}], [[]], { angle: 45 }, { style: 'barb' }, [{ item: 'x', quantity: 1e9 }]),
  fc.constantFrom(1e300, 5e-324, -0),
);

it('answers odd lines with figures or with a refusal that names a field, never with a fault', () => {
  const sensible = {
    length: 400,
    spacing: 300,
    a: 300,
    b: 300,
    x: 400,
    y: 60,
    r: 120,
    c1: 20,
    c2: 20,
    od: 20,
    rmin: 80,
  };
  fc.assert(
    fc.property(
      fc.constantFrom('straight', 'u', 'corner', 'offset', 'measured'),
      fc.dictionary(fc.constantFrom(...names), odd, { maxKeys: 4 }),
      (route, more) => {
        try {
          const { lines } = readTakeOffSet({ route, ...sensible, ...more });
          for (const { lengths } of lines) {
            expect(lengths.freeHoseMm).toBeGreaterThan(0);
            expect(Number.isFinite(lengths.cutMm)).toBe(true);
          }
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
          expect(error.field).toMatch(/./);
          expect(error.message).toMatch(/Nothing was changed\.$/);
        }
      },
    ),
    { numRuns: 1500 },
  );
});
