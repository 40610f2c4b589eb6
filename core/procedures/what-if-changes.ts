import { call } from '@orpc/server';
import type { VariantChange } from '../contract/records.ts';
import { formatMoney } from '../money/currency.ts';
import { Refusal } from '../refusal.ts';
import { showMinutes } from '../schedule/working-time.ts';
import { readSettings, writeSettings } from '../workbook/store/connection.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import type { Context } from './context.ts';
import { ordersProcedures } from './orders.ts';
import { partsProcedures } from './parts.ts';
import { recordsProcedures } from './records.ts';

/** What was changed in a copy of the workbook, and what is to be counted otherwise besides. */
export interface AppliedChanges {
  readonly words: readonly string[];
  /** Days until a part is here, whatever its vendor's record says. */
  readonly leads: ReadonlyMap<number, number>;
  /** Parts that the changes are about. */
  readonly parts: ReadonlySet<number>;
}

interface Applying {
  readonly context: Context;
  readonly build: number;
  readonly leads: Map<number, number>;
  readonly parts: Set<number>;
  act(): { readonly key: string; readonly on: string };
}

type Change<What extends VariantChange['what']> = Extract<VariantChange, { readonly what: What }>;

const hoursOf = (windows: Change<'hours'>['windows']): number =>
  windows.reduce((sum, { from, to }) => sum + minuteOf(to) - minuteOf(from), 0);

const minuteOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

async function applyHours({ context, build, act }: Applying, { person, windows }: Change<'hours'>): Promise<string> {
  const { connection } = context.book();
  const week = `${showMinutes(hoursOf(windows))} a week`;
  if (person === null) {
    writeSettings(connection, { ...readSettings(connection), weekWindows: windows });
    return `Hours of the week: ${week}`;
  }
  const record = needRecord(connection, 'people', person, 'person');
  await call(
    recordsProcedures.save,
    { ...act(), kind: 'person', build, id: person, revision: record.revision, values: { windows } },
    { context },
  );
  return `Hours of ${String(record['name'])}: ${week}`;
}

async function applyIncome({ context, build, act }: Applying, change: Change<'income'>): Promise<string> {
  const { connection } = context.book();
  const { income, amountMinor, every, from, until } = change;
  const { currency } = readSettings(connection);
  const name = change.name === '' ? 'what if' : change.name;
  const values = { name, amountMinor, every, from, until };
  const said = `${formatMoney(amountMinor, currency)} ${every === 'month' ? 'a month' : 'once'} from ${dayWords(from)}`;
  if (income === null) {
    await call(recordsProcedures.save, { ...act(), kind: 'income', build, values }, { context });
    return `More income: ${said}`;
  }
  const record = needRecord(connection, 'incomes', income, 'income');
  const own = change.name === '' ? { ...values, name: String(record['name']) } : values;
  await call(
    recordsProcedures.save,
    { ...act(), kind: 'income', build, id: income, revision: record.revision, values: own },
    { context },
  );
  return `Income “${own.name}”: ${said}`;
}

const rowOf = ({ context, build }: Applying, part: number) => {
  const [row] = partRows(context.book().connection, { build, today: context.today(), ids: [part] });
  if (row !== undefined && row.build === build) return row;
  throw new Refusal('not-found', `There is no part line number ${part} in this build. Nothing was changed.`, {
    field: 'part',
    accepted: 'a part line of the build that isn’t dropped',
  });
};

/** Takes what is still to come on a part line off its orders. */
async function cancelOpen(applying: Applying, part: number): Promise<void> {
  const { context, build, act } = applying;
  const due = await call(ordersProcedures.due, { build }, { context });
  for (const row of due.filter((line) => line.part === part)) {
    await call(
      ordersProcedures.cancel,
      { ...act(), order: row.order, lines: [{ line: row.line }], reason: 'what if' },
      { context },
    );
  }
}

const daysWords = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;

/**
 * Lets a part that isn't ordered yet come from a vendor that takes so long, on the old one's terms; what is ordered
 * already keeps its vendor, and only its day is counted otherwise.
 */
