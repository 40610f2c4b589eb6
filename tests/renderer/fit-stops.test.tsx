import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { FitStop } from '../../core/contract/fits.ts';
import type { Settings } from '../../core/contract/workbook.ts';
import { emptyDraft, withNeeds } from '../../renderer/screens/orders/new/new-draft.ts';
import { OrderForm } from '../../renderer/screens/orders/new/order-form.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  fits: { stops: vi.fn() },
  orders: { land: vi.fn(), place: vi.fn() },
  records: { list: vi.fn() },
}));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));

const settings: Settings = {
  currency: 'USD',
  dateForm: 'd Mon yyyy',
  units: 'metric',
  weekStart: 'monday',
  taxRate: '0',
  taxBase: 'goods',
  taxIncluded: false,
  author: '',
  weekWindows: [],
};
const need = {
  part: 11,
  description: 'Head bolt',
  partNumber: '',
  unit: 'each',
  vendor: 3,
  uncoveredMilli: 14_000,
  estimateEachE4: 25_000,
};
const stop: FitStop = {
  part: 11,
  description: 'Head bolt',
  subject: { kind: 'connection', id: 5 },
  title: 'Head bolts into the block',
  verdict: 'lookalike',
  says: 'Look-alike, does not join: pitch 1.25 against 1.5 mm; it starts and jams.',
  consequence: 'Same diameter. It starts and jams.',
  howToTell: 'pitch gauge',
  caution: 'A thread that is forced lets go: follow the maker’s manual.',
};
const landed = { extendedMinor: 350, discountMinor: 0, shippingMinor: 0, dutyMinor: 0, taxMinor: 0 };

const form = () => {
  const start = withNeeds(emptyDraft(settings, '2026-03-12', 3), [need], 'USD');
  return shown(<OrderForm build={1} start={start} settings={settings} needs={[need]} />);
};

beforeEach(() => {
  vi.clearAllMocks();
  window.location.hash = '#/orders?order=new&parts=11';
  api.fits.stops.mockResolvedValue([stop]);
  api.records.list.mockResolvedValue([{ id: 3, values: { name: 'Pellow Fasteners', currency: 'USD' } }]);
  api.orders.land.mockResolvedValue({
    lines: [{ ...landed, landedMinor: 350, landedBaseMinor: 350 }],
    totalMinor: 350,
    totalBaseMinor: 350,
    rate: null,
    rateOn: null,
    notices: [`“Head bolt”, Head bolts into the block: ${stop.says} The order is stopped.`],
  });
  api.orders.place.mockResolvedValue({ act: 1, label: 'Order', entries: 1, parts: [], made: [], notices: [] });
});

it('says above the button which part does not fit and why, once, and places nothing without a reason', async () => {
  const user = userEvent.setup();
  form();
  const block = within(await screen.findByRole('region', { name: 'Parts that do not fit' }));
  expect(block.getByText('Look-alike: do not join')).toBeTruthy();
  expect(block.getByText('How to tell: pitch gauge.')).toBeTruthy();
  expect(block.getByText(stop.caution)).toBeTruthy();
  await screen.findByText(/^Total/);
  expect(screen.getAllByText(/pitch 1\.25 against 1\.5 mm/)).toHaveLength(1);
  await user.click(screen.getByRole('button', { name: 'Place the order' }));
  expect(api.orders.place).not.toHaveBeenCalled();
  await user.click(block.getByRole('textbox', { name: /^Order it all the same because/ }));
  await user.paste(' Inserts go in. ');
  await user.click(screen.getByRole('button', { name: 'Place the order' }));
  await waitFor(() =>
    expect(api.orders.place).toHaveBeenCalledWith(expect.objectContaining({ despiteFits: 'Inserts go in.' })),
  );
});

it('asks for nothing once the part is off the order, or fits', async () => {
  const user = userEvent.setup();
  form();
  await screen.findByRole('region', { name: 'Parts that do not fit' });
  await user.click(screen.getByRole('button', { name: 'Leave out Head bolt' }));
  expect(screen.queryByRole('region', { name: 'Parts that do not fit' })).toBeNull();
});

it('keeps the order while the fit is looked at', async () => {
  const user = userEvent.setup();
  const drawn = form();
  await user.type(screen.getByRole('textbox', { name: 'Order number' }), 'PF-7');
  await user.click(await screen.findByRole('link', { name: stop.title }));
  drawn.unmount();
  window.location.hash = '#/orders?order=new&parts=11';
  form();
  expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Order number' }).value).toBe('PF-7');
});
