import { describe, expect, it } from 'vitest';
import { refusalOf } from './bench.ts';
import { openFitsBench } from './fits-bench.ts';
import { openListBench, sampleFile } from './list-bench.ts';

const values = (...rows: readonly (readonly [string, string, string?])[]) =>
  rows.map(([path, value, unit]) => ({ path, value, unit: unit ?? '' }));

describe('a declared fit', () => {
  it('is bound to the one part line that is the thing by kind or name, and says what is left to choose', async () => {
    const bench = await openFitsBench();
    const head = await bench.part('Cylinder head, bare');
    await bench.part('Cylinder head bolts');
    await bench.part('Engine block, standard bore');
    await bench.part('Engine block, rebored');
    const plug = await bench.part('Spark plugs');
    await bench.part('Spark plug leads');
    const { notices, made } = await bench.fits.addShipped({
      ...bench.act(),
      build: bench.build,
      shipped: ['bore_centres', 'spark_plug', 'rod_journal_width', 'side_of_engine'],
    });
    const { declared } = await bench.fits.view({ build: bench.build });
    const bound = (shipped: string) =>
      declared.find((row) => row.shipped === shipped)?.things.map(({ name, part }) => [name, part]);
    expect(bound('bore_centres')).toEqual([
      ['head', head],
      ['block', null],
    ]);
    expect(bound('spark_plug')).toEqual([
      ['spark_plug', plug],
      ['head', head],
    ]);
    expect(notices).toEqual([
      'Bore centres of head and block: the head is “Cylinder head, bare”; choose which part line is the block: “Engine block, standard bore”, “Engine block, rebored”.',
      expect.stringContaining('no part line is named as the rod: choose one') as string,
      expect.stringContaining('the spark plug is “Spark plugs”; the head is “Cylinder head, bare”.') as string,
    ]);
    expect(made).toHaveLength(4);
    await bench.undoAndRedo();
    await bench.verify();
  });

  it('is unknown until everything it asks for is there, and says what is lacking and where from', async () => {
    const bench = await openFitsBench();
    await bench.fits.addShipped({ ...bench.act(), build: bench.build, shipped: ['head_coolant_ports'] });
    const view = await bench.fits.view({ build: bench.build });
    const [row] = view.declared;
    expect(row?.outcome).toBe('unknown');
    expect(row?.stands).toBe('unknown');
    expect(row?.missing.map(({ path }) => path)).toEqual(['block.cooling']);
    expect(view.offered.some(({ shipped }) => shipped === 'head_coolant_ports')).toBe(false);
    expect(view.answer).toBe('None of 1 fit is wrong, and 1 lacks something.');
    const head = await bench.part('Cylinder head', [['coolant ports', '4']]);
    const id = row?.id ?? 0;
    await bench.change('declaredFit', id, {
      things: { head },
      values: values(['block.cooling', 'water'], ['block.coolant_ports', '2']),
    });
    const failing = await bench.declared(id);
    expect([failing.outcome, failing.severity, failing.stands]).toEqual(['fail', 'danger', 'wrong']);
    expect(failing.says).toBe('Head has 4 coolant ports, block 2: one would stay open.');
    expect(failing.asks.map(({ path, value, from }) => [path, value, from])).toEqual([
      ['block.cooling', 'water', 'typed for this fit'],
      ['head.coolant_ports', '4', 'fact “coolant ports” of Cylinder head'],
      ['block.coolant_ports', '2', 'typed for this fit'],
    ]);
    // A head that can't be bolted on must not be ordered.
    const [stop] = await bench.fits.stops({ build: bench.build, parts: [head] });
    expect(stop?.subject).toEqual({ kind: 'declared-fit', id });
    const subject = { kind: 'declared-fit', id } as const;
    await bench.fits.accept({ ...bench.act(), subject, reason: 'Two ports are plugged.', by: 'Ann' });
    expect((await bench.declared(id)).stands).toBe('fits');
    expect(await bench.fits.stops({ build: bench.build, parts: [head] })).toEqual([]);
    await bench.change('declaredFit', id, {
      values: values(['block.cooling', 'water'], ['block.coolant_ports', '3']),
    });
    expect((await bench.declared(id)).accepted?.lapsed).toBe(true);
    expect((await bench.declared(id)).stands).toBe('wrong');
    await bench.change('declaredFit', id, { values: values(['block.cooling', 'air']) });
    expect((await bench.declared(id)).outcome).toBe('not asked');
    expect(bench.logged).toEqual([]);
  });

  it('reads the part’s ports and facts and the target sheet, and forgets a part that was dropped', async () => {
    const bench = await openFitsBench();
    const sensor = await bench.part('Pressure sensor', [
      ['full scale', '350', 'kPa'],
      ['least reading', '20', 'kPa'],
    ]);
    await bench.save('target', { name: 'boost', value: '1.4', unit: 'bar' });
    const asked = (more: object) => ({
      build: bench.build,
      shipped: 'map_sensor_range',
      rule: null,
      things: {},
      values: [],
      ...more,
    });
    const tried = await bench.fits.tryDeclared(asked({ things: { sensor } }));
    // 1.4 bar gauge + 1.013 = 2.413 bar abs; 3.5 − 2.413 = 1.087 bar = 108.7 kPa of room. By hand; air outside 1.013 bar.
    expect(tried.outcome).toBe('pass');
    expect(tried.margin).toBe('108.7 kPa');
    expect(tried.asks.map(({ from }) => from)).toEqual(['facts of Pressure sensor', 'target sheet: boost']);
    // 2.5 bar abs: 0.087 bar of room, and 0.1 is wanted.
    const small = await bench.fits.tryDeclared(asked({ values: values(['sensor.range', '0 to 2.5 bar abs']) }));
    expect(small.outcome).toBe('fail');
    await bench.client.parts.drop({ ...bench.act(), parts: [sensor], reason: '' });
    expect((await bench.fits.tryDeclared(asked({ things: { sensor } }))).outcome).toBe('unknown');
    const plug = await bench.part('Spark plug', [['thread', 'M14x1.25']]);
    const head = await bench.part('Cylinder head');
    await bench.port('spark plug', head, 'M14x1.25 female', { role: 'fastener' });
    const plugs = await bench.fits.tryDeclared(
      asked({
        shipped: 'spark_plug',
        things: { spark_plug: plug, head },
        values: values(
          ['spark_plug.reach', '19 mm'],
          ['head.spark_plug_reach', '19', 'mm'],
          ['spark_plug.seat', 'flat'],
          ['head.spark_plug_seat', 'taper'],
        ),
      }),
    );
    expect(plugs.outcome).toBe('fail');
    expect(plugs.says).toBe('The plug has a flat seat, the head a taper one: it can’t seal.');
    expect((await bench.fits.view({ build: bench.build })).declared).toEqual([]);
  });

  it('refuses a rule, thing or value that it can’t use, naming it', async () => {
    const bench = await openFitsBench();
    const head = await bench.part('Cylinder head');
    const made = (more: object) => bench.save('declaredFit', { title: 'A fit', shipped: 'gasket_bore', ...more });
    const field = async (more: object) => (await refusalOf(made(more))).field;
    expect(await field({ shipped: 'nothing' })).toBe('shipped');
    expect(await field({ shipped: '' })).toBe('rule');
    expect(await field({ rule: { id: 'own', title: 'Own', op: 'eq', severity: 'bad', pass: 'a', fail: 'b' } })).toBe(
      'rule.severity',
    );
    expect(await field({ things: { wheel: head } })).toBe('things.wheel');
    expect((await refusalOf(made({ things: { gasket: 999 } }))).code).toBe('not-found');
    expect(await field({ values: values(['gasket.width', '3']) })).toBe('values.0.path');
    expect(await field({ values: values(['gasket.bore', '87 mm'], ['gasket.bore', '88 mm']) })).toBe('values.1.path');
    const refused = await refusalOf(made({ values: values(['gasket.bore', '87']) }));
    expect(refused.field).toBe('values.0.value');
    expect(refused.accepted).toContain('86.5 mm');
    await made({ things: { gasket: head }, values: values(['gasket.bore', '87', 'mm']) });
    const twice = await refusalOf(
      bench.fits.addShipped({ ...bench.act(), build: bench.build, shipped: ['gasket_bore'] }),
    );
    expect(twice.message).toBe('The build has the fit “gasket_bore” already. Nothing was changed.');
  });

  it('can be a rule of one’s own', async () => {
    const bench = await openFitsBench();
    const rule = {
      id: 'starter_teeth',
      title: 'Teeth of starter and ring gear',
      left: 'starter.pitch',
      op: 'near',
      right: { value: 'ring_gear.pitch', unit: 'mm' },
      tol: 0.02,
      severity: 'danger',
      pass: 'The teeth mesh ({left}, {right}).',
      fail: 'The teeth don’t mesh: {left} against {right}.',
    };
    const id = await bench.save('declaredFit', {
      title: 'Starter and ring gear',
      rule,
      values: values(['starter.pitch', '0.25 in'], ['ring_gear.pitch', '6.35 mm']),
    });
    const row = await bench.declared(id);
    // 0.25 in = 6.35 mm exactly. Source: the international inch, 25.4 mm.
    expect(row.outcome).toBe('pass');
    expect(row.things.map(({ name }) => name)).toEqual(['starter', 'ring_gear']);
    expect(row.asks[0]?.label).toBe('the pitch of the starter');
  });
});

