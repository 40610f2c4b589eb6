import { Button } from '@mantine/core';
import { useState } from 'react';
import type { PartDetail } from '../../../../core/contract/parts.ts';
import { State } from '../../../parts/state.tsx';
import type { OpenAct } from '../acts/open-act.tsx';
import type { Names } from '../names.ts';
import { EditForm } from './edit-form.tsx';
import { Entries } from './entries.tsx';
import { Facts } from './facts.tsx';
import { FigureList } from './figure-list.tsx';
import { Fits } from './fits.tsx';
import { Lots } from './lots.tsx';
import { OrderLines } from './order-lines.tsx';
import { PartActs } from './part-acts.tsx';
import { Quotes } from './quotes.tsx';
import { typedPairs } from './typed-pairs.ts';

export interface PartSectionProps {
  readonly detail: PartDetail;
  readonly names: Names;
  /** Why nothing can be changed now; null while it can. */
  readonly closed: string | null;
}

export interface PartInFullProps extends PartSectionProps {
  readonly onAct: (open: OpenAct) => void;
}

/** Everything about a part line: where it stands, what can be done, its figures, units, orders, quotes and entries. */
export function PartInFull({ detail, names, closed, onAct }: PartInFullProps) {
  const [editing, setEditing] = useState(false);
  const { row, possible } = detail;
  if (editing) return <EditForm detail={detail} names={names} onClose={() => setEditing(false)} />;
  const section = { detail, names, closed };
  return (
    <div className="part-full">
      <p className="part-standing">
        <State state={row.standing} />
        <span>{row.standingText}</span>
      </p>
      {row.attention !== '' && <p className="parts-finding">Wants an eye: {row.attention}</p>}
      {closed !== null && <p>{closed}</p>}
      {closed === null && !row.dropped && (
        <div className="parts-bulk">
          {row.onOrderMilli > 0 && (
            <Button onClick={() => onAct({ kind: 'receive', target: { rows: [row] } })}>
              Receive all outstanding…
            </Button>
          )}
          <PartActs row={row} possible={possible} onAct={onAct} />
          <Button onClick={() => onAct({ kind: 'drop', target: { rows: [row] } })}>Drop…</Button>
        </div>
      )}
      <section aria-label="What was typed">
        <h3>What was typed</h3>
        <dl className="part-pairs">
          {typedPairs(row, names).map(([term, words]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
        {closed === null && !row.dropped && <Button onClick={() => setEditing(true)}>Change what was typed…</Button>}
      </section>
      <FigureList row={row} />
      <Facts {...section} />
      <Fits detail={detail} closed={closed} />
      <Lots {...section} onAct={onAct} />
      <OrderLines detail={detail} />
      <Quotes {...section} />
      <Entries {...section} />
    </div>
  );
}
