import { Button } from '@mantine/core';
import { useState } from 'react';
import type { MoneyFigures } from '../../../core/contract/money.ts';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Money } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { Toolbar } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { BudgetChanges } from './budget-changes.tsx';
import { BudgetForm } from './budget-form.tsx';
import { amountOfLine, type BudgetKind } from './budget-kinds.ts';
import { BudgetLineForm } from './budget-line-form.tsx';
import type { Reading } from './money-words.tsx';

/** What is being typed: a change of some kind, for a line that may be chosen already, or a line's own name and place. */
type Typing =
  | { readonly what: 'change'; readonly kind: BudgetKind; readonly line: number | null }
  | { readonly what: 'line'; readonly row: RecordRow };

export interface BudgetProps {
  readonly figures: MoneyFigures;
  readonly reading: Reading;
}

/** The budget: its lines, and every change of it with its day and reason. */
export function Budget({ figures, reading }: BudgetProps) {
  const [typing, setTyping] = useState<Typing | null>(null);
  const canAct = useCanAct();
  const { build } = reading;
  const lines = useRead(['records', build, null, 'budgetLine'], () => api.records.list({ kind: 'budgetLine', build }));
  const changes = useRead(['money', build, reading.asOf ?? null, 'budgetChanges'], () =>
    api.money.budgetChanges(reading),
  );
  const systems = useRead(['records', build, null, 'system'], () => api.records.list({ kind: 'system', build }));
  const phases = useRead(['records', build, null, 'phase'], () => api.records.list({ kind: 'phase', build }));
  const lists = {
    lines: lines.state === 'ready' ? lines.value : [],
    systems: systems.state === 'ready' ? systems.value : [],
    phases: phases.state === 'ready' ? phases.value : [],
  };
  const change = (kind: BudgetKind, line: number | null = null) => setTyping({ what: 'change', kind, line });
  const nameIn = (rows: readonly RecordRow[], id: unknown) =>
    String(rows.find((row) => row.id === id)?.values['name'] ?? '');

  return (
    <section className="money-section" aria-labelledby="budget">
      <h2 id="budget">Budget</h2>
      <Toolbar label="Budget">
        <Button disabled={!canAct} onClick={() => change('change')}>
          Add or change a line
        </Button>
        <Button disabled={!canAct} onClick={() => change('contingency')}>
          Change the contingency
        </Button>
        <Button disabled={!canAct || figures.contingencyLeftMinor <= 0} onClick={() => change('contingency drawn')}>
          Draw from the contingency
        </Button>
      </Toolbar>
      <ReadView read={changes} label="Reading the budget">
        {(made) => {
          if (made.length === 0 && lists.lines.length === 0) {
            return (
              <Empty
                {...(canAct ? { action: { label: 'Set the first budget line', onClick: () => change('change') } } : {})}
              >
                What the build may cost stands here, line by line, with every later change and its reason.
              </Empty>
            );
          }
          const columns: readonly Column<RecordRow>[] = [
            {
              id: 'name',
              title: 'Line',
              rowHeader: true,
              cell: ({ values }) => String(values['name']),
              sortBy: ({ values }) => String(values['name']),
              foot: 'All lines',
            },
            { id: 'system', title: 'System', cell: ({ values }) => nameIn(lists.systems, values['system']) },
            { id: 'phase', title: 'Phase', cell: ({ values }) => nameIn(lists.phases, values['phase']) },
            {
              id: 'amount',
              title: 'Budget',
              figures: true,
              cell: ({ id }) => <Money amountMinor={amountOfLine(made, id)} />,
              sortBy: ({ id }) => amountOfLine(made, id),
              foot: <Money amountMinor={figures.budgetMinor} />,
            },
            {
              id: 'changes',
              title: 'Entries',
              figures: true,
              cell: ({ id }) => counted(made.filter(({ line }) => line === id).length, 'entry', 'entries'),
            },
            ...(canAct
              ? [
                  {
                    id: 'acts',
                    title: 'Do',
                    cell: (row: RecordRow) => (
                      <span className="row-acts not-printed">
                        <Button size="compact" variant="subtle" onClick={() => change('change', row.id)}>
                          Change <span className="only-heard">{String(row.values['name'])}</span>
                        </Button>
                        <Button size="compact" variant="subtle" onClick={() => setTyping({ what: 'line', row })}>
                          Rename or move <span className="only-heard">{String(row.values['name'])}</span>
                        </Button>
                      </span>
                    ),
                  },
                ]
              : []),
          ];
          return (
            <>
              {lists.lines.length > 0 && (
                <SimpleTable
                  caption="Lines of the budget"
                  columns={columns}
                  rows={lists.lines}
                  rowKey={({ id }) => String(id)}
                />
              )}
              <BudgetChanges changes={made} />
            </>
          );
        }}
      </ReadView>
      {typing?.what === 'change' && (
        <BudgetForm
          build={build}
          kind={typing.kind}
          line={typing.line}
          leftMinor={figures.contingencyLeftMinor}
          {...lists}
          onClose={() => setTyping(null)}
        />
      )}
      {typing?.what === 'line' && <BudgetLineForm row={typing.row} {...lists} onClose={() => setTyping(null)} />}
    </section>
  );
}
