import { describe, expect, it } from 'vitest';
import { refusalOf } from './bench.ts';
import { openFitsBench } from './fits-bench.ts';

describe('a connection of two ports', () => {
  it('is judged by what the ports say now, the worst first', async () => {
    const bench = await openFitsBench();
    const turbo = await bench.part('Turbocharger');
    const fitting = await bench.part('Drain fitting');
    const drain = await bench.port('oil drain', turbo, 'M14x1.5 female', { medium: 'engine oil' });
    const end = await bench.port('end', fitting, 'M14x1.25 male');
    const good = await bench.connection('Sump return', 'hose 8 mm', 'barb 8 mm');
    const drainFit = await bench.connection('Oil drain', drain, end, { medium: 'engine oil' });
    const row = await bench.row(drainFit);
    // M14x1.5 against M14x1.25 is a look-alike that strips the port; of hot oil it is raised by one. Source: ISO 261.
    expect(row.fit.verdict).toBe('lookalike');
    expect(row.fit.severity).toBe('stop');
    expect(row.stands).toBe('wrong');
    expect(row.one).toEqual({
      port: drain,
      part: turbo,
      text: 'M14x1.5 female',
      whose: 'oil drain of Turbocharger',
      standing: 'needed',
    });
    expect(row.says).toMatch(/^Look-alike, does not join: M14x1\.25 into M14x1\.5: .*\.$/);
    const view = await bench.fits.view({ build: bench.build });
    expect(view.connections.map(({ id }) => id)).toEqual([drainFit, good]);
    expect(view.answer).toBe('1 of 2 fits is wrong.');
    expect(view.ports.map(({ canonical, connections }) => [canonical, connections])).toEqual([
      ['M14x1.5 female', [drainFit]],
      ['M14x1.25 male', [drainFit]],
    ]);
    await bench.change('port', end, { designation: 'M14x1.5 male' });
    expect((await bench.row(drainFit)).fit.verdict).toBe('mates');
    expect((await bench.fits.view({ build: bench.build })).answer).toBe('All 2 fits are right.');
    expect(bench.logged).toEqual([]);
  });

  it('gives the same verdict whichever side is named first', async () => {
    const bench = await openFitsBench();
    for (const [one, other] of [
      ['M14x1.5 male', 'M14x1.25 female'],
      ['AN -6 male', 'M14x1.5 female'],
      ['AN -6 male', 'M18x1.5 male'],
      ['VB 76', 'VB 63'],
      ['M14x1.5', 'M14x1.5 female'],
    ] as const) {
      const there = await bench.row(await bench.connection('There', one, other));
      const back = await bench.row(await bench.connection('Back', other, one));
      expect([back.fit.verdict, back.fit.severity, back.stands]).toEqual([
        there.fit.verdict,
        there.fit.severity,
        there.stands,
      ]);
    }
  });

  it('is not known once its part was dropped, and the port is no candidate any more', async () => {
    const bench = await openFitsBench();
    const pump = await bench.part('Oil pump');
    const outlet = await bench.port('outlet', pump, 'M18x1.5 female');
    const id = await bench.connection('Pump outlet', outlet, 'M18x1.5 male');
    expect((await bench.row(id)).stands).toBe('fits');
    await bench.client.parts.drop({ ...bench.act(), parts: [pump], reason: 'another pump' });
    const row = await bench.row(id);
    expect([row.fit.verdict, row.stands]).toEqual(['unknown', 'unknown']);
    expect(row.fit.missing).toEqual(['another part in place of “Oil pump”, which was dropped']);
    expect((await bench.fits.view({ build: bench.build })).ports).toEqual([]);
  });

  it('can be tried before it is kept, and nothing is written', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('oil pressure', null, 'M12x1.5 female');
    const tried = {
      build: bench.build,
      one: { port: boss, typed: '' },
      other: { port: null, typed: 'M12x1.25 male' },
      role: 'fluid',
      medium: '',
      pressureBar: null,
    } as const;
    expect((await bench.fits.tryOut(tried)).fit.verdict).toBe('lookalike');
    expect((await bench.fits.view({ build: bench.build })).connections).toEqual([]);
    const refused = await refusalOf(bench.fits.tryOut({ ...tried, other: { port: boss, typed: '' } }));
    expect(refused.field).toBe('other.port');
  });
});

