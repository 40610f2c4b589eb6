import type { z } from 'zod';
import type { PartAct, PartDetail, quoteRow } from '../../contract/parts.ts';
import type { PartState } from '../../ledger/part-state.ts';
import { Refusal } from '../../refusal.ts';
import { all, type Connection } from './connection.ts';
import { partRows } from './part-rows.ts';
import { latestPromise, lineWords } from './promises.ts';
import { needRecord, readRecord } from './record-tables.ts';
import { stateOf, statesAsOf } from './states.ts';

/** Units that stand in buckets, without the empty ones. */
function filled(lot: PartState['lots'][number]): Record<string, number> {
  const exits = { ...lot.exits, returned: lot.exits.returned - lot.settledMilli, settled: lot.settledMilli };
  return Object.fromEntries(Object.entries({ ...lot.places, ...exits }).filter(([, milli]) => milli !== 0));
}

function quotesOf(connection: Connection, part: number, today: string): z.infer<typeof quoteRow>[] {
  return all<{ seq: number; on_day: string; currency: string; note: string; payload: string }>(
    connection,
    `SELECT seq, on_day, currency, note, payload FROM entries e WHERE part = ? AND kind = 'quoted' AND on_day <= ? AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY on_day DESC, seq DESC`,
    part,
    today,
  ).map((row) => {
    const payload = JSON.parse(row.payload) as { eachE4: number; vendor: number | null; validUntil: string | null };
    const vendor = payload.vendor === null ? undefined : readRecord(connection, 'vendors', payload.vendor);
    return {
      seq: row.seq,
      on: row.on_day,
      vendor: payload.vendor,
      vendorName: vendor === undefined ? '' : String(vendor['name']),
      eachE4: payload.eachE4,
      currency: row.currency,
      validUntil: payload.validUntil,
      expired: payload.validUntil !== null && payload.validUntil < today,
      note: row.note,
    };
  });
}

/** Everything about one part line: its row, lots, order lines, quotes, and what can be done with it. */
export function readPartDetail(
  connection: Connection,
  question: { readonly build: number; readonly part: number; readonly asOf?: string | undefined },
  today: string,
  possibleActs: (state: PartState) => { act: PartAct; mostMilli: number }[],
): PartDetail {
  const { part, build } = question;
  const record = needRecord(connection, 'parts', part, 'part');
  if (record.build !== build) {
    throw new Refusal('not-found', `Part line ${part} belongs to another build.`, {
      field: 'part',
      accepted: 'a part line of this build',
    });
  }
  const asOf = question.asOf !== undefined && question.asOf < today ? question.asOf : undefined;
  const [row] = partRows(connection, { build, asOf, today, ids: [part], dropped: true });
  if (row === undefined) {
    throw new Refusal('not-found', `“${String(record['description'])}” was not on the list yet on ${asOf ?? today}.`, {
      field: 'asOf',
      accepted: 'a later day',
    });
  }
  const state = asOf === undefined ? stateOf(connection, part) : statesAsOf(connection, build, asOf, [part]).get(part);
  const words = lineWords(connection, build, asOf);
  const orders = new Map(
    all<{ id: number; number: string; ordered_on: string; name: string }>(
      connection,
      `SELECT o.id, o.number, o.ordered_on, v.name FROM orders o JOIN vendors v ON v.id = o.vendor
       WHERE o.id IN (SELECT order_id FROM order_lines WHERE part = ?)`,
      part,
    ).map((order) => [order.id, order]),
  );
  return {
    row,
    facts: (record['facts'] as unknown as PartDetail['facts']) ?? [],
    lots: (state?.lots ?? [])
      .filter(({ cameInMilli }) => cameInMilli > 0)
      .map((lot) => {
        const own = readRecord(connection, 'lots', lot.lot);
        return {
          id: lot.lot,
          line: lot.line === 0 ? null : lot.line,
          source: lot.source,
          owner: String(own?.['owner'] ?? ''),
          dueOn: (own?.['dueOn'] as string | null | undefined) ?? null,
          bin: (own?.['bin'] as number | null | undefined) ?? null,
          cameInOn: String(own?.['cameInOn']),
          cameInMilli: lot.cameInMilli,
          costMinor: lot.costMinor,
          places: filled(lot),
        };
      }),
    lines: (state?.lines ?? [])
      .filter(({ orderedMilli }) => orderedMilli > 0)
      .map((line) => {
        const order = orders.get(line.order);
        return {
          line: line.line,
          order: line.order,
          orderNumber: order?.number ?? '',
          vendor: order?.name ?? '',
          orderedOn: order?.ordered_on ?? today,
          orderedMilli: line.orderedMilli,
          receivedMilli: line.receivedMilli,
          outstandingMilli: line.placedMilli + line.acknowledgedMilli + line.backOrderedMilli + line.inTransitMilli,
          backOrderedMilli: line.backOrderedMilli,
          promisedOn: latestPromise(words.get(line.line)),
          landedMinor: line.landedMinor,
        };
      }),
    quotes: quotesOf(connection, part, asOf ?? today),
    possible: asOf === undefined && state !== undefined && !row.dropped ? possibleActs(state) : [],
  };
}
