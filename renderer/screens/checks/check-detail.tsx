import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CheckRow, ChecksView } from '../../../core/contract/checks.ts';
import { Link, navigate } from '../../app/route.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { Window } from '../../parts/window.tsx';
import { ChangeCheck } from './change-check.tsx';
import { EndCheckWaiver, RetireCheck, WaiveCheck } from './check-acts.tsx';
import { CheckHistory } from './check-history.tsx';
import { blockerKindOf, calculatorParams, inputText, limitText, roomText, sourceText } from './check-words.ts';
import { VerdictMark } from './verdict.tsx';

type Doing = 'waive' | 'end' | 'retire' | 'edit';

export interface CheckDetailProps {
  readonly check: CheckRow;
  readonly view: ChecksView;
  readonly build: number;
}

/** One check in full: the verdict, what went in and from where, the formula, and the verdicts so far. */
export function CheckDetail({ check, view, build }: CheckDetailProps) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const canAct = useCanAct();
  const { language } = useLocale();
  const stop = () => setDoing(null);
  const leave = () => navigate('/checks');
  if (doing === 'edit') return <ChangeCheck view={view} build={build} check={check.id} onClose={stop} />;
  return (
    <Window opened as="drawer" title={check.title} onClose={leave}>
      <div className="checks-detail">
        <p>
          <VerdictMark verdict={check.verdict} /> {check.says}
        </p>
        {check.caution !== '' && <Caution>{check.caution}</Caution>}
        {check.waived !== '' && <p>Waived for the hoist check: {check.waived}</p>}
        <PastDayNote />
        {canAct && (
          <div className="checks-buttons">
            {check.waived !== '' ? (
              <Button onClick={() => setDoing('end')}>End the waiver…</Button>
            ) : (
              blockerKindOf(check) !== null && <Button onClick={() => setDoing('waive')}>Waive…</Button>
            )}
            <Button onClick={() => setDoing('edit')}>Change limit or inputs…</Button>
            <Button variant="subtle" onClick={() => setDoing('retire')}>
              Retire…
            </Button>
          </div>
        )}
        <p>
          {check.outputLabel}: limit {limitText(check, language)}, room {roomText(check, language)}.
          {check.limit.source !== '' && ` Limit from: ${check.limit.source}.`}
        </p>
        <section aria-label="Inputs">
          <h3>What went in</h3>
          <Inputs check={check} />
        </section>
        {check.warnings.length > 0 && (
          <section aria-label="Warnings">
            <h3>Warnings</h3>
            <ul>
              {check.warnings.map((warning) => (
                <li key={warning}>{warning}</li>
              ))}
            </ul>
          </section>
        )}
        {check.outputs.length > 0 && (
          <section aria-label="Other results">
            <h3>Also comes out</h3>
            <dl className="checks-pairs">
              {check.outputs.map(({ name, label, text }) => (
                <div key={name}>
                  <dt>{label}</dt>
                  <dd>{text}</dd>
                </div>
              ))}
            </dl>
          </section>
        )}
        <section aria-label="Formula and source">
          <h3>Formula</h3>
          <p>{check.formula}</p>
          <p className="checks-says">Source: {check.source}</p>
          <Link to="/calculators" params={calculatorParams(check)}>
            Open in the calculator
          </Link>
        </section>
        {check.note !== '' && <p>{check.note}</p>}
        <section aria-label="Verdicts over time">
          <h3>Verdicts over time</h3>
          <CheckHistory check={check} />
        </section>
      </div>
      {doing === 'waive' && <WaiveCheck check={check} build={build} onClose={stop} />}
      {doing === 'end' && <EndCheckWaiver check={check} build={build} onClose={stop} />}
      {doing === 'retire' && <RetireCheck check={check} onClose={stop} onDone={leave} />}
    </Window>
  );
}

function Inputs({ check }: { readonly check: CheckRow }) {
  return (
    <dl className="checks-pairs">
      {check.inputs.map((input) => (
        <InputLine key={input.name} input={input} />
      ))}
    </dl>
  );
}

function InputLine({ input }: { readonly input: CheckRow['inputs'][number] }) {
  const { label, from, source, assumed, lacks, part } = input;
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        <span className="figure">{inputText(input)}</span>
        <span className="checks-says">
          {lacks !== '' ? lacks : from || sourceText(source)}
          {assumed && !from.includes('assumed') && ' (assumed)'}{' '}
          {part !== null && (
            <Link to="/parts" params={{ part }}>
              Open the part
            </Link>
          )}
          {part === null && source.from === 'target' && (
            <Link to="/checks" params={{ view: 'targets' }}>
              Open the target sheet
            </Link>
          )}
          {source.from === 'measurement' && (
            <Link to="/bench" params={{ sheet: source.sheet }}>
              Open the sheet
            </Link>
          )}
        </span>
      </dd>
    </div>
  );
}