describe('records of fits', () => {
  it('refuse what can’t be read, with ways to write it', async () => {
    const bench = await openFitsBench();
    const refused = await refusalOf(bench.port('boss', null, '1/8'));
    expect(refused.field).toBe('designation');
    expect(refused.accepted).toContain('1/8 NPT');
    expect((await refusalOf(bench.connection('Empty', '', 'M14x1.5 male'))).field).toBe('one');
    expect((await refusalOf(bench.connection('Unread', 'M14x1.5 male', 'round'))).field).toBe('other.typed');
    const boss = await bench.port('boss', null, 'M14x1.5 female');
    expect((await refusalOf(bench.connection('Itself', boss, boss))).field).toBe('other.port');
    expect((await refusalOf(bench.connection('Nothing', 999, boss))).code).toBe('not-found');
    const both = { one: { port: boss, typed: 'M14x1.5 male' }, other: { port: null, typed: 'M14x1.5 male' } };
    expect((await refusalOf(bench.save('connection', { title: 'Both', ...both }))).field).toBe('one');
    const { made } = await bench.client.builds.create({ ...bench.act(), values: { name: 'Another' } });
    const strange = await bench.client.records.save({
      ...bench.act(),
      kind: 'port',
      build: made[0] ?? 0,
      values: { name: 'boss', designation: 'M14x1.5 female', place: 'head' },
    });
    expect((await refusalOf(bench.connection('Other build', strange.made[0] ?? 0, boss))).field).toBe('one.port');
  });

  it('keep a port that something joins', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('boss', null, 'M14x1.5 female');
    const id = await bench.connection('Plug', boss, 'M14x1.5 male');
    const [row] = await bench.client.records.list({ kind: 'port', build: bench.build });
    expect(row?.uses).toBe(1);
    const retire = (kind: 'port' | 'connection', record: number) =>
      bench.client.records.retire({ ...bench.act(), kind, id: record, reason: '' });
    const refused = await refusalOf(retire('port', boss));
    expect(refused.code).toBe('in-use');
    expect(refused.message).toContain('“Plug”');
    await retire('connection', id);
    await retire('port', boss);
    expect((await bench.fits.view({ build: bench.build })).ports).toEqual([]);
  });
});

