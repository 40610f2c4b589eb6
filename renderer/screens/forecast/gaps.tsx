import type { ForecastAnswer } from '../../../core/forecast/view.ts';
import { Link } from '../../app/route.tsx';

type Gap = ForecastAnswer['gaps'][number];

const places = {
  job: (id: number) => ({ to: '/plan', params: { job: id } }),
  part: (id: number) => ({ to: '/parts', params: { part: id } }),
  tool: (id: number) => ({ to: '/lists', params: { tool: id } }),
} as const;

/** What nobody has guessed or dated, and how it was counted. */
export function Gaps({ gaps }: { readonly gaps: readonly Gap[] }) {
  if (gaps.length === 0) return null;
  return (
    <section className="forecast-section">
      <h2>What lacks a guess or a day</h2>
      <ul className="forecast-gaps">
        {gaps.map(({ kind, id, title, why }) => (
          <li key={`${kind} ${id} ${why}`}>
            <Link {...places[kind](id)}>{title}</Link>: {why}
          </li>
        ))}
      </ul>
    </section>
  );
}
