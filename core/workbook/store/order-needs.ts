import { all, type Connection } from './connection.ts';

export interface OrderNeed {
  readonly part: number;
  readonly description: string;
  readonly partNumber: string;
  readonly unit: string;
  readonly vendor: number | null;
  readonly uncoveredMilli: number;
  readonly estimateEachE4: number | null;
  readonly priority: number;
  readonly neededBy: string | null;
}

/** Part lines with units neither in hand nor on the way: those meant for the vendor first, then the most pressing. */
export function needsOfVendor(connection: Connection, build: number, vendor: number | null): OrderNeed[] {
  return all<OrderNeed>(
    connection,
    `SELECT p.id AS part, p.description, p.part_number AS partNumber, p.unit, p.vendor, q.uncovered_milli AS uncoveredMilli,
     q.estimate_each_e4 AS estimateEachE4, p.priority, p.needed_by AS neededBy
     FROM positions q JOIN parts p ON p.id = q.part
     WHERE q.build = ? AND q.uncovered_milli > 0 AND p.gone = 0 AND p.retired_on IS NULL
     ORDER BY (? IS NOT NULL AND p.vendor IS ?) DESC, p.priority, coalesce(p.needed_by, '9999-12-31'), p.id`,
    build,
    vendor,
    vendor,
  );
}
