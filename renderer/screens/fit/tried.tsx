import { useEffect, useState } from 'react';
import type { ConnectionSide } from '../../../core/contract/records.ts';
import type { PortRole } from '../../../core/fit/port.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading } from '../../app/workspace.tsx';
import { FitMark } from '../../parts/fit-mark.tsx';
import type { RefusalWords } from '../../parts/refusal-note.tsx';
import { Adapters } from './adapters.tsx';
import { sentence } from './port-text.ts';
import { isSide } from './side-field.tsx';
import { FactsOfFit } from './verdict.tsx';

const waitMs = 250;

/** What was said last, once it has rested for a moment: typing asks nothing at every key. */
export function useRested(text: string | null): string | null {
  const [rested, setRested] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setRested(text), waitMs);
    return () => clearTimeout(timer);
  }, [text]);
  return rested;
}

/** Why what is typed can't be judged yet. Nothing was to be done, so nothing is said of not having done it. */
export function NotJudged({ refusal: { message, accepted } }: { readonly refusal: RefusalWords }) {
  return (
    <p className="fit-unread">
      {message.replace(/ ?Nothing was changed\.$/, '')}
      {accepted !== undefined && ` Accepted: ${accepted}.`}
    </p>
  );
}

export interface TriedProps {
  readonly build: number;
  readonly one: ConnectionSide;
  readonly other: ConnectionSide;
  readonly role: PortRole;
  readonly medium: string;
  readonly pressureBar: number | null;
}

type Input = Parameters<typeof api.fits.tryOut>[0];

/** What two sides come to, worked out anew with every change; nothing is kept. */
export function Tried({ build, one, other, role, medium, pressureBar }: TriedProps) {
  const reading = useReading();
  const whole = isSide(one, role) && isSide(other, role);
  const text = whole ? JSON.stringify({ build, one, other, role, medium, pressureBar } satisfies Input) : null;
  const asked = useRested(text);
  const read = useRead(
    ['fits', build, reading?.asOf ?? null, 'try', asked],
    asked === null ? null : () => api.fits.tryOut(JSON.parse(asked) as Input),
  );
  return (
    <section aria-label="Verdict before keeping" aria-live="polite" className="fit-block">
      <h3>As it would fit</h3>
      {text === null ? (
        <p className="fit-soft">The verdict comes once both sides are chosen or written.</p>
      ) : read.state === 'ready' && asked === text ? (
        <>
          <p>
            <FitMark look={read.value.fit.verdict} /> {sentence(read.value.fit.reason)}
          </p>
          <FactsOfFit judged={read.value.fit} label="Details as it would fit">
            <Adapters adapters={read.value.fit.adapters} label="Adapters as it would fit" />
          </FactsOfFit>
        </>
      ) : (
        read.state === 'refused' && <NotJudged refusal={read.refusal} />
      )}
    </section>
  );
}
