import { Button } from '@mantine/core';
import { IconAlertTriangle } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import './notes.css';

const loadingLines = ['28%', '70%', '96%', '92%', '88%', '94%', '60%'] as const;

/** The shape of text while a screen or its first rows are on their way. */
export function Loading({ label }: { readonly label: string }) {
  return (
    <div className="loading" role="status">
      <span className="only-heard">{label}</span>
      {loadingLines.map((width) => (
        <span key={width} style={{ width }} aria-hidden />
      ))}
    </div>
  );
}

export interface EmptyProps {
  /** What belongs here, in one sentence. */
  readonly children: ReactNode;
  /** The first step, as the words of its button. */
  readonly action?: { readonly label: string; readonly onClick: () => void };
}

/** An empty screen says what belongs there and offers the first step. */
export function Empty({ children, action }: EmptyProps) {
  return (
    <div className="empty">
      <p>{children}</p>
      {action !== undefined && (
        <Button variant="filled" onClick={action.onClick}>
          {action.label}
        </Button>
      )}
    </div>
  );
}

/** The one-line caution that stands beside a figure which can hurt someone. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <p className="note note-warn">
      <IconAlertTriangle aria-hidden className="note-icon" />
      <span>
        <strong>Take care.</strong> {children}
      </span>
    </p>
  );
}
