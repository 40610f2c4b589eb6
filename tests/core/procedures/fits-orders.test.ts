import { describe, expect, it } from 'vitest';
import { refusalOf } from './bench.ts';
import { openFitsBench } from './fits-bench.ts';

async function wrongPitch() {
  const bench = await openFitsBench();
  const vendor = await bench.save('vendor', { name: 'Quarry Lane Engines' });
  const bolt = await bench.part('Bearing cap bolt');
  const thread = await bench.port('thread', bolt, 'M12x1.5 male', { role: 'fastener' });
  const boss = await bench.port('bearing cap', null, 'M12x1.25 female', { role: 'fastener' });
  const id = await bench.connection('Bearing cap bolt in block', thread, boss, { role: 'fastener' });
  return { ...bench, vendor, bolt, thread, fit: id };
}

describe('a bolt of the wrong pitch', () => {
  it('stops its order, with the reason and how to tell', async () => {
    const bench = await wrongPitch();
    const other = await bench.part('Washer');
    const order = bench.draft(bench.vendor, other, bench.bolt);
    const refused = await refusalOf(bench.client.orders.place({ ...bench.act(), order }));
    expect(refused.code).toBe('not-allowed-from-here');
    expect(refused.field).toBe('despiteFits');
    expect(refused.accepted).toBe('a reason for ordering it all the same');
    // Same diameter, pitch 1.5 against 1.25 mm. Source: ISO 261.
    expect(refused.message).toContain('“Bearing cap bolt”');
    expect(refused.message).toContain('pitch 1.5 against 1.25 mm');
    expect(refused.message).toContain('How to tell: 10 threads are 15.0 mm long on M12x1.5, 12.5 mm on M12x1.25.');
    expect(refused.message).toMatch(/Nothing was changed\.$/);
    expect(refused.detail['parts']).toEqual([bench.bolt]);
    expect(await bench.client.orders.list({ build: bench.build })).toEqual([]);
    const stops = await bench.fits.stops({ build: bench.build, parts: [bench.bolt, other] });
    expect(stops.map(({ part, verdict, subject }) => [part, verdict, subject])).toEqual([
      [bench.bolt, 'lookalike', { kind: 'connection', id: bench.fit }],
    ]);
    const landed = await bench.client.orders.land({ ...order, on: '2026-03-02' });
    expect(landed.notices).toHaveLength(1);
    expect(landed.notices[0]).toContain('The order is stopped unless a reason is given.');
    await bench.client.orders.place({ ...bench.act(), order: bench.draft(bench.vendor, other) });
    expect(bench.logged).toEqual([]);
  });

  it('is ordered all the same with a reason, which the journal keeps', async () => {
    const bench = await wrongPitch();
    const order = bench.draft(bench.vendor, bench.bolt);
    const done = await bench.client.orders.place({ ...bench.act(), order, despiteFits: 'Wanted for a jig.' });
    expect(done.notices.join(' ')).toContain('Ordered all the same: Wanted for a jig.');
    const { rows } = await bench.client.journal.list({ build: bench.build, part: bench.bolt, limit: 10 });
    expect(rows.map(({ text }) => text).join('\n')).toContain('although it does not fit: Wanted for a jig.');
    await bench.undoAndRedo();
    await bench.verify();
  });

  it('can be ordered once the port is right, the fit accepted, or the connection retired', async () => {
    const bench = await wrongPitch();
    const stops = async () => (await bench.fits.stops({ build: bench.build, parts: [bench.bolt] })).length;
    expect(await stops()).toBe(1);
    const subject = { kind: 'connection', id: bench.fit } as const;
    await bench.fits.accept({ ...bench.act(), subject, reason: 'The cap is retapped.', by: 'Ann' });
    expect(await stops()).toBe(0);
    await bench.change('port', bench.thread, { designation: 'M12x1.75 male' });
    expect(await stops()).toBe(1);
    await bench.change('port', bench.thread, { designation: 'M12x1.25 male' });
    expect(await stops()).toBe(0);
    await bench.client.orders.place({ ...bench.act(), order: bench.draft(bench.vendor, bench.bolt) });
  });

  it('that is not known yet is only said', async () => {
    const bench = await openFitsBench();
    const vendor = await bench.save('vendor', { name: 'Quarry Lane Engines' });
    const sensor = await bench.part('Oil pressure sensor');
    const thread = await bench.port('thread', sensor, 'M12x1.5');
    await bench.connection('Sensor in block', thread, 'M12x1.5 female');
    const order = bench.draft(vendor, sensor);
    const { notices } = await bench.client.orders.place({ ...bench.act(), order });
    expect(notices.join(' ')).toContain('whether M12x1.5 is male or female');
  });
});

describe('the hoist check', () => {
  it('lists wrong and unknown fits, on past days too, and lets them be waived', async () => {
    const bench = await openFitsBench();
    const boss = await bench.port('boss', null, 'M14x1.25 female');
    const id = await bench.connection('Plug', boss, 'M14x1.5 male');
    await bench.connection('Not before the hoist', boss, 'M14x1.5 male', { beforeGate: false });
    const review = async (asOf?: string) =>
      bench.gate.review({ build: bench.build, ...(asOf === undefined ? {} : { asOf }) });
    const [blocker, ...more] = (await review()).blockers;
    expect(more).toEqual([]);
    expect(blocker?.kind).toBe('fit wrong');
    expect(blocker?.standing).toBe('look-alike');
    expect(blocker?.subject).toEqual({ kind: 'connection', id });
    await bench.gate.waive({
      ...bench.act(),
      build: bench.build,
      kind: 'fit wrong',
      subject: { kind: 'connection', id },
      reason: 'Plugged for transport.',
      by: 'Ann',
      until: null,
    });
    expect((await review()).blockers).toEqual([]);
    expect((await review()).waived).toHaveLength(1);
    bench.today('2026-03-20');
    await bench.change('port', boss, { designation: 'M14x1.5 female' }, '2026-03-15');
    expect((await bench.row(id)).fit.verdict).toBe('mates');
    expect((await bench.row(id, '2026-03-10')).fit.verdict).toBe('lookalike');
    expect((await review()).waived).toEqual([]);
    expect((await review('2026-03-10')).waived).toHaveLength(1);
    expect((await review('2026-03-01')).listed).toBe(0);
  });
});
