import { describe, expect, it } from 'vitest';
import type { TonightView } from '../../../core/contract/tonight.ts';
import { openRoom, openWorkbookRoom } from './command-room.ts';

describe('tonight', () => {
  it('plans the demo’s hours with jobs that wait for nothing, where their parts lie, and what would bring more', async () => {
    const { run } = openRoom();
    await run('demo', 'drover.hoistday');
    const plain = await run('tonight', 'drover.hoistday', '--hours', '6');
    const view = (await run('tonight', 'drover.hoistday', '--hours', '6', '--json')).json() as TonightView;
    expect(plain.exit).toBe(0);
    expect(plain.out.split('\n')[0]).toBe(view.answer);
    expect(plain.out).toContain('manuals govern');
    expect(view.minutes).toBe(360);
    expect(view.jobs.length).toBeGreaterThan(1);
    const planned = view.jobs.reduce((sum, { minutesTonight }) => sum + minutesTonight, 0);
    expect(planned + view.minutesOver).toBe(360);
    // The first is in hand whatever the order: a job's own missing things are never fetched.
    expect(view.jobs[0]?.job.waitsFor).toEqual([]);
    const fetched = view.jobs.flatMap(({ fetch }) => fetch);
    expect(fetched.length).toBeGreaterThan(0);
    for (const { parts } of fetched) for (const { milli } of parts) expect(milli).toBeGreaterThan(0);
    expect(plain.out).toContain(`from ${fetched[0]?.binName}`);
    // The crane is not at hand in the demo's story.
    expect(view.unlocks.map(({ says }) => says).join(' ')).toMatch(/(Borrow|Hire) the Engine crane/);
    const ready = new Set(view.jobs.map(({ job }) => job.id));
    for (const { jobs } of view.unlocks) for (const { id } of jobs) expect(ready.has(id)).toBe(false);
    // In the demo's story the head is ready to go on in August, and its studs have a torque sheet (regression).
    const august = await run('tonight', 'drover.hoistday', '--hours', '8', '--as-of', '2026-08-01', '--json');
    const [head] = (august.json() as TonightView).jobs;
    expect(head?.job.title).toBe('Fit gasket and head, final torque');
    expect(head?.torque.map(({ name }) => name)).toEqual(['Head studs']);
  });

  it('takes three hours on a day whose hours are over or that has none, and what is left of today’s otherwise', async () => {
    // 25 November 2026 is a Wednesday, which the standing week windows leave free.
    const { run } = await openWorkbookRoom();
    const view = (await run('tonight', 'drover.hoistday', '--json')).json() as TonightView;
    expect(view.minutes).toBe(180);
    expect(view.minutesFrom).toContain('no hours are left today');
  });

  it('says how to begin on a build without jobs, and refuses hours that can’t be', async () => {
    const { run } = await openWorkbookRoom();
    const plain = await run('tonight', 'drover.hoistday');
    expect(plain.exit).toBe(0);
    expect(plain.out).toContain('Write the first job down on the Plan');
    for (const hours of ['0', '25', 'long', '-1']) {
      const wrong = await run('tonight', 'drover.hoistday', `--hours=${hours}`);
      expect(wrong.exit).toBe(2);
      expect(wrong.error).toContain('--hours');
    }
  });
});
