import { expect, it } from 'vitest';
import { type SchematicFacts, type SchematicPort, schematicOf } from '../../../core/plumbing/schematic.ts';
import { sampleFacts } from './schematic-sample.ts';

const port = (id: number, more: Partial<SchematicPort> = {}): SchematicPort => ({
  id,
  name: `port ${id}`,
  part: null,
  place: 'block',
  flows: true,
  text: 'M14x1.5 female',
  problem: '',
  ...more,
});
const line = {
  id: 7,
  name: 'Oil feed',
  fluid: 'engine oil',
  hose: '100R14 -4',
  standing: 'not made',
  wrong: [],
} as const;
const facts = (more: Partial<SchematicFacts>): SchematicFacts => ({
  parts: [],
  ports: [],
  lines: [],
  joints: [],
  ...more,
});

it('makes a component of each part with ports, each place of the engine and each end that nobody named', () => {
  const { nodes, edges, answer } = schematicOf(sampleFacts);
  expect(edges).toHaveLength(25);
  expect(nodes.filter(({ id }) => id.startsWith('place ')).map(({ title }) => title)).toEqual([
    'Block',
    'Sump',
    'Head',
    'Valve cover',
  ]);
  expect(nodes.filter(({ id }) => id.startsWith('end '))).toMatchObject([
    { id: 'end 24 to', wrong: [{ kind: 'missing', text: 'Nobody has said what “Breather to catch can” goes to.' }] },
  ]);
  expect(answer).toBe('25 lines between 24 components: 2 unfit, 17 not made, 6 made, 1 end goes nowhere yet.');
  const known = new Set(nodes.flatMap(({ id, ports }) => ports.map((one) => `${id}/${one.id}`)));
  for (const { from, to } of edges) {
    expect(known).toContain(`${from.node}/${from.port}`);
    expect(known).toContain(`${to.node}/${to.port}`);
  }
});

it('writes the same place of the engine once, however it is spelt', () => {
  const { nodes } = schematicOf(
    facts({
      ports: [port(1), port(2, { place: ' Block' }), port(3, { place: '' })],
      lines: [{ ...line, from: 1, to: 2 }],
    }),
  );
  expect(nodes.map(({ id, title, standing }) => [id, title, standing])).toEqual([
    ['place block', 'Block', 'on the engine'],
    ['place engine', 'Engine', 'on the engine'],
  ]);
});

it('says what is missing or wrong about a component', () => {
  const parts = [{ id: 5, title: 'Turbocharger', standing: 'back-ordered', standingText: '1 needed: 1 on back-order' }];
  const { nodes } = schematicOf(
    facts({
      parts,
      ports: [
        port(1, { part: 5, name: 'oil inlet' }),
        port(2, { part: 5, name: 'oil drain' }),
        port(3, { part: 5, name: 'sensor', problem: 'a letter is missing', text: '-6' }),
        port(4, { part: 5, name: 'flange bolt', flows: false }),
        port(9),
      ],
      lines: [
        { ...line, from: 9, to: 1 },
        { ...line, id: 8, name: 'Second feed', from: null, to: 1 },
      ],
      joints: [{ ports: [3, 77], stands: 'wrong', says: 'Look-alike: the pitch differs.' }],
    }),
  );
  const turbo = nodes.find(({ id }) => id === 'part 5');
  expect(turbo?.ports.map(({ name, open }) => [name, open])).toEqual([
    ['oil inlet', false],
    ['oil drain', true],
    ['sensor', false],
  ]);
  expect(turbo?.wrong.map(({ kind, short }) => [kind, short])).toEqual([
    ['missing', 'Not here yet'],
    ['wrong', "Can't read “sensor”"],
    ['wrong', '2 lines at “oil inlet”'],
    ['wrong', "“sensor” doesn't fit"],
    ['missing', 'Nothing joins “oil drain”'],
  ]);
});

it('leaves out what only holds, and what is joined without a line', () => {
  const { nodes, answer } = schematicOf(
    facts({
      ports: [port(1, { flows: false }), port(2, { place: 'head' }), port(3, { place: 'head', name: 'sender' })],
      joints: [{ ports: [2, 3], stands: 'fits', says: '' }],
    }),
  );
  expect(nodes).toEqual([]);
  expect(answer).toBe('No lines yet.');
});

it('keeps a line whose port was taken off the list, and says so', () => {
  const { nodes, edges } = schematicOf(facts({ ports: [port(1)], lines: [{ ...line, from: 1, to: 99 }] }));
  expect(edges[0]?.to.node).toBe('end 7 to');
  expect(nodes.at(-1)?.wrong[0]?.text).toBe('The port that “Oil feed” goes to was taken off the list.');
});
