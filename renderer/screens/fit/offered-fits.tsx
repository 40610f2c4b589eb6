import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { FitsView } from '../../../core/contract/fits.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

export interface OfferedFitsProps {
  readonly build: number;
  readonly offered: FitsView['offered'];
}

/** Fits of usual engine interfaces that the build doesn't have yet, added by tick. */
export function OfferedFits({ build, offered }: OfferedFitsProps) {
  const { today } = useWorkspace();
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const act = useAct((key, shipped: string[]) => api.fits.addShipped({ key, on: today, build, shipped }));
  const chosen = offered.map(({ shipped }) => shipped).filter((shipped) => ticked.has(shipped));
  const tick = (shipped: string, on: boolean) => {
    const next = new Set(ticked);
    if (on) next.add(shipped);
    else next.delete(shipped);
    setTicked(next);
  };
  return (
    <fieldset className="fit-offers">
      <legend>Fits that come with the program</legend>
      {offered.map(({ shipped, title, asks }) => (
        <Checkbox
          key={shipped}
          label={title}
          description={`Asks for ${asks.join(', ')}.`}
          checked={ticked.has(shipped)}
          onChange={(event) => tick(shipped, event.currentTarget.checked)}
        />
      ))}
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      <div className="fit-buttons">
        <Button
          variant="filled"
          disabled={chosen.length === 0 || act.busy}
          onClick={() => void act.run(chosen).then((done) => done !== null && setTicked(new Set()))}
        >
          {chosen.length === 0
            ? 'Tick the fits to add'
            : `Add ${chosen.length === 1 ? '1 fit' : `${chosen.length} fits`}`}
        </Button>
        <Button variant="subtle" onClick={() => setTicked(new Set(offered.map(({ shipped }) => shipped)))}>
          Tick all {offered.length}
        </Button>
      </div>
    </fieldset>
  );
}
