import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import { DateText } from '../../parts/figures.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';

type Gate = ForecastAnswer['gates'][number];

interface AllGatesProps {
  readonly gates: readonly Gate[];
  readonly shown: string;
  readonly onShow: (name: string) => void;
}

/** The days of every gate, one below the other. */
export function AllGates({ gates, shown, onShow }: AllGatesProps) {
  const columns: readonly Column<Gate>[] = [
    {
      id: 'gate',
      title: 'Gate',
      rowHeader: true,
      cell: ({ name }) => (name === shown ? <strong>{name}</strong> : name),
    },
    { id: 'p10', title: 'P10', figures: true, cell: ({ p10On }) => <DateText date={p10On} /> },
    { id: 'p50', title: 'P50', figures: true, cell: ({ p50On }) => <DateText date={p50On} /> },
    { id: 'p80', title: 'P80', figures: true, cell: ({ p80On }) => <DateText date={p80On} /> },
    { id: 'p90', title: 'P90', figures: true, cell: ({ p90On }) => <DateText date={p90On} /> },
  ];
  return (
    <div>
      <SimpleTable
        caption="Reached by, in 10, 50, 80 and 90 of 100 runs"
        columns={columns}
        rows={gates}
        rowKey={({ name }) => name}
        {...(gates.length > 1 ? { onRowOpen: ({ name }: Gate) => onShow(name) } : {})}
      />
    </div>
  );
}
