import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import { findCalculator } from '../../core/calculators/index.ts';
import type { RecordRow } from '../../core/contract/records.ts';
import { parseRoute } from '../../renderer/app/route.tsx';
import CalculatorsScreen from '../../renderer/screens/calculators/calculators-screen.tsx';
import { hits } from '../../renderer/screens/calculators/palette-hits.ts';
import { plotPoints, stretchesOf } from '../../renderer/screens/calculators/plot-points.ts';
import { readingOf } from '../../renderer/screens/calculators/reading.ts';
import { compare } from '../../renderer/screens/calculators/saved-case.ts';
import { standingUnit, withoutUnit } from '../../renderer/screens/calculators/standing-units.ts';
import { typedOf } from '../../renderer/screens/calculators/typed.ts';
import { shown } from './shown.tsx';

const { records, actKey } = vi.hoisted(() => ({
  records: { list: vi.fn(), save: vi.fn(), retire: vi.fn() },
  actKey: () => 'key-of-an-act',
}));
vi.mock('../../renderer/app/client.ts', () => ({ api: { records }, actKey }));

function calculatorOf(id: string) {
  const found = findCalculator(id);
  if (found === undefined) throw new Error(`There is no calculator ${id}.`);
  return found;
}

const squareFour: RecordRow = {
  kind: 'savedCase',
  id: 7,
  build: 1,
  retiredOn: null,
  revision: 3,
  uses: 0,
  standing: {},
  values: {
    title: 'Square four',
    calculator: 'B1',
    inputs: {
      bore: { value: '86', unit: 'mm' },
      stroke: { value: '86', unit: 'mm' },
      cylinders: { value: '4', unit: '-' },
    },
    units: {},
    note: 'stock block',
  },
};

beforeEach(() => {
  vi.clearAllMocks();
  records.list.mockResolvedValue([
    squareFour,
    { ...squareFour, id: 8, values: { ...squareFour.values, calculator: 'D3' } },
  ]);
  records.save.mockResolvedValue({ act: 1, label: 'New saved case', entries: 1, parts: [], made: [9], notices: [] });
});

const params = () => parseRoute(window.location.hash).params;

it('saves what was typed, as typed, under a title, and compares with it from then on', async () => {
  window.location.hash = '#/calculators?id=B1&i.bore=3.5&u.bore=in&i.stroke=86&i.cylinders=4';
  shown(<CalculatorsScreen />);
  await userEvent.click(await screen.findByRole('button', { name: 'Save to the build' }));
  const form = screen.getByRole('dialog');
  await userEvent.type(within(form).getByRole('textbox', { name: /^Title/ }), 'Bored');
  await userEvent.click(within(form).getByRole('button', { name: 'Save the case' }));
  await waitFor(() => expect(params()['case']).toBe('9'));
  expect(records.save.mock.calls[0]?.[0]).toMatchObject({
    on: '2026-03-12',
    kind: 'savedCase',
    build: 1,
    values: {
      title: 'Bored',
      calculator: 'B1',
      inputs: { bore: { value: '3.5', unit: 'in' }, stroke: { value: '86', unit: 'mm' } },
      note: '',
    },
  });
});

it('lists the cases of this calculator, opens one, and says what changed since', async () => {
  window.location.hash = '#/calculators?id=B1';
  shown(<CalculatorsScreen />);
  await userEvent.click(await screen.findByRole('button', { name: 'Open Square four' }));
  expect(screen.getAllByText('Square four')).toHaveLength(1);
  expect(params()).toMatchObject({ 'i.bore': '86', case: '7' });
  expect(screen.getByText(/^Nothing: inputs and results/)).toBeTruthy();
  const bore = screen.getByRole('textbox', { name: /^Bore/ });
  await userEvent.clear(bore);
  await userEvent.type(bore, '87');
  const table = screen.getByRole('table', { name: /^What changed/ });
  expect(within(table).getByRole('row', { name: /^Bore 86 mm 87 mm \+1 mm \+1\.16/ })).toBeTruthy();
  expect(within(table).getByRole('row', { name: /^Stroke 86 mm 86 mm same/ })).toBeTruthy();
  // (87/86)² - 1 = 2.339 %, the swept volume going with the square of the bore.
  expect(within(table).getByRole('row', { name: /^Displacement .* \+2\.34/ })).toBeTruthy();
});

it('opens a saved case by its number alone, as the search does', async () => {
  window.location.hash = '#/calculators?case=7';
  shown(<CalculatorsScreen />);
  await waitFor(() => expect(params()).toMatchObject({ id: 'B1', 'i.bore': '86', case: '7' }));
});

