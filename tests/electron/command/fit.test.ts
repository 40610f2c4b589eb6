import { describe, expect, it } from 'vitest';
import { openRoom } from './command-room.ts';

describe('parse', () => {
  it.each([
    ['AN -6', 'AN -6 (9/16-18)'],
    ['-6AN', 'AN -6 (9/16-18)'],
    ['M 14 x 1,25', 'M14x1.25'],
  ])('shows %s as it is kept', async (typed, canonical) => {
    const { run } = openRoom();
    const { exit, out } = await run('parse', typed, '--json');
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ typed, canonical });
    expect((await run('parse', typed)).out.split('\n')[0]).toBe(canonical);
  });

  it('takes the family of a dash alone, and the role', async () => {
    const { run } = openRoom();
    expect((await run('parse', '-6', '--family', 'orb')).out).toContain('ORB -6 (9/16-18)');
    expect((await run('parse', 'AN6', '--role=fastener')).out).toContain('3/8-24 UNF');
    expect(await run('parse', 'AN6', '--role=glue')).toMatchObject({ exit: 2, out: '' });
  });

  it('refuses what can be read in several ways, and says how to write it', async () => {
    const { run } = openRoom();
    const { exit, out, error } = await run('parse', '1/8 BSP', '--json');
    expect([exit, out]).toEqual([2, '']);
    expect(JSON.parse(error)).toMatchObject({
      code: 'bad-input',
      field: 'port',
      message: expect.stringContaining('Nothing was changed.'),
      accepted: expect.stringContaining('G 1/8'),
    });
  });
});

describe('fit', () => {
  it('says what becomes of two ports, in JSON and in words', async () => {
    const { run } = openRoom();
    const args = ['fit', 'M14x1.5 male', 'M14x1.25 female', '--role', 'fluid'];
    const { exit, out } = await run(...args, '--json');
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      verdict: 'lookalike',
      reason: expect.stringContaining('pitch 1.5 against 1.25'),
      needs: [],
      adapters: expect.any(Array),
      source: expect.stringContaining('ISO 261'),
      severity: 'danger',
      lookalike: 'LA01',
    });
    expect((await run(...args)).out).toContain('Do not assemble');
  });

  it('names the adapter, and raises the severity for fuel', async () => {
    const { run } = openRoom();
    const { out } = await run('fit', 'JIC -6 female', '1/4 NPT female', '--json');
    expect(JSON.parse(out)).toMatchObject({
      verdict: 'adapter',
      adapters: [{ text: 'male 37° flare -6 to male 1/4 NPT', needs: ['thread sealant'] }],
    });
    const fuel = await run('fit', 'JIC -8 male', 'SAE45 -8 female', '--medium', 'fuel', '--json');
    expect(JSON.parse(fuel.out)).toMatchObject({ severity: 'stop' });
  });

  it('refuses the port that can’t be read, by which of the two it is', async () => {
    const { run } = openRoom();
    const { exit, error } = await run('fit', 'M14x1.5 male', 'bananas', '--json');
    expect(exit).toBe(2);
    expect(JSON.parse(error)).toMatchObject({ code: 'bad-input', field: 'second port' });
    expect(await run('fit', 'M14x1.5 male', 'M14x1.5 female', '--pressure', 'much')).toMatchObject({
      exit: 2,
      out: '',
    });
  });
});
