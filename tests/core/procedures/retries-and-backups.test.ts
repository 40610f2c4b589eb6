import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { createHost } from '../../../core/procedures/host.ts';

const folder = mkdtempSync(join(tmpdir(), 'retries-'));
afterEach(() => {
  vi.useRealTimers();
  rmSync(folder, { recursive: true, force: true });
});

it('answers a request that is sent again as before, and backs up an hour’s work by itself', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'setInterval', 'clearTimeout', 'clearInterval'] });
  const host = createHost({ folder, allowAnyPath: false, now: () => new Date('2026-11-25T10:00:00Z') });
  const { client } = host;
  try {
    await client.workbook.create({ name: 'Drover', currency: 'USD', build: 'Drover six' });
    const build = (await client.builds.list())[0]?.id as number;
    expect(await client.builds.list()).toMatchObject([{ name: 'Drover six' }]);

    const system = { key: 'once-only-1', on: '2026-11-25', kind: 'system', build, values: { name: 'Fuel' } } as const;
    const first = await client.records.save(system);
    expect(await client.records.save(system)).toEqual(first);
    expect(await client.records.list({ kind: 'system', build })).toHaveLength(1);

    const edit = {
      ...system,
      key: 'once-only-2',
      id: first.made[0] as number,
      revision: 1,
      values: { name: 'Fuel system' },
    };
    const changed = await client.records.save(edit);
    expect(await client.records.save(edit), 'the record has moved on, and the same request is still answered').toEqual(
      changed,
    );

    const part = {
      key: 'once-only-3',
      on: '2026-11-25',
      build,
      parts: [{ description: 'fuel pump', needMilli: 1000 }],
    };
    await client.parts.add(part);
    const [blocker] = (await client.gate.review({ build })).blockers;
    if (blocker === undefined) throw new Error('the pump should stand in the way');
    const waiver = {
      key: 'once-only-4',
      on: '2026-11-25',
      build,
      kind: blocker.kind,
      subject: blocker.subject,
      reason: 'later',
      by: 'Ann',
      until: null,
    };
    const waived = await client.gate.waive(waiver);
    expect(await client.gate.waive(waiver), 'nothing is left to waive, and the retry is still answered').toEqual(
      waived,
    );

    expect(await client.workbook.backups()).toEqual([]);
    vi.advanceTimersByTime(61_000);
    expect(await client.workbook.backups()).toMatchObject([{ verified: true }]);
    vi.advanceTimersByTime(3_600_000);
    expect(await client.workbook.backups(), 'nothing was done, so nothing is backed up').toHaveLength(1);
    await client.parts.add({ ...part, key: 'once-only-5' });
    vi.advanceTimersByTime(3_600_000);
    expect(await client.workbook.backups()).toHaveLength(2);

    const [backup] = await client.workbook.backups();
    await client.journal.undo({ key: 'undo-the-second' });
    await client.workbook.restore({ file: backup?.file ?? '' });
    expect((await client.parts.rows({ build, from: 0, count: 10 })).total).toBe(2);
    expect((await client.workbook.verify()).ok).toBe(true);
  } finally {
    host.close();
  }
});
