/** What the joints of a build put on its parts list, and take back from it. */
import { adapterItems } from '../fit/kept/adapter-items.ts';
import type { JudgedConnection } from '../fit/kept/connection.ts';
import { itemKey } from '../plumbing/bill.ts';
import { isCountable, isUnit } from '../units/quantity.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { listRecords, type RecordValuesRow, readRecord } from '../workbook/store/record-tables.ts';
import { addPart } from './part-writing.ts';

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
export function takeBack(writer: ActWriter, part: number, on: string): void {
  const record = readRecord(writer.connection, 'parts', part);
  if (record === undefined || record.gone || record.retiredOn !== null) return;
  const state = writer.state(part);
  if (state.needMilli > 0) needMore(writer, part, on, -1000);
  const after = writer.state(part);
  if (after.needMilli > 0 || after.lines.length > 0 || after.lots.length > 0) return;
  const edit = writer.change('parts', part, { retiredOn: on });
  if (edit === undefined) return;
  const payload = { record: 'part line', did: 'dropped', reason: 'the joint that it was for no longer wants it' };
  writer.post({ kind: 'record', on, build: state.build, part, payload }, [edit]);
}

/** Where a new line of the list belongs: the system and job of the part that it joins. */
export function placeOf(
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

/** Brings the list from what one choice for a connection brought to what another needs; answers a part line for each piece. */
export function exchange(
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
