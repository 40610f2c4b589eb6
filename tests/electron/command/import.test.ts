import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openRoom, openWorkbookRoom, sample } from './command-room.ts';

interface Planned {
  ready: boolean;
  counts: Record<string, number>;
  questions: { id: string; answer: string | null; blocking: boolean; choices: { value: string }[] }[];
}

const book = 'drover.hoistday';
const count = async (run: Awaited<ReturnType<typeof openWorkbookRoom>>['run']): Promise<number> =>
  ((await run('positions', book, '--json')).json() as unknown[]).length;

describe('import', () => {
  it('says what it would write and stops, with --dry-run', async () => {
    const { run } = await openWorkbookRoom();
    const plain = await run('import', book, sample('drover-parts.csv'), '--dry-run');
    expect(plain.exit).toBe(0);
    expect(plain.out).toMatch(/^Ready; nothing was written\.\npart lines +111\n/);
    const { counts } = (await run('import', book, sample('drover-parts.csv'), '--dry-run', '--json')).json() as Planned;
    // Counted in the sample by hand.
    expect(counts).toMatchObject({ part: 111, section: 10, total: 10, blank: 10, header: 1, rowsInFile: 142 });
    expect(await count(run)).toBe(0);
  });

  it('asks before it writes, takes the answers, then writes', async () => {
    const { run } = openRoom();
    await run('new', book, '--currency', 'EUR');
    const asked = await run('import', book, sample('garage-eu.csv'));
    expect(asked.exit).toBe(1);
    expect(asked.out).toContain('Not ready; nothing was written.');
    expect(asked.out).toContain('--answer encoding=windows-1252');
    expect(asked.out).toContain('(likely)');
    expect(await count(run)).toBe(0);

    const answers: string[] = ['encoding=windows-1252'];
    for (let round = 0; round < 10; round += 1) {
      const planned = (
        await run(
          'import',
          book,
          sample('garage-eu.csv'),
          '--dry-run',
          '--json',
          ...answers.flatMap((answer) => ['--answer', answer]),
        )
      ).json() as Planned;
      const open = planned.questions.filter(({ answer, blocking }) => blocking && answer === null);
      if (planned.ready) break;
      expect(open.length).toBeGreaterThan(0);
      for (const { id, choices } of open) answers.push(`${id}=${choices[0]?.value ?? ''}`);
    }
    const written = await run(
      'import',
      book,
      sample('garage-eu.csv'),
      ...answers.flatMap((answer) => ['--answer', answer]),
    );
    expect(written.error).toBe('');
    expect(written.exit).toBe(0);
    expect(await count(run)).toBe(8);
    expect((await run('verify', book)).exit).toBe(0);
  });

  it('refuses the same file twice, and says how to insist', async () => {
    const { run } = await openWorkbookRoom(true);
    const refused = await run('import', book, sample('drover-parts.csv'));
    expect(refused.exit).toBe(1);
    expect(refused.error).toContain('Nothing was changed.');
    expect(refused.error).toContain('add --again');
    const asJson = await run('import', book, sample('drover-parts.csv'), '--json');
    expect(asJson.refusal()).toMatchObject({ code: 'file-known' });
    expect(await count(run)).toBe(111);
    // Insisting does not double what is there: line by line it is known.
    const insisted = await run('import', book, sample('drover-parts.csv'), '--again');
    expect(insisted.exit).toBe(1);
    expect(insisted.error).toContain('Every line of drover-parts.csv is in the workbook already. Nothing was changed.');
    expect(insisted.error).not.toContain('--again');
    expect(await count(run)).toBe(111);
  });

  it('adds only the new lines of a list that grew', async () => {
    const { run, folder } = await openWorkbookRoom();
    writeFileSync(join(folder, 'list.csv'), 'Part,Qty,Each\nhead stud,8,3.25\n');
    expect((await run('import', book, 'list.csv')).exit).toBe(0);
    writeFileSync(join(folder, 'list.csv'), 'Part,Qty,Each\nhead stud,8,3.25\nhose,1,4.10\n');
    expect((await run('import', book, 'list.csv')).exit).toBe(0);
    expect(await count(run)).toBe(2);
  });

  it('tells what became of every row', async () => {
    const { run } = await openWorkbookRoom();
    const { out } = await run('import', book, sample('drover-parts.csv'));
    expect(out).toMatch(/^row 1: the headings$/m);
    expect(out).toMatch(/^row 142: /m);
  });

  it('reads spreadsheets, by sheet', async () => {
    const { run } = await openWorkbookRoom();
    const none = await run('import', book, sample('drover-parts.xlsx'), '--sheet', '99');
    expect(none.exit).toBe(2);
    expect(none.error).toMatch(/--sheet 99: a whole number from 1 to \d+\./);
    expect((await run('import', book, sample('drover-parts.xlsx'), '--dry-run')).exit).toBe(0);
  });

  it('keeps a mapping and takes it again', async () => {
    const { run, folder } = await openWorkbookRoom();
    await run('import', book, sample('drover-parts.csv'), '--dry-run', '--save-mapping', 'mapping.json');
    expect(JSON.parse(readFileSync(join(folder, 'mapping.json'), 'utf8'))).toHaveProperty('columns');
    expect((await run('import', book, sample('drover-parts.csv'), '--mapping', 'mapping.json')).exit).toBe(0);
    expect(await count(run)).toBe(111);
  });

  it.each([
    ['not JSON', 'columns:'],
    ['JSON of another kind', '[1]'],
  ])('says so when a mapping is %s', async (_what, text) => {
    const { run, folder } = await openWorkbookRoom();
    writeFileSync(join(folder, 'mapping.json'), text);
    const { exit, error } = await run('import', book, sample('drover-parts.csv'), '--mapping', 'mapping.json');
    expect(exit).toBe(2);
    expect(error).toContain('name a file that --save-mapping wrote');
  });

  it.each([
    [['--answer', 'yes'], '--answer yes: written as ID=VALUE'],
    [['--paid', 'maybe'], '--paid maybe: one of paid, not-paid, not-recorded.'],
    [['--on', '2026-13-01', '--save-mapping', 'mapping.json'], '--on 2026-13-01: a day of the calendar'],
  ])('writes nothing for %s', async (options, text) => {
    const { run, folder } = await openWorkbookRoom();
    const { exit, error } = await run('import', book, sample('drover-parts.csv'), ...options);
    expect(exit).toBe(2);
    expect(error).toContain(text);
    expect(await count(run)).toBe(0);
    expect(existsSync(join(folder, 'mapping.json'))).toBe(false);
  });

  it('leaves unclear rows out when told to', async () => {
    const { run, folder } = await openWorkbookRoom();
    writeFileSync(join(folder, 'list.csv'), 'Part,Qty,Each\nhead stud,8,3.25\nhose,several,4.10\n');
    const asked = await run('import', book, 'list.csv');
    expect(asked.exit).toBe(1);
    expect(asked.out).toMatch(/^row 3: /m);
    const written = await run('import', book, 'list.csv', '--skip-unclear');
    expect(written.exit).toBe(0);
    expect(await count(run)).toBe(1);
  });

  it('wants a list that is there', async () => {
    const { run } = await openWorkbookRoom();
    const { exit, error } = await run('import', book, 'nothing.csv');
    expect(exit).toBe(2);
    expect(error).toContain('The list “nothing.csv” does not exist');
  });
});
