import type { PartRow } from '../../contract/parts.ts';
import type { Fetched } from '../../contract/tonight.ts';
import type { Connection } from './connection.ts';
import { readRecord } from './record-tables.ts';
import { stateOf, statesAsOf } from './states.ts';

/** What to fetch for a job from which bin: units in hand, up to what its parts still need. A lot's own bin goes first. */
export function fetchFrom(
  connection: Connection,
  build: number,
  asOf: string | undefined,
  rows: readonly PartRow[],
): Fetched[] {
  const past =
    asOf === undefined
      ? undefined
      : statesAsOf(
          connection,
          build,
          asOf,
          rows.map(({ id }) => id),
        );
  const byBin = new Map<number | null, Map<number, Fetched['parts'][number]>>();
  for (const row of rows) {
    let wantMilli = row.needMilli - row.trialMilli - row.fittedMilli - row.snugMilli - row.verifiedMilli;
    for (const lot of (past === undefined ? stateOf(connection, row.id) : past.get(row.id))?.lots ?? []) {
      const takeMilli = Math.min(wantMilli, lot.places.shelf + lot.places.allocated);
      if (takeMilli <= 0) continue;
      wantMilli -= takeMilli;
      const lotBin = readRecord(connection, 'lots', lot.lot)?.['bin'] as number | null | undefined;
      const bin = lotBin ?? row.bin;
      const own = byBin.get(bin) ?? new Map<number, Fetched['parts'][number]>();
      byBin.set(bin, own);
      const { id: part, description, partNumber, unit } = row;
      own.set(part, { part, description, partNumber, unit, milli: (own.get(part)?.milli ?? 0) + takeMilli });
    }
  }
  return [...byBin]
    .map(([bin, parts]) => {
      const record = bin === null ? undefined : readRecord(connection, 'bins', bin);
      return {
        bin,
        binName: String(record?.['name'] ?? ''),
        place: String(record?.['place'] ?? ''),
        parts: [...parts.values()],
      };
    })
    .sort(
      (one, other) => Number(one.bin === null) - Number(other.bin === null) || (one.binName < other.binName ? -1 : 1),
    );
}
