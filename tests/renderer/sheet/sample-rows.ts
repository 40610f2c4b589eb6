import type { SheetColumn } from '../../../renderer/parts/sheet/sheet-types.ts';

export interface PartRow {
  readonly id: number;
  readonly name: string;
  readonly system: string;
  readonly state: number;
  readonly quantityMilli: number | null;
  readonly priceMinor: number | null;
  readonly due: string | null;
}

export const stateWords = ['to choose', 'on order', 'in hand', 'fitted'] as const;

export function part(id: number, more: Partial<PartRow> = {}): PartRow {
  return { id, name: `Part ${id}`, system: 'Oil', state: 0, quantityMilli: 1000, priceMinor: 1000, due: null, ...more };
}

export const partColumns: readonly SheetColumn<PartRow>[] = [
  { key: 'name', title: 'Part', kind: 'text', value: (row) => row.name, text: (row) => row.name },
  {
    key: 'system',
    title: 'System',
    kind: 'text',
    groupable: true,
    filter: { kind: 'choices' },
    value: (row) => row.system,
    text: (row) => row.system,
  },
  {
    key: 'state',
    title: 'State',
    kind: 'state',
    groupable: true,
    value: (row) => row.state,
    text: (row) => stateWords[row.state] ?? '',
  },
  {
    key: 'quantity',
    title: 'Quantity',
    kind: 'quantity',
    value: (row) => row.quantityMilli,
    text: (row) => (row.quantityMilli === null ? '' : String(row.quantityMilli / 1000)),
  },
  {
    key: 'price',
    title: 'Price',
    kind: 'money',
    value: (row) => row.priceMinor,
    text: (row) => (row.priceMinor === null ? '' : (row.priceMinor / 100).toFixed(2)),
    subtotal: (rows) => (rows.reduce((sum, row) => sum + (row.priceMinor ?? 0), 0) / 100).toFixed(2),
  },
  { key: 'due', title: 'Due', kind: 'date', value: (row) => row.due, text: (row) => row.due ?? '' },
];

const nouns = [
  'Gasket',
  'Bolt M8 x 1.25',
  'Stud M10',
  'Hose',
  'Clamp',
  'Injector',
  'Gewindebüchse',
  'Sensor',
  'Bracket',
];
const systems = ['Block', 'Heads', 'Induction', 'Exhaust', 'Fuel', 'Oil', 'Cooling', 'Ignition', 'Drivetrain'];

/** Many invented rows, the same at every call. */
export function manyParts(count: number): PartRow[] {
  let seed = 7;
  const next = (below: number) => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return Math.floor((seed / 2147483648) * below);
  };
  return Array.from({ length: count }, (_, id) => ({
    id,
    name: `${nouns[next(nouns.length)]} ${next(count)}`,
    system: systems[next(systems.length)] as string,
    state: next(4),
    quantityMilli: next(20) === 0 ? null : (1 + next(24)) * 1000,
    priceMinor: next(10) === 0 ? null : next(100_000),
    due:
      next(2) === 0 ? null : `2026-${String(1 + next(12)).padStart(2, '0')}-${String(1 + next(28)).padStart(2, '0')}`,
  }));
}