describe('a whole workbook as text', () => {
  it('carries ports, connections and declared fits', async () => {
    const { bench, lists } = await openListBench();
    const made = async (kind: 'port' | 'connection' | 'declaredFit', own: Record<string, unknown>) =>
      (await bench.client.records.save({ ...bench.act(), kind, build: bench.build, values: own })).made[0];
    const boss = await made('port', { name: 'boss', place: 'block', designation: 'M14x1.5 female' });
    const sides = { one: { port: boss, typed: '' }, other: { port: null, typed: 'M14x1.25 male' } };
    await made('connection', { title: 'Plug', ...sides });
    await made('declaredFit', { title: 'Gasket', shipped: 'gasket_bore' });
    const kept = async () =>
      Promise.all(
        (['port', 'connection', 'declaredFit'] as const).map((kind) =>
          bench.client.records.list({ kind, build: bench.build }),
        ),
      );
    const before = await kept();
    const copy = await lists.importWorkbook({ file: await lists.exportWorkbook(), name: 'Bench again' });
    await bench.client.workbook.open({ path: copy.path });
    expect(await kept()).toEqual(before);
    await bench.verify();
  });
});

describe('an order that a list tells of', () => {
  it('is history: a wrong fit is said in the report and stops nothing', async () => {
    const { bench, bring } = await openListBench();
    const added = await bench.client.parts.add({
      ...bench.act(),
      build: bench.build,
      parts: [{ description: 'Engine block', partNumber: 'BLK-28', needMilli: 1000 }],
    });
    const part = added.made[0] ?? 0;
    const thread = await bench.client.records.save({
      ...bench.act(),
      kind: 'port',
      build: bench.build,
      values: { name: 'thread', part, designation: 'M14x1.25 male' },
    });
    const sides = { one: { port: thread.made[0], typed: '' }, other: { port: null, typed: 'M14x1.5 female' } };
    const values = { title: 'Wrong', ...sides };
    await bench.client.records.save({ ...bench.act(), kind: 'connection', build: bench.build, values });
    const report = await bring(sampleFile('drover-orders.csv'));
    const row = report.rows.find((one) => one.part === part);
    expect(row?.text).toContain('Wrong: Look-alike, does not join: M14x1.25 into M14x1.5');
    expect(bench.logged).toEqual([]);
  });
});
