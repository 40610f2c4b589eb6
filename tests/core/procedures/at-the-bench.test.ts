import { createRouterClient } from '@orpc/server';
import { describe, expect, it } from 'vitest';
import { benchProcedures } from '../../../core/procedures/bench.ts';
import { answering } from '../../../core/procedures/handler.ts';
import { type Bench, openBench, refusalOf } from './bench.ts';

async function atTheBench() {
  const opened = await openBench();
  const lines: string[] = [];
  const bench = createRouterClient(benchProcedures, {
    context: opened.context,
    interceptors: [answering((line) => lines.push(line)) as never],
  });
  return { opened, bench };
}

const save = (opened: Bench, kind: 'measuringSheet' | 'boltGroup', values: Record<string, unknown>) =>
  opened.client.records.save({ ...opened.act(), build: opened.build, kind, values });
const make = async (opened: Bench, kind: 'measuringSheet' | 'boltGroup', values: Record<string, unknown>) =>
  (await save(opened, kind, values)).made[0] as number;

const journals = { title: 'Main journals', quantity: 'journal', unit: 'mm', places: ['Main 1'], readings: ['across'] };
const head = {
  name: 'Head bolts',
  count: 4,
  method: 'torque',
  torqueMilliNm: 60_000,
  angleDeg: null,
  stages: [
    { torqueMilliNm: 30_000, angleDeg: null },
    { torqueMilliNm: 60_000, angleDeg: null },
  ],
};

describe('a measuring sheet', () => {
  it('reads any unit, is undone whole, and says what is out', async () => {
    const { opened, bench } = await atTheBench();
    const sheet = await make(opened, 'measuringSheet', {
      ...journals,
      limits: { least: 59.98, most: 60, source: 'manual' },
    });
    const read = (text: string) =>
      bench.read({
        ...opened.act(),
        sheet,
        readings: [{ place: 'Main 1', name: 'across', typed: text, temperatureC: null }],
        by: '',
        instrument: '',
      });
    // 2.362 in is 59.9948 mm: 25.4 mm to the inch is exact (NIST SP 811).
    await read('2.362 in');
    const view = await bench.sheet({ build: opened.build, sheet });
    expect(view.mean).toBeCloseTo(59.9948, 9);
    expect(view.places[0]?.readings[0]?.typed).toBe('2.362 in');
    expect(view.standing).toBe('in limits');
    await read('59.97');
    expect((await bench.sheet({ build: opened.build, sheet })).says).toBe('Outside 59.98 to 60 mm: Main 1.');
    await opened.undoAndRedo();
    await opened.client.journal.undo({ key: opened.act().key });
    expect((await bench.sheet({ build: opened.build, sheet })).mean).toBeCloseTo(59.9948, 9);
  });

  it('is refused when it could not be filled in', async () => {
    const { opened } = await atTheBench();
    const twice = await refusalOf(save(opened, 'measuringSheet', { ...journals, places: ['Main 1', 'Main 1'] }));
    expect(twice).toMatchObject({ code: 'bad-input', field: 'places' });
    const unit = await refusalOf(save(opened, 'measuringSheet', { ...journals, unit: 'banana' }));
    expect(unit).toMatchObject({ code: 'bad-input', field: 'unit' });
    const inch = await make(opened, 'measuringSheet', { ...journals, title: 'Journals in inches', unit: 'in' });
    const less = await refusalOf(save(opened, 'measuringSheet', { ...journals, less: inch }));
    expect(less).toMatchObject({ code: 'bad-input', field: 'less' });
  });

  it('keeps its unit once it has readings', async () => {
    const { opened, bench } = await atTheBench();
    const sheet = await make(opened, 'measuringSheet', journals);
    await bench.read({
      ...opened.act(),
      sheet,
      readings: [{ place: 'Main 1', name: 'across', typed: '60', temperatureC: null }],
      by: '',
      instrument: '',
    });
    const { revision } = await bench.sheet({ build: opened.build, sheet });
    const change = { ...opened.act(), kind: 'measuringSheet', id: sheet, revision, values: { unit: 'in' } } as const;
    expect(await refusalOf(opened.client.records.save(change))).toMatchObject({ code: 'in-use', field: 'unit' });
  });
});

