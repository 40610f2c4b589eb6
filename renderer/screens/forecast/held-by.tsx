import { Button } from '@mantine/core';
import { useState } from 'react';
import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import { Link } from '../../app/route.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { inHundred } from './forecast-words.ts';

type Gate = ForecastAnswer['gates'][number];
type Holder = Gate['heldBy'][number];

/** So many are listed at first: what holds a gate more rarely seldom matters. */
const shortList = 20;

/** What stood on the chain that held the gate, most often first, and what a week earlier would win. */
export function HeldBy({ gate }: { readonly gate: Gate }) {
  const [all, setAll] = useState(false);
  const canAct = useCanAct();
  if (gate.heldBy.length === 0) return null;
  const tryOut: Column<Holder> = {
    id: 'try',
    title: 'Try out',
    cell: ({ kind, id, name }) => (
      <Link className="not-printed" to="/what-if" params={kind === 'job' ? { job: id } : { part: id }}>
        What if… <span className="only-heard">{name}</span>
      </Link>
    ),
  };
  const columns: readonly Column<Holder>[] = [
    {
      id: 'what',
      title: 'What',
      rowHeader: true,
      cell: ({ kind, id, name }) =>
        kind === 'job' ? (
          <Link to="/plan" params={{ job: id }}>
            {name}
          </Link>
        ) : (
          <Link to="/parts" params={{ part: id }}>
            {name}
          </Link>
        ),
      sortBy: ({ name }) => name,
    },
    { id: 'kind', title: 'Kind', cell: ({ kind }) => (kind === 'job' ? 'job' : 'part to come') },
    {
      id: 'often',
      title: 'Holds it in runs',
      figures: true,
      cell: ({ criticality }) => inHundred(criticality),
      sortBy: ({ criticality }) => criticality,
    },
    {
      id: 'won',
      title: 'Days won by a week earlier',
      figures: true,
      cell: ({ daysWon }) => (daysWon === null ? 'not worked out' : daysWon.toFixed(1)),
      sortBy: ({ daysWon }) => daysWon ?? -1,
    },
    ...(canAct ? [tryOut] : []),
  ];
  return (
    <section className="forecast-section">
      <h2>What holds {gate.name}</h2>
      <SimpleTable
        caption="On the chain that held the gate; days won are the mean over runs, for the twelve that hold most often"
        columns={columns}
        rows={all ? gate.heldBy : gate.heldBy.slice(0, shortList)}
        rowKey={({ kind, id }) => `${kind} ${id}`}
      />
      {gate.heldBy.length > shortList && (
        <div>
          <Button variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? 'Show the first only' : `Show all ${gate.heldBy.length}`}
          </Button>
        </div>
      )}
    </section>
  );
}
