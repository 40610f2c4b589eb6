import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import { beforeEach, expect, it, vi } from 'vitest';
import type { SchematicView } from '../../core/contract/plumbing.ts';
import { schematicOf } from '../../core/plumbing/schematic.ts';
import Drawing from '../../renderer/screens/plumbing/drawing.tsx';
import { sampleFacts } from '../core/plumbing/schematic-sample.ts';
import { shown } from './shown.tsx';

const { schematic, keepPlaces } = vi.hoisted(() => ({ schematic: vi.fn(), keepPlaces: vi.fn() }));
vi.mock('../../renderer/app/client.ts', () => ({
  actKey: () => 'key-00000001',
  api: { plumbing: { schematic, keepPlaces }, journal: { undo: vi.fn() } },
}));

/** Around the turbocharger and the fuel filter: enough for a screen. */
const few = sampleFacts.lines.filter(({ name }) => /filter|oil/i.test(name));
const used = new Set(few.flatMap(({ from, to }) => [from, to]));
const facts = {
  ...sampleFacts,
  lines: few,
  ports: sampleFacts.ports.filter(({ id, name }) => used.has(id) || name === 'actuator drain'),
};
const sample: SchematicView = JSON.parse(JSON.stringify({ ...schematicOf(facts), places: {} }));
const turbo = () => screen.findByRole('link', { name: /^Turbocharger, back-ordered/ }, { timeout: 15_000 });
/** The part of the page that can be panned and zoomed. */
const canvas = () => within(screen.getByRole('application', { name: 'Drawing of the lines' }));

beforeEach(() => {
  // The test document measures nothing: widths are guessed.
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue(null);
  schematic.mockReset().mockResolvedValue(sample);
  keepPlaces.mockReset().mockResolvedValue({ act: 7, label: 'Places', entries: 1, parts: [], made: [], notices: [] });
});

it('draws components, ports and lines as links that say how they stand and what is wrong', async () => {
  shown(<Drawing />);
  const link = await turbo();
  expect(link.getAttribute('href')).toBe(
    `#/parts?part=${sample.nodes.find(({ title }) => title === 'Turbocharger')?.part}`,
  );
  expect(link.getAttribute('aria-label')).toMatch(/Not here yet, Nothing joins “actuator drain”, 2 missing$/);
  expect(canvas().getByRole('link', { name: /^Port actuator drain, .*nothing joins it$/ })).toBeTruthy();
  expect(
    canvas().getByRole('link', { name: /^Line Filter to rail, E85, .*unfit, Bend radius, 1 wrong$/ }),
  ).toBeTruthy();
  const block = canvas().getByRole('link', { name: /^Block, on the engine/ });
  expect(block.getAttribute('href')).toMatch(/^#\/fit\?port=/);
});

it('says the same in two tables', async () => {
  shown(<Drawing />);
  const components = await screen.findByRole('table', { name: 'Components and their ports' });
  expect(within(components).getAllByRole('row')).toHaveLength(sample.nodes.length + 1);
  const lines = screen.getByRole('table', { name: 'Lines from port to port' });
  expect(within(lines).getAllByRole('row')).toHaveLength(few.length + 1);
  const row = within(lines).getByRole('row', { name: /^Filter to rail/ });
  expect(row.textContent).toMatch(/Fuel filter, outlet.*Fuel rail, inlet.*unfit.*Wrong\. Bend radius/);
});

it('moves a component by the arrow keys, keeps the places, and lays out again', async () => {
  shown(<Drawing />);
  fireEvent.keyDown(await turbo(), { key: 'ArrowRight', shiftKey: true });
  fireEvent.click(await screen.findByRole('button', { name: 'Keep these places' }));
  await waitFor(() => expect(keepPlaces).toHaveBeenCalledTimes(1));
  const { places } = keepPlaces.mock.calls[0]?.[0] ?? {};
  expect(Object.keys(places)).toHaveLength(sample.nodes.length);
  schematic.mockResolvedValue({ ...sample, places });
  await waitFor(() => expect(screen.queryByRole('button', { name: 'Keep these places' })).toBeNull());
});

it('lays out again what was kept', async () => {
  schematic.mockResolvedValue({ ...sample, places: { 'place block': { x: 4000, y: 0 } } });
  shown(<Drawing />);
  await turbo();
  fireEvent.click(screen.getByRole('button', { name: 'Lay out again' }));
  await waitFor(() => expect(keepPlaces.mock.calls[0]?.[0]).toMatchObject({ build: 1, on: '2026-03-12', places: {} }));
});

it('moves nothing on a past day', async () => {
  shown(<Drawing />, { asOf: '2026-03-01' });
  fireEvent.keyDown(await turbo(), { key: 'ArrowRight' });
  expect(schematic).toHaveBeenCalledWith({ build: 1, asOf: '2026-03-01' });
  expect(screen.queryByRole('button', { name: 'Keep these places' })).toBeNull();
});

it('says what belongs here while there is no line', async () => {
  schematic.mockResolvedValue({ answer: 'No lines yet.', nodes: [], edges: [], places: {} });
  shown(<Drawing />);
  expect(await screen.findByText(/which component is joined to which/)).toBeTruthy();
});
