import { describe, expect, it } from 'vitest';
import type { BuyingView, CashView } from '../../../core/contract/buying.ts';
import { openRoom, openWorkbookRoom } from './command-room.ts';

type Said = BuyingView & { readonly cashOverTime: CashView };

describe('buy', () => {
  it('plans the demo’s orders by week and wins days against buying by priority as money comes', async () => {
    const { run } = openRoom();
    await run('demo', 'drover.hoistday');
    // In March nearly all of the list was still to be bought.
    const march = (await run('buy', 'drover.hoistday', '--as-of', '2026-03-02', '--json')).json() as Said;
    expect(march.status).toBe('plan');
    expect(march.lines.length).toBeGreaterThan(100);
    // More than forty needs: the answer says that it isn't proven.
    expect(march.method).toBe('quick');
    expect(march.asMoneyComes?.daysWon).toBeGreaterThan(28);
    expect(Math.min(...march.cash.map(({ cashMinor }) => cashMinor))).toBeGreaterThanOrEqual(
      march.cashOverTime.floorMinor,
    );
    const ordered = march.weeks.flatMap(({ orders }) => orders.flatMap(({ parts }) => parts));
    expect(new Set(ordered).size).toBe(ordered.length);
    expect(march.lacking.map(({ why }) => why)).toContain('no vendor is chosen');
    const plain = await run('buy', 'drover.hoistday');
    expect(plain.exit).toBe(0);
    expect(plain.out).toContain('Order “Oil pressure sensor, 0-10 bar”');
    expect(plain.out).toContain('A proposal: nothing is ordered by it.');
    const now = (await run('buy', 'drover.hoistday', '--safe', '--json')).json() as Said;
    expect(now).toMatchObject({ status: 'plan', safe: true });
  });

  it('says how to begin without a count of cash, and refuses weeks that can’t be', async () => {
    const { run } = await openWorkbookRoom(true);
    const plain = await run('buy', 'drover.hoistday');
    expect(plain.exit).toBe(0);
    expect(plain.out).toContain('Nobody has counted the cash yet');
    for (const weeks of ['0', '105', 'long']) {
      const wrong = await run('buy', 'drover.hoistday', `--weeks=${weeks}`);
      expect(wrong.exit).toBe(2);
      expect(wrong.error).toContain('--weeks');
    }
    expect((await run('buy', 'nowhere.hoistday')).exit).toBe(1);
  });
});
