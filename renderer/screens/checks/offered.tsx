import { Button } from '@mantine/core';
import type { ChecksView } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

export interface OfferedProps {
  readonly build: number;
  readonly offered: ChecksView['offered'];
  readonly onOwn: () => void;
}

/** Checks that come with the program and that the build doesn't have yet, one press each or all at once. */
export function Offered({ build, offered, onOwn }: OfferedProps) {
  const { today } = useWorkspace();
  const canAct = useCanAct();
  const act = useAct((key, shipped: string[]) => api.checks.addShipped({ key, on: today, build, shipped }));
  return (
    <div className="checks-block">
      <p>
        A check binds a calculator to the facts of the parts, the target sheet and the measurements, and holds its
        answer against a limit.
      </p>
      <div className="checks-buttons">
        <Button disabled={!canAct} onClick={onOwn}>
          Make your own check…
        </Button>
        {offered.length > 1 && (
          <Button disabled={!canAct || act.busy} onClick={() => void act.run(offered.map(({ shipped }) => shipped))}>
            Add all {offered.length}
          </Button>
        )}
      </div>
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      {offered.length === 0 ? (
        <p>All checks that come with the program are on the list.</p>
      ) : (
        <ul className="checks-list">
          {offered.map(({ shipped, title, about }) => (
            <li key={shipped} className="checks-offer">
              <span>
                <strong>{title}</strong>
                <span className="checks-says">{about}</span>
              </span>
              <Button disabled={!canAct || act.busy} onClick={() => void act.run([shipped])}>
                Add <span className="only-heard">{title}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
