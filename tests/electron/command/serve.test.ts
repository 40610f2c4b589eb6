import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openRoom, openWorkbookRoom } from './command-room.ts';

const root = join(import.meta.dirname, '../../..');

/** The command line as a process of its own, as a shell would start it. */
function start(folder: string, ...args: string[]): { child: ChildProcess; out: () => string; error: () => string } {
  const child = spawn(process.execPath, [join(root, 'electron/command/main.ts'), ...args], {
    cwd: root,
    env: { ...process.env, INIT_CWD: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  let out = '';
  let error = '';
  child.stdout?.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    error += text;
  });
  return { child, out: () => out, error: () => error };
}

describe('serve', () => {
  it('prints a link that works, and ends cleanly when asked to', async () => {
    const { folder } = await openWorkbookRoom();
    const { child, out, error } = start(folder, 'serve', 'drover.hoistday');
    const ended = once(child, 'exit');
    await expect.poll(out, { timeout: 50_000 }).toContain('Stop with Ctrl+C.');
    const link = /http:\/\/\S+/.exec(out())?.[0] ?? '';
    expect(new URL(link).hostname).toMatch(/^(127\.0\.0\.1|localhost)$/);
    const page = await fetch(link);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<html');
    child.kill('SIGTERM');
    expect(await ended).toEqual([0, null]);
    expect(out()).toContain('Stopped; the workbook is closed.');
    expect(error()).toBe('');
    await expect(fetch(link)).rejects.toThrow();
  });

  it('says why when the file is not there', async () => {
    const { folder, run } = openRoom();
    const { exit, refusal } = await run('serve', join(folder, 'nothing.hoistday'), '--json');
    expect(exit).toBe(1);
    expect(refusal().code).toBe('not-found');
  });

  it.each(['-1', '65536', 'http'])('wants a port that exists: %s', async (port) => {
    const { run } = openRoom();
    const { exit, error } = await run('serve', `--port=${port}`);
    expect(exit).toBe(2);
    expect(error).toContain('a whole number from 0 to 65535');
  });
});
