import type { z } from 'zod';
import type { ActResult } from '../contract/common.ts';
import type { fitsContract } from '../contract/fits.ts';
import { adapterItems } from '../fit/kept/adapter-items.ts';
import { type JudgedConnection, judgeConnection } from '../fit/kept/connection.ts';
import { judgeDeclared } from '../fit/kept/declared.ts';
import type { Acceptance } from '../fit/kept/records.ts';
import type { PayloadValue } from '../ledger/entry.ts';
import { itemKey } from '../plumbing/bill.ts';
import { Refusal } from '../refusal.ts';
import { isCountable, isUnit } from '../units/quantity.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { buildFits, keptConnection, keptDeclaredFit } from '../workbook/store/fits.ts';
import { listRecords, needRecord, type RecordValuesRow, readRecord } from '../workbook/store/record-tables.ts';
import { act, type Context } from './context.ts';
import { addPart } from './part-writing.ts';

type Input<K extends 'useAdapter' | 'dropAdapter' | 'accept' | 'endAcceptance'> = z.infer<
  NonNullable<(typeof fitsContract)[K]['~orpc']['inputSchema']>
>;
type Chosen = { pieces: string[]; parts: number[] } | null;

function needStanding(connection: Connection, table: 'connections' | 'declaredFits', id: number, field: string) {
  const record = needRecord(connection, table, id, field);
  if (record.retiredOn === null) return record;
  throw new Refusal('retired', `“${String(record['title'])}” was retired. Nothing was changed.`, {
    field,
    accepted: 'a fit that is in use; bring this one back first',
  });
}

function judged(connection: Connection, record: RecordValuesRow): JudgedConnection {
  return judgeConnection(keptConnection(record), buildFits(connection, Number(record.build), undefined).context);
}

/** Changes one value of a fit, with words for the journal. */
function changeFit(
  writer: ActWriter,
  table: 'connections' | 'declaredFits',
  record: RecordValuesRow,
  on: string,
  after: Readonly<Record<string, PayloadValue>>,
  said: Readonly<Record<string, string>>,
): void {
  const edit = writer.change(table, record.id, after);
  if (edit === undefined) return;
  const about = { record: table === 'connections' ? 'connection' : 'fit', name: String(record['title']) };
  writer.post({ kind: 'record', on, build: Number(record.build), payload: { ...about, ...said } }, [edit]);
}

/** A line of the list that is this thing, counted in pieces. */
function lineOf(connection: Connection, build: number, text: string): RecordValuesRow | undefined {
  const key = itemKey(text);
  return listRecords(connection, 'parts', 'build = ? AND retired_on IS NULL', build).find((part) => {
    const unit = String(part['unit']);
    return itemKey(String(part['description'])) === key && isUnit(unit) && isCountable(unit);
  });
}

function needMore(writer: ActWriter, part: number, on: string, byMilli: number): void {
  const { build, needMilli } = writer.state(part);
  writer.post({ kind: 'need-changed', on, build, part, payload: { needMilli: Math.max(0, needMilli + byMilli) } });
}

/** Takes back one piece that an adapter brought: a line that nothing else needs, and that nobody ordered, is dropped. */
function takeBack(writer: ActWriter, part: number, on: string): void {
  const record = readRecord(writer.connection, 'parts', part);
  if (record === undefined || record.gone || record.retiredOn !== null) return;
  const state = writer.state(part);
  if (state.needMilli > 0) needMore(writer, part, on, -1000);
  const after = writer.state(part);
  if (after.needMilli > 0 || after.lines.length > 0 || after.lots.length > 0) return;
  const edit = writer.change('parts', part, { retiredOn: on });
  if (edit === undefined) return;
  const payload = { record: 'part line', did: 'dropped', reason: 'its adapter is no longer wanted' };
  writer.post({ kind: 'record', on, build: state.build, part, payload }, [edit]);
}

/** Where a new line of the list belongs: the system and job of the part that it joins. */
function placeOf(
  connection: Connection,
  { one, other }: JudgedConnection,
): { system: number | null; job: number | null } {
  const part = one.part ?? other.part;
  const record = part === null ? undefined : readRecord(connection, 'parts', part);
  return { system: (record?.['system'] ?? null) as number | null, job: (record?.['job'] ?? null) as number | null };
}

/** Puts one piece on the list, on a line that is there already or on a new one. Answers its part line. */
function putOnList(
  writer: ActWriter,
  build: number,
  on: string,
  text: string,
  place: ReturnType<typeof placeOf>,
): number {
  const there = lineOf(writer.connection, build, text);
  if (there !== undefined) {
    needMore(writer, there.id, on, 1000);
    return there.id;
  }
  return addPart(writer, build, on, { description: text, needMilli: 1000, ...place });
}

/**
 * Chooses one of the adapters that join a connection. Its pieces and what they need go on the parts list: what an earlier
 * choice of this connection brought stays, what only that one brought goes.
 * @throws Refusal `not-allowed-from-here` when no adapter joins it, `bad-input` for one that isn't offered
 */
