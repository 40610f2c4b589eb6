import { IconHandStop } from '@tabler/icons-react';
import type { StartView } from '../../../core/contract/plan.ts';
import { Link } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';

/** The few things that hold the day: what, why, what clears it and when. */
export function Holds({ holds }: { readonly holds: StartView['holds'] }) {
  return (
    <section aria-labelledby="start-holds">
      <h2 id="start-holds">What holds the day</h2>
      {holds.length === 0 ? (
        <p>Nothing that is entered stands in the way.</p>
      ) : (
        <ol className="start-list">
          {holds.map(({ title, why, clears, clearOn, part }) => (
            <li key={`${title} ${part ?? ''}`} className="start-hold">
              <IconHandStop aria-hidden className="start-mark" />
              <div>
                <strong>
                  {part === null ? (
                    title
                  ) : (
                    <Link to="/parts" params={{ part }}>
                      {title}
                    </Link>
                  )}
                </strong>
                <p>{why}</p>
                <p className="soft">
                  {clears}
                  {clearOn !== null && (
                    <>
                      {' · clear by '}
                      <DateText date={clearOn} />
                    </>
                  )}
                </p>
              </div>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
