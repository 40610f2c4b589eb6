import { describe, expect, it } from 'vitest';
import type { RefusalData } from '../../../core/contract/common.ts';
import { openChecksBench } from './checks-bench.ts';

const refusal = async (work: Promise<unknown>): Promise<RefusalData> => {
  try {
    await work;
  } catch (error) {
    return (error as { data: RefusalData }).data;
  }
  throw new Error('Nothing was refused.');
};

const injectorTargets = [
  ['power', '240', 'kW'],
  ['power rpm', '6000', 'rpm'],
  ['cylinders', '4'],
  ['least ethanol', '0', '%'],
  ['most ethanol', '85', '%'],
  ['fuel consumption at least ethanol', '360', 'g/kWh'],
  ['fuel consumption at most ethanol', '520', 'g/kWh'],
  ['base fuel pressure', '3', 'bar'],
] as const;

describe('a build without checks', () => {
  it('shows none, offers those that ship, and has nothing of them in the hoist check', async () => {
    const bench = await openChecksBench();
    const view = await bench.checks.view({ build: bench.build });
    expect(view.checks).toEqual([]);
    expect(view.answer).toBe('No checks yet.');
    expect(view.offered.length).toBeGreaterThanOrEqual(20);
    expect((await bench.gate.review({ build: bench.build })).listed).toBe(0);
  });
});

describe('injectors for the power target', () => {
  it('lacks what it names, then fails on the worst blend, and holds with larger ones', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    await bench.checks.addShipped({ ...bench.act(), build, shipped: ['injector-duty'] });
    expect((await bench.only()).verdict).toBe('lacks data');
    const part = await bench.part('Injector set', 'injector', [
      ['injector flow', '550', 'cc/min'],
      ['rated pressure', '3', 'bar'],
    ]);
    await bench.targets(...injectorTargets);
    const lacking = await bench.only();
    expect(lacking.says).toBe('Lacks dead time of Injector set.');
    expect(lacking.inputs.find(({ name }) => name === 'dead_time')?.part).toBe(part);
    expect(lacking.value).toBeNull();
    await bench.checks.setFacts({
      ...bench.act(),
      part,
      kind: 'injector',
      facts: [
        { key: 'injector flow', value: '550', unit: 'cc/min' },
        { key: 'rated pressure', value: '3', unit: 'bar' },
        { key: 'dead time', value: '0.9', unit: 'ms' },
      ],
    });
    // E85: 0.85 · 792 + 0.15 · 745 = 784.95 kg/m³; 240 · 0.52 = 124.8 kg/h = 158.9910 L/h = 2649.85 cc/min; /4 =
    // 662.462; /550 = 1.204477; 0.9/20 = 0.045; 124.948 % against 85 %.
    const failing = await bench.only();
    expect(failing.verdict).toBe('fails');
    expect(failing.value).toBeCloseTo(124.948, 2);
    expect(failing.margin).toBeCloseTo(-39.948, 2);
    expect(failing.says).toContain('Worst of the fuel range: 85 % ethanol.');
    expect(failing.caution).not.toBe('');
    // 1050 in their place: 662.462/1050 = 0.630916; with 0.045: 67.592 %.
    const swap = await bench.checks.swap({
      build,
      candidates: [
        {
          label: '1050',
          part,
          facts: [{ key: 'injector flow', value: '1050', unit: 'cc/min' }],
          priceMinor: 70_800,
          arrivesInDays: 12,
        },
        {
          label: '850',
          part,
          facts: [{ key: 'injector flow', value: '850', unit: 'cc/min' }],
          priceMinor: 50_000,
          arrivesInDays: 3,
        },
      ],
    });
    const [row] = swap.rows;
    expect(row?.cells.map(({ verdict }) => verdict)).toEqual(['fails', 'holds', 'close']);
    expect(Number(row?.cells[1]?.figure.replace(/ .*/, ''))).toBeCloseTo(67.592, 2);
    expect(swap.columns.map(({ forecastMinor }) => forecastMinor)).toEqual([0, 70_800, 50_000]);
    expect(swap.columns[1]?.atLeastOn).toBe('2026-03-14');
    expect(await bench.only()).toEqual(failing);
    await bench.undoAndRedo();
  });

  it('looks at the fitted part before one that is only needed', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    const facts = [
      ['rated pressure', '3', 'bar'],
      ['dead time', '0.9', 'ms'],
    ] as const;
    await bench.part('Needed injectors', 'injector', [['injector flow', '550', 'cc/min'], ...facts]);
    const fitted = await bench.part('Fitted injectors', 'injector', [['injector flow', '1300', 'cc/min'], ...facts]);
    await bench.targets(...injectorTargets);
    await bench.checks.addShipped({ ...bench.act(), build, shipped: ['injector-duty'] });
    expect((await bench.only()).inputs[1]?.from).toBe('Needed injectors (needed)');
    await bench.client.parts.act({ ...bench.act('2026-03-02'), build, act: 'own', items: [{ part: fitted }] });
    expect((await bench.only()).inputs[1]?.from).toBe('Fitted injectors (in hand)');
    await bench.client.parts.act({ ...bench.act('2026-03-02'), build, act: 'fit', items: [{ part: fitted }] });
    expect((await bench.only()).inputs[1]?.from).toBe('Fitted injectors (fitted)');
    // The day before: nothing was on the list, and the check was not made.
    expect((await bench.checks.view({ build, asOf: '2026-03-01' })).checks).toEqual([]);
  });
});

