import { Button } from '@mantine/core';
import { IconHandStop } from '@tabler/icons-react';
import { Refusal, type RefusalDetail } from '../../core/refusal.ts';
import { refusalOf } from '../app/client.ts';
import './notes.css';

/** What a refused request says about itself, on every shell. */
export interface RefusalWords {
  readonly message: string;
  readonly field?: string | undefined;
  readonly accepted?: string | undefined;
  /** Figures and numbers of entries that the refusal is about. */
  readonly detail?: RefusalDetail | undefined;
}

/** The refusal in whatever was thrown, by our own readers of typed text or by the workbook. */
export const refusalWords = (error: unknown): RefusalWords => (error instanceof Refusal ? error : refusalOf(error));

export interface RefusalNoteProps {
  readonly refusal: RefusalWords;
  readonly onRetry?: () => void;
}

/** A refusal where it happened: what is wrong, with which field, what would be accepted. */
export function RefusalNote({ refusal, onRetry }: RefusalNoteProps) {
  return (
    <div className="note note-blocks" role="alert">
      <IconHandStop aria-hidden className="note-icon" />
      <div>
        <p>
          <strong>Not done.</strong> {refusal.message}
        </p>
        {refusal.accepted !== undefined && <p>Accepted: {refusal.accepted}.</p>}
        {onRetry !== undefined && (
          <Button mt="xs" onClick={onRetry}>
            Try again
          </Button>
        )}
      </div>
    </div>
  );
}
