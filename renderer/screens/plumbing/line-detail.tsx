import { Button } from '@mantine/core';
import { useState } from 'react';
import type { LineDetail as Detail, LineRow } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link, navigate } from '../../app/route.tsx';
import { Caution } from '../../parts/notes.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { Window } from '../../parts/window.tsx';
import { endText } from './line-table.tsx';
import { RetireLine } from './retire-line.tsx';
import { BillTable, CheckList, LengthList } from './take-off.tsx';
import { MadeMark, VerdictMark } from './verdict.tsx';

interface LineDetailProps {
  readonly row: LineRow;
  readonly reading: { readonly build: number; readonly asOf?: string };
}

/** One line in full: how its lengths were worked out, its checks, its bill, and the way to the bench. */
export function LineDetail({ row, reading }: LineDetailProps) {
  const [retiring, setRetiring] = useState(false);
  const leave = () => navigate('/plumbing');
  const read = useRead(['plumbing', reading.build, reading.asOf ?? null, 'line', row.id], () =>
    api.plumbing.line({ ...reading, line: row.id }),
  );
  return (
    <Window opened as="drawer" title={row.name} onClose={leave}>
      <ReadView read={read} label="Taking off the line">
        {(detail) => <Whole detail={detail} onRetire={() => setRetiring(true)} />}
      </ReadView>
      {retiring && <RetireLine line={row} onClose={() => setRetiring(false)} onDone={leave} />}
    </Window>
  );
}

function Whole({ detail, onRetire }: { readonly detail: Detail; readonly onRetire: () => void }) {
  const canAct = useCanAct();
  const { row, values } = detail;
  return (
    <div className="plumbing-detail">
      <p>
        <VerdictMark verdict={row.verdict} /> {row.says}
      </p>
      <p>
        {[row.fluid, row.service].filter((text) => text !== '').join(', ') || 'What flows through it isn’t said yet'}.
        From {endText(row.from)} to {endText(row.to)}. {row.hose}
        {row.quantity > 1 && `, ${row.quantity} alike`}.
      </p>
      <p>
        <MadeMark row={row} />{' '}
        {row.stepsTotal > 0 && (
          <Link to="/bench" params={{ line: row.id }}>
            {row.stepsDone === row.stepsTotal ? 'Look at how it was made' : 'Make it at the bench'}
          </Link>
        )}
      </p>
      <PastDayNote />
      {canAct && (
        <div className="plumbing-buttons">
          <Button onClick={() => navigate('/plumbing', { edit: row.id })}>Change the line…</Button>
          <Button variant="subtle" onClick={onRetire}>
            Retire…
          </Button>
        </div>
      )}
      {row.problem !== null && (
        <p>
          <strong>No take-off yet.</strong> {row.problem.message.replace(/ ?Nothing was changed\.$/, '')}{' '}
          {row.problem.accepted !== '' && `It takes ${row.problem.accepted}.`}
        </p>
      )}
      {detail.lengths.length > 0 && (
        <section aria-label="Lengths">
          <h3>Lengths</h3>
          <LengthList lengths={detail.lengths} />
        </section>
      )}
      <Caution>{detail.caution}</Caution>
      {detail.checks.length > 0 && (
        <section aria-label="Checks">
          <h3>Checks</h3>
          <CheckList checks={detail.checks} />
        </section>
      )}
      {detail.bill.length > 0 && (
        <section aria-label="What it is made of">
          <h3>What it is made of</h3>
          <BillTable bill={detail.bill} />
          <Link to="/plumbing" params={{ view: 'needs' }}>
            What is still to be put on the list
          </Link>
        </section>
      )}
      {detail.notes.length > 0 && (
        <section aria-label="Notes">
          <h3>Notes</h3>
          <ul className="plumbing-plain">
            {detail.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </section>
      )}
      {values.note !== '' && <p className="plumbing-note">{values.note}</p>}
    </div>
  );
}
