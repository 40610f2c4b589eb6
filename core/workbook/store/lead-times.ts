import type { VendorLead } from '../../contract/forecast.ts';
import { leadOutlook, waitingCurve, waitQuantiles } from '../../purchasing/lead-time.ts';
import { all, type Connection } from './connection.ts';
import { leadRecords } from './lead-records.ts';
import { listRecords } from './record-tables.ts';

/** Latest lines of a vendor that are handed over one by one; its figures stand on all of them. */
const mostLines = 200;

function median(days: readonly number[]): number | null {
  const sorted = [...days].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [below, at] = [sorted[middle - 1] ?? 0, sorted[middle]];
  if (at === undefined) return null;
  return sorted.length % 2 === 1 ? at : (below + at) / 2;
}

/** Every vendor's waits as the order lines of the workbook have them, vendors with most lines first. */
export function vendorLeadTimes(connection: Connection, today: string, asOf: string | undefined): VendorLead[] {
  const records = leadRecords(connection, asOf ?? today, asOf);
  const vendors = new Map(listRecords(connection, 'vendors', '1').map((vendor) => [vendor.id, vendor]));
  const groups = Map.groupBy(records.lines, ({ vendor, lineClass }) => `${vendor} ${lineClass}`);
  const found = [...groups.values()].flatMap((lines) => {
    const [first] = lines;
    const vendor = first === undefined ? undefined : vendors.get(first.vendor);
    if (first === undefined || vendor === undefined) return [];
    const record = records.lead(first.vendor, first.lineClass, (vendor['leadDays'] as number | null) ?? null);
    const outlook = leadOutlook(record);
    const { p50, p80 } = waitQuantiles(outlook.distribution);
    const latest = lines.toSorted((a, b) => (a.from < b.from ? 1 : -1)).slice(0, mostLines);
    return [
      {
        vendor: first.vendor,
        vendorName: String(vendor['name']),
        lineClass: first.lineClass,
        arrivals: outlook.arrivals,
        open: lines.filter(({ open }) => open).length,
        basis: outlook.basis,
        says: outlook.says,
        p50Days: Math.max(0, p50),
        p80Days: Math.max(0, p80),
        medianDays: median(lines.flatMap(({ seen }) => (seen.arrived ? [seen.days] : []))),
        curve: waitingCurve(record.vendor).map(({ days, atRisk, stillWaiting }) => ({ days, atRisk, stillWaiting })),
        lines: latest.map(({ line, order, part, from, open, seen: { days, arrived } }) => {
          const state = arrived ? ('arrived' as const) : open ? ('open' as const) : ('dropped' as const);
          return { line, order, part, description: '', from, days, state };
        }),
        size: lines.length,
      },
    ];
  });
  const names = partNames(connection, [...new Set(found.flatMap(({ lines }) => lines.map(({ part }) => part)))]);
  return found
    .sort((a, b) => b.size - a.size || (a.vendorName < b.vendorName ? -1 : 1))
    .map(({ size: _, lines, ...lead }) => ({
      ...lead,
      lines: lines.map((line) => ({ ...line, description: names.get(line.part) ?? '' })),
    }));
}

function partNames(connection: Connection, parts: readonly number[]): ReadonlyMap<number, string> {
  const rows = all<{ id: number; description: string }>(
    connection,
    'SELECT id, description FROM parts WHERE id IN (SELECT value FROM json_each(?))',
    JSON.stringify(parts),
  );
  return new Map(rows.map(({ id, description }) => [id, description]));
}
