import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { WorkbookStatus } from '../../../core/contract/workbook.ts';
import { type RefusalWords, refusalWords } from '../../parts/refusal-note.tsx';

/**
 * Opens or makes a workbook: while it is under way `busy` names it, and everything is read again once it is open.
 * Answers whether it was done; a refusal is kept in words until the next attempt.
 */
export function useWorkbook() {
  const queries = useQueryClient();
  const [busy, setBusy] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<RefusalWords | null>(null);
  const run = async (name: string, work: () => Promise<WorkbookStatus>): Promise<boolean> => {
    setBusy(name);
    setRefusal(null);
    try {
      const status = await work();
      queries.setQueryData(['workbook.status'], status);
      await queries.invalidateQueries();
      return true;
    } catch (error) {
      setRefusal(refusalWords(error));
      return false;
    } finally {
      setBusy(null);
    }
  };
  return { busy, refusal, run, forget: () => setRefusal(null) };
}
