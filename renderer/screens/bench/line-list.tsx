import type { LineRow } from '../../../core/contract/plumbing.ts';
import { isToMake } from '../../../core/plumbing/made.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { Empty } from '../../parts/notes.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';

interface LineListProps {
  readonly reading: { readonly build: number; readonly asOf?: string };
}

const begun = ({ stepsDone, quantity }: LineRow): boolean => stepsDone > 0 && quantity > 0;

/** Lines with steps still open, those that are begun first. */
export function LineList({ reading }: LineListProps) {
  const read = useRead(['plumbing', reading.build, reading.asOf ?? null, 'view'], () => api.plumbing.view(reading));
  return (
    <section className="bench-list" aria-label="Lines">
      <ReadView read={read} label="Looking for lines">
        {({ lines }) => {
          const open = lines.filter(isToMake);
          if (lines.length === 0) {
            return <p>Hose lines are made here step by step, once they are planned under Plumbing.</p>;
          }
          if (open.length === 0) {
            return (
              <Empty action={{ label: 'Open Plumbing', onClick: () => navigate('/plumbing') }}>
                No line has a step open: what can be taken off is made.
              </Empty>
            );
          }
          return (
            <SimpleTable
              caption="Lines to make"
              rows={open.toSorted((one, other) => Number(begun(other)) - Number(begun(one)))}
              rowKey={({ id }) => String(id)}
              columns={[
                {
                  id: 'name',
                  title: 'Line',
                  rowHeader: true,
                  cell: ({ id, name }) => (
                    <Link className="bench-open" to="/bench" params={{ line: id }}>
                      {name}
                    </Link>
                  ),
                },
                { id: 'hose', title: 'Hose', cell: ({ hose }) => hose },
                {
                  id: 'far',
                  title: 'Steps',
                  figures: true,
                  cell: ({ stepsDone, stepsTotal }) => `${stepsDone} of ${stepsTotal}`,
                },
              ]}
            />
          );
        }}
      </ReadView>
    </section>
  );
}
