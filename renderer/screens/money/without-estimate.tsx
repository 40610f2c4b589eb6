import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { counted } from '../../parts/formats.ts';
import { ReadView } from '../../parts/read-view.tsx';
import type { Reading } from './money-words.tsx';

const mostNamed = 24;
const page = 20_000;

interface NamedLine {
  readonly id: number;
  readonly description: string;
}

/** Names the lines that the summary counts as unpriced: something is still to be got, and nobody has guessed its price. */
async function linesWithoutEstimate(reading: Reading): Promise<readonly NamedLine[]> {
  const found: NamedLine[] = [];
  for (let from = 0; ; from += page) {
    const { total, columns, rows } = await api.parts.rows({ ...reading, from, count: page });
    const at = (name: string) => columns.indexOf(name);
    const [id, description, estimate, uncovered] = [
      at('id'),
      at('description'),
      at('estimateEachE4'),
      at('uncoveredMilli'),
    ];
    for (const row of rows) {
      if (row[estimate] === null && Number(row[uncovered]) > 0) {
        found.push({ id: Number(row[id]), description: String(row[description]) });
      }
    }
    if (rows.length === 0 || from + rows.length >= total) return found;
  }
}

/** The part lines that count as nothing in the estimate, named, each a step away from being priced. */
export function WithoutEstimate({ count, reading }: { readonly count: number; readonly reading: Reading }) {
  const lines = useRead(['parts', reading.build, reading.asOf ?? null, 'without-estimate'], () =>
    linesWithoutEstimate(reading),
  );
  return (
    <section className="money-section" aria-labelledby="without-estimate">
      <h2 id="without-estimate">{counted(count, 'line counts', 'lines count')} as nothing: no estimate yet</h2>
      <ReadView read={lines} label="Reading the lines without an estimate">
        {(named) => (
          <ul className="named-lines">
            {named.slice(0, mostNamed).map(({ id, description }) => (
              <li key={id}>
                <Link to="/parts" params={{ part: id }}>
                  {description}
                </Link>
              </li>
            ))}
            {named.length > mostNamed && (
              <li>
                <Link to="/parts">and {named.length - mostNamed} more in Parts</Link>
              </li>
            )}
          </ul>
        )}
      </ReadView>
    </section>
  );
}
