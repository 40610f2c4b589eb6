/**
 * Measures the workbook on this machine: `npm run -s bench [-- --lines 100000]`. Prints figures and ratios of one run;
 * nothing passes or fails by time.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/fetch';
import type { ContractRouterClient } from '@orpc/contract';
import Database from 'better-sqlite3';
import type { Contract } from '../../core/contract/index.ts';
import { createHost, type Host } from '../../core/procedures/host.ts';
import { timedForecast } from './forecast.ts';

const { values } = parseArgs({
  options: { lines: { type: 'string', default: '100000' }, acts: { type: 'string', default: '300' } },
});
const lineCount = Number(values.lines);
const actCount = Number(values.acts);
const folder = mkdtempSync(join(tmpdir(), 'hoistday-bench-'));
const day = '2026-11-25';

/** Calls go through `handle(Request) → Response`, as the window's and the browser's do. */
function clientOf(host: Host): ContractRouterClient<Contract> {
  return createORPCClient(
    new RPCLink({ url: 'http://bench/api/rpc', fetch: (input, init) => host.handle(new Request(input, init)) }),
  );
}

const sorted = (times: readonly number[]): number[] => [...times].sort((a, b) => a - b);
const percentile = (times: readonly number[], share: number): number =>
  sorted(times)[Math.min(times.length - 1, Math.floor(times.length * share))] ?? 0;
const ms = (time: number): string => `${time < 10 ? time.toFixed(2) : time.toFixed(0)} ms`;
const say = (what: string, text: string): void => console.log(`${what.padEnd(62)} ${text}`);

interface Taken {
  readonly times: number[];
  /** Processor time of this process, which tells more than the clock does where others use the machine too. */
  readonly cpu: number[];
}

async function timed(times: number, work: (index: number) => unknown): Promise<Taken> {
  const taken: Taken = { times: [], cpu: [] };
  for (let index = 0; index < times; index += 1) {
    const used = process.cpuUsage();
    const start = performance.now();
    await work(index);
    taken.times.push(performance.now() - start);
    const { user, system } = process.cpuUsage(used);
    taken.cpu.push((user + system) / 1000);
  }
  return taken;
}

const report = (what: string, { times, cpu }: Taken): void =>
  say(
    what,
    `first ${ms(times[0] ?? 0)}, p50 ${ms(percentile(times, 0.5))}, p95 ${ms(percentile(times, 0.95))}; processor p50 ${ms(percentile(cpu, 0.5))}`,
  );

/** One durable row in a table of the same profile: the floor under any act. */
async function rawInserts(): Promise<Taken> {
  const db = new Database(join(folder, 'raw.db'));
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE rows (id INTEGER PRIMARY KEY, on_day TEXT, kind TEXT, quantity INTEGER, payload TEXT) STRICT');
  const insert = db.prepare('INSERT INTO rows (on_day, kind, quantity, payload) VALUES (?, ?, ?, ?)');
  const times = await timed(actCount, () => insert.run(day, 'fitted', 1000, '{}'));
  db.close();
  return times;
}

async function screens(client: ContractRouterClient<Contract>, build: number, about: string): Promise<void> {
  report(`${about}: parts, first 200 rows`, await timed(20, () => client.parts.rows({ build, from: 0, count: 200 })));
  report(`${about}: start page`, await timed(5, () => client.start.view({ build })));
  report(`${about}: hoist check`, await timed(5, () => client.gate.review({ build })));
  report(`${about}: money summary`, await timed(5, () => client.money.summary({ build })));
  report(`${about}: money over time`, await timed(5, () => client.money.overTime({ build })));
  report(`${about}: plan`, await timed(5, () => client.plan.view({ build })));
  report(`${about}: orders`, await timed(5, () => client.orders.list({ build })));
  report(`${about}: journal, first 100`, await timed(10, () => client.journal.list({ build, limit: 100 })));
  report(`${about}: search`, await timed(10, () => client.search.find({ build, text: 'head stud' })));
}

