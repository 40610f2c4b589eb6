import { screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { DateField } from '../../../renderer/parts/date-field.tsx';
import { Choice, MoneyField, QuantityField, TextField, UnitPriceField } from '../../../renderer/parts/fields.tsx';
import { Form } from '../../../renderer/parts/form.tsx';
import { shown } from '../shown.tsx';

/** What the field's error says to those who hear it. */
function problemOf(input: HTMLElement): string {
  const ids = (input.getAttribute('aria-describedby') ?? '').split(' ').filter(Boolean);
  return ids.map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
}

function Quantities({ heard }: { readonly heard: (milli: number | null) => void }) {
  const [value, setValue] = useState<number | null>(8000);
  const change = (milli: number | null) => {
    heard(milli);
    setValue(milli);
  };
  return <QuantityField name="quantity" label="Quantity" unit="each" value={value} onChange={change} required />;
}

describe('a field whose text is read', () => {
  it('keeps what was typed, says what is accepted once the field is left, and hands on nothing', async () => {
    const heard = vi.fn();
    const user = userEvent.setup();
    shown(<Quantities heard={heard} />);
    const input = screen.getByRole('textbox', { name: /Quantity/ });
    await user.clear(input);
    await user.type(input, '2.5 ft');
    expect(problemOf(input)).toBe('');
    await user.tab();
    expect((input as HTMLInputElement).value).toBe('2.5 ft');
    expect(input.getAttribute('aria-invalid')).toBe('true');
    expect(problemOf(input)).toContain('a whole number above 0');
    expect(heard).toHaveBeenLastCalledWith(null);
    await user.clear(input);
    await user.type(input, '12');
    expect(heard).toHaveBeenLastCalledWith(12_000);
    expect(problemOf(input)).toBe('');
  });

  it('is rewritten when the value is changed from outside', () => {
    const field = (value: number) => (
      <MoneyField name="amount" label="Amount" value={value} onChange={() => undefined} currency="EUR" />
    );
    const { again } = shown(field(125_000));
    const input = screen.getByRole('textbox', { name: 'Amount' }) as HTMLInputElement;
    expect(input.value).toBe('1250.00');
    again(field(990));
    expect(input.value).toBe('9.90');
  });

  it('reads a price to the ten-thousandth of a cent', async () => {
    const heard = vi.fn();
    const user = userEvent.setup();
    shown(<UnitPriceField name="price" label="Price each" value={null} onChange={heard} currency="EUR" />);
    await user.type(screen.getByRole('textbox', { name: 'Price each' }), '0.0345');
    expect(heard).toHaveBeenLastCalledWith(34_500);
  });

  it.each([
    ['12 Mar 2026', '2026-03-12'],
    ['2026-03-12', '2026-03-12'],
    ['12.3.2026', '2026-03-12'],
    ['today', '2026-03-14'],
  ])('reads the date %s', async (text, date) => {
    const heard = vi.fn();
    const user = userEvent.setup();
    shown(<DateField name="on" label="Date" value={null} onChange={heard} today="2026-03-14" />);
    await user.type(screen.getByRole('textbox', { name: 'Date' }), text);
    expect(heard).toHaveBeenLastCalledWith(date);
  });

  it('refuses a day outside the dates allowed and names them', async () => {
    const user = userEvent.setup();
    shown(
      <DateField name="on" label="Date" value={null} onChange={() => undefined} today="2026-03-14" max="2026-03-14" />,
    );
    const input = screen.getByRole('textbox', { name: 'Date' });
    await user.type(input, '2026-03-15');
    await user.tab();
    expect(problemOf(input)).toContain('up to 14 Mar 2026');
  });
});

describe('a choice', () => {
  it('offers none of them where that is allowed', async () => {
    const heard = vi.fn();
    const user = userEvent.setup();
    const options = [{ value: 'b1', label: 'Shelf 2, bin 4' }] as const;
    shown(<Choice name="bin" label="Bin" value="b1" onChange={heard} options={options} />);
    await user.click(screen.getByRole('combobox', { name: 'Bin' }));
    await user.click(await screen.findByRole('option', { name: 'None' }));
    expect(heard).toHaveBeenLastCalledWith(null);
  });
});

describe('a form', () => {
  const fields = (
    <>
      <TextField name="description" label="Description" value="Stud kit" onChange={() => undefined} required />
      <QuantityField name="quantity" label="Quantity" unit="each" value={null} onChange={() => undefined} required />
      <TextField name="maker" label="Maker" value="" onChange={() => undefined} required />
    </>
  );

  it('is not sent while a field can’t be read: the first such field takes the focus and all say why', async () => {
    const send = vi.fn();
    const user = userEvent.setup();
    shown(
      <Form submitLabel="Add the part" onSubmit={send}>
        {fields}
      </Form>,
    );
    await user.click(screen.getByRole('button', { name: 'Add the part' }));
    expect(send).not.toHaveBeenCalled();
    expect(document.activeElement?.getAttribute('name')).toBe('quantity');
    expect(screen.getByText('Quantity is still empty.')).toBeTruthy();
    expect(screen.getByText('Maker is still empty.')).toBeTruthy();
  });

  it('is sent by Ctrl+Enter from any field, and not twice while it is busy', async () => {
    const send = vi.fn();
    const user = userEvent.setup();
    const form = (busy: boolean) => (
      <Form submitLabel="Save" onSubmit={send} busy={busy}>
        <TextField name="note" label="Note" long value="as fitted" onChange={() => undefined} />
      </Form>
    );
    const { again } = shown(form(false));
    await user.click(screen.getByRole('textbox', { name: 'Note' }));
    await user.keyboard('{Control>}{Enter}{/Control}');
    expect(send).toHaveBeenCalledTimes(1);
    again(form(true));
    await user.keyboard('{Control>}{Enter}{/Control}');
    expect(send).toHaveBeenCalledTimes(1);
  });

  it('shows a refusal at the field that it names', () => {
    const refusal = {
      message: 'The maker is too long. Nothing was changed.',
      field: 'maker',
      accepted: '80 characters',
    };
    shown(
      <Form submitLabel="Save" onSubmit={() => undefined} refusal={refusal}>
        {fields}
      </Form>,
    );
    expect(problemOf(screen.getByRole('textbox', { name: /Maker/ }))).toContain('Accepted: 80 characters.');
    expect(screen.getByRole('alert').textContent).toContain('Nothing was changed.');
  });
});
