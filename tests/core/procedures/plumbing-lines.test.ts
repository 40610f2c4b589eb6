import { describe, expect, it } from 'vitest';
import { takeOffCases } from '../plumbing/take-off-cases.ts';
import { refusalOf } from './bench.ts';
import { oilFeed, openPlumbingBench } from './plumbing-bench.ts';

describe('lines of a build', () => {
  it('have none at first, and say so', async () => {
    const bench = await openPlumbingBench();
    const view = await bench.plumbing.view({ build: bench.build });
    expect(view).toMatchObject({ answer: 'No line is planned yet.', lines: [], needs: [], cutList: [] });
  });

  // The cases carry their source: computed with the formulas of the take-off independently of this program.
  it.each(takeOffCases)('works out $id: $text', async ({ text, input, expected }) => {
    const bench = await openPlumbingBench();
    const id = await bench.line(text, { ...input, fluid: 'engine oil' });
    const detail = await bench.plumbing.line({ build: bench.build, line: id });
    expect(detail.row.cutMm).toBe(expected.cut_mm);
    expect(detail.lengths.find(({ label }) => label === 'Free hose')?.value).toBe(`${expected.free_hose_mm} mm`);
    expect(detail.lengths.find(({ label }) => label === 'Hose, exactly')?.value).toBe(`${expected.cut_exact_mm} mm`);
    if (expected.bend !== undefined) {
      expect(detail.checks.find((check) => check.id === 'bend')?.verdict.replace('caution', 'pass')).toBe(
        expected.bend,
      );
    }
    if (expected.lead1 === 'fail') expect(detail.checks.find((check) => check.id === 'leads')?.verdict).toBe('fail');
    expect(bench.logged).toEqual([]);
  });

  it('takes the designation of kept ports, whose they are, and what nobody has bought as typed', async () => {
    const bench = await openPlumbingBench();
    const part = await bench.part('Turbocharger', 1000);
    const outlet = await bench.save('port', { name: 'oil inlet', part, designation: 'jic -6 male' });
    const id = await bench.line('oil feed', { ...oilFeed, to_port: 'M14x1.5 female' }, { from: outlet });
    const { row } = await bench.plumbing.line({ build: bench.build, line: id });
    expect(row.from).toEqual({
      port: outlet,
      part,
      whose: 'Turbocharger, oil inlet',
      text: expect.stringContaining('JIC -6') as string,
    });
    expect(row.to).toEqual({ port: null, part: null, whose: '', text: 'M14x1.5 female' });
  });

  it('keeps a plan that lacks a length, and says which field', async () => {
    const bench = await openPlumbingBench();
    const id = await bench.line('drain', { fluid: 'engine oil', service: 'drain', hose_type: '100R6 -10' });
    expect(await bench.row(id)).toMatchObject({
      cutMm: null,
      hose: '100R6 -10',
      fluid: 'engine oil',
      standing: 'not made',
      problem: { field: expect.stringMatching(/^definition\./) as string, message: expect.any(String) as string },
    });
    await bench.redefine(id, { fluid: 'engine oil', route: 'straight', c1: 30, c2: 30 });
    expect((await bench.row(id)).problem).toMatchObject({ field: 'definition.length' });
    const { answer } = await bench.plumbing.view({ build: bench.build });
    expect(answer).toContain("1 isn't worked out yet");
    expect(await refusalOf(bench.tick(id, 'cut'))).toMatchObject({ code: 'not-allowed-from-here', field: 'line' });
  });

  it.each([
    [{ fluid: 'engine oil', lenght: 600 }, 'definition.lenght'],
    [{ fluid: 'engine oil', route: 'zigzag' }, 'definition.route'],
    [{ fluid: 'engine oil', route: 'straight', length: 'long' }, 'definition.length'],
    [{ fluid: 'engine oil', end1: { style: 'glued' } }, 'definition.end1.style'],
    [{ fluid: 'engine oil', pressure_bar: -1 }, 'definition.pressure_bar'],
    [{ route: 'straight', length: 600 }, 'definition.fluid'],
    [{ fluid: 'engine oil', name: 'another' }, 'definition.name'],
  ])('refuses %o, naming the field', async (definition, field) => {
    const bench = await openPlumbingBench();
    const refusal = await refusalOf(bench.line('drain', definition));
    expect(refusal).toMatchObject({ code: 'bad-input', field });
    expect(refusal.message).toMatch(/Nothing was changed\.$/);
    const tried = bench.plumbing.tryOut({
      build: bench.build,
      values: { name: 'drain', definition: definition as never },
    });
    expect(await refusalOf(tried)).toMatchObject({ field });
  });

  it('tries a line out without writing anything', async () => {
    const bench = await openPlumbingBench();
    const tried = await bench.plumbing.tryOut({ build: bench.build, values: { name: 'feed', definition: oilFeed } });
    expect(tried.row).toMatchObject({ id: 0, cutMm: 405, stepsDone: 0, standing: 'not made' });
    expect((await bench.plumbing.view({ build: bench.build })).lines).toEqual([]);
  });

  it('refuses ports of another build, one port for both ends, and hose that is none', async () => {
    const bench = await openPlumbingBench();
    const other =
      (await bench.client.builds.create({ ...bench.act(), values: { name: 'Other', startedOn: '2026-03-02' } }))
        .made[0] ?? 0;
    const { made } = await bench.client.records.save({
      ...bench.act(),
      kind: 'port',
      build: other,
      values: { name: 'inlet', place: 'block', designation: 'JIC -6 male' },
    });
    expect(await refusalOf(bench.line('feed', oilFeed, { from: made[0] }))).toMatchObject({ field: 'from' });
    const port = await bench.save('port', { name: 'inlet', place: 'block', designation: 'JIC -6 male' });
    expect(await refusalOf(bench.line('feed', oilFeed, { from: port, to: port }))).toMatchObject({ field: 'to' });
    expect(await refusalOf(bench.line('feed', { ...oilFeed, from_port: 'AN -8' }, { from: port }))).toMatchObject({
      field: 'definition.from_port',
    });
    await bench.client.records.retire({ ...bench.act(), kind: 'port', id: port, reason: '' });
    expect(await refusalOf(bench.line('feed', oilFeed, { from: port }))).toMatchObject({
      code: 'retired',
      field: 'from',
    });
    expect(await refusalOf(bench.save('hoseLength', { hose: '-', lengthMm: 900 }))).toMatchObject({ field: 'hose' });
    const set = await bench.part('Ends', 1000, 0, 'set');
    expect(await refusalOf(bench.save('billPart', { item: 'hose end', part: set }))).toMatchObject({ field: 'part' });
    expect(await refusalOf(bench.save('billPart', { item: ' ', part: set }))).toMatchObject({ field: 'item' });
  });
});
