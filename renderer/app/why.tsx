import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import type { Derivation } from '../parts/derivation.ts';
import { WhyPanel } from '../parts/why-panel.tsx';

type Ask = Derivation | (() => Promise<Derivation>);
type Shown =
  | { state: 'closed' }
  | { state: 'asking' }
  | { state: 'ready'; derivation: Derivation }
  | { state: 'failed'; error: unknown };

const WhyContext = createContext<(ask: Ask) => void>(() => undefined);

/** Ask where a figure comes from: `why(derivation)` or `why(() => client.…)`; the panel opens at the right. */
export const useWhy = (): ((ask: Ask) => void) => useContext(WhyContext);

/** Holds the one Why panel of the window. */
export function WhyProvider({ children }: { readonly children: ReactNode }) {
  const [shown, setShown] = useState<Shown>({ state: 'closed' });
  const why = useCallback((ask: Ask) => {
    if (typeof ask !== 'function') {
      setShown({ state: 'ready', derivation: ask });
      return;
    }
    setShown({ state: 'asking' });
    ask().then(
      (derivation) => setShown((now) => (now.state === 'closed' ? now : { state: 'ready', derivation })),
      (error: unknown) => setShown((now) => (now.state === 'closed' ? now : { state: 'failed', error })),
    );
  }, []);
  const close = useCallback(() => setShown({ state: 'closed' }), []);
  const panel = useMemo(
    () => (
      <WhyPanel
        opened={shown.state !== 'closed'}
        onClose={close}
        derivation={shown.state === 'ready' ? shown.derivation : null}
        error={shown.state === 'failed' ? shown.error : null}
      />
    ),
    [shown, close],
  );
  return (
    <WhyContext value={why}>
      {children}
      {panel}
    </WhyContext>
  );
}
