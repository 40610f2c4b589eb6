import { screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import { parseRoute } from '../../renderer/app/route.tsx';
import FitScreen from '../../renderer/screens/fit/fit-screen.tsx';
import { shown } from './shown.tsx';

const api = vi.hoisted(() => ({ fits: { view: vi.fn() } }));
vi.mock('../../renderer/app/client.ts', async (original) => ({
  ...(await original<typeof import('../../renderer/app/client.ts')>()),
  api,
}));
beforeEach(() => {
  api.fits.view.mockImplementation(() => new Promise(() => undefined));
});

const params = () => parseRoute(window.location.hash).params;
const answer = () => document.querySelector('.answer')?.textContent;
const field = (name: string) => screen.getByRole<HTMLInputElement>('textbox', { name });

it('reads both ports while typing, gives the verdict first, and keeps them in the address', async () => {
  window.location.hash = '#/fit?view=try';
  shown(<FitScreen />);
  expect(answer()).toBe('Write both ports, and this says whether they fit.');
  await userEvent.type(field('First port'), 'm14 x 1.5 male');
  expect(screen.getByText('M14x1.5 male')).toBeTruthy();
  await userEvent.type(field('Second port'), 'M14x1.25 female');
  // ISO 261 lists M14 with pitches 1.5 and 1.25: same diameter, another pitch.
  expect(answer()).toMatch(/^Look-alike: do not join: .*same diameter, pitch 1\.5 against 1\.25 mm\.$/);
  expect(screen.getByText('If joined all the same')).toBeTruthy();
  expect(screen.getByText('How to tell')).toBeTruthy();
  expect(params()).toEqual({ view: 'try', a: 'm14 x 1.5 male', b: 'M14x1.25 female' });
});

it('opens again from its address', () => {
  window.location.hash = '#/fit?a=M14x1.5+male&b=M14x1.5+female&role=fastener';
  shown(<FitScreen />);
  expect(field('First port').value).toBe('M14x1.5 male');
  expect(answer()).toMatch(/^They mate/);
  expect(screen.getByText(/lets go under load/)).toBeTruthy();
});

it('says how to write what can’t be read, and asks for the side that is missing', async () => {
  window.location.hash = '#/fit?a=-6&b=M14x1.5';
  shown(<FitScreen />);
  expect(answer()).toBe('No verdict while a port can’t be read.');
  expect(field('First port').getAttribute('aria-invalid')).toBe('true');
  await userEvent.click(screen.getByRole('button', { name: 'JIC -6' }));
  expect(field('First port').value).toBe('JIC -6');
  expect(answer()).toMatch(/^Not known yet/);
  const [first] = screen.getAllByRole('button', { name: 'Male, outside' });
  if (first !== undefined) await userEvent.click(first);
  expect(params()['a']).toMatch(/JIC -6.* male/);
  const females = screen.getAllByRole('button', { name: 'Female, inside' });
  const second = females.at(-1);
  if (second !== undefined) await userEvent.click(second);
  expect(answer()).toMatch(/^Only with an adapter|^Look-alike/);
  expect(screen.getByRole('heading', { name: 'Adapters that join them' })).toBeTruthy();
});

it('tells which thread was measured, warns of look-alikes, and takes it as first port', async () => {
  window.location.hash = '#/fit?view=try';
  shown(<FitScreen />);
  await userEvent.type(field('Measured diameter'), '13.9');
  await userEvent.type(field('Pitch or threads per inch'), '1.5');
  expect(document.querySelector('.fit-found')?.textContent).toMatch(/M14x1\.5, but .*9\/16-18 UNF.* can look the same/);
  await userEvent.click(screen.getByRole('button', { name: 'Use M14x1.5 as first port' }));
  expect(field('First port').value).toBe('M14x1.5 male');
});

it('takes inches and threads per inch by the unit typed', () => {
  window.location.hash = `#/fit?${new URLSearchParams({ d: '0.558 in', p: '18 tpi' })}`;
  shown(<FitScreen />);
  // 0.558 in is 14.173 mm and 18 to the inch is 1.411 mm, at 25.4 mm to the inch (NIST SP 811).
  expect(screen.getByText('Read as 14.173 mm diameter.')).toBeTruthy();
  expect(screen.getByText('Read as 1.411 mm pitch.')).toBeTruthy();
  expect(document.querySelector('.fit-found')?.textContent).toMatch(/most likely 9\/16-18 UNF/);
});

it('reads a bare 18 as threads per inch, and offers them for a number that could be either', async () => {
  window.location.hash = `#/fit?${new URLSearchParams({ d: '14.2', p: '18' })}`;
  shown(<FitScreen />);
  // 18 to the inch is 1.411 mm at 25.4 mm to the inch; ISO 261 lists no pitch over 6 mm.
  expect(screen.getByText(/^Read as 18 threads per inch, 1\.411 mm pitch/)).toBeTruthy();
  expect(document.querySelector('.fit-found')?.textContent).toMatch(/most likely 9\/16-18 UNF/);
  const pitch = field('Pitch or threads per inch');
  await userEvent.clear(pitch);
  await userEvent.type(pitch, '6');
  expect(screen.getByText('Read as 6 mm pitch.')).toBeTruthy();
  await userEvent.click(screen.getByRole('button', { name: 'It is 6 threads per inch' }));
  expect(pitch.value).toBe('6 tpi');
  expect(screen.getByText('Read as 4.233 mm pitch.')).toBeTruthy();
});
