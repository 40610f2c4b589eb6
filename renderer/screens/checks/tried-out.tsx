import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Draft, planOf } from './draft.ts';
import { VerdictMark } from './verdict.tsx';

/** The verdict of a check that isn't kept yet, worked out anew with every change. */
export function TriedOut({ draft }: { readonly draft: Draft }) {
  const reading = useReading();
  const plan = planOf(draft);
  const read = useRead(
    ['checks', reading?.build ?? null, reading?.asOf ?? null, 'try', JSON.stringify(plan)],
    reading === null || plan === null ? null : () => api.checks.tryOut({ ...reading, ...plan }),
  );
  return (
    <section className="checks-tried" aria-label="Verdict before keeping" aria-live="polite">
      <h3>As it would stand now</h3>
      {plan === null ? (
        <p>The verdict comes once every input chosen has its source and the limit has a least or a most.</p>
      ) : read.state === 'ready' ? (
        <>
          <p>
            <VerdictMark verdict={read.value.verdict} /> {read.value.says}
          </p>
          {read.value.caution !== '' && <p className="checks-says">{read.value.caution}</p>}
        </>
      ) : (
        read.state === 'refused' && <RefusalNote refusal={read.refusal} />
      )}
    </section>
  );
}
