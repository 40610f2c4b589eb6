import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { DateText } from '../../parts/figures.tsx';
import type { Reading } from './build-start.tsx';

/** The days that the forecast gives for the gate, as the hoist check has them; nothing while they are worked out. */
export function ForecastLine({ reading }: { readonly reading: Reading }) {
  const { build, asOf } = reading;
  const days = useRead(['forecast', build, asOf ?? null, 'gate-days'], () => api.forecast.gateDays(reading));
  if (days.state !== 'ready' || days.value === null) return null;
  const { p50On, p80On } = days.value;
  return (
    <p className="start-forecast">
      <Link to="/forecast">Forecast</Link>: as likely as not by <DateText date={p50On} />, four times of five by{' '}
      <DateText date={p80On} />.
    </p>
  );
}
