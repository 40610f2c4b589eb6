import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import type { Derivation, WhyQuestion } from '../../core/contract/journal.ts';
import { WhyPanel } from '../parts/why-panel.tsx';
import { api } from './client.ts';

/** A question for the workbook, or a derivation that the screen has already. */
export type Why = WhyQuestion | { readonly derivation: Derivation };
type Shown =
  | { readonly state: 'closed' }
  | { readonly state: 'asking'; readonly why: WhyQuestion }
  | { readonly state: 'ready'; readonly derivation: Derivation }
  | { readonly state: 'failed'; readonly error: unknown };

const WhyContext = createContext<(why: Why) => void>(() => undefined);

/** Ask where a figure comes from: `why({ build, figure: 'cost', part })`; the panel opens at the right. */
export const useWhy = (): ((why: Why) => void) => useContext(WhyContext);

export interface WhyProviderProps {
  readonly children: ReactNode;
  /** Who answers; the workbook unless a test stands in. */
  readonly ask?: (question: WhyQuestion) => Promise<Derivation>;
}

const askWorkbook = (question: WhyQuestion): Promise<Derivation> => api.why.ask(question);

/** Holds the one Why panel of the window. */
export function WhyProvider({ children, ask = askWorkbook }: WhyProviderProps) {
  const [shown, setShown] = useState<Shown>({ state: 'closed' });
  const show = useCallback(
    (why: Why) => {
      if ('derivation' in why) {
        setShown({ state: 'ready', derivation: why.derivation });
        return;
      }
      setShown({ state: 'asking', why });
      // An answer that arrives after the panel was closed, or was asked something else, is dropped.
      const answer = (next: Shown) => setShown((now) => (now.state === 'asking' && now.why === why ? next : now));
      ask(why).then(
        (derivation) => answer({ state: 'ready', derivation }),
        (error: unknown) => answer({ state: 'failed', error }),
      );
    },
    [ask],
  );
  const panel = useMemo(
    () => (
      <WhyPanel
        opened={shown.state !== 'closed'}
        onClose={() => setShown({ state: 'closed' })}
        derivation={shown.state === 'ready' ? shown.derivation : null}
        error={shown.state === 'failed' ? shown.error : null}
      />
    ),
    [shown],
  );
  return (
    <WhyContext value={show}>
      {children}
      {panel}
    </WhyContext>
  );
}
