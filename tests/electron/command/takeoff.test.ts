import { describe, expect, it } from 'vitest';
import { takeOffCases } from '../../core/plumbing/take-off-cases.ts';
import { runOnText } from './command-room.ts';

const takeoff = (text: string, ...args: string[]) => runOnText('takeoff', text, ...args);

describe('takeoff', () => {
  it.each(takeOffCases)('answers $id in JSON with the figures of the case', async ({ id, text, input, expected }) => {
    const { exit, out, error } = await takeoff(JSON.stringify({ id, text, ...input }), '--json');
    expect(exit).toBe(0);
    expect(error).toBe('');
    expect(JSON.parse(out)).toMatchObject(expected);
  });

  it('takes values with units, and the fields in inputs, as calculators do', async () => {
    const inputs = { route: 'straight', length: { value: 24, unit: 'in' }, c1: '30 mm', c2: { value: 30 }, dash: 8 };
    const { out } = await takeoff(JSON.stringify({ id: 'A', inputs }));
    // 24 in is 609.6 mm.
    expect(JSON.parse(out)).toMatchObject({ id: 'A', free_hose_mm: 549.6, cut_mm: 550 });
  });

  it('takes several lines, with what is there', async () => {
    const line = { route: 'straight', length: 600, c1: 30, c2: 30, hose_type: '100R6 -6' };
    const { out } = await takeoff(
      JSON.stringify({
        lines: [line, line],
        in_stock: [{ item: 'hose end straight, for hose 100R6 -6 (bore 9.5 mm)', quantity: 2 }],
      }),
    );
    const answer = JSON.parse(out) as { lines: unknown[]; needs: { kind: string; order: number }[] };
    expect(answer.lines).toHaveLength(2);
    expect(answer.needs.find(({ kind }) => kind === 'hose-end')).toMatchObject({ needed: 4, from_stock: 2, order: 2 });
    expect(answer).toMatchObject({ caution: expect.stringContaining('planning figure') as string });
  });

  it.each([
    [{ route: 'straight', length: 0, c1: 1, c2: 1 }, 'length'],
    [{ lines: [{ route: 'straight', length: 100, c1: 1 }] }, 'lines[0].c2'],
    [{ lines: [] }, 'lines'],
    [{ route: 'straight', length: 100, c1: 1, c2: 1, hose_stock: [{ hose: '100R5 -8' }] }, 'hose_stock[0].length_mm'],
  ])('refuses %o on stderr as JSON that names the field, with exit code 2', async (input, field) => {
    const { exit, out, error } = await takeoff(JSON.stringify(input));
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(JSON.parse(error)).toMatchObject({
      code: 'bad-input',
      field,
      accepted: expect.stringMatching(/./) as string,
      message: expect.stringContaining('Nothing was changed.') as string,
    });
  });

  it.each(['', 'not json', '7'])('calls %o a command line that can’t be read', async (text) => {
    const { exit, error } = await takeoff(text);
    expect(exit).toBe(2);
    expect(JSON.parse(error)).toMatchObject({ code: 'usage' });
  });
});
