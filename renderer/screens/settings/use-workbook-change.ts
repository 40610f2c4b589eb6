import { useQueryClient } from '@tanstack/react-query';
import type { WorkbookStatus } from '../../../core/contract/workbook.ts';
import { useTask } from '../../app/task.ts';

/** Opens, closes or restores: whatever comes of it, everything is read again from the workbook that is open then. */
export function useWorkbookChange() {
  const queries = useQueryClient();
  return useTask(async (work: () => Promise<WorkbookStatus>) => {
    const status = await work();
    queries.setQueryData(['workbook.status'], status);
    await queries.invalidateQueries();
    return status;
  });
}
