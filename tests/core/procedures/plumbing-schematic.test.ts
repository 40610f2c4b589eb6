import { createRouterClient } from '@orpc/server';
import { expect, it } from 'vitest';
import { answering } from '../../../core/procedures/handler.ts';
import { schematicProcedures } from '../../../core/procedures/plumbing-schematic.ts';
import { refusalOf } from './bench.ts';
import { oilFeed, openPlumbingBench } from './plumbing-bench.ts';

async function openDrawing() {
  const bench = await openPlumbingBench({ today: '2026-03-02' });
  const { drawing } = createRouterClient(
    { drawing: schematicProcedures },
    { context: bench.context, interceptors: [answering((line) => (bench.logged as string[]).push(line)) as never] },
  );
  const { build } = bench;
  const turbo = await bench.part('Turbocharger', 1000);
  const port = (values: object) => bench.save('port', { designation: 'JIC -6 male', place: '', part: null, ...values });
  const ports = {
    gallery: await port({ name: 'oil gallery', place: 'Block' }),
    inlet: await port({ name: 'oil inlet', part: turbo }),
    drain: await port({ name: 'oil drain', part: turbo }),
  };
  const feed = await bench.line('Oil feed', oilFeed, { from: ports.gallery, to: ports.inlet });
  return {
    ...bench,
    turbo,
    ports,
    feed,
    show: (asOf?: string) => drawing.schematic({ build, ...(asOf === undefined ? {} : { asOf }) }),
    keep: (places: Record<string, { x: number; y: number }>) => drawing.keepPlaces({ ...bench.act(), build, places }),
  };
}

it('shows part lines and places of the engine with their ports, and the line between them', async () => {
  const { show, turbo, ports, feed, logged } = await openDrawing();
  const { answer, nodes, edges } = await show();
  expect(answer).toBe('1 line between 2 components: 1 not made.');
  expect(nodes.find(({ id }) => id === `part ${turbo}`)).toMatchObject({
    title: 'Turbocharger',
    standing: 'needed',
    ports: [
      { port: ports.inlet, name: 'oil inlet', text: 'JIC -6 (9/16-18) male', open: false },
      { port: ports.drain, name: 'oil drain', open: true },
    ],
    wrong: [
      { kind: 'missing', short: 'Not here yet' },
      { kind: 'missing', short: 'Nothing joins “oil drain”' },
    ],
  });
  expect(edges).toMatchObject([
    {
      line: feed,
      fluid: 'engine oil',
      from: { node: 'place block', port: `port ${ports.gallery}` },
      to: { node: `part ${turbo}`, port: `port ${ports.inlet}` },
      standing: 'not made',
    },
  ]);
  expect(logged).toEqual([]);
});

it('names the checks that a line fails, and shows a line that can’t be worked out yet', async () => {
  const { show, line, ports, feed } = await openDrawing();
  const tight = await line('Tight', { ...oilFeed, route: 'u', spacing: 60, length: null }, { from: ports.drain });
  const plan = await line('Plan', { fluid: 'coolant' });
  const { edges, answer } = await show();
  const lacks = (id: number) =>
    edges.find((edge) => edge.line === id)?.wrong.map(({ kind, short }) => `${kind} ${short}`);
  expect(lacks(feed)).toEqual([]);
  expect(lacks(tight)).toContain('wrong Bend radius');
  expect(lacks(plan)).toEqual(['missing Not worked out yet']);
  expect(answer).toBe('3 lines between 2 components: 1 unfit, 2 not made, 3 ends go nowhere yet.');
});

it('keeps places, replaces them, forgets them, and takes each back', async () => {
  const { show, keep, client, act, verify, turbo } = await openDrawing();
  const id = `part ${turbo}`;
  await keep({ [id]: { x: 120.4, y: -30 }, 'place block': { x: 0, y: 0 } });
  expect((await show()).places).toEqual({ [id]: { x: 120, y: -30 }, 'place block': { x: 0, y: 0 } });
  await keep({ [id]: { x: 5, y: 6 } });
  expect((await show()).places).toEqual({ [id]: { x: 5, y: 6 } });
  const { act: cleared } = await keep({});
  expect((await show()).places).toEqual({});
  await client.journal.undo({ key: act().key, act: cleared });
  expect((await show()).places).toEqual({ [id]: { x: 5, y: 6 } });
  await verify();
});

it('refuses places of what isn’t in the drawing, and places out of reach', async () => {
  const { keep, show } = await openDrawing();
  expect(await refusalOf(keep({ 'part 999': { x: 0, y: 0 } }))).toMatchObject({
    code: 'not-found',
    field: 'places.part 999',
  });
  expect(await refusalOf(keep({ 'place block': { x: 1e9, y: 0 } }))).toMatchObject({
    code: 'bad-input',
    field: 'places.place block',
  });
  expect((await show()).places).toEqual({});
});

it('shows a past day as it was', async () => {
  const { show, today, line, ports } = await openDrawing();
  today('2026-03-20');
  await line('Oil drain', oilFeed, { from: ports.drain }, '2026-03-15');
  expect((await show()).edges).toHaveLength(2);
  expect((await show('2026-03-10')).edges).toHaveLength(1);
});
