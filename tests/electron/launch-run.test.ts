import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const project = path.resolve(import.meta.dirname, '..', '..');

interface Run {
  readonly output: () => string;
  /** Resolves with the first match, or rejects when the program ends without it. */
  find(pattern: RegExp): Promise<string>;
  /** Its exit code, once it ended by itself or was told to. */
  readonly ended: Promise<number | null>;
  stop(): void;
}

function run(args: readonly string[], env: Record<string, string> = {}): Run {
  const child = spawn(process.execPath, [path.join(project, 'electron', 'launch.ts'), ...args], {
    env: { ...process.env, ...env },
  });
  let output = '';
  const heard = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      for (const tell of heard) tell();
    });
  }
  const ended = new Promise<number | null>((resolve) => child.once('close', (code) => resolve(code)));
  return {
    output: () => output,
    find: (pattern) =>
      new Promise((resolve, reject) => {
        const look = () => {
          const [, found] = pattern.exec(output) ?? [];
          if (found !== undefined) resolve(found);
        };
        heard.add(look);
        look();
        void ended.then(() => reject(new Error(`ended without ${pattern}: ${output}`)));
      }),
    ended,
    stop: () => {
      child.kill('SIGTERM');
    },
  };
}

// The page is built before the tests (npm test); a run of this file alone needs "npm run build" first.
describe.skipIf(!existsSync(path.join(project, 'dist', 'renderer', 'index.html')))('npm start', () => {
  it('without a display says why in one line, serves the workbook to the browser and stops cleanly', async () => {
    const folder = path.join(mkdtempSync(path.join(tmpdir(), 'hoistday-start-')), 'workbooks');
    const started = run(['--no-open', '--folder', folder], { DISPLAY: '', WAYLAND_DISPLAY: '' });
    const link = new URL(await started.find(/(http:\/\/127\.0\.0\.1:\d+\/#t=[\w-]{43})\n/));
    if (process.platform === 'linux') {
      expect(started.output()).toContain(
        'No desktop window here (there is no display): the workbook opens in your browser.',
      );
    }
    const page = await fetch(link.origin);
    expect([page.status, await page.text()]).toEqual([200, expect.stringContaining('<title>Hoistday</title>')]);
    const signedIn = await fetch(`${link.origin}/session`, {
      method: 'POST',
      headers: { origin: link.origin, 'content-type': 'application/json' },
      body: JSON.stringify({ token: link.hash.slice(3) }),
    });
    expect(signedIn.status).toBe(204);
    expect(existsSync(folder)).toBe(true);
    const second = run(['--browser', '--no-open', '--folder', folder, '--port', link.port]);
    await second.find(/(Accepted: another number)/);
    expect(second.output()).toContain(`port: Port ${link.port} is used by another program. Nothing was changed.`);
    expect(await second.ended).toBe(1);
    started.stop();
    expect(await started.ended).toBe(0);
  });

  it('ends with a plain line for an argument that it does not know', async () => {
    const refused = run(['--nonsense']);
    await refused.find(/(Accepted: )/);
    expect(refused.output()).toMatch(/^arguments: Unknown option '--nonsense'\. Nothing was changed\.\n/);
    expect(await refused.ended).toBe(1);
  });
});