describe('the hoist check over the weeks', () => {
  it('counts on each day what its own review of that day counts, also after a later act', async () => {
    const bench = await openChecksBench({ today: '2026-03-01' });
    const { build } = bench;
    bench.today('2026-04-20');
    const part = await bench.part('Crank', 'crankshaft', [['stroke', '80', 'mm']], '2026-03-02');
    await bench.checks.addShipped({ ...bench.act('2026-03-03'), build, shipped: ['piston-speed', 'displacement'] });
    const counts = async () => {
      const points = await bench.gate.history({ build });
      for (const { on, count } of points) {
        expect((await bench.gate.review({ build, asOf: on })).blockers).toHaveLength(count);
      }
      return points.map(({ count }) => count);
    };
    const before = await counts();
    expect(await counts()).toEqual(before);
    await bench.client.parts.act({ ...bench.act('2026-04-01'), build, act: 'own', items: [{ part }] });
    await bench.client.parts.act({ ...bench.act('2026-04-02'), build, act: 'fit', items: [{ part }] });
    const after = await counts();
    expect(after.at(-1)).toBe((before.at(-1) ?? 0) - 1);
    expect(after[1]).toBe(before[1]);
  });
});

describe('a saved case', () => {
  it.each([
    ['calculator', { calculator: 'Q1', inputs: {} }],
    ['inputs.girth', { calculator: 'B1', inputs: { girth: { value: 86, unit: 'mm' } } }],
    ['units.girth', { calculator: 'B1', inputs: {}, units: { girth: 'mm' } }],
  ])('is refused by its %s', async (field, values) => {
    const bench = await openChecksBench();
    const save = (given: object) =>
      bench.client.records.save({
        ...bench.act(),
        kind: 'savedCase',
        build: bench.build,
        values: { title: 'Case', ...given },
      });
    expect((await refusal(save(values))).field).toBe(field);
    await save({ calculator: 'B1', inputs: { bore: { value: 86, unit: 'mm' } }, units: { displacement: 'L' } });
  });
});

describe('a swap', () => {
  it('is refused for a part line that was dropped', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    const part = await bench.part('Crank', 'crankshaft', [['stroke', '80', 'mm']]);
    await bench.checks.addShipped({ ...bench.act(), build, shipped: ['piston-speed'] });
    await bench.client.parts.drop({ ...bench.act(), parts: [part], reason: '' });
    const candidates = [{ label: 'Longer', part, facts: [], priceMinor: null, arrivesInDays: null }];
    const { field, message } = await refusal(bench.checks.swap({ build, candidates }));
    expect(field).toBe('part');
    expect(message).toContain('“Crank” was dropped');
  });
});

describe('verdicts over time', () => {
  it('are those of each day, with what was known and fitted then', async () => {
    const bench = await openChecksBench({ today: '2026-03-01' });
    const { build } = bench;
    bench.today('2026-03-20');
    const part = await bench.part('Crank', 'crankshaft', [['stroke', '80', 'mm']], '2026-03-02');
    await bench.checks.setTargets({
      ...bench.act('2026-03-02'),
      build,
      targets: [
        { name: 'bore', value: '86', unit: 'mm', source: '' },
        { name: 'cylinders', value: '4', unit: '', source: '' },
        { name: 'rev limit', value: '9000', unit: 'rpm', source: '' },
      ],
    });
    const added = await bench.checks.addShipped({ ...bench.act('2026-03-03'), build, shipped: ['piston-speed'] });
    const check = added.made[0] ?? 0;
    const stroke = (value: string, on: string) =>
      bench.checks.setFacts({
        ...bench.act(on),
        part,
        kind: 'crankshaft',
        facts: [{ key: 'stroke', value, unit: 'mm' }],
      });
    await stroke('90', '2026-03-05');
    await stroke('70', '2026-03-09');
    // Recorded last, for a day in between.
    await bench.checks.setTargets({
      ...bench.act('2026-03-07'),
      build,
      targets: [{ name: 'rev limit', value: '8000', unit: 'rpm', source: '' }],
    });
    const points = await bench.checks.history({ build, check });
    // 2 · stroke · rpm/60: 24.0 (close to 25), 27.0, 24.0, 18.667 m/s.
    expect(points.map(({ on, verdict, value }) => [on, verdict, Number(value?.toFixed(3))])).toEqual([
      ['2026-03-03', 'close', 24],
      ['2026-03-05', 'fails', 27],
      ['2026-03-07', 'close', 24],
      ['2026-03-09', 'holds', 18.667],
    ]);
    expect((await bench.only('2026-03-06')).verdict).toBe('fails');
    expect((await bench.gate.review({ build, asOf: '2026-03-06' })).blockers.map(({ kind }) => kind)).toContain(
      'check failing',
    );
    expect((await bench.gate.review({ build })).blockers.map(({ kind }) => kind)).not.toContain('check failing');
  });
});

