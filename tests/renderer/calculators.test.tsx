import { screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it } from 'vitest';
import { calculators } from '../../core/calculators/index.ts';
import { unitsOf } from '../../core/units/measure.ts';
import { parseRoute } from '../../renderer/app/route.tsx';
import CalculatorsScreen from '../../renderer/screens/calculators/calculators-screen.tsx';
import { readingOf } from '../../renderer/screens/calculators/reading.ts';
import { exampleTyped, listOf, paramsOf, typedOf } from '../../renderer/screens/calculators/typed.ts';
import { shown } from './shown.tsx';

const params = () => parseRoute(window.location.hash).params;
const status = () => within(result()).getByRole('status').textContent;
const result = () => screen.getByRole('region', { name: 'Result' });

it('counts the calculators, finds one by its words and opens it with the keyboard', async () => {
  window.location.hash = '#/calculators';
  shown(<CalculatorsScreen />);
  expect(screen.getByText(new RegExp(`^${calculators.length} calculators`))).toBeTruthy();
  const search = screen.getByRole('searchbox', { name: 'Find a calculator' });
  await userEvent.type(search, 'blend properties');
  expect(within(screen.getByRole('navigation', { name: 'Calculators' })).getAllByRole('link')).toHaveLength(1);
  await userEvent.keyboard('{Enter}');
  expect(params()['id']).toBe('D1');
  expect(document.activeElement).toBe(screen.getByRole('heading', { level: 2, name: 'Blend properties' }));
  expect(status()).toBe('Still needed: Ethanol, by volume.');
});

it('answers as one types, in the unit chosen, and keeps text and units through a reload', async () => {
  window.location.hash = '#/calculators?id=A1';
  const { unmount } = shown(<CalculatorsScreen />);
  await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Torque: unit' }), 'lbf*ft');
  await userEvent.type(screen.getByRole('textbox', { name: /^Torque/ }), '65');
  // 65 lbf·ft at 1.355 817 9483 N·m each, NIST SP 811, Appendix B.8.
  expect(within(result()).getByText('88.128 N·m').title).toMatch(/^88\.12816\d+ N·m$/);
  expect(params()).toMatchObject({ id: 'A1', 'i.value': '65', 'u.value': 'lbf*ft' });
  unmount();
  shown(<CalculatorsScreen />);
  expect(screen.getByRole<HTMLInputElement>('textbox', { name: /^Torque/ }).value).toBe('65');
  expect(within(result()).getByText('88.128 N·m')).toBeTruthy();
});

it('tells at its field what can’t be read, keeps it, and gives no result', async () => {
  window.location.hash = '#/calculators?id=D1';
  shown(<CalculatorsScreen />);
  const field = screen.getByRole<HTMLInputElement>('textbox', { name: /^Ethanol, by volume/ });
  await userEvent.type(field, '120');
  await userEvent.tab();
  expect(field.value).toBe('120');
  expect(field.getAttribute('aria-invalid')).toBe('true');
  expect(screen.getByText(/must be at least 0 % and at most 100 %, not 120 %/)).toBeTruthy();
  expect(status()).toBe("No result while Ethanol, by volume can't be taken.");
});

it('says which of several ways is in use, and that two can’t be mixed', async () => {
  window.location.hash = '#/calculators?id=A2';
  shown(<CalculatorsScreen />);
  await userEvent.click(screen.getByRole('button', { name: 'Use the example' }));
  expect(status()).toBe('Asked this way: absolute from gauge.');
  await userEvent.type(screen.getByRole('textbox', { name: /^Absolute pressure/ }), '200');
  await userEvent.tab();
  expect(screen.getByText(/can't be given together with the other inputs/)).toBeTruthy();
  await userEvent.click(screen.getByRole('button', { name: 'Empty the fields' }));
  expect(Object.keys(params()).filter((name) => name.startsWith('i.'))).toEqual([]);
});

it('reads the numbers of a list however they are parted', () => {
  expect(listOf('59.992; 59.994;\n60')).toEqual(['59.992', '59.994', '60']);
  expect(listOf('59,992 59,994')).toEqual(['59,992', '59,994']);
  expect(listOf('40, 25, 64')).toEqual(['40', '25', '64']);
  expect(listOf('40,25,64')).toEqual(['40', '25', '64']);
  expect(listOf('1 1/2; 3/8')).toEqual(['1 1/2', '3/8']);
});

it('answers every example, by way of the address, in every unit of every output', () => {
  for (const calculator of calculators) {
    const typed = exampleTyped(calculator, {});
    expect(typedOf(calculator, paramsOf(calculator, typed)), calculator.id).toEqual(typed);
    expect(readingOf(calculator, typed).state, calculator.id).toBe('answered');
    for (const [name, output] of Object.entries(calculator.outputs)) {
      for (const unit of 'unit' in output ? unitsOf(output.dimension) : []) {
        const reading = readingOf(calculator, { ...typed, outputUnits: { [name]: unit } });
        expect(reading.state, `${calculator.id} ${name} in ${unit}`).toBe('answered');
      }
    }
  }
});
