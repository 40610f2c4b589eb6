import type { SheetView } from '../../../core/contract/bench.ts';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { figure } from './sheet-figures.ts';

interface FitTableProps {
  readonly fit: NonNullable<SheetView['fit']>;
  readonly unit: string;
  readonly digits: number;
}

const words = {
  stays: 'stays',
  'at hand': 'from what is at hand',
  'to buy': 'to buy',
  'not known': 'not known',
} as const;

/** Which shim or shell goes where, and what comes of it. */
export function FitTable({ fit, unit, digits }: FitTableProps) {
  const shims = fit.way === 'shim';
  return (
    <section className="bench-fit">
      <SimpleTable
        caption={shims ? 'Which shim goes where' : 'Which shells go where'}
        rows={fit.lines}
        rowKey={({ place }) => place}
        columns={[
          { id: 'place', title: 'Place', rowHeader: true, cell: ({ place }) => place },
          {
            id: 'now',
            title: 'In it now',
            figures: true,
            cell: ({ now }) => (now === 0 ? 'none' : figure(now, 4, unit)),
          },
          { id: 'wanted', title: 'Wanted', figures: true, cell: ({ wanted }) => figure(wanted, digits, unit) },
          {
            id: 'use',
            title: 'Use',
            figures: true,
            cell: ({ use, name }) => (use === 0 ? 'none' : `${figure(use, 4, unit)}${name === '' ? '' : `, ${name}`}`),
          },
          {
            id: 'from',
            title: 'From',
            cell: ({ from, fromPlace }) => (from === 'another place' ? `out of ${fromPlace}` : words[from]),
          },
          { id: 'becomes', title: 'Becomes', figures: true, cell: ({ becomes }) => figure(becomes, digits, unit) },
        ]}
      />
      <p>
        {fit.says}{' '}
        {shims
          ? 'New shim = old shim + measured − wanted.'
          : 'Sizes are walls; both shells of a bearing are changed, so a wall counts twice.'}
      </p>
    </section>
  );
}
