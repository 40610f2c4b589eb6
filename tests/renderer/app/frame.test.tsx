import { IconHome, IconList } from '@tabler/icons-react';
import { act, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { App } from '../../../renderer/app/app.tsx';
import { navigate } from '../../../renderer/app/route.tsx';
import type { Screen } from '../../../renderer/app/screens.ts';
import { Answer, Page } from '../../../renderer/parts/page.tsx';
import { shown } from '../shown.tsx';

const start = () => <Page title="Start" answer={<Answer>14 things stand before engine-in.</Answer>} />;
const parts = () => <Page title="Parts" answer={<Answer>160 parts; 31 are still to buy.</Answer>} />;
const broken = () => {
  throw new Error('a figure that cannot be drawn');
};
const screens: readonly Screen[] = [
  {
    id: 'start',
    title: 'Start',
    path: '/',
    icon: IconHome,
    group: 'work',
    main: true,
    load: async () => ({ default: start }),
  },
  {
    id: 'parts',
    title: 'Parts',
    path: '/parts',
    icon: IconList,
    group: 'work',
    main: true,
    load: async () => ({ default: parts }),
  },
  {
    id: 'broken',
    title: 'Broken',
    path: '/broken',
    icon: IconList,
    group: 'workbook',
    load: async () => ({ default: broken }),
  },
];

describe('going from screen to screen', () => {
  it('opens the screen that the address names, with its title and the focus on its heading', async () => {
    shown(<App screens={screens} />);
    expect(await screen.findByText('14 things stand before engine-in.')).toBeTruthy();
    act(() => navigate('/parts'));
    const heading = await screen.findByRole('heading', { level: 1, name: 'Parts' });
    expect(document.activeElement).toBe(heading);
    expect(document.title).toBe('Parts · Drover · Hoistday');
    const wide = screen.getAllByRole('link', { name: 'Parts' });
    expect(wide[0]?.getAttribute('aria-current')).toBe('page');
  });

  it('says so when an address names no screen, and offers the first', async () => {
    shown(<App screens={screens} />);
    act(() => navigate('/nowhere'));
    await userEvent.click(await screen.findByRole('button', { name: 'Go to Start' }));
    expect(await screen.findByRole('heading', { level: 1, name: 'Start' })).toBeTruthy();
  });

  it('keeps the frame when a screen can’t be drawn, and lets the reader go elsewhere', async () => {
    const quiet = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    shown(<App screens={screens} />);
    act(() => navigate('/broken'));
    expect((await screen.findByRole('alert')).textContent).toContain('Everything entered so far is in the workbook');
    act(() => navigate('/parts'));
    expect(await screen.findByRole('heading', { level: 1, name: 'Parts' })).toBeTruthy();
    quiet.mockRestore();
  });

  it('moves the focus past the navigation on request', async () => {
    shown(<App screens={screens} />);
    await userEvent.click(screen.getByRole('button', { name: 'Skip to the page' }));
    expect(document.activeElement).toBe(screen.getByRole('main'));
  });
});

describe('taking back', () => {
  it('names the act and does it by button and by keys, but leaves Ctrl+Z in a field to the field', async () => {
    const undo = { label: 'receipt of 12 lines', run: vi.fn() };
    const redo = { label: 'price of the clutch kit', run: vi.fn() };
    const user = userEvent.setup();
    shown(
      <>
        <App screens={screens} />
        <input aria-label="elsewhere" />
      </>,
      { undo, redo },
    );
    await user.click(screen.getByRole('button', { name: 'Undo receipt of 12 lines' }));
    await user.keyboard('{Control>}z{/Control}');
    expect(undo.run).toHaveBeenCalledTimes(2);
    await user.keyboard('{Control>}{Shift>}z{/Shift}{/Control}');
    await user.keyboard('{Control>}y{/Control}');
    expect(redo.run).toHaveBeenCalledTimes(2);
    await user.click(screen.getByRole('textbox', { name: 'elsewhere' }));
    await user.keyboard('{Control>}z{/Control}');
    expect(undo.run).toHaveBeenCalledTimes(2);
  });

  it('says that there is nothing to take back', () => {
    shown(<App screens={screens} />);
    expect(screen.getByRole('button', { name: 'Nothing to undo' }).getAttribute('aria-disabled')).toBe('true');
  });
});

describe('a past day', () => {
  it('is told above every page, with the way back', async () => {
    const showAsOf = vi.fn();
    shown(<App screens={screens} />, { asOf: '2026-03-02', showAsOf });
    const back = screen.getByRole('button', { name: 'Back to today' });
    const banner = back.closest('[role="status"]');
    expect(banner?.textContent).toContain('2 Mar 2026');
    await userEvent.click(back);
    expect(showAsOf).toHaveBeenCalledWith(null);
  });

  it('is chosen by typing it', async () => {
    const showAsOf = vi.fn();
    const user = userEvent.setup();
    shown(<App screens={screens} />, { showAsOf });
    await user.click(screen.getByRole('button', { name: 'Shown as of Today' }));
    const day = await screen.findByRole('textbox', { name: /Day/ });
    await user.clear(day);
    await user.type(day, '1 Feb 2026{Enter}');
    expect(showAsOf).toHaveBeenCalledWith('2026-02-01');
  });
});

describe('search and commands', () => {
  it('opens on Ctrl+K, finds rows and commands, and opens the chosen one by keys', async () => {
    const open = vi.fn();
    const search = vi.fn(async () => [
      { title: 'Parts', hits: [{ id: '3', label: 'Clutch kit', detail: 'ordered', open }] },
    ]);
    const user = userEvent.setup();
    shown(<App screens={screens} />, { search });
    await user.keyboard('{Control>}k{/Control}');
    await user.keyboard('clu');
    await waitFor(() =>
      expect(screen.getByRole('option', { name: /Clutch kit/ }).getAttribute('aria-selected')).toBe('true'),
    );
    expect(search).toHaveBeenCalledTimes(1);
    await user.keyboard('{Enter}');
    expect(open).toHaveBeenCalledTimes(1);
    expect(screen.queryByRole('combobox', { name: 'Search the workbook' })).toBeNull();
  });

  it('goes to a screen by a part of its name, with or without accents', async () => {
    const user = userEvent.setup();
    shown(<App screens={screens} />);
    await user.keyboard('{Control>}k{/Control}');
    await user.keyboard('gó parts{Enter}');
    expect(await screen.findByRole('heading', { level: 1, name: 'Parts' })).toBeTruthy();
  });

  it('says when the workbook can’t be searched', async () => {
    const user = userEvent.setup();
    shown(<App screens={screens} />, { search: () => Promise.reject(new TypeError('no answer')) });
    await user.keyboard('{Control>}k{/Control}');
    await user.keyboard('x');
    await waitFor(() => expect(screen.getByText(/does not answer/)).toBeTruthy());
  });
});
