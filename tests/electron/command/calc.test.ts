import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { calculators } from '../../../core/calculators/index.ts';
import { openRoom, runOnText } from './command-room.ts';

const calc = (text: string, ...args: string[]) => runOnText('calc', text, ...args);

const square = { bore: { value: 86, unit: 'mm' }, stroke: { value: 86, unit: 'mm' }, cylinders: { value: 4 } };

describe('calc', () => {
  it('works a calculator on JSON and answers in JSON, in the units asked for', async () => {
    const { exit, out, error } = await calc(JSON.stringify({ inputs: square, units: { displacement: 'L' } }), 'B1');
    expect(exit).toBe(0);
    expect(error).toBe('');
    // 1998.22886 cc: derived by hand from the definition.
    expect(JSON.parse(out)).toMatchObject({
      outputs: { displacement: { value: expect.closeTo(1.99822886, 7), unit: 'L' } },
      warnings: [],
      source: expect.stringContaining('Heywood'),
    });
  });

  it('takes inputs as text, numbers and lists, and a calculator by its slug', async () => {
    const text = JSON.stringify({ inputs: { bore: '3 3/8 in', stroke: '86 mm', cylinders: 4, rpm: null } });
    const { exit, out } = await calc(text, 'displacement');
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ calculator: 'B1' });
  });

  it('reads a file', async () => {
    const { folder, run } = openRoom();
    writeFileSync(join(folder, 'bore.json'), JSON.stringify({ inputs: square }));
    expect((await run('calc', 'b1', '--in', 'bore.json')).exit).toBe(0);
    expect(await run('calc', 'b1', '--in', 'none.json')).toMatchObject({ exit: 2, out: '' });
  });

  it.each([
    [{ ...square, bore: { value: 0, unit: 'mm' } }, 'bore'],
    [{ ...square, bore: { value: 86, unit: 'psi' } }, 'bore'],
    [{ ...square, bore: { value: 86 } }, 'bore'],
    [{ ...square, bore: null }, 'bore'],
    [{ ...square, bore: { value: 'NaN', unit: 'mm' } }, 'bore'],
    [{ ...square, bore: { value: {}, unit: 'mm' } }, 'bore'],
    [{ ...square, bore: { value: 86, unit: 4 } }, 'bore'],
    [{ ...square, cylinders: 4.5 }, 'cylinders'],
    [{ ...square, boer: 86 }, 'boer'],
  ])('refuses %o on stderr as JSON that names the input, with exit code 2', async (inputs, field) => {
    const { exit, out, error } = await calc(JSON.stringify({ inputs }), 'B1');
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(JSON.parse(error)).toMatchObject({
      code: 'bad-input',
      field,
      accepted: expect.stringMatching(/./),
      message: expect.stringContaining('Nothing was changed.'),
    });
  });

  it.each(['NaN', 'Infinity', '-Infinity'])('names the input that says %s, though that is not JSON', async (value) => {
    const { exit, error } = await calc(`{"inputs": {"stroke": 86, "bore": {"value": ${value}, "unit": "mm"}}}`, 'B1');
    expect(exit).toBe(2);
    expect(JSON.parse(error)).toMatchObject({ code: 'bad-input', field: 'bore' });
  });

  it.each([
    ['', 'not JSON'],
    ['{', 'not JSON'],
    ['[]', 'no inputs'],
    ['{"inputs":4}', 'no inputs'],
    ['{"inputs":{},"unit":{}}', '“unit”'],
    ['{"inputs":{},"units":{"displacement":4}}', 'units'],
  ])('says what is wrong with %s, and what would be right', async (text, said) => {
    const { exit, out, error } = await calc(text, 'B1');
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(JSON.parse(error)).toMatchObject({ code: 'usage', message: expect.stringContaining(said) });
    expect(error).toContain('inputs');
  });

  it('lists every calculator, for people and for programs', async () => {
    const { run } = openRoom();
    const { out } = await run('calc', '--list');
    for (const { id, title } of calculators) expect(out.split('\n')).toContain(`${id.padEnd(3)}  ${title}`);
    const listed = (await run('calc', '--list', '--json')).json() as { id: string; inputs: unknown[] }[];
    expect(listed.map(({ id }) => id)).toEqual(calculators.map(({ id }) => id));
    expect(listed.find(({ id }) => id === 'B1')).toMatchObject({
      inputs: expect.arrayContaining([
        expect.objectContaining({ name: 'bore', unit: 'mm', must: { above: 0 }, usual: { from: 30, to: 200 } }),
      ]),
      outputs: expect.arrayContaining([expect.objectContaining({ name: 'displacement', unit: 'cc' })]),
    });
  });

  it.each(calculators.map(({ id }) => id))('calc %s --help teaches with an example that works', async (id) => {
    const { run } = openRoom();
    const { exit, out } = await run('calc', id, '--help');
    expect(exit).toBe(0);
    const example = /echo '(.*)' \| npm run -s workbook -- calc/.exec(out)?.[1] ?? '';
    expect((await calc(example, id)).exit).toBe(0);
    const one = calculators.find((each) => each.id === id);
    for (const name of [...Object.keys(one?.inputs ?? {}), ...Object.keys(one?.outputs ?? {})])
      expect(out).toContain(name);
  });

  it.each([
    [['calc'], /needs a calculator/],
    [['calc', 'Z9', '--in', '-'], /no calculator “Z9”/],
    [['calc', 'B1'], /needs --in FILE/],
    [['calc', 'B1', '--list', '--json'], /--list lists every calculator/],
  ])('can’t read %o', async (args, said) => {
    const { run } = openRoom();
    const { exit, error } = await run(...args);
    expect(exit).toBe(2);
    expect(error).toMatch(said);
  });
});
