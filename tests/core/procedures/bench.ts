import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRouterClient } from '@orpc/server';
import { expect, onTestFinished } from 'vitest';
import type { RefusalData } from '../../../core/contract/common.ts';
import { buildsProcedures } from '../../../core/procedures/builds.ts';
import { buyingProcedures } from '../../../core/procedures/buying.ts';
import type { Book, Context } from '../../../core/procedures/context.ts';
import { fileActions } from '../../../core/procedures/files.ts';
import { forecastProcedures } from '../../../core/procedures/forecast.ts';
import { answering } from '../../../core/procedures/handler.ts';
import { journalProcedures } from '../../../core/procedures/journal.ts';
import { moneyProcedures } from '../../../core/procedures/money.ts';
import { ordersProcedures } from '../../../core/procedures/orders.ts';
import { partsProcedures } from '../../../core/procedures/parts.ts';
import { planProcedures } from '../../../core/procedures/plan.ts';
import { recordsProcedures } from '../../../core/procedures/records.ts';
import { tonightProcedures } from '../../../core/procedures/tonight.ts';
import { workbookProcedures } from '../../../core/procedures/workbook.ts';
import { readSettings } from '../../../core/workbook/store/connection.ts';

const bookProcedures = {
  workbook: workbookProcedures,
  builds: buildsProcedures,
  records: recordsProcedures,
  parts: partsProcedures,
  orders: ordersProcedures,
  plan: planProcedures,
  forecast: forecastProcedures,
  buying: buyingProcedures,
  money: moneyProcedures,
  journal: journalProcedures,
  tonight: tonightProcedures,
};

const connectClient = (context: Context, logged: string[]) =>
  createRouterClient(bookProcedures, { context, interceptors: [answering((line) => logged.push(line)) as never] });
export type BenchClient = ReturnType<typeof connectClient>;

export interface Bench {
  readonly client: BenchClient;
  readonly context: Context;
  readonly build: number;
  /** Lines about errors inside the program; a sound test leaves none. */
  readonly logged: readonly string[];
  /** Sets the day that the program takes for today. */
  today(day: string): void;
  /** Sets the time of day, in UTC, such as 19:10. */
  clock(time: string): void;
  /** Idempotency key and day of an act. */
  act(on?: string): { key: string; on: string };
  /** Every figure folded anew must equal the kept one. */
  verify(): Promise<void>;
  /** Undoes the latest act, verifies, does it again and verifies. */
  undoAndRedo(): Promise<void>;
}

export interface BenchOptions {
  readonly currency?: string;
  readonly today?: string;
}

/** A new workbook in a folder of its own, with one build; the folder goes when the test is over. */
export async function openBench(options: BenchOptions = {}): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  let day = options.today ?? '2026-03-02';
  let time = '12:00';
  let book: Book | null = null;
  let keys = 0;
  const logged: string[] = [];
  const now = (): Date => new Date(`${day}T${time}:00Z`);
  const context: Context = {
    book() {
      if (book === null) throw new Error('No workbook is open');
      return book;
    },
    current: () => book,
    now,
    today: () => day,
    settings: () => readSettings(context.book().connection),
    announce: () => undefined,
    files: fileActions({
      folder,
      allowAnyPath: true,
      now,
      current: () => book,
      become: (next) => {
        book = next;
      },
    }),
  };
  onTestFinished(() => {
    book?.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const client = connectClient(context, logged);
  const act = (on = day): { key: string; on: string } => {
    keys += 1;
    return { key: `key-${String(keys).padStart(8, '0')}`, on };
  };
  await client.workbook.create({ name: 'Bench', currency: options.currency ?? 'USD' });
  const made = await client.builds.create({
    ...act(),
    values: { name: 'Drover 302', car: '1978 Tarnwell Drover', startedOn: day },
  });
  const verify = async (): Promise<void> => {
    const report = await client.workbook.verify();
    expect(report.differences).toEqual([]);
    expect(report.invariants).toEqual([]);
    expect(report.ok).toBe(true);
  };
  return {
    client,
    context,
    build: made.made[0] as number,
    logged,
    today(next) {
      day = next;
    },
    clock(next) {
      time = next;
    },
    act,
    verify,
    async undoAndRedo() {
      const { key } = act();
      await client.journal.undo({ key });
      await verify();
      await client.journal.redo({ key: `${key}-again` });
      await verify();
    },
  };
}

/** What a refused call says. Fails when the call is let through. */
export async function refusalOf(call: Promise<unknown>): Promise<RefusalData> {
  try {
    await call;
  } catch (error) {
    const { data } = error as { data?: RefusalData };
    if (data?.code === undefined) throw error;
    return data;
  }
  throw new Error('The call was let through');
}
