import type { ReactNode } from 'react';
import type { JudgedFit } from '../../../core/contract/fits.ts';
import type { Fit } from '../../../core/fit/fit.ts';
import { fitLooks } from '../../parts/fit-mark.tsx';
import { Caution } from '../../parts/notes.tsx';
import { once, severityWords } from './fit-words.ts';
import { sentence } from './port-text.ts';

/** The verdict as icon and words, for the page's first sentence. */
export function VerdictWords({ judged }: { readonly judged: Pick<Fit, 'verdict' | 'reason'> }) {
  const { icon: Mark, words, tone } = fitLooks[judged.verdict];
  return (
    <>
      <strong className="fit-verdict" data-tone={tone}>
        <Mark aria-hidden size="1.2em" />
        {words}
      </strong>
      : {judged.reason.replace(/\.$/, '')}.
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

const whereSaid = (text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : [text]);

export interface FactsOfFitProps {
  readonly judged: Pick<JudgedFit, 'severity' | 'needs' | 'missing' | 'notes' | 'source'> & {
    readonly caution: string;
    readonly consequence: string | undefined;
    readonly howToTell: string | undefined;
  };
  /** What the section is called, where more than one stands on the page. */
  readonly label?: string;
  /** The adapters, where there are any. */
  readonly children?: ReactNode;
}

/** All that stands behind a verdict: what it takes, what happens otherwise, how to be sure, and who says so. */
export function FactsOfFit({ judged, label = 'Details of the fit', children }: FactsOfFitProps) {
  const { severity, needs, howToTell, consequence, missing, notes, caution, source } = judged;
  return (
    <section aria-label={label} className="fit-details">
      {caution !== '' && <Caution>{caution}</Caution>}
      <dl>
        <Lines title="How bad it is" lines={severity === 'info' ? [] : [severityWords[severity]]} />
        <Lines title="Still to be known" lines={once(missing)} />
        <Lines title="If joined all the same" lines={whereSaid(consequence)} />
        <Lines title="How to tell" lines={whereSaid(howToTell).map(sentence)} />
        <Lines title="Also needed" lines={once(needs)} />
        <Lines title="To note" lines={once(notes)} />
      </dl>
      {children}
      <p className="fit-soft">Source: {source}</p>
    </section>
  );
}

/** The facts of two typed ports, with the adapters that join them. */
export function VerdictDetails({ judged }: { readonly judged: Fit }) {
  return (
    <FactsOfFit
      judged={{ ...judged, needs: [...judged.needs], missing: [...judged.missing], notes: [...judged.notes] }}
    >
      {judged.adapters.length > 0 && (
        <>
          <h2>Adapters that join them</h2>
          <ol className="fit-list">
            {judged.adapters.map(({ text, needs: also, notes: told, pieces }) => (
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
    </FactsOfFit>
  );
}