describe('the builder’s own checks', () => {
  const own = {
    title: 'Belt',
    calculator: 'H1',
    inputs: {
      crank_teeth: { from: 'typed', given: { value: 22 }, source: 'counted' },
      cam_teeth: { from: 'typed', given: { value: 44 }, source: 'counted' },
    },
    output: 'ratio_ok',
    limit: { least: 1, most: null, unit: '', closeMilli: 0, source: '' },
  } as const;

  it('bind any calculator, and are tried out before they are kept', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    expect((await bench.checks.tryOut({ build, ...own })).verdict).toBe('holds');
    expect((await bench.checks.view({ build })).checks).toEqual([]);
    await bench.client.records.save({ ...bench.act(), kind: 'check', build, values: { ...own } });
    expect((await bench.only()).verdict).toBe('holds');
  });

  it('read a target of the builder’s own name in the unit that the calculator wants', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    await bench.targets(['my journal', '47.96', 'mm'], ['my shell', '48.015 mm']);
    const clearance = {
      title: 'Clearance',
      calculator: 'G1',
      inputs: {
        bearing_bore: { from: 'target', target: 'my shell' },
        journal: { from: 'target', target: 'My Journal' },
      },
      output: 'clearance',
      limit: { least: 1.8, most: 2.6, unit: 'thou', closeMilli: 50, source: 'the maker' },
    } as const;
    const row = await bench.checks.tryOut({ build, ...clearance });
    // 48.015 − 47.96 = 0.055 mm = 2.16535 thou.
    expect(row).toMatchObject({ verdict: 'holds', unit: 'thou' });
    expect(row.value).toBeCloseTo(2.16535, 4);
    const open = await bench.checks.tryOut({
      build,
      ...clearance,
      limit: { ...clearance.limit, least: null, most: null },
    });
    expect(open.verdict).toBe('lacks data');
    expect(open.says).toContain('a limit');
    expect(open.value).toBeCloseTo(2.16535, 4);
  });

  it('read measuring sheets', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    const { made } = await bench.client.records.save({
      ...bench.act(),
      kind: 'measuringSheet',
      build,
      values: { title: 'Ring gaps', quantity: 'ring gap', places: ['1', '2'], readings: ['gap'], unit: 'mm' },
    });
    const gap = {
      title: 'Gap',
      calculator: 'G3',
      inputs: {
        bore: { from: 'typed', given: { value: 86, unit: 'mm' }, source: '' },
        factor: { from: 'typed', given: { value: 0.0045 }, source: 'ring maker' },
      },
      output: 'target_gap',
      limit: {
        least: null,
        most: null,
        unit: 'mm',
        closeMilli: 0,
        source: '',
        mostFrom: { from: 'measurement', sheet: made[0] ?? 0, figure: 'least' },
      },
    } as const;
    expect((await bench.checks.tryOut({ build, ...gap })).says).toContain('readings on “Ring gaps”');
    await bench.sheets.read({
      ...bench.act(),
      sheet: made[0] ?? 0,
      readings: ['0.40', '0.38'].map((typed, index) => ({
        place: String(index + 1),
        name: 'gap',
        typed,
        temperatureC: null,
      })),
      by: '',
      instrument: '',
    });
    // 86 · 0.0045 = 0.387 mm, and the smallest measured is 0.38.
    const row = await bench.checks.tryOut({ build, ...gap });
    expect(row.verdict).toBe('fails');
    expect(row.margin).toBeCloseTo(-0.007, 9);
  });

  it('are refused with the field when they can’t be kept', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    const tried = (change: object) => refusal(bench.checks.tryOut({ build, ...own, ...change } as never));
    expect((await tried({ calculator: 'Z9' })).field).toBe('calculator');
    expect((await tried({ output: 'nothing' })).field).toBe('output');
    expect((await tried({ inputs: { teeth: own.inputs.cam_teeth } })).field).toBe('inputs.teeth');
    expect((await tried({ inputs: { cam_teeth: own.inputs.cam_teeth } })).field).toBe('inputs.crank_teeth');
    const typed = { from: 'typed', given: { value: 'many' }, source: '' };
    expect((await tried({ inputs: { ...own.inputs, cam_teeth: typed } })).field).toBe('inputs.cam_teeth');
    const kindless = { from: 'fact', fact: 'cam teeth', part: null, partKind: 'thing' };
    expect((await tried({ inputs: { ...own.inputs, cam_teeth: kindless } })).field).toBe('inputs.cam_teeth');
    const saved = bench.client.records.save({
      ...bench.act(),
      kind: 'check',
      build,
      values: { ...own, output: 'nothing' },
    });
    expect((await refusal(saved)).field).toBe('output');
  });
});

