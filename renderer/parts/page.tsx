import { Button } from '@mantine/core';
import { IconHelpCircle } from '@tabler/icons-react';
import { type ReactNode, useEffect, useRef } from 'react';
import { useRoute } from '../app/route.tsx';
import { useWorkspace } from '../app/workspace.tsx';
import './page.css';

let arrivals = 0;
if (typeof window !== 'undefined') window.addEventListener('hashchange', () => (arrivals += 1));

export interface AnswerProps {
  /** The page's first sentence: what the reader came to know, with the figures in it. */
  readonly children: ReactNode;
  /** Opens the derivation of the figure in the sentence. */
  readonly onWhy?: () => void;
  /** The sentence is about something that blocks. */
  readonly blocks?: boolean;
}

/** The page's first sentence, large, with the way to ask where its figure comes from. */
export function Answer({ children, onWhy, blocks = false }: AnswerProps) {
  return (
    <div className={blocks ? 'answer answer-blocks' : 'answer'}>
      <p>{children}</p>
      {onWhy !== undefined && <WhyButton onClick={onWhy} />}
    </div>
  );
}

/** The small button beside a figure that asks where it comes from; `of` names the figure for those who hear it. */
export function WhyButton({ onClick, of }: { readonly onClick: () => void; readonly of?: string }) {
  return (
    <Button
      className="why-button not-printed"
      variant="subtle"
      size="compact"
      leftSection={<IconHelpCircle aria-hidden size="1.1em" />}
      onClick={onClick}
    >
      Why?{of !== undefined && ' '}
      {of !== undefined && <span className="only-heard">{of}</span>}
    </Button>
  );
}

export interface PageProps {
  readonly title: string;
  readonly answer?: ReactNode;
  readonly children?: ReactNode;
}

/** One screen: its name, its answer, then its tables and charts. Takes the focus when the reader arrives here. */
export function Page({ title, answer, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { path } = useRoute();
  const { workbookName } = useWorkspace();

  useEffect(() => {
    document.title = workbookName === 'Hoistday' ? `${title} · Hoistday` : `${title} · ${workbookName} · Hoistday`;
  }, [title, workbookName]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: arriving at another path is what moves the focus
  useEffect(() => {
    if (arrivals > 0) heading.current?.focus({ preventScroll: false });
  }, [path]);

  // A page that turned into another while the focus stood in what is gone now: the keyboard goes on from its name.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another title means another page
  useEffect(() => {
    if (arrivals > 0 && document.activeElement === document.body) heading.current?.focus({ preventScroll: false });
  }, [title]);

  return (
    <article className="page">
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {answer}
      {children}
    </article>
  );
}