it('saves nothing while a past day is shown, and says why', async () => {
  window.location.hash = '#/calculators?id=B1&i.bore=86&i.stroke=86&i.cylinders=4';
  shown(<CalculatorsScreen />, { asOf: '2026-01-01' });
  const save = await screen.findByRole<HTMLButtonElement>('button', { name: 'Save to the build' });
  expect(save.disabled).toBe(true);
  expect(screen.getByText('A past day is shown, so nothing can be saved.')).toBeTruthy();
});

it('takes the units of the workbook until others are chosen, and writes them into the address', async () => {
  window.location.hash = '#/calculators?id=B1';
  shown(<CalculatorsScreen />, {
    locale: { language: 'en', currency: 'USD', dateForm: 'd Mon yyyy', units: 'inch', weekStart: 'sunday' },
  });
  await userEvent.type(screen.getByRole('textbox', { name: /^Bore/ }), '4');
  await userEvent.type(screen.getByRole('textbox', { name: /^Stroke/ }), '3.48');
  await userEvent.type(screen.getByRole('textbox', { name: /^Cylinders/ }), '8');
  expect(params()).toMatchObject({ 'i.bore': '4', 'u.bore': 'in', 'u.stroke': 'in' });
  // π/4 · 4² · 3.48 · 8 = 349.85 in³, derived by hand.
  expect(within(screen.getByRole('region', { name: 'Result' })).getByText('349.85 in³')).toBeTruthy();
  // An address without a unit was written in the declared one.
  expect(standingUnit('mm', 'length', 'inch')).toBe('in');
  expect(standingUnit('in', 'length', 'metric')).toBe('in');
  expect(standingUnit('cc/min', 'volumeFlow', 'inch')).toBe('cc/min');
});

it('shows the unit written behind a number as the chosen one, and lets another take its place', async () => {
  window.location.hash = '#/calculators?id=B1&i.bore=3+3/8"';
  shown(<CalculatorsScreen />);
  const unit = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Bore: unit' });
  expect(unit.value).toBe('in');
  await userEvent.selectOptions(unit, 'mm');
  expect(params()).toMatchObject({ 'i.bore': '3 3/8', 'u.bore': 'mm' });
  expect(withoutUnit('-65 ft lb')).toBe('-65');
  expect(withoutUnit('1e-3 m')).toBe('1e-3');
  expect(withoutUnit('about so much')).toBe('about so much');
});

it('draws over a range with the stretches that warn or have no result', () => {
  const piston = calculatorOf('B1');
  const typed = typedOf(piston, { 'i.bore': '86', 'i.stroke': '86', 'i.cylinders': '4', 'i.rpm': '6000' });
  const against = { name: 'rpm', unit: 'rpm', from: 1000, to: 9000 };
  const points = plotPoints(piston, typed, against, 'mean_piston_speed');
  expect(points).toHaveLength(49);
  // 2 · 0.086 m · 1000/60 s⁻¹ = 2.8667 m/s, derived by hand.
  expect(points[0]?.y).toBeCloseTo(2.8667, 4);
  const stretches = stretchesOf(points);
  // Above 20 m/s it warns (common practice): 20 · 60/0.172 = 6977 rpm.
  expect(stretches[0]?.from).toBeGreaterThan(6700);
  expect(stretches[0]?.from).toBeLessThan(7100);
  const refused = plotPoints(piston, typed, { name: 'bore', unit: 'mm', from: -40, to: 40 }, 'displacement');
  expect(stretchesOf(refused)[0]).toMatchObject({ from: -40, to: 0, level: 'refused' });
  const whole = plotPoints(piston, typed, { name: 'cylinders', unit: '-', from: 1, to: 8 }, 'displacement');
  expect(whole.map(({ x }) => x)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
});

it('calls a field by its label in what it says of it', () => {
  const air = calculatorOf('A2');
  expect(readingOf(air, typedOf(air, { 'i.absolute': '22 psig' }))).toMatchObject({
    state: 'refused',
    field: 'absolute',
    message: 'Absolute pressure is an absolute pressure, and “psig” is a gauge pressure.',
  });
});

it('gives no percentage of a temperature, whose zero is a convention', () => {
  const air = calculatorOf('C6');
  const saved = { title: '', calculator: 'C6', inputs: { altitude: { value: 0, unit: 'm' } }, units: {}, note: '' };
  const rows = compare(air, saved, typedOf(air, { 'i.altitude': '1000' }));
  const temperature = rows.find(({ name }) => name === 'temperature');
  expect(temperature?.change).toBeCloseTo(-6.499, 3);
  expect(temperature).not.toHaveProperty('share');
});

it('is found by the search of the whole window, the title first', () => {
  expect(hits('injector size')[0]).toMatchObject({ label: 'D3 Injector size', params: { id: 'D3' } });
  expect(hits('no such words here')).toEqual([]);
});