describe('facts and targets', () => {
  it('are refused by name, all or nothing', async () => {
    const bench = await openChecksBench();
    const part = await bench.part('Injector', 'injector', []);
    const facts = [
      { key: 'resistance', value: '12', unit: 'ohm' },
      { key: 'injector flow', value: '1050', unit: 'mm' },
    ];
    const said = await refusal(bench.checks.setFacts({ ...bench.act(), part, kind: 'injector', facts }));
    expect(said.field).toBe('injector flow');
    expect(said.accepted).toContain('cc/min');
    expect((await bench.client.parts.detail({ build: bench.build, part })).facts).toEqual([]);
    expect((await refusal(bench.targets(['boost', '1', 'bar'], ['power', 'much', 'kW']))).field).toBe('power');
    const { targets } = await bench.checks.view({ build: bench.build });
    expect(targets.every(({ value }) => value === '')).toBe(true);
  });

  it('are taken off the sheet by an empty value, and put back by undo', async () => {
    const bench = await openChecksBench();
    const { build } = bench;
    const boost = async () => (await bench.checks.view({ build })).targets.find(({ name }) => name === 'boost')?.value;
    await bench.targets(['boost', '1.4', 'bar']);
    expect(await boost()).toBe('1.4');
    await bench.targets(['boost', '1.6', 'bar']);
    await bench.targets(['boost', '']);
    expect(await boost()).toBe('');
    await bench.undoAndRedo();
    await bench.targets(['boost', '1.2', 'bar']);
    expect(await boost()).toBe('1.2');
  });

  it('are proposed from the description, and from the same part in another build', async () => {
    const bench = await openChecksBench();
    const part = await bench.part('Injectors 1050 cc set of 6', '', []);
    expect(await bench.checks.proposals({ part })).toEqual({
      kind: 'injector',
      kindBecause: '“Injectors”',
      facts: [{ key: 'injector flow', label: 'Injector flow', value: '1050', unit: 'cc/min', because: '“1050 cc”' }],
    });
    const other = await bench.client.builds.create({ ...bench.act(), values: { name: 'Spring build' } });
    const values = { description: 'Injectors, large', partNumber: 'VI-9', maker: 'Varlund', needMilli: 1000 };
    const facts = [{ key: 'dead time', value: '0.9', unit: 'ms' }];
    await bench.client.parts.add({
      ...bench.act(),
      build: bench.build,
      parts: [{ ...values, kind: 'injector', facts }],
    });
    const added = await bench.client.parts.add({
      ...bench.act(),
      build: other.made[0] ?? 0,
      parts: [{ ...values, partNumber: 'vi-9', description: 'Set, 1200 cc/min' }],
    });
    const copied = await bench.checks.proposals({ part: added.made[0] ?? 0 });
    expect(copied.kind).toBe('injector');
    expect(copied.kindBecause).toContain('the same part in');
    expect(copied.facts.map(({ key, value }) => [key, value])).toEqual([
      ['dead time', '0.9'],
      ['injector flow', '1200'],
    ]);
  });

  it('keep the kind of a part through change and undo', async () => {
    const bench = await openChecksBench();
    const part = await bench.part('Piston set', 'Piston', [['bore', '86.5', 'mm']]);
    const kind = async () => (await bench.client.parts.detail({ build: bench.build, part })).row.kind;
    expect(await kind()).toBe('piston');
    await bench.checks.setFacts({ ...bench.act(), part, kind: '', facts: [] });
    expect(await kind()).toBe('');
    await bench.undoAndRedo();
  });
});
