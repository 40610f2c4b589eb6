import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { Link } from '../../../app/route.tsx';
import { useReading } from '../../../app/workspace.tsx';
import { declaredLookOf, FitMark, lookOf } from '../../../parts/fit-mark.tsx';
import type { PartSectionProps } from './part-in-full.tsx';

/** The ports of the part and whether what it is joined to fits; where there are none, the way to the first. */
export function Fits({ detail, closed }: Pick<PartSectionProps, 'detail' | 'closed'>) {
  const { id, dropped } = detail.row;
  const reading = useReading();
  const read = useRead(
    ['fits', reading?.build ?? null, reading?.asOf ?? null, 'view'],
    reading === null ? null : () => api.fits.view(reading),
  );
  if (read.state !== 'ready') return null;
  const { ports, connections, declared } = read.value;
  const own = ports.filter(({ part }) => part === id);
  const joined = connections.filter(({ one, other }) => one.part === id || other.part === id);
  const bound = declared.filter(({ things }) => things.some(({ part }) => part === id));
  if (own.length + joined.length + bound.length === 0 && (closed !== null || dropped)) return null;
  return (
    <section aria-label="Fits">
      <h3>Fits</h3>
      {own.length > 0 && (
        <p>{own.map(({ name, canonical, designation }) => `${name}: ${canonical || designation}`).join('; ')}</p>
      )}
      <ul className="part-fits">
        {joined.map((row) => (
          <li key={`connection ${row.id}`}>
            <Link to="/fit" params={{ connection: row.id }}>
              {row.title}
            </Link>{' '}
            <FitMark look={lookOf(row)} />
          </li>
        ))}
        {bound.map((row) => (
          <li key={`declared ${row.id}`}>
            <Link to="/fit" params={{ declared: row.id }}>
              {row.title}
            </Link>{' '}
            <FitMark look={declaredLookOf(row)} />
          </li>
        ))}
      </ul>
      <Link to="/fit" params={{ part: id }}>
        {own.length === 0 ? 'Add the first port of this part' : 'All ports of this part'}
      </Link>
    </section>
  );
}
