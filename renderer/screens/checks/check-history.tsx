import type { CheckRow } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { LinesOverTime } from '../../parts/chart.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { VerdictMark } from './verdict.tsx';

/** The verdicts of one check day by day: a line once there are two figures, and the days in words. */
export function CheckHistory({ check }: { readonly check: CheckRow }) {
  const reading = useReading();
  const locale = useLocale();
  const { today } = useWorkspace();
  const read = useRead(
    ['checks', reading?.build ?? null, reading?.asOf ?? null, 'history', check.id],
    reading === null ? null : () => api.checks.history({ ...reading, check: check.id }),
  );
  return (
    <ReadView read={read} label="Reading former verdicts">
      {(points) => {
        const drawn = points.flatMap(({ on, value }) => (value === null ? [] : [{ on, value }]));
        return (
          <>
            {drawn.length > 1 && (
              <LinesOverTime
                title={`${check.outputLabel} over time`}
                unit={{ kind: 'count', name: check.unit === '-' ? '' : check.unit, decimals: 2 }}
                series={[{ name: check.outputLabel, points: drawn, steps: true }]}
                today={reading?.asOf ?? today}
              />
            )}
            {points.length === 0 ? (
              <p>No verdict is kept yet; one stands here for each day on which it changes.</p>
            ) : (
              <ol className="checks-list">
                {points.toReversed().map(({ on, verdict, says }) => (
                  <li key={on}>
                    <span>
                      {dateText(on, locale)} <VerdictMark verdict={verdict} />
                    </span>
                    <span className="checks-says">{says}</span>
                  </li>
                ))}
              </ol>
            )}
          </>
        );
      }}
    </ReadView>
  );
}
