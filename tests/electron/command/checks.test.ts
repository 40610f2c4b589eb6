import { describe, expect, it } from 'vitest';
import { openWorkbookRoom } from './command-room.ts';

describe('checks', () => {
  it('says that there are none, and ends with 0 even when strict', async () => {
    const { run } = await openWorkbookRoom();
    const plain = await run('checks', 'drover.hoistday', '--strict');
    expect(plain.exit).toBe(0);
    expect(plain.out.split('\n')[0]).toBe('No checks yet.');
    const view = (await run('checks', 'drover.hoistday', '--json')).json() as { checks: unknown[]; offered: unknown[] };
    expect(view.checks).toEqual([]);
    expect(view.offered.length).toBeGreaterThan(0);
  });
});
