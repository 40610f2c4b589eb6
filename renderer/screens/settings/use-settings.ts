import { notifications } from '@mantine/notifications';
import { useQueryClient } from '@tanstack/react-query';
import type { Settings } from '../../../core/contract/workbook.ts';
import { actKey, api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useTask } from '../../app/task.ts';

/** The workbook's settings, and the way to change some of them. */
export function useSettings() {
  const settings = useRead(['workbook.settings'], () => api.workbook.settings());
  return settings;
}

/** Saves some settings and has everything read again, because figures and days may be written differently now. */
export function useSaveSettings() {
  const queries = useQueryClient();
  return useTask(async (change: Partial<Settings>) => {
    const saved = await api.workbook.saveSettings({ key: actKey(), settings: change });
    queries.setQueryData(['workbook.settings'], saved);
    await queries.invalidateQueries();
    notifications.show({ message: 'Settings saved' });
    return saved;
  });
}
