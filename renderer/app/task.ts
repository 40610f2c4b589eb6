import { useCallback, useState } from 'react';
import { type RefusalWords, refusalWords } from '../parts/refusal-note.tsx';

/** Something that the user starts and that is no entry in the journal: a backup, an export, a change of settings. */
export interface Task<Input, Value> {
  readonly busy: boolean;
  /** What the workbook said when it refused the last attempt. */
  readonly refusal: RefusalWords | null;
  readonly forget: () => void;
  /** Does it; the answer is undefined when it was refused. */
  readonly run: (input: Input) => Promise<Value | undefined>;
}

/** A task with its progress and its refusal: `useTask(() => api.workbook.backUp())`. */
export function useTask<Value, Input = void>(work: (input: Input) => Promise<Value>): Task<Input, Value> {
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<RefusalWords | null>(null);
  const run = useCallback(
    async (input: Input) => {
      setBusy(true);
      setRefusal(null);
      try {
        return await work(input);
      } catch (error) {
        setRefusal(refusalWords(error));
        return undefined;
      } finally {
        setBusy(false);
      }
    },
    [work],
  );
  const forget = useCallback(() => setRefusal(null), []);
  return { busy, refusal, forget, run };
}