describe('an adapter', () => {
  it('puts its pieces and seals on the list once, and is undone as one act', async () => {
    const bench = await openFitsBench();
    const tank = await bench.part('Fuel tank');
    const outlet = await bench.port('outlet', tank, 'M14x1.5 female', { medium: 'fuel' });
    const id = await bench.connection('Tank to feed', outlet, 'AN -6 female', { medium: 'fuel' });
    const { adapters } = (await bench.row(id)).fit;
    expect(adapters.length).toBeGreaterThan(1);
    await bench.fits.useAdapter({ ...bench.act(), connection: id, adapter: 0 });
    const chosen = await bench.row(id);
    expect(chosen.stands).toBe('fits');
    expect(chosen.adapter?.pieces).toEqual(adapters[0]?.pieces);
    const first = await bench.list();
    for (const piece of adapters[0]?.pieces ?? []) expect(first[piece]).toBe(1);
    // Chosen again, nothing is raised.
    await bench.fits.useAdapter({ ...bench.act(), connection: id, adapter: 0 });
    expect(await bench.list()).toEqual(first);
    await bench.undoAndRedo();
    // Another choice takes back what only the first one brought.
    await bench.fits.useAdapter({ ...bench.act(), connection: id, adapter: 1 });
    const second = await bench.list();
    for (const piece of adapters[1]?.pieces ?? []) expect(second[piece]).toBe(1);
    for (const piece of adapters[0]?.pieces ?? []) {
      if (adapters[1]?.pieces.includes(piece) !== true) expect(second[piece]).toBeUndefined();
    }
    await bench.undoAndRedo();
    await bench.fits.dropAdapter({ ...bench.act(), connection: id });
    expect(await bench.list()).toEqual({ 'Fuel tank': 1 });
    expect((await bench.row(id)).stands).toBe('wrong');
    await bench.verify();
    expect(bench.logged).toEqual([]);
  });

  it('raises the need of a line that stands for another connection, and of a seal that two joints want', async () => {
    const bench = await openFitsBench();
    const ends = ['M14x1.5 male', 'M14x1.25 female'] as const;
    const one = await bench.connection('First', ...ends);
    const other = await bench.connection('Second', ...ends);
    await bench.fits.useAdapter({ ...bench.act(), connection: one, adapter: 0 });
    const piece = 'female M14x1.5 to male M14x1.25 with sealing washer';
    // Both joints want a washer; the one whose size isn't known is no other thing.
    const washer = 'sealing washer 14x18 mm or O-ring under the shoulder';
    expect(await bench.list()).toEqual({ [piece]: 1, [washer]: 2 });
    await bench.fits.useAdapter({ ...bench.act(), connection: other, adapter: 0 });
    expect(await bench.list()).toEqual({ [piece]: 2, [washer]: 4 });
    await bench.fits.dropAdapter({ ...bench.act(), connection: one });
    expect(await bench.list()).toEqual({ [piece]: 1, [washer]: 2 });
    expect((await bench.row(other)).stands).toBe('fits');
    await bench.verify();
  });

  it('counts no longer when its line was dropped or when a port has changed', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('boss', null, 'M14x1.25 female');
    const id = await bench.connection('Feed', boss, 'M14x1.5 male');
    await bench.fits.useAdapter({ ...bench.act(), connection: id, adapter: 0 });
    await bench.change('port', boss, { designation: 'M16x1.5 female' });
    expect((await bench.row(id)).adapter?.missing).toBe(true);
    expect((await bench.row(id)).stands).toBe('wrong');
    await bench.change('port', boss, { designation: 'M14x1.25 female' });
    const { adapter } = await bench.row(id);
    expect(adapter?.missing).toBe(false);
    await bench.client.parts.drop({ ...bench.act(), parts: [adapter?.parts[0] ?? 0], reason: '' });
    expect((await bench.row(id)).stands).toBe('wrong');
    const none = await bench.connection('Fine', 'M14x1.5 male', 'M14x1.5 female');
    const refused = await refusalOf(bench.fits.useAdapter({ ...bench.act(), connection: none, adapter: 0 }));
    expect(refused.code).toBe('not-allowed-from-here');
    const outside = await refusalOf(bench.fits.useAdapter({ ...bench.act(), connection: id, adapter: 40 }));
    expect(outside.field).toBe('adapter');
  });
});

