import { describe, expect, it } from 'vitest';
import { verbs } from '../../../electron/command/verbs.ts';
import { openRoom, openWorkbookRoom } from './command-room.ts';

describe('help', () => {
  it('lists every verb and every exit code', async () => {
    const { run } = openRoom();
    const { exit, out, error } = await run('--help');
    expect(exit).toBe(0);
    for (const { name, summary } of verbs) expect(out).toContain(`${name.padEnd(9)}  ${summary}`);
    for (const code of [0, 1, 2, 3, 4]) expect(out).toMatch(new RegExp(`^ {2}${code} {2}\\S`, 'm'));
    expect(error).toBe('');
    expect((await run('help')).out).toBe(out);
    // No verb at all is not a command line, but the answer is the same text.
    expect(await run()).toMatchObject({ exit: 2, out });
  });

  it.each(verbs.map(({ name }) => name))('tells of %s: its options, its names and an example', async (name) => {
    const { run } = openRoom();
    const verb = verbs.find((one) => one.name === name);
    const { exit, out } = await run(name, '--help');
    expect(exit).toBe(0);
    expect(out).toContain(`Usage: npm run -s workbook -- ${name} ${verb?.usage}`);
    for (const option of Object.keys(verb?.options ?? {})) expect(out).toContain(`--${option}`);
    for (const example of verb?.examples ?? []) expect(out).toContain(`npm run -s workbook -- ${example}`);
    expect((await run('help', name)).out).toBe(out);
    expect((await run(name, '-h')).out).toBe(out);
  });
});

describe('a command line that can’t be read', () => {
  it('names the verbs there are', async () => {
    const { run } = openRoom();
    const plain = await run('frobnicate');
    expect(plain).toMatchObject({ exit: 2, out: '' });
    expect(plain.error).toContain('There is no verb “frobnicate”. One of: new, demo, import');
    const asJson = await run('frobnicate', '--json');
    expect(asJson.exit).toBe(2);
    expect(asJson.refusal()).toMatchObject({ code: 'usage' });
  });

  it('names the options there are', async () => {
    const { run } = openRoom();
    const { exit, error } = await run('review', 'drover.hoistday', '--soon');
    expect(exit).toBe(2);
    expect(error).toBe(
      'review has no option --soon. It has: --build, --as-of, --strict, --help, --json.\nSee: review --help',
    );
  });

  it('says when an option lacks its value, or has one it can’t take', async () => {
    const { run } = openRoom();
    expect(await run('review', 'drover.hoistday', '--as-of')).toMatchObject({
      exit: 2,
      error: expect.stringContaining('--as-of needs a value after it') as string,
    });
    expect(await run('review', 'drover.hoistday', '--strict=yes')).toMatchObject({
      exit: 2,
      error: expect.stringContaining('--strict takes no value') as string,
    });
  });

  it.each([
    ['new'],
    ['import', 'drover.hoistday'],
    ['review', 'a', 'b'],
    ['export', 'drover.hoistday'],
    ['restore', 'drover.hoistday'],
    ['demo', 'a', 'b'],
  ])('counts the names: %s %s', async (...args) => {
    const { run } = openRoom();
    const { exit, error } = await run(...args.filter((arg) => arg !== undefined));
    expect(exit).toBe(2);
    expect(error).toMatch(/ takes .*; here (is|are) \d name/);
  });

  it.each([
    ['review', '--as-of', '2026-02-30'],
    ['money', '--as-of', 'yesterday'],
    ['positions', '--as-of', '25.11.2026'],
  ])('wants days of the calendar: %s %s %s', async (verb, option, value) => {
    const { run } = await openWorkbookRoom();
    const { exit, refusal } = await run(verb, 'drover.hoistday', option, value, '--json');
    expect(exit).toBe(2);
    expect(refusal().message).toContain(`--as-of ${value}: a day of the calendar, written YYYY-MM-DD`);
  });
});

describe('a refusal', () => {
  it('is one JSON value on stderr with --json', async () => {
    const { run } = openRoom();
    const { exit, out, refusal } = await run('review', 'nothing.hoistday', '--json');
    expect(exit).toBe(1);
    expect(out).toBe('');
    expect(refusal()).toMatchObject({ code: 'not-found', field: 'path', accepted: 'the path of an existing workbook' });
    expect(refusal().message).toContain('Nothing was changed.');
  });

  it('is words and what is accepted without', async () => {
    const { run } = openRoom();
    const { exit, error } = await run('verify', 'nothing.hoistday');
    expect(exit).toBe(1);
    expect(error).toContain('Nothing was changed.\nAccepted: the path of an existing workbook');
  });
});
