import { useMemo } from 'react';
import type { ImportMatch } from '../../../core/contract/exchange.ts';
import type { ImportPlan } from '../../../core/exchange/import-types.ts';
import type { Table } from '../../../core/exchange/table-types.ts';
import type { ChangeDraft, Draft } from './draft.ts';
import { Matches } from './matches.tsx';
import { RowSheet } from './row-sheet.tsx';
import { findingText, mostCurrency, shownRows } from './shown-rows.ts';
import { OrdersFound, Totals } from './totals.tsx';
import { UnclearRows } from './unclear-rows.tsx';
import { planSentence } from './words.ts';

export interface PreviewProps {
  readonly build: number;
  readonly plan: ImportPlan;
  readonly matches: readonly ImportMatch[];
  readonly table: Table;
  readonly draft: Draft;
  readonly change: ChangeDraft;
}

/** Everything that would happen, row by row, before anything does. */
export function Preview({ build, plan, matches, table, draft, change }: PreviewProps) {
  const rows = useMemo(() => shownRows(plan, table, draft.answers), [plan, table, draft.answers]);
  const overrule = (chosen: readonly number[], fate: 'skip' | 'import' | null) => {
    const answers: Record<string, string> = { ...draft.answers };
    for (const row of chosen) {
      if (fate === null) delete answers[`row:${row}`];
      else answers[`row:${row}`] = fate;
    }
    change({ answers });
  };
  return (
    <>
      <p className="import-sentence">{planSentence(plan)}</p>
      {plan.findings.map((finding) => (
        <p key={`${finding.column} ${finding.message}`}>{findingText({ findings: [finding] })}</p>
      ))}
      <UnclearRows rows={rows} onOverrule={overrule} />
      <Totals plan={plan} currency={mostCurrency(rows, draft.currency)} />
      <OrdersFound orders={plan.orders} />
      <Matches build={build} matches={matches} rows={rows} draft={draft} change={change} />
      <h3>Every row of the file</h3>
      <RowSheet rows={rows} onOverrule={overrule} />
    </>
  );
}
