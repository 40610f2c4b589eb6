import { notifications } from '@mantine/notifications';
import { useQueryClient } from '@tanstack/react-query';
import { lazy, Suspense, useEffect, useEffectEvent, useState } from 'react';
import { RefusalNote, refusalWords } from '../parts/refusal-note.tsx';
import { api } from './client.ts';
import { useRead } from './data.tsx';
import { desktopBridge, type MenuVerb } from './desktop-bridge.ts';
import { setPreferences } from './preferences.ts';
import { navigate } from './route.tsx';

const NewWorkbook = lazy(() =>
  import('../screens/start/new-workbook.tsx').then((module) => ({ default: module.NewWorkbook })),
);

/** Says what came of a choice in the menu; a refusal stays until it is put away. */
async function said(work: () => Promise<string>): Promise<boolean> {
  try {
    const message = await work();
    notifications.show({ message });
    return true;
  } catch (error) {
    notifications.show({ message: <RefusalNote refusal={refusalWords(error)} />, autoClose: false });
    return false;
  }
}

/** Does what the desktop window's menu asks for; in a browser there is no such menu and nothing is drawn. */
export function DesktopMenu() {
  const bridge = desktopBridge();
  const queries = useQueryClient();
  const status = useRead(['workbook.status'], () => api.workbook.status());
  const here = status.state === 'ready' ? (status.value.open?.path ?? null) : null;
  /** The workbook that was open when a new one was asked for; false while none is asked for. */
  const [makingBeside, setMakingBeside] = useState<string | null | false>(false);
  if (makingBeside !== false && status.state === 'ready' && makingBeside !== here) {
    // The new one is open now.
    setMakingBeside(false);
    navigate('/');
  }

  const open = async () => {
    const path = await bridge?.chooseWorkbookToOpen();
    if (typeof path !== 'string') return;
    const done = await said(async () => {
      const now = await api.workbook.open({ path });
      await queries.invalidateQueries();
      return `Opened ${now.open?.name ?? path}`;
    });
    if (done) navigate('/');
  };
  const backUp = () =>
    said(async () => {
      const made = await api.workbook.backUp();
      await queries.invalidateQueries({ queryKey: ['workbook.backups'] });
      return `Backed up as ${made.file}, in the folder “Backups” beside the workbook`;
    });
  const heard = useEffectEvent((verb: MenuVerb) => {
    const verbs: Readonly<Record<MenuVerb, () => unknown>> = {
      'workbook-new': () => setMakingBeside(here),
      'workbook-open': open,
      'workbook-bring-in': () => navigate('/bring-in'),
      'workbook-back-up': backUp,
      'workbook-export': () => navigate('/settings', { section: 'export' }),
      'theme-system': () => setPreferences({ theme: 'system' }),
      'theme-day': () => setPreferences({ theme: 'day' }),
      'theme-night': () => setPreferences({ theme: 'night' }),
      'density-desk': () => setPreferences({ density: 'desk' }),
      'density-bench': () => setPreferences({ density: 'bench' }),
      help: () => navigate('/settings', { section: 'about' }),
    };
    void verbs[verb]();
  });
  useEffect(() => bridge?.onMenu((verb) => heard(verb)), [bridge]);

  if (makingBeside === false) return null;
  return (
    <Suspense>
      <NewWorkbook then="new" onClose={() => setMakingBeside(false)} />
    </Suspense>
  );
}
