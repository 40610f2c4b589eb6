import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ForecastView } from '../../../core/contract/forecast.ts';
import { openWorkbookRoom } from './command-room.ts';

describe('forecast', () => {
  it('says that nothing is written down', async () => {
    const { run } = await openWorkbookRoom();
    const { exit, out } = await run('forecast', 'drover.hoistday');
    expect(exit).toBe(0);
    expect(out.split('\n')).toEqual([
      'Nothing is written down yet: jobs with a guess of hours and parts give a forecast.',
    ]);
  });

  it('gives days in order, what holds them, and the same answer for the same seed', async () => {
    const { run } = await openWorkbookRoom(true);
    const ask = ['forecast', 'drover.hoistday', '--runs', '200', '--json'];
    const first = await run(...ask);
    const view = first.json() as ForecastView;
    expect(first.exit).toBe(0);
    expect((await run(...ask)).out).toBe(first.out);
    expect((await run(...ask, '--seed', '2')).out).not.toBe(first.out);
    expect(view.runs).toBe(200);
    const [gate] = view.gates;
    expect(gate?.name).toBe('engine-in');
    const days = [gate?.p10On, gate?.p50On, gate?.p80On, gate?.p90On];
    expect(days).toEqual([...days].sort());
    expect(days[0]?.localeCompare('2026-11-25')).toBeGreaterThanOrEqual(0);
    // With no job the gate waits for the last delivery alone, so in each run some delivery holds it.
    const shares = gate?.heldBy.map(({ criticality }) => criticality) ?? [];
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    const plain = await run('forecast', 'drover.hoistday', '--runs', '200');
    expect(plain.out.split('\n')[0]).toBe(view.answer);
    expect(plain.out).toContain('days won by a week');
  });

  it('takes a gate by its name in any case, and a single run', async () => {
    const { run } = await openWorkbookRoom(true);
    const { exit, json } = await run('forecast', 'drover.hoistday', '--gate', 'ENGINE-IN', '--runs', '1', '--json');
    expect(exit).toBe(0);
    expect(json()).toMatchObject({ runs: 1, gates: [{ name: 'engine-in' }] });
  });

  it.each([
    ['runs', '0'],
    ['runs', '20001'],
    ['runs', '1e3'],
    ['seed', '99999999999999999999'],
    ['gate', 'engine'],
    ['runs', 'many'],
    ['seed', '-1'],
    ['seed', '1.5'],
    ['gate', 'paint'],
  ])('refuses --%s %s by name and says what is accepted', async (field, value) => {
    const { run } = await openWorkbookRoom();
    const { exit, refusal } = await run('forecast', 'drover.hoistday', `--${field}=${value}`, '--json');
    expect(exit).toBe(1);
    expect(refusal()).toMatchObject({ code: 'bad-input', field });
    expect(refusal().accepted).toBeTruthy();
    expect(refusal().message).toContain('Nothing was changed.');
  });
});

describe.each(['forecast', 'buy', 'tonight'])('%s', (verb) => {
  it('refuses a file that is missing, empty, something else or cut off, and changes none of it', async () => {
    const { folder, run } = await openWorkbookRoom();
    const whole = readFileSync(join(folder, 'drover.hoistday'));
    const files = { empty: Buffer.alloc(0), text: Buffer.from('parts, prices'), cut: whole.subarray(0, 30_000) };
    const codes = { missing: 'not-found', empty: 'not-a-workbook', text: 'not-a-workbook', cut: 'damaged' };
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, `${name}.hoistday`), bytes);
    for (const [name, code] of Object.entries(codes)) {
      const { exit, out, refusal } = await run(verb, `${name}.hoistday`, '--json');
      expect({ exit, out }).toEqual({ exit: 1, out: '' });
      expect(refusal()).toMatchObject({ code, field: 'path', accepted: expect.any(String) as string });
      expect(refusal().message).toContain('Nothing was changed.');
    }
    for (const [name, bytes] of Object.entries(files)) {
      expect(readFileSync(join(folder, `${name}.hoistday`)).equals(bytes)).toBe(true);
    }
  });

  it('tells usage from refusal: a day, a build and an option that can’t be end with 2', async () => {
    const { run } = await openWorkbookRoom();
    for (const wrong of ['--as-of=2026-02-30', '--as-of=soon', '--build=7', '--nonsense']) {
      const { exit, refusal } = await run(verb, 'drover.hoistday', wrong, '--json');
      expect(exit).toBe(2);
      expect(refusal()).toMatchObject({ code: 'usage' });
    }
    expect((await run(verb, '--json')).exit).toBe(2);
    // The day before the build began: nothing was there yet, which is no error.
    expect((await run(verb, 'drover.hoistday', '--as-of', '2026-01-01')).exit).toBe(0);
  });
});
