import { beforeEach, expect, it, vi } from 'vitest';

beforeEach(() => {
  localStorage.clear();
  vi.resetModules();
});

const load = () => import('../../../renderer/app/preferences.ts');

it('starts with the system’s colours at the desk', async () => {
  const { applyPreferences } = await load();
  applyPreferences();
  expect(document.documentElement.dataset).toMatchObject({ theme: 'day', density: 'desk' });
});

it('keeps a choice for the next start', async () => {
  const first = await load();
  first.setPreferences({ theme: 'night' });
  first.setPreferences({ density: 'bench' });
  expect(document.documentElement.dataset).toMatchObject({ theme: 'night', density: 'bench' });
  vi.resetModules();
  const second = await load();
  document.documentElement.dataset['theme'] = '';
  second.applyPreferences();
  expect(document.documentElement.dataset).toMatchObject({ theme: 'night', density: 'bench' });
});

it.each(['not json', 'null', '3', '{"theme":"purple","density":7}'])(
  'takes %s in the storage for no choice',
  async (text) => {
    localStorage.setItem('hoistday.look', text);
    const { applyPreferences } = await load();
    applyPreferences();
    expect(document.documentElement.dataset).toMatchObject({ theme: 'day', density: 'desk' });
  },
);

it('works where storage is refused', async () => {
  const refuse = vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('refused', 'SecurityError');
  });
  const { setPreferences } = await load();
  setPreferences({ theme: 'night' });
  expect(document.documentElement.dataset['theme']).toBe('night');
  refuse.mockRestore();
});
