import type { FitStop } from '../../../../core/contract/fits.ts';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { FitMark } from '../../../parts/fit-mark.tsx';
import { Caution } from '../../../parts/notes.tsx';

const none: readonly FitStop[] = [];

/** What stands against ordering the parts on the order. A read that is on its way or fails stops nothing: placing asks again. */
export function useFitStops(build: number, parts: readonly number[]): readonly FitStop[] {
  const asked = [...new Set(parts)].toSorted((one, other) => one - other);
  const read = useRead(
    ['fits', build, null, 'stops', asked],
    asked.length === 0 ? null : () => api.fits.stops({ build, parts: asked }),
  );
  // The former answer stays until the next is there; it may be about parts that are off the order by now.
  return read.state === 'ready' && asked.length > 0 ? read.value.filter(({ part }) => asked.includes(part)) : none;
}

export interface FitStopsProps {
  readonly stops: readonly FitStop[];
  readonly reason: string;
  readonly onReason: (reason: string) => void;
  /** A fit is about to be looked at: what was typed of the order is to be kept. */
  readonly onLook: () => void;
}

/** The parts of the order that don't fit, each with what would happen, and the field for ordering them all the same. */
export function FitStops({ stops, reason, onReason, onLook }: FitStopsProps) {
  const parts = new Set(stops.map(({ part }) => part)).size;
  return (
    <section aria-label="Parts that do not fit" className="fit-stops">
      <h2>{parts === 1 ? 'A part on this order does not fit' : `${parts} parts on this order do not fit`}</h2>
      <ul>
        {stops.map((stop) => (
          <Stop key={`${stop.part} ${stop.subject.kind} ${stop.subject.id}`} stop={stop} onLook={onLook} />
        ))}
      </ul>
      <TextField
        name="despiteFits"
        label="Order it all the same because …"
        description="Without a reason the order isn’t placed. Leave the part out, or put its port right, and nothing is asked."
        value={reason}
        onChange={onReason}
        longest={400}
        required
        long
      />
    </section>
  );
}

/** Whether the sentence ends with what would happen already, in whatever words it began. */
const isSaid = (consequence: string, says: string): boolean =>
  says.includes(consequence.replace(/\.$/, '').split('. ').at(-1) ?? '');

function Stop({ stop, onLook }: { readonly stop: FitStop; readonly onLook: () => void }) {
  const { description, subject, title, verdict, says, consequence, howToTell, caution } = stop;
  return (
    <li>
      <p>
        <strong>{description}</strong> <FitMark look={verdict} />
      </p>
      <p>
        <Link
          to="/fit"
          params={{ [subject.kind === 'connection' ? 'connection' : 'declared']: subject.id }}
          onClick={onLook}
        >
          {title}
        </Link>
        : {says}
      </p>
      {!isSaid(consequence, says) && <p>If joined all the same: {consequence}</p>}
      {howToTell !== '' && <p>How to tell: {howToTell.replace(/\.$/, '')}.</p>}
      {caution !== '' && <Caution>{caution}</Caution>}
    </li>
  );
}
