import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { onTestFinished } from 'vitest';
import { createWorkbookFile } from '../../../../core/workbook/file/create-file.ts';
import { openWorkbookFile } from '../../../../core/workbook/file/open-file.ts';
import { now, schemaOne } from './sample-schema.ts';

/** A folder that goes when the test is over. */
export function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'hoistday-test-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

/** Adds `count` orders with two lines each, in one transaction. */
export function addOrders(db: Database, count: number): void {
  const order = db.prepare('INSERT INTO orders (name) VALUES (?)');
  const line = db.prepare('INSERT INTO lines (order_id, amount_minor) VALUES (?, ?)');
  db.transaction(() => {
    for (let index = 0; index < count; index += 1) {
      const { lastInsertRowid } = order.run(`order ${index} ${'x'.repeat(60)}`);
      line.run(lastInsertRowid, index);
      line.run(lastInsertRowid, -index);
    }
  }).immediate();
}

/** A closed workbook of schema 2 with some orders. */
export function workbookWith(orders: number, path = join(folder(), 'drover.hoistday')): string {
  createWorkbookFile(path, { now, migrations: schemaOne });
  const workbook = openWorkbookFile(path, { now, migrations: schemaOne });
  addOrders(workbook.db, orders);
  workbook.close();
  return path;
}

/** Every file of a folder with a digest of its content. */
export function contentOf(path: string): Record<string, string> {
  const names = readdirSync(path, { withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    names.map(({ name }) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(path, name)))
        .digest('hex'),
    ]),
  );
}

/** Starts one of the scripts in children/ and collects what it prints. */
export function startChild(script: string, ...args: string[]) {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'children', script), ...args]);
  const said = { out: '', err: '' };
  child.stdout.on('data', (chunk) => {
    said.out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    said.err += chunk;
  });
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  const firstWord = new Promise<void>((resolve) => {
    child.stdout.once('data', () => resolve());
    child.on('close', () => resolve());
  });
  return { child, said, ended, firstWord };
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** A number sequence that is the same at every run. Source of the generator: Marsaglia, "Xorshift RNGs", 2003. */
export function seeded(seed: number): (below: number) => number {
  let state = seed | 0 || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}
