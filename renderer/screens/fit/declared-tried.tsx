import { api } from '../../app/client.ts';
import { type Read, useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';
import { FitMark } from '../../parts/fit-mark.tsx';
import { severityWords } from './fit-words.ts';
import { NotJudged, useRested } from './tried.tsx';

type Input = Parameters<typeof api.fits.tryDeclared>[0];
type Answer = Awaited<ReturnType<typeof api.fits.tryDeclared>>;

/** What a declared fit would come to before it is kept, asked once the typing rests. */
export function useTriedDeclared(input: Input | null): Read<Answer> {
  const reading = useReading();
  const asked = useRested(input === null ? null : JSON.stringify(input));
  return useRead(
    ['fits', reading?.build ?? null, reading?.asOf ?? null, 'tryDeclared', asked],
    asked === null ? null : () => api.fits.tryDeclared(JSON.parse(asked) as Input),
  );
}

export interface DeclaredTriedProps {
  readonly tried: Read<Answer>;
  /** Whether the rule can be read. */
  readonly whole: boolean;
}

/** The outcome, worked out anew with every change. */
export function DeclaredTried({ tried, whole }: DeclaredTriedProps) {
  return (
    <section aria-label="Outcome before keeping" aria-live="polite" className="fit-block">
      <h3>As it would fit</h3>
      {!whole ? (
        <p className="fit-soft">The outcome comes once both sides of the rule are written.</p>
      ) : tried.state === 'ready' ? (
        <p>
          <FitMark look={tried.value.outcome} /> {tried.value.says}
          {tried.value.outcome === 'fail' && ` ${severityWords[tried.value.severity]}.`}
          {tried.value.margin !== '' && ` Margin: ${tried.value.margin}.`}
        </p>
      ) : (
        tried.state === 'refused' && <NotJudged refusal={tried.refusal} />
      )}
    </section>
  );
}
