import { Link } from '../../app/route.tsx';
import { screenAt } from '../../app/screens.ts';

const steps = [
  {
    screen: 'bring-in',
    label: 'Bring in the list that you have',
    why: 'A spreadsheet of parts comes in whole, with its columns matched once.',
  },
  {
    screen: 'parts',
    label: 'List what the build needs',
    why: 'A line a part, with a guess of its price; the rest can wait.',
  },
  {
    screen: 'orders',
    label: 'Enter the orders that are out',
    why: 'So that back-orders age from the day they were placed.',
  },
  { screen: 'plan', label: 'Write down the jobs', why: 'With the parts and tools that each of them takes.' },
  { screen: 'money', label: 'Set a budget', why: 'Then every page says what it leaves.' },
] as const;

/** What to do in a build that has nothing in it yet. */
export function FirstSteps() {
  return (
    <section aria-labelledby="start-first" className="start-steps">
      <h2 id="start-first">First steps</h2>
      <ol className="start-list">
        {steps
          .filter(({ screen }) => screenAt(screen) !== undefined)
          .map(({ screen, label, why }) => (
            <li key={screen} className="start-step">
              <Link to={`/${screen}`}>{label}</Link>
              <p className="soft">{why}</p>
            </li>
          ))}
      </ol>
    </section>
  );
}
