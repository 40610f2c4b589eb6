import type { Fit } from '../../../core/fit/fit.ts';
import { Caution } from '../../parts/notes.tsx';
import { verdictWords } from './fit-words.ts';

/** The verdict as icon and words, for the page's first sentence. */
export function VerdictWords({ judged }: { readonly judged: Fit }) {
  const { icon: Mark, words, tone } = verdictWords[judged.verdict];
  return (
    <>
      <strong className="fit-verdict" data-tone={tone}>
        <Mark aria-hidden size="1.2em" />
        {words}
      </strong>
      : {judged.reason}.
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div>
      <dt>{title}</dt>
      {lines.map((line) => (
        <dd key={line}>{line}</dd>
      ))}
    </div>
  );
}

const once = (lines: readonly string[]): readonly string[] => [...new Set(lines)];

/** All that stands behind a verdict: what it takes, what happens otherwise, how to be sure, and who says so. */
export function VerdictDetails({ judged }: { readonly judged: Fit }) {
  const { needs, adapters, howToTell, consequence, missing, notes, caution, source } = judged;
  return (
    <section aria-label="Details of the fit" className="fit-details">
      <Caution>{caution}</Caution>
      <dl>
        <Lines title="Still to be known" lines={once(missing)} />
        <Lines title="If joined all the same" lines={consequence === undefined ? [] : [consequence]} />
        <Lines title="How to tell" lines={howToTell === undefined ? [] : [howToTell]} />
        <Lines title="Also needed" lines={once(needs)} />
        <Lines title="To note" lines={once(notes)} />
      </dl>
      {adapters.length > 0 && (
        <>
          <h2>Adapters that join them</h2>
          <ol className="fit-list">
            {adapters.map(({ text, needs: also, notes: told, pieces }) => (
              <li key={text}>
                <strong>{text}</strong>
                <p>
                  {pieces.length === 1 ? 'One piece' : `${pieces.length} pieces`},{' '}
                  {once(pieces.map(({ availability }) => availability)).join(' and ')}.
                  {also.length > 0 && ` Also needed: ${once(also).join('; ')}.`}
                </p>
                <p className="fit-soft">{told.join(' ')}</p>
              </li>
            ))}
          </ol>
        </>
      )}
      <p className="fit-soft">Source: {source}</p>
    </section>
  );
}
