import { Button } from '@mantine/core';
import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Caution } from '../../parts/notes.tsx';
import { RefusalNote, type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';
import { torqueText } from '../../parts/torque.ts';

type Answer = Awaited<ReturnType<typeof api.bench.suggest>>;

interface SuggestProps {
  readonly asked: { readonly thread: string; readonly boltClass: string; readonly lubricant: string };
  readonly onTake: (torqueMilliNm: number, source: string) => void;
}

/** A torque reckoned from thread, class and lubricant, for bolts whose maker says nothing. Written only when it is taken. */
export function Suggest({ asked, onTake }: SuggestProps) {
  const { units } = useLocale();
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [refusal, setRefusal] = useState<RefusalWords | null>(null);
  const { thread, boltClass, lubricant } = asked;
  const ask = async () => {
    setAnswer(null);
    setRefusal(null);
    try {
      setAnswer(await api.bench.suggest({ thread, boltClass, lubricant }));
    } catch (error) {
      setRefusal(refusalWords(error));
    }
  };
  return (
    <details className="bench-more">
      <summary>No figure from the maker?</summary>
      <p>A torque can be reckoned from thread, class and lubricant. It is an estimate, never a maker’s figure.</p>
      <Button disabled={thread.trim() === '' || boltClass.trim() === ''} onClick={() => void ask()}>
        Reckon one
      </Button>
      {refusal !== null && <RefusalNote refusal={refusal} />}
      {answer !== null && (
        <>
          <p>
            <strong>{torqueText(answer.torqueMilliNm, units)}</strong>. {answer.says} {answer.formula}. {answer.source}
          </p>
          <Caution>{answer.caution}</Caution>
          <Button onClick={() => onTake(answer.torqueMilliNm, `Nut-factor estimate: ${answer.says}`.slice(0, 200))}>
            Take {torqueText(answer.torqueMilliNm, units)} as the figure
          </Button>
        </>
      )}
    </details>
  );
}
