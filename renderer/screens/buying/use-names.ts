import { api } from '../../app/client.ts';
import { type Read, useRead } from '../../app/data.tsx';

export type Named = ReadonlyMap<number, string>;

/** Descriptions of the build's part lines, by id. */
export const usePartNames = (build: number): Read<Named> =>
  useRead(['parts', build, null, 'names-by-id'], async () => {
    const { columns, rows } = await api.parts.rows({ build, from: 0, count: 20_000 });
    const [id, description] = [columns.indexOf('id'), columns.indexOf('description')];
    return new Map(rows.map((row) => [Number(row[id]), String(row[description] ?? '')]));
  });

/** Names of the vendors in use, by id. */
export const useVendorNames = (build: number): Read<Named> =>
  useRead(['records', build, null, 'vendor', 'names'], async () => {
    const rows = await api.records.list({ kind: 'vendor' });
    return new Map(rows.map(({ id, values }) => [id, String(values['name'] ?? '')]));
  });
