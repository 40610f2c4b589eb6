import { useEffect, useRef } from 'react';
import { groupTitles } from '../../../core/calculators/calculator.ts';
import { calculators, findCalculator } from '../../../core/calculators/index.ts';
import { useRoute } from '../../app/route.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { CalculatorList } from './calculator-list.tsx';
import { OneCalculator } from './one-calculator.tsx';
import { OpenCase } from './open-case.tsx';
import { answerOf, useWorked } from './worked.ts';
import './calculators.css';

const opening =
  `${calculators.length} calculators in ${Object.keys(groupTitles).length} groups, each with its formula and ` +
  'its source; nothing enters the workbook unless a case is saved.';

/** The calculators: a list to choose from and the one chosen. What is typed is in the address; only a saved case is in the workbook. */
export default function CalculatorsScreen() {
  const { params } = useRoute();
  const { id: asked, case: savedCase } = params;
  const chosen = asked === undefined ? undefined : findCalculator(asked);
  const { language } = useLocale();
  const worked = useWorked(chosen, params);
  const heading = useRef<HTMLHeadingElement>(null);
  const choosing = useRef(false);

  // biome-ignore lint/correctness/useExhaustiveDependencies: only another calculator takes the focus along
  useEffect(() => {
    if (!choosing.current) return;
    choosing.current = false;
    heading.current?.focus();
  }, [chosen]);

  return (
    <Page
      title="Calculators"
      answer={
        <Answer>{chosen === undefined || worked === undefined ? opening : answerOf(chosen, worked, language)}</Answer>
      }
    >
      <div className="calculators">
        <CalculatorList
          chosen={chosen}
          onChoose={() => {
            choosing.current = true;
          }}
        />
        {chosen !== undefined && worked !== undefined ? (
          <OneCalculator key={chosen.id} calculator={chosen} params={params} heading={heading} worked={worked} />
        ) : asked === undefined && savedCase !== undefined ? (
          <OpenCase id={savedCase} />
        ) : (
          <p className="calculators-prose">
            {asked === undefined
              ? 'Choose one from the list. The result comes as you type, in the units you choose.'
              : `There is no calculator “${asked}”. Choose one from the list.`}
          </p>
        )}
      </div>
    </Page>
  );
}
