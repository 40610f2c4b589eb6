import type { GateReview } from '../../../core/contract/gate.ts';
import { showMinutes } from '../../../core/schedule/working-time.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWhy } from '../../app/why.tsx';
import { useReading } from '../../app/workspace.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { WhyButton } from '../../parts/page.tsx';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The forecast's days for the gate, where they can be had; nothing while they are worked out. */
function ForecastDays() {
  const reading = useReading();
  const days = useRead(
    ['forecast', reading?.build ?? null, reading?.asOf ?? null, 'gate-days'],
    reading === null ? null : () => api.forecast.gateDays(reading),
  );
  if (days.state !== 'ready' || days.value === null) return null;
  const { p50On, p80On } = days.value;
  return (
    <div>
      <dt>
        <Link to="/forecast">Forecast</Link>
      </dt>
      <dd>
        <DateText date={p50On} />
      </dd>
      <dd className="gate-beside">
        <span>
          as likely as not; four times of five by <DateText date={p80On} />
        </span>
      </dd>
    </div>
  );
}

/** The day, the money and the hours, each with the way to ask why; what was assumed is said beside them. */
export function GateFigures({ review }: { readonly review: GateReview }) {
  const reading = useReading();
  const why = useWhy();
  const ask = (figure: 'gate-date' | 'gate-cost') => () => {
    if (reading !== null) why({ ...reading, figure });
  };
  return (
    <div className="gate-figures">
      <dl>
        <div>
          <dt>{capital(review.gateName)} at best</dt>
          <dd>{review.gateOn === null ? 'No date' : <DateText date={review.gateOn} />}</dd>
          <dd className="gate-beside">
            {review.gateOn === null && <span>{capital(review.noDate.replace(/^No date, /, ''))}</span>}
            <WhyButton onClick={ask('gate-date')} of="this day" />
          </dd>
        </div>
        <ForecastDays />
        <div>
          <dt>Still costs</dt>
          <dd>
            <Money amountMinor={review.costMinor} />
          </dd>
          <dd className="gate-beside">
            {review.costUnknown > 0 && (
              <span>and {counted(review.costUnknown, 'thing', 'things')} whose cost isn't known</span>
            )}
            <WhyButton onClick={ask('gate-cost')} of="this cost" />
          </dd>
        </div>
        <div>
          <dt>Work left</dt>
          <dd>{review.minutes === 0 ? 'None' : showMinutes(review.minutes)}</dd>
          {review.assumed > 0 && (
            <dd className="gate-beside">
              For {counted(review.assumed, 'thing', 'things')} nobody has guessed the work: a usual time is assumed.
            </dd>
          )}
        </div>
      </dl>
    </div>
  );
}
