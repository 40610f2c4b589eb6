import { notifications } from '@mantine/notifications';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useCallback, useEffect, useMemo, useState } from 'react';
import type { SearchHit } from '../../core/contract/journal.ts';
import type { Settings } from '../../core/contract/workbook.ts';
import { type LocaleSettings, standardLocale } from '../parts/locale.tsx';
import type { SearchGroup } from '../parts/palette.tsx';
import { RefusalNote } from '../parts/refusal-note.tsx';
import { actKey, api, listenForChanges, refusalOf } from './client.ts';
import { hearOf, refresh } from './refresh.ts';
import { navigate } from './route.tsx';
import { type NamedAct, type Workspace, WorkspaceContext } from './workspace.tsx';

const buildPlace = 'hoistday.build';

function storedBuild(workbook: string): number | null {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(buildPlace) ?? '{}');
    const id = (stored as Record<string, unknown> | null)?.[workbook];
    return typeof id === 'number' ? id : null;
  } catch {
    return null;
  }
}

function storeBuild(workbook: string, id: number): void {
  try {
    localStorage.setItem(buildPlace, JSON.stringify({ [workbook]: id }));
  } catch {
    // Without storage the first build is shown again at the next start.
  }
}

/** What each kind of record found is called, and where it is opened. */
const places: Readonly<
  Record<SearchHit['kind'], { readonly title: string; readonly path: string; readonly param: string }>
> = {
  part: { title: 'Parts', path: '/parts', param: 'part' },
  order: { title: 'Orders', path: '/orders', param: 'order' },
  entry: { title: 'Entries', path: '/journal', param: 'entry' },
  job: { title: 'Jobs', path: '/plan', param: 'job' },
  phase: { title: 'Phases', path: '/lists', param: 'phase' },
  vendor: { title: 'Vendors', path: '/lists', param: 'vendor' },
  bin: { title: 'Bins', path: '/lists', param: 'bin' },
  system: { title: 'Systems', path: '/lists', param: 'system' },
  tool: { title: 'Tools', path: '/lists', param: 'tool' },
  decision: { title: 'Decisions', path: '/lists', param: 'decision' },
  boltGroup: { title: 'Bolt groups', path: '/bench', param: 'torque' },
  check: { title: 'Checks', path: '/checks', param: 'check' },
  measuringSheet: { title: 'Measuring sheets', path: '/bench', param: 'sheet' },
  port: { title: 'Ports', path: '/fit', param: 'port' },
  connection: { title: 'Connections', path: '/fit', param: 'connection' },
  hoseLine: { title: 'Lines', path: '/plumbing', param: 'line' },
  person: { title: 'People', path: '/lists', param: 'person' },
  savedCase: { title: 'Saved cases', path: '/calculators', param: 'case' },
  build: { title: 'Builds', path: '/', param: 'build' },
};

function grouped(hits: readonly SearchHit[], chooseBuild: (id: number) => void): readonly SearchGroup[] {
  const groups = Map.groupBy(hits, ({ kind }) => kind);
  return [...groups].map(([kind, found]) => ({
    title: places[kind].title,
    hits: found.map((hit) => ({
      id: `${kind}-${hit.id}`,
      label: hit.title,
      detail: hit.detail,
      open: () => {
        if (hit.build !== null) chooseBuild(hit.build);
        navigate(places[kind].path, kind === 'build' ? {} : { [places[kind].param]: hit.id });
      },
    })),
  }));
}

/** Take an act back or do it again, and say so; a refusal is said too. */
async function turnBack(run: () => Promise<unknown>, said: string): Promise<void> {
  try {
    await run();
    notifications.show({ message: said });
  } catch (error) {
    notifications.show({ message: <RefusalNote refusal={refusalOf(error)} />, autoClose: false });
  }
}

/** Until the workbook has said what day it is, the clock of this machine does. */
const todayHere = (): string => new Intl.DateTimeFormat('sv-SE').format();

const lowered = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** Reads again what an act changed, whichever window made it. */
function useChangeFeed(): void {
  const queries = useQueryClient();
  useEffect(() => listenForChanges(({ act }) => hearOf(queries, act)), [queries]);
}

/** Keeps the frame's knowledge of the open workbook, from the workbook itself. */
export function WorkspaceSource({ children }: { readonly children: ReactNode }) {
  useChangeFeed();
  const queries = useQueryClient();
  const status = useQuery({ queryKey: ['workbook.status'], queryFn: () => api.workbook.status() });
  const open = status.data?.open ?? null;
  const enabled = open !== null;
  const settings = useQuery({ queryKey: ['workbook.settings'], queryFn: () => api.workbook.settings(), enabled });
  const builds = useQuery({ queryKey: ['builds.list'], queryFn: () => api.builds.list(), enabled });
  const turns = useQuery({ queryKey: ['journal.undoState'], queryFn: () => api.journal.undoState(), enabled });

  const [asOf, setAsOf] = useState<string | null>(null);
  const [chosen, setChosen] = useState<number | null>(null);
  const path = open?.path ?? '';
  const chooseBuild = useCallback(
    (id: number) => {
      setChosen(id);
      storeBuild(path, id);
    },
    [path],
  );
  const search = useCallback(
    async (text: string, signal: AbortSignal) => grouped(await api.search.find({ text }, { signal }), chooseBuild),
    [chooseBuild],
  );

  const workspace = useMemo<Workspace>(() => {
    const list = enabled ? (builds.data ?? []) : [];
    const wanted = chosen ?? storedBuild(path);
    const build = list.find(({ id }) => id === wanted) ?? list[0];
    const turn = (which: 'undo' | 'redo', said: string): NamedAct | null => {
      const act = enabled ? (turns.data?.[which] ?? null) : null;
      if (act === null || open?.readOnly === true) return null;
      const run = async () => {
        await turnBack(() => api.journal[which]({ key: actKey(), act: act.act }), `${said}: ${act.label}`);
        await refresh(queries);
      };
      return { label: lowered(act.label), run };
    };
    return {
      isOpen: enabled,
      workbookName: open?.name ?? 'Hoistday',
      builds: list,
      buildId: build?.id ?? null,
      chooseBuild,
      today: status.data?.today ?? todayHere(),
      asOf: enabled ? asOf : null,
      showAsOf: setAsOf,
      undo: turn('undo', 'Taken back'),
      redo: turn('redo', 'Done again'),
      ...(enabled ? { search } : {}),
      commands: [],
      locale: {
        ...standardLocale,
        ...(settings.data === undefined ? {} : localeOf(settings.data)),
        language: navigator.language || 'en',
      },
    };
  }, [
    enabled,
    open,
    path,
    builds.data,
    chosen,
    turns.data,
    status.data,
    settings.data,
    asOf,
    chooseBuild,
    search,
    queries,
  ]);

  return <WorkspaceContext value={workspace}>{children}</WorkspaceContext>;
}

function localeOf({ currency, dateForm, units, weekStart }: Settings): Omit<LocaleSettings, 'language'> {
  return { currency, dateForm, units, weekStart };
}
