import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = join(import.meta.dirname, '../../..');

it('ends quietly when whoever reads the answer stops half-way', async () => {
  const child = spawn(process.execPath, [join(root, 'electron/command/main.ts'), 'calc', '--list', '--json'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let error = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    error += text;
  });
  child.stdout.destroy();
  expect(await once(child, 'close')).toEqual([0, null]);
  expect(error).toBe('');
}, 60_000);