describe('a torque sheet', () => {
  it('is walked stage by stage, bolt by bolt, to rechecked', async () => {
    const { opened, bench } = await atTheBench();
    const boltGroup = await make(opened, 'boltGroup', head);
    const view = () => bench.torque({ build: opened.build, boltGroup });
    const turn = (bolt: number, stage: number) =>
      bench.turn({ ...opened.act(), boltGroup, bolt, stage, by: 'Ida', wrench: '', settingMilliNm: null });
    expect((await view()).next).toMatchObject({ bolt: 1, stage: 1 });
    expect(await refusalOf(turn(1, 2))).toMatchObject({ code: 'not-allowed-from-here', field: 'stage' });
    for (const bolt of [1, 3, 2, 4]) await turn(bolt, 1);
    expect((await view()).standing).toBe('snug');
    expect(await refusalOf(turn(1, 1))).toMatchObject({ code: 'not-allowed-from-here' });
    await turn(1, 2);
    await opened.undoAndRedo();
    expect((await view()).next).toMatchObject({ bolt: 3, stage: 2 });
    for (const bolt of [3, 2, 4]) await turn(bolt, 2);
    expect(await view()).toMatchObject({ standing: 'final', next: null });
    expect(await refusalOf(turn(1, 2))).toMatchObject({ code: 'not-allowed-from-here' });
    await bench.recheck({ ...opened.act(), boltGroup, bolts: [], by: 'Ida', wrench: '' });
    expect((await view()).standing).toBe('rechecked');
    await opened.verify();
  });

  it('refuses an order that leaves a bolt out', async () => {
    const { opened } = await atTheBench();
    const refused = await refusalOf(save(opened, 'boltGroup', { ...head, pattern: 'custom', order: [1, 2, 4] }));
    expect(refused).toMatchObject({ code: 'bad-input', field: 'order', accepted: 'each number from 1 to 4 once' });
  });

  it('sets the wrench for a crowfoot by the lever', async () => {
    const { bench } = await atTheBench();
    // Published worked example: 71.1 N·m for 80 N·m, 40 cm and 5 cm; at 90° by hand: no correction.
    const straight = await bench.setting({ torqueMilliNm: 80_000, wrenchMm: 400, adapterMm: 50, angleDeg: 0 });
    expect(straight.settingMilliNm / 1000).toBeCloseTo(71.1, 1);
    const square = await bench.setting({ torqueMilliNm: 80_000, wrenchMm: 400, adapterMm: 50, angleDeg: 90 });
    expect(square.settingMilliNm).toBe(80_000);
    const back = bench.setting({ torqueMilliNm: 45_000, wrenchMm: 100, adapterMm: 120, angleDeg: 180 });
    expect(await refusalOf(back)).toMatchObject({ code: 'bad-input' });
  });

  it('never takes a slippery thread for an oiled one, nor guesses between dry and wet', async () => {
    const { bench } = await atTheBench();
    const suggest = (lubricant: string) => bench.suggest({ thread: 'M10x1.5', boltClass: '8.8', lubricant });
    // Nut factors of calculator F2 (Shigley, table 8-15): anti-seize about 0.12, lubricated 0.18.
    const moly = await suggest('moly paste');
    const oil = await suggest('engine oil');
    expect(moly.torqueMilliNm / oil.torqueMilliNm).toBeCloseTo(0.12 / 0.18, 3);
    expect(await refusalOf(suggest('dry, no oil'))).toMatchObject({ code: 'bad-input', field: 'lubricant' });
    expect((await suggest('dry')).torqueMilliNm).toBeGreaterThan(oil.torqueMilliNm);
  });
});