async function applyLead(applying: Applying, part: number, days: number): Promise<void> {
  const { context, build, act, leads, parts } = applying;
  const row = rowOf(applying, part);
  leads.set(part, days);
  parts.add(part);
  if (row.uncoveredMilli === 0) return;
  const old = row.vendor === null ? null : needRecord(context.book().connection, 'vendors', row.vendor);
  const made = await call(
    recordsProcedures.save,
    {
      ...act(),
      kind: 'vendor',
      build,
      values: {
        name: `${old === null ? 'A vendor' : String(old['name'])}, ${daysWords(days)}, line ${part}`,
        leadDays: days,
        currency: old?.['currency'] ?? null,
        shippingMinor: old?.['shippingMinor'] ?? null,
        freeFromMinor: old?.['freeFromMinor'] ?? null,
      },
    },
    { context },
  );
  const vendor = made.made[0];
  if (vendor === undefined) throw new Error('The vendor of a what-if was not made');
  await call(partsProcedures.editMany, { ...act(), parts: [part], values: { vendor } }, { context });
}

async function applyOne(applying: Applying, change: VariantChange): Promise<string> {
  const { context, build, act, parts } = applying;
  const { connection } = context.book();
  switch (change.what) {
    case 'hours':
      return applyHours(applying, change);
    case 'income':
      return applyIncome(applying, change);
    case 'lead time': {
      await applyLead(applying, change.part, change.days);
      return `${rowOf(applying, change.part).description}: here in ${daysWords(change.days)}`;
    }
    case 'job hours': {
      const job = needRecord(connection, 'jobs', change.job, 'job');
      await call(
        recordsProcedures.save,
        {
          ...act(),
          kind: 'job',
          build,
          id: change.job,
          revision: job.revision,
          values: { minutesGuess: change.minutes, minutesLow: null, minutesHigh: null },
        },
        { context },
      );
      return `${String(job['title'])}: ${showMinutes(change.minutes)} of work`;
    }
    case 'drop part': {
      const { description } = rowOf(applying, change.part);
      parts.add(change.part);
      await cancelOpen(applying, change.part);
      await call(partsProcedures.drop, { ...act(), parts: [change.part], reason: 'what if' }, { context });
      return `${description}: dropped`;
    }
    case 'swap part': {
      const row = rowOf(applying, change.part);
      parts.add(change.part);
      await cancelOpen(applying, change.part);
      const now = rowOf(applying, change.part);
      const each =
        change.priceMinor === null || now.needMilli === 0
          ? null
          : Math.round((change.priceMinor * 10_000_000) / now.needMilli);
      const description = change.description === '' ? row.description : change.description;
      await call(
        partsProcedures.edit,
        {
          ...act(),
          part: change.part,
          revision: now.revision,
          values: { description, ...(each === null ? {} : { estimateEachE4: each }) },
        },
        { context },
      );
      if (change.days !== null) await applyLead(applying, change.part, change.days);
      const { currency } = readSettings(connection);
      const price = change.priceMinor === null ? '' : ` for ${formatMoney(change.priceMinor, currency)}`;
      const days = change.days === null ? '' : `, here in ${daysWords(change.days)}`;
      return `${row.description}: ${description === row.description ? 'another one' : description}${price}${days}`;
    }
  }
}

/**
 * Makes the changes in the workbook of `context`, which must be a copy, by the acts of the program.
 * @throws Refusal naming the change, as the act refuses it.
 */
export async function applyChanges(
  context: Context,
  build: number,
  changes: readonly VariantChange[],
): Promise<AppliedChanges> {
  let acts = 0;
  const applying: Applying = {
    context,
    build,
    leads: new Map(),
    parts: new Set(),
    act: () => {
      acts += 1;
      return { key: `what-if-${String(acts).padStart(6, '0')}`, on: context.today() };
    },
  };
  const words: string[] = [];
  for (const change of changes) words.push(await applyOne(applying, change));
  return {
    words,
    leads: applying.leads,
    parts: applying.parts,
  };
}