describe('a connection that mates', () => {
  const ends = ['M14x1.5 male', 'M14x1.5 female'] as const;

  it('puts what it needs on the list once, is undone as one act, and takes it back', async () => {
    const bench = await openFitsBench();
    const id = await bench.connection('Drain plug', ...ends);
    const { needs } = (await bench.row(id)).fit;
    expect(needs.length).toBeGreaterThan(0);
    const [need = ''] = needs;
    const list = () => bench.fits.listNeeds({ ...bench.act(), connection: id });
    await list();
    const listed = await bench.list();
    expect(listed).toEqual(Object.fromEntries(needs.map((text) => [text, 1])));
    expect(await bench.row(id)).toMatchObject({ adapter: null, needsListed: { missing: false }, stands: 'fits' });
    expect((await list()).notices).toEqual(['Everything that it needs is on the list already.']);
    expect(await bench.list()).toEqual(listed);
    // A second joint of the kind wants one more of the same line.
    const other = await bench.connection('Fill plug', ...ends);
    await bench.fits.listNeeds({ ...bench.act(), connection: other });
    expect((await bench.list())[need]).toBe(2);
    await bench.undoAndRedo();
    await bench.fits.unlistNeeds({ ...bench.act(), connection: other });
    expect((await bench.list())[need]).toBe(1);
    await bench.undoAndRedo();
    const [part = 0] = (await bench.row(id)).needsListed?.parts ?? [];
    await bench.client.parts.drop({ ...bench.act(), parts: [part], reason: '' });
    expect((await bench.row(id)).needsListed?.missing).toBe(true);
    await list();
    expect((await bench.list())[need]).toBe(1);
    await bench.verify();
    expect(bench.logged).toEqual([]);
  });

  it('gives way to an adapter when a side changes, and is refused where nothing is to be put there', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('boss', null, 'M14x1.5 female');
    const id = await bench.connection('Feed', boss, 'M14x1.5 male');
    await bench.fits.listNeeds({ ...bench.act(), connection: id });
    await bench.change('port', boss, { designation: 'M14x1.25 female' });
    expect(await bench.row(id)).toMatchObject({ needsListed: null, adapter: null, stands: 'wrong' });
    const wrong = await refusalOf(bench.fits.listNeeds({ ...bench.act(), connection: id }));
    expect(wrong).toMatchObject({ code: 'not-allowed-from-here', field: 'connection' });
    await bench.fits.useAdapter({ ...bench.act(), connection: id, adapter: 0 });
    expect((await bench.row(id)).stands).toBe('fits');
    const none = await refusalOf(bench.fits.unlistNeeds({ ...bench.act(), connection: id }));
    expect(none.message).toContain('has put nothing on the list');
    await bench.verify();
  });

  it('leaves to a line what the line counts among its own needs', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('boss', null, 'M14x1.5 female');
    const id = await bench.connection('Feed', boss, 'M14x1.5 male');
    await bench.save('hoseLine', { name: 'Oil feed', from: boss, definition: { fluid: 'engine oil' } });
    const refused = await refusalOf(bench.fits.listNeeds({ ...bench.act(), connection: id }));
    expect(refused.message).toContain('The line “Oil feed” ends here');
    expect(await bench.list()).toEqual({});
  });
});

describe('an acceptance', () => {
  it('holds for these very ports, and lapses when one changes', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('boss', null, 'M14x1.25 female');
    const id = await bench.connection('Plug', boss, 'M14x1.5 male');
    const subject = { kind: 'connection', id } as const;
    await bench.fits.accept({ ...bench.act(), subject, reason: 'The plug is a test piece.', by: 'Ann' });
    const accepted = await bench.row(id);
    expect(accepted.stands).toBe('fits');
    expect(accepted.fit.verdict).toBe('lookalike');
    expect(accepted.accepted).toEqual({
      reason: 'The plug is a test piece.',
      by: 'Ann',
      on: '2026-03-02',
      lapsed: false,
    });
    // Named the other way round it is the same fit.
    await bench.change('connection', id, {
      one: { port: null, typed: 'M14x1.5 male' },
      other: { port: boss, typed: '' },
    });
    expect((await bench.row(id)).stands).toBe('fits');
    await bench.change('port', boss, { designation: 'M14x1.0 female' });
    const lapsed = await bench.row(id);
    expect([lapsed.stands, lapsed.accepted?.lapsed]).toEqual(['wrong', true]);
    await bench.change('port', boss, { designation: 'M14x1.25 female' });
    await bench.fits.endAcceptance({ ...bench.act(), subject });
    expect((await bench.row(id)).stands).toBe('wrong');
    await bench.undoAndRedo();
    const fine = await bench.connection('Fine', 'M14x1.5 male', 'M14x1.5 female');
    const refused = await refusalOf(
      bench.fits.accept({ ...bench.act(), subject: { kind: 'connection', id: fine }, reason: 'why', by: '' }),
    );
    expect(refused.code).toBe('not-allowed-from-here');
  });
});
