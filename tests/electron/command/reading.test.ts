import { describe, expect, it } from 'vitest';
import { openWorkbookRoom } from './command-room.ts';

interface Review {
  answer: string;
  blockers: { kind: string; title: string }[];
  costMinor: number;
}

describe('review', () => {
  it('answers in a sentence, a table that fits a screen, and the caution', async () => {
    const { run } = await openWorkbookRoom(true);
    const plain = await run('review', 'drover.hoistday');
    const asJson = await run('review', 'drover.hoistday', '--json');
    const review = asJson.json() as Review;
    expect(plain.exit).toBe(0);
    expect(plain.out.split('\n')[0]).toBe(review.answer);
    expect(plain.out).toContain('makers’ manuals govern');
    const tableLines = plain.out.split('\n').slice(2, -3);
    expect(tableLines.length).toBeGreaterThanOrEqual(review.blockers.length + 2);
    // 24 + 36 + 44 letters of text, the two narrow columns, and two blanks between.
    for (const line of tableLines) expect(line.length).toBeLessThanOrEqual(150);
    expect(plain.out).toContain('block 2.8 six, bored +0.50');
  });

  it('ends with 3 under --strict while anything stands, and with 0 otherwise', async () => {
    const { run } = await openWorkbookRoom(true);
    expect((await run('review', 'drover.hoistday', '--strict')).exit).toBe(3);
    const { run: bare } = await openWorkbookRoom();
    expect((await bare('review', 'drover.hoistday', '--strict')).exit).toBe(0);
  });

  it('looks back with --as-of', async () => {
    const { run } = await openWorkbookRoom(true);
    const now = (await run('review', 'drover.hoistday', '--json')).json() as Review;
    const then = (await run('review', 'drover.hoistday', '--as-of', '2026-01-31', '--json')).json() as Review;
    expect(then.blockers.length).toBeLessThan(now.blockers.length);
  });
});

describe('positions', () => {
  it('has a line for every part line, and all of its figures with --json', async () => {
    const { run } = await openWorkbookRoom(true);
    const plain = await run('positions', 'drover.hoistday');
    const parts = (await run('positions', 'drover.hoistday', '--json')).json() as Record<string, unknown>[];
    // 111 part lines: counted in the sample by hand.
    expect(parts).toHaveLength(111);
    expect(plain.out.split('\n')).toHaveLength(113);
    expect(parts.find(({ partNumber }) => partNumber === 'RBT-716')).toMatchObject({
      standing: 'snug',
      snugMilli: 12_000,
      costMinor: 11_760,
    });
    expect(plain.out).toMatch(/rod bolts 7\/16 \(12\) +snug +12 +0 +0 +12 +\$117\.60/);
  });

  it('says nothing but headings of an empty build', async () => {
    const { run } = await openWorkbookRoom();
    expect((await run('positions', 'drover.hoistday')).out.split('\n')).toHaveLength(2);
  });
});

describe('money', () => {
  it('sums to the total by each tag', async () => {
    const { run } = await openWorkbookRoom(true);
    for (const by of ['system', 'phase', 'vendor']) {
      const { exit, json } = await run('money', 'drover.hoistday', '--by', by, '--json');
      const { summary, rows } = json() as {
        summary: { forecastMinor: number };
        rows: { name: string; forecastMinor: number }[];
      };
      expect(exit).toBe(0);
      expect(rows.reduce((sum, row) => sum + row.forecastMinor, 0)).toBe(summary.forecastMinor);
      // The sum of the sample's own TOTAL rows less its lines without a price (added up by hand).
      expect(summary.forecastMinor).toBe(2_022_690);
    }
    const { out } = await run('money', 'drover.hoistday');
    expect(out).toMatch(/^Block +\$0\.00 +\$0\.00 +\$5,245\.90 +\$0\.00 +\$5,245\.90 +-\$5,245\.90$/m);
    expect(out.split('\n').at(-1)).toMatch(/^total .*\$20,226\.90/);
  });

  it('knows three tags', async () => {
    const { run } = await openWorkbookRoom();
    const { exit, error } = await run('money', 'drover.hoistday', '--by', 'colour');
    expect(exit).toBe(2);
    expect(error).toContain('--by colour: one of system, phase, vendor.');
  });
});

describe('--build', () => {
  it('takes a name or a number, and says which builds there are', async () => {
    const { run } = await openWorkbookRoom();
    expect((await run('review', 'drover.hoistday', '--build', 'drover SIX')).exit).toBe(0);
    expect((await run('review', 'drover.hoistday', '--build', '1')).exit).toBe(0);
    const { exit, error } = await run('review', 'drover.hoistday', '--build', 'Heron');
    expect(exit).toBe(2);
    expect(error).toContain('there is no such build. This workbook has: 1 Drover six.');
  });
});