async function demo(): Promise<void> {
  const host = createHost({ folder, allowAnyPath: true, now: () => new Date(`${day}T10:00:00`) });
  const start = performance.now();
  await host.makeDemo(join(folder, 'demo.hoistday'));
  say('demo: made through the procedures', ms(performance.now() - start));
  host.close();
  const opening = performance.now();
  host.openFile(join(folder, 'demo.hoistday'));
  const client = clientOf(host);
  const build = (await client.builds.list())[0]?.id ?? 1;
  await client.parts.rows({ build, from: 0, count: 200 });
  say('demo: open the file and read the first rows', ms(performance.now() - opening));
  await screens(client, build, 'demo');
  host.close();
}

async function large(): Promise<void> {
  const host = createHost({ folder, allowAnyPath: true, now: () => new Date(`${day}T10:00:00`) });
  const client = clientOf(host);
  await client.workbook.create({ name: 'Large', currency: 'USD' });
  let key = 0;
  const act = (): { key: string; on: string } => {
    key += 1;
    return { key: `bench-${key}-act`, on: '2026-10-01' };
  };
  const build = (await client.builds.create({ ...act(), values: { name: 'Large', startedOn: '2026-01-01' } }))
    .made[0] as number;
  const systems: number[] = [];
  for (let index = 0; index < 12; index += 1) {
    systems.push(
      (await client.records.save({ ...act(), kind: 'system', build, values: { name: `System ${index + 1}` } }))
        .made[0] as number,
    );
  }
  const start = performance.now();
  const chunk = 10_000;
  for (let from = 0; from < lineCount; from += chunk) {
    await client.parts.add({
      ...act(),
      build,
      parts: Array.from({ length: Math.min(chunk, lineCount - from) }, (_, index) => ({
        description: `Part ${from + index} ${['head stud', 'gasket', 'hose', 'sensor'][index % 4]}`,
        partNumber: `HD-${from + index}`,
        needMilli: ((index % 8) + 1) * 1000,
        estimateEachE4: (index % 500) * 10_000 + 10_000,
        system: systems[index % systems.length] ?? null,
      })),
    });
  }
  say(`${lineCount} lines: added in acts of ${chunk}`, ms(performance.now() - start));
  host.close();
  const opening = performance.now();
  host.openFile(join(folder, 'Large.hoistday'));
  await client.parts.rows({ build, from: 0, count: 200 });
  say(`${lineCount} lines: open the file and read the first rows`, ms(performance.now() - opening));
  report(
    `${lineCount} lines: all rows in chunks of 10 000`,
    await timed(2, async () => {
      for (let from = 0; from < lineCount; from += 10_000) await client.parts.rows({ build, from, count: 10_000 });
    }),
  );
  await screens(client, build, `${lineCount} lines`);

  await client.parts.act({
    ...act(),
    build,
    act: 'own',
    items: Array.from({ length: actCount }, (_, index) => ({ part: index + 1 })),
  });
  const acts = await timed(actCount, (index) =>
    client.parts.act({ ...act(), build, act: 'fit', items: [{ part: index + 1, quantityMilli: 1000 }] }),
  );
  const raw = await rawInserts();
  report(`${lineCount} lines: one act through the handler`, acts);
  report('raw prepared insert, same durability', raw);
  say(
    'act ÷ raw insert',
    `p50 ${(percentile(acts.times, 0.5) / percentile(raw.times, 0.5)).toFixed(2)}, p95 ${(percentile(acts.times, 0.95) / percentile(raw.times, 0.95)).toFixed(2)}`,
  );
  const checking = performance.now();
  const verified = await client.workbook.verify();
  say(`${lineCount} lines: verify (${verified.entries} entries, ok: ${verified.ok})`, ms(performance.now() - checking));
  host.close();
}

function forecasts(): void {
  const runs = 10_000;
  timedForecast(400);
  const { first, runs: all, whole } = timedForecast(runs);
  say(
    `forecast: ${runs} runs over 300 jobs and 75 deliveries`,
    `first picture ${ms(first)}, all runs ${ms(all)}, with the days won ${ms(whole)}`,
  );
}

say('load of the machine over the last minute', (loadavg()[0] ?? 0).toFixed(1));
try {
  forecasts();
  await demo();
  await large();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
