import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';

export interface PartLine {
  readonly id: number;
  readonly description: string;
  readonly kind: string;
}

/** The build's part lines by name, for choosing one. */
export function usePartLines(): readonly PartLine[] {
  const reading = useReading();
  const read = useRead(
    ['parts', reading?.build ?? null, reading?.asOf ?? null, 'names'],
    reading === null ? null : () => api.parts.rows({ ...reading, from: 0, count: 20_000 }),
  );
  if (read.state !== 'ready') return [];
  const { columns, rows } = read.value;
  const at = (name: string) => columns.indexOf(name);
  const [id, description, kind] = [at('id'), at('description'), at('kind')];
  return rows.map((row) => ({
    id: Number(row[id]),
    description: String(row[description]),
    kind: kind < 0 ? '' : String(row[kind] ?? ''),
  }));
}
