import { ORPCError } from '@orpc/client';
import { screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import type { Settings, WorkbookStatus } from '../../core/contract/workbook.ts';
import type { MenuVerb } from '../../renderer/app/desktop-bridge.ts';
import { DesktopMenu } from '../../renderer/app/desktop-menu.tsx';
import { clockOf, minutesAWeek } from '../../renderer/parts/week-windows.ts';
import SettingsScreen from '../../renderer/screens/settings/screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({
  workbook: {
    status: vi.fn(),
    settings: vi.fn(),
    saveSettings: vi.fn(),
    backups: vi.fn(),
    backUp: vi.fn(),
    restore: vi.fn(),
    verify: vi.fn(),
    open: vi.fn(),
  },
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
  taxRate: '8.25',
  taxBase: 'goods',
  taxIncluded: false,
  author: 'Ada',
  weekWindows: [{ weekday: 2, from: '18:30', to: '21:00' }],
};
const status: WorkbookStatus = {
  open: {
    name: 'Drover',
    path: '/w/Drover.hoistday',
    readOnly: false,
    notices: [],
    schemaVersion: 1,
    baseCurrency: 'USD',
  },
  folder: '/w',
  found: [],
  appVersion: '0.1.0',
  today: '2026-03-12',
};

beforeEach(() => {
  vi.clearAllMocks();
  api.workbook.status.mockResolvedValue(status);
  api.workbook.settings.mockResolvedValue(settings);
});

it('says at the field that the currency is locked, and keeps the rest of what was typed', async () => {
  api.workbook.saveSettings.mockRejectedValue(
    new ORPCError('REFUSED', {
      defined: true,
      data: { code: 'in-use', message: 'Amounts in USD have been written.', field: 'settings.currency', detail: {} },
    }),
  );
  window.location.hash = '#/settings?section=figures';
  shown(<SettingsScreen />);
  const author = await screen.findByRole('textbox', { name: /Who makes the entries/ });
  await userEvent.clear(author);
  await userEvent.type(author, 'Bo');
  await userEvent.click(screen.getByRole('button', { name: 'Save these settings' }));
  expect(await screen.findByText(/Locked: amounts in USD have been written/)).toBeTruthy();
  expect((author as HTMLInputElement).value).toBe('Bo');
});

it('does not send hours that overlap, and says which', async () => {
  api.workbook.settings.mockResolvedValue({
    ...settings,
    weekWindows: [
      { weekday: 2, from: '18:00', to: '21:00' },
      { weekday: 2, from: '20:00', to: '22:00' },
    ],
  });
  window.location.hash = '#/settings?section=hours';
  shown(<SettingsScreen />);
  await userEvent.click(await screen.findByRole('button', { name: 'Save the free hours' }));
  expect((await screen.findByRole('alert')).textContent).toMatch(/Nothing was changed|overlap/);
  expect(api.workbook.saveSettings).not.toHaveBeenCalled();
});

it('reads times as people type them and counts the week', () => {
  expect([clockOf('7'), clockOf('7:30'), clockOf('19.05'), clockOf('24:00')]).toEqual([
    '07:00',
    '07:30',
    '19:05',
    '24:00',
  ]);
  expect([clockOf('24:01'), clockOf('7:61'), clockOf('soon')]).toEqual([null, null, null]);
  expect(minutesAWeek([{ weekday: 2, from: '18:30', to: '21:00' }])).toBe(150);
});

it('restores a backup only after it was asked, and never one that has changed since it was made', async () => {
  const backup = (file: string, verified: boolean) => ({ file, verified, madeAt: '2026-03-01T10:00:00Z', bytes: 1e6 });
  api.workbook.backups.mockResolvedValue([backup('new', true), backup('old', false)]);
  api.workbook.restore.mockResolvedValue(status);
  window.location.hash = '#/settings?section=safety';
  shown(<SettingsScreen />);
  const [whole, changed] = await screen.findAllByRole('button', { name: /Restore…/ });
  expect((changed as HTMLButtonElement).disabled).toBe(true);
  await userEvent.click(whole as HTMLElement);
  expect(api.workbook.restore).not.toHaveBeenCalled();
  await userEvent.click(await screen.findByRole('button', { name: 'Restore this backup' }));
  await waitFor(() => expect(api.workbook.restore).toHaveBeenCalledWith({ file: 'new' }));
});

it('lists what a check found', async () => {
  api.workbook.backups.mockResolvedValue([]);
  api.workbook.verify.mockResolvedValue({
    ok: false,
    entries: 12,
    postings: 40,
    integrity: [],
    foreignKeys: [],
    differences: ['part 5: in hand 8, kept 7'],
    invariants: [],
  });
  window.location.hash = '#/settings?section=safety';
  shown(<SettingsScreen />);
  await userEvent.click(await screen.findByRole('button', { name: 'Check it now' }));
  expect(await screen.findByText('part 5: in hand 8, kept 7')).toBeTruthy();
});

it('does what the desktop menu asks for', async () => {
  let choose: (verb: MenuVerb) => void = () => undefined;
  const bridge = {
    onMenu: (listener: (verb: MenuVerb) => void) => {
      choose = listener;
      return () => undefined;
    },
    chooseWorkbookToOpen: vi.fn(async () => '/w/Other.hoistday'),
  };
  Object.defineProperty(window, 'hoistday', { value: bridge, configurable: true });
  try {
    api.workbook.open.mockResolvedValue(status);
    api.workbook.backUp.mockResolvedValue({ file: 'copy', bytes: 1 });
    shown(<DesktopMenu />);
    choose('workbook-export');
    expect(window.location.hash).toBe('#/settings?section=export');
    choose('workbook-bring-in');
    expect(window.location.hash).toBe('#/bring-in');
    choose('density-bench');
    expect(document.documentElement.dataset['density']).toBe('bench');
    choose('density-desk');
    choose('workbook-open');
    await waitFor(() => expect(api.workbook.open).toHaveBeenCalledWith({ path: '/w/Other.hoistday' }));
    choose('workbook-back-up');
    await waitFor(() => expect(api.workbook.backUp).toHaveBeenCalledOnce());
    choose('workbook-new');
    expect(await screen.findByRole('dialog', { name: 'New workbook' }, { timeout: 10_000 })).toBeTruthy();
  } finally {
    Reflect.deleteProperty(window, 'hoistday');
  }
});
