import type { WhyFigure } from '../../../core/contract/journal.ts';
import type { StartView } from '../../../core/contract/plan.ts';
import { useWhy } from '../../app/why.tsx';
import { WhyButton } from '../../parts/page.tsx';
import type { Reading } from './build-start.tsx';

export interface MeasuresProps {
  readonly measures: StartView['measures'];
  readonly reading: Reading;
}

/** How far the build is, in words: each measure says what it counts. */
export function Measures({ measures, reading }: MeasuresProps) {
  const why = useWhy();
  const { received, fitted, verified, jobs, spend } = measures;
  const lines: readonly (readonly [
    string,
    WhyFigure,
    { readonly text: string; readonly done: number; readonly of: number },
    string,
  ])[] = [
    ['Parts received', 'received-share', received.byLine, 'part lines'],
    ['Parts fitted to stay', 'fitted-share', fitted.byLine, 'part lines'],
    ['At final torque or verified', 'verified-share', verified.byLine, 'part lines'],
    ['Jobs done', 'jobs-share', jobs.byCount, 'jobs'],
  ];
  return (
    <section aria-labelledby="start-progress">
      <h2 id="start-progress">How far it is</h2>
      <ul className="start-list">
        {lines.map(([title, figure, share, noun]) => (
          <li key={title} className="start-measure">
            <span>{title}</span>
            <span>
              <span className="figure">{share.text}</span>
              {share.of > 0 && <span className="soft"> {`${share.done} of ${share.of} ${noun}`}</span>}
            </span>
            <WhyButton of={title} onClick={() => why({ figure, ...reading })} />
          </li>
        ))}
        <li className="start-measure">
          <span>Of the money spent</span>
          <span className="figure">{spend.text}</span>
          <WhyButton of="the money spent" onClick={() => why({ figure: 'spend-share', ...reading })} />
        </li>
      </ul>
    </section>
  );
}
