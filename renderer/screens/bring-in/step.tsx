import { Button } from '@mantine/core';
import { IconCheck } from '@tabler/icons-react';
import { type ReactNode, useEffect, useId, useRef } from 'react';

export interface StepProps {
  /** Counted from 1, as shown. */
  readonly number: number;
  readonly title: string;
  readonly state: 'open' | 'answered' | 'later';
  /** What was answered, in one line, while the step is closed. */
  readonly summary: ReactNode;
  readonly onOpen: () => void;
  /** The words of the button that goes on, and what it does; left out on the last step. */
  readonly next?: { readonly label: string; readonly go: () => void };
  readonly children: ReactNode;
}

/** One step of the way down the page. The one that opens takes the focus, so that the keyboard goes on from there. */
export function Step({ number, title, state, summary, onOpen, next, children }: StepProps) {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  const wasOpen = useRef(state === 'open');
  useEffect(() => {
    const opens = state === 'open' && !wasOpen.current;
    wasOpen.current = state === 'open';
    if (!opens) return;
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: 'start' });
  }, [state]);
  return (
    <section className="import-step" data-state={state} aria-labelledby={id}>
      <div className="import-step-head">
        <span className="import-step-number" aria-hidden>
          {state === 'answered' ? <IconCheck size="1.1em" /> : number}
        </span>
        <h2 id={id} ref={heading} tabIndex={-1} aria-current={state === 'open' ? 'step' : undefined}>
          <span className="only-heard">Step {number}: </span>
          {title}
        </h2>
        {state === 'answered' && (
          <>
            <span className="import-step-summary">{summary}</span>
            <Button variant="subtle" size="compact" onClick={onOpen}>
              Change <span className="only-heard">{title.toLowerCase()}</span>
            </Button>
          </>
        )}
      </div>
      {state === 'open' && (
        <div className="import-step-body">
          {children}
          {next !== undefined && (
            <div>
              <Button variant="filled" onClick={next.go}>
                {next.label}
              </Button>
            </div>
          )}
        </div>
      )}
    </section>
  );
}
