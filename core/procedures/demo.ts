import { rmSync } from 'node:fs';
import { createRouterClient } from '@orpc/server';
import { playDemo } from '../../demo-data/play.ts';
import { readSettings, writeSettings } from '../workbook/store/connection.ts';
import type { Context } from './context.ts';
import { router } from './router.ts';

/**
 * Makes the demo workbook at `path` by the same acts that a person would do. A demo that couldn't be finished leaves no
 * file behind.
 */
export async function makeDemo(context: Context, path: string): Promise<void> {
  context.files.create('', path);
  const { connection } = context.book();
  writeSettings(connection, { ...readSettings(connection), currency: 'USD', author: 'Demo' });
  try {
    await playDemo(createRouterClient(router, { context: { ...context, announce: () => undefined } }), {});
  } catch (error) {
    context.files.close();
    rmSync(path, { force: true });
    throw error;
  }
  context.announce({ act: 0, label: 'Demo', parts: null });
}
