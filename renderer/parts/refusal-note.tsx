import { Button } from '@mantine/core';
import { IconHandStop } from '@tabler/icons-react';
import './notes.css';

/** What a refused request says about itself, on every shell. */
export interface RefusalWords {
  readonly message: string;
  readonly field?: string | undefined;
  readonly accepted?: string | undefined;
}

/** Read a refusal out of whatever was thrown; anything else becomes a plain sentence that says what is known. */
export function refusalWords(error: unknown): RefusalWords {
  if (typeof error === 'object' && error !== null) {
    const wrapped = (error as { data?: unknown }).data;
    for (const candidate of [wrapped, error]) {
      if (typeof candidate !== 'object' || candidate === null) continue;
      const { message, field, accepted } = candidate as Record<string, unknown>;
      if (typeof message !== 'string' || message === '') continue;
      return {
        message,
        field: typeof field === 'string' ? field : undefined,
        accepted: typeof accepted === 'string' ? accepted : undefined,
      };
    }
  }
  return { message: 'The workbook gave no answer. Nothing was changed.' };
}

/** A refusal where it happened: what is wrong, with which field, what would be accepted. */
export function RefusalNote({ refusal, onRetry }: { readonly refusal: RefusalWords; readonly onRetry?: () => void }) {
  return (
    <div className="note note-blocks" role="alert">
      <IconHandStop aria-hidden className="note-icon" />
      <div>
        <p>
          <strong>Not done.</strong> {refusal.message}
        </p>
        {refusal.accepted !== undefined && <p>Accepted: {refusal.accepted}</p>}
        {onRetry !== undefined && (
          <Button mt="xs" onClick={onRetry}>
            Try again
          </Button>
        )}
      </div>
    </div>
  );
}
