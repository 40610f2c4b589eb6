import { Button } from '@mantine/core';
import type { ConnectionRow } from '../../../core/contract/fits.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { OnTheList } from './on-the-list.tsx';

/** What a connection that mates needs besides its two sides, put on the parts list by one click and taken back by another. */
export function ListedNeeds({ row: { id, fit, needsListed } }: { readonly row: ConnectionRow }) {
  const { today } = useWorkspace();
  const canAct = useCanAct();
  const put = useAct((key, on: string) => api.fits.listNeeds({ key, on, connection: id }));
  const back = useAct((key, on: string) => api.fits.unlistNeeds({ key, on, connection: id }));
  if (fit.verdict !== 'mates' || (fit.needs.length === 0 && needsListed === null)) return null;
  const refusal = put.refusal ?? back.refusal;
  const open = needsListed === null || needsListed.missing;
  return (
    <section aria-label="What it needs, on the list" className="fit-block">
      {needsListed !== null && <OnTheList parts={needsListed.parts} />}
      {needsListed?.missing === true && <p>Not all that it needs now is on the list, or a line of it was dropped.</p>}
      {canAct && (
        <div className="fit-buttons">
          {open && fit.needs.length > 0 && (
            <Button disabled={put.busy} onClick={() => void put.run(today)}>
              Put what it needs on the list
            </Button>
          )}
          {needsListed !== null && (
            <Button variant="subtle" disabled={back.busy} onClick={() => void back.run(today)}>
              Take it off the list
            </Button>
          )}
        </div>
      )}
      {refusal !== null && <RefusalNote refusal={refusal} />}
    </section>
  );
}