export function useAdapter(context: Context, input: Input<'useAdapter'>): ActResult {
  const record = needStanding(context.book().connection, 'connections', input.connection, 'connection');
  const title = String(record['title']);
  return act(context, input, `Adapter for ${title}`, (writer) => {
    const now = judged(writer.connection, record);
    const { adapters } = now.fit;
    if (adapters.length === 0) {
      throw new Refusal(
        'not-allowed-from-here',
        `“${title}” has no adapter to choose: ${now.says} Nothing was changed.`,
        {
          field: 'adapter',
          accepted: 'a connection that an adapter joins',
        },
      );
    }
    const adapter = adapters[input.adapter];
    if (adapter === undefined) {
      throw new Refusal('bad-input', `There is no adapter number ${input.adapter}. Nothing was changed.`, {
        field: 'adapter',
        accepted: `a number from 0 to ${adapters.length - 1}`,
      });
    }
    const before = (record['adapter'] as unknown as Chosen)?.parts ?? [];
    const parts = exchange(writer, Number(record.build), input.on, before, adapter, placeOf(writer.connection, now));
    const pieces = adapter.pieces.map((text) => text.slice(0, 200));
    changeFit(
      writer,
      'connections',
      record,
      input.on,
      { adapter: { pieces, parts } },
      {
        did: `joined by ${pieces.join(', then ')}`,
      },
    );
    return undefined;
  });
}

/** Brings the list from what one adapter brought to what another needs; answers a part line for each piece. */
function exchange(
  writer: ActWriter,
  build: number,
  on: string,
  before: readonly number[],
  adapter: { readonly pieces: readonly string[]; readonly needs: readonly string[] },
  place: ReturnType<typeof placeOf>,
): number[] {
  const left = [...before];
  const wanted = adapterItems(adapter).flatMap(({ text, count }) =>
    Array.from({ length: count }, () => text.slice(0, 300)),
  );
  const kept = wanted.map((text) => {
    const at = left.findIndex((part) => {
      const line = readRecord(writer.connection, 'parts', part);
      return line?.retiredOn === null && itemKey(String(line['description'])) === itemKey(text);
    });
    return at < 0 ? undefined : left.splice(at, 1)[0];
  });
  const parts = wanted.map((text, index) => kept[index] ?? putOnList(writer, build, on, text, place));
  for (const part of left) takeBack(writer, part, on);
  return parts;
}

/** Takes the choice of an adapter back, and from the list what only it brought. */
export function dropAdapter(context: Context, input: Input<'dropAdapter'>): ActResult {
  const record = needStanding(context.book().connection, 'connections', input.connection, 'connection');
  const chosen = record['adapter'] as unknown as Chosen;
  if (chosen === null) {
    throw new Refusal('not-allowed-from-here', `“${String(record['title'])}” has no adapter. Nothing was changed.`, {
      field: 'connection',
      accepted: 'a connection for which an adapter was chosen',
    });
  }
  return act(context, input, `Adapter taken back, ${String(record['title'])}`, (writer) => {
    for (const part of chosen.parts) takeBack(writer, part, input.on);
    changeFit(writer, 'connections', record, input.on, { adapter: null }, { did: 'adapter taken back' });
    return undefined;
  });
}

const tableOf = { connection: 'connections', 'declared-fit': 'declaredFits' } as const;

/** Whether it is wrong now, what it says, and what an acceptance would be for. */
function standsNow(connection: Connection, kind: keyof typeof tableOf, record: RecordValuesRow) {
  if (kind === 'connection') {
    const { fit, says, acceptFor } = judged(connection, record);
    return { wrong: fit.verdict !== 'mates' && fit.verdict !== 'unknown', says, acceptFor };
  }
  const { context } = buildFits(connection, Number(record.build), undefined);
  const { outcome, says, acceptFor } = judgeDeclared(keptDeclaredFit(record), context);
  return { wrong: outcome === 'fail', says, acceptFor };
}

/**
 * Accepts a wrong fit with a reason, for what its sides are now.
 * @throws Refusal `not-allowed-from-here` for a fit that isn't wrong
 */
export function acceptFit(context: Context, input: Input<'accept'>): ActResult {
  const { connection } = context.book();
  const { kind, id } = input.subject;
  const record = needStanding(connection, tableOf[kind], id, 'subject');
  const { wrong, says, acceptFor } = standsNow(connection, kind, record);
  if (!wrong) {
    throw new Refusal('not-allowed-from-here', `There is nothing to accept: ${says} Nothing was changed.`, {
      field: 'subject',
      accepted: 'a fit that is wrong; one that lacks something can be waived in the hoist check',
    });
  }
  return act(context, input, `Acceptance of ${String(record['title'])}`, (writer) => {
    const accepted = { reason: input.reason, by: input.by, on: input.on, for: acceptFor } satisfies Acceptance;
    changeFit(
      writer,
      tableOf[kind],
      record,
      input.on,
      { accepted },
      {
        did: 'accepted although it does not fit',
        reason: input.reason,
        by: input.by,
      },
    );
    return undefined;
  });
}

/** Ends an acceptance: the fit counts as wrong again. */
export function endAcceptance(context: Context, input: Input<'endAcceptance'>): ActResult {
  const { kind, id } = input.subject;
  const record = needStanding(context.book().connection, tableOf[kind], id, 'subject');
  if (record['accepted'] === null) {
    throw new Refusal('not-allowed-from-here', `“${String(record['title'])}” was not accepted. Nothing was changed.`, {
      field: 'subject',
      accepted: 'a fit that was accepted',
    });
  }
  return act(context, input, `End of the acceptance of ${String(record['title'])}`, (writer) => {
    changeFit(writer, tableOf[kind], record, input.on, { accepted: null }, { did: 'no longer accepted' });
    return undefined;
  });
}
