import { screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../core/dates/calendar-date.ts';
import { LinesOverTime, Shares } from '../../../renderer/parts/chart.tsx';
import { heldUntil, monthMarks, spreadLabels, timeRows } from '../../../renderer/parts/chart-figures.ts';
import { shown } from '../shown.tsx';

const series = [
  {
    name: 'paid',
    steps: true,
    points: [
      { on: '2026-01-05', value: 10_000 },
      { on: '2026-02-05', value: 25_000 },
    ],
  },
  { name: 'planned', points: [{ on: '2026-02-05', value: 30_000 }] },
];

describe('figures of a chart', () => {
  it('puts all dates of all lines in one order, with nothing where a line has no value', () => {
    expect(timeRows(series).map(({ on, values }) => [on, ...values])).toEqual([
      ['2026-01-05', 10_000, null],
      ['2026-02-05', 25_000, 30_000],
    ]);
  });

  it('carries a sum on to today, and a plan only as far as it goes', () => {
    const held = heldUntil(series, '2026-03-01');
    expect(held[0]?.points.at(-1)).toEqual({ on: '2026-03-01', value: 25_000 });
    expect(held[1]?.points).toHaveLength(1);
  });

  it('marks first days of months, thinned to what fits', () => {
    const marks = monthMarks(dayNumber('2025-09-15'), dayNumber('2026-09-15'), 6);
    expect(marks[0]).toBe(dayNumber('2025-10-01'));
    expect(marks).toHaveLength(6);
  });

  it('keeps labels apart and in order, and within the drawing while there is room', () => {
    const heights = fc.array(fc.double({ min: 0, max: 280, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(heights, (given) => {
        const spread = spreadLabels(given, 16, 288);
        const order = given.map((_, index) => index).sort((a, b) => (given[a] ?? 0) - (given[b] ?? 0));
        const placed = order.map((index) => spread[index] ?? 0);
        placed.forEach((height, index) => {
          expect(height).toBeLessThanOrEqual(288 + 1e-6);
          if (index > 0) expect(height - (placed[index - 1] ?? 0)).toBeGreaterThanOrEqual(16 - 1e-6);
        });
      }),
    );
  });
});

it('shows the same figures as a table', async () => {
  const user = userEvent.setup();
  shown(
    <LinesOverTime
      title="Paid stands below the plan."
      unit={{ kind: 'money', currency: 'EUR' }}
      series={series}
      today="2026-03-01"
    />,
  );
  expect(screen.getByRole('figure', { name: 'Paid stands below the plan.' })).toBeTruthy();
  await user.click(screen.getByRole('button', { name: 'Show the table' }));
  const cells = within(screen.getByRole('table'))
    .getAllByRole('cell')
    .map((cell) => cell.textContent);
  expect(cells).toEqual(['€100.00', '', '€250.00', '€300.00', '€250.00', '']);
  expect(screen.getByRole('button', { name: 'Show the chart' }).getAttribute('aria-expanded')).toBe('true');
});

it('writes shares beside their bars', () => {
  shown(
    <Shares
      title="Two systems"
      unit={{ kind: 'count', name: 'parts' }}
      rows={[
        { name: 'Block', value: 30 },
        { name: 'Fuel', value: 10 },
      ]}
    />,
  );
  expect(screen.getByRole('row', { name: /Block 30 75 %/ })).toBeTruthy();
  expect(screen.getByRole('row', { name: /Fuel 10 25 %/ })).toBeTruthy();
});
