import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';

interface PartName {
  readonly id: number;
  readonly description: string;
}

/** The build's part lines by name, for choosing one. */
export function usePartNames(): readonly PartName[] {
  const reading = useReading();
  const read = useRead(
    ['parts', reading?.build ?? null, reading?.asOf ?? null, 'names'],
    reading === null ? null : () => api.parts.rows({ ...reading, from: 0, count: 20_000 }),
  );
  if (read.state !== 'ready') return [];
  const { columns, rows } = read.value;
  const [id, description] = [columns.indexOf('id'), columns.indexOf('description')];
  return rows.map((row) => ({ id: Number(row[id]), description: String(row[description]) }));
}
