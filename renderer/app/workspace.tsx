import { createContext, useContext } from 'react';
import { type LocaleSettings, standardLocale } from '../parts/locale.tsx';
import type { Command, SearchGroup } from '../parts/palette.tsx';

/** Something that can be taken back or done again, by its name: "receipt of 12 lines". */
export interface NamedAct {
  readonly label: string;
  readonly run: () => void | Promise<void>;
}

export interface BuildChoice {
  readonly id: number;
  readonly name: string;
}

/** What the frame around every screen needs to know about the open workbook. */
export interface Workspace {
  /** Whether a workbook is open; while none is, only the start page has something to show. */
  readonly isOpen: boolean;
  readonly workbookName: string;
  readonly builds: readonly BuildChoice[];
  /** The build that every screen is about; null while the workbook has none. */
  readonly buildId: number | null;
  readonly chooseBuild: (id: number) => void;
  /** Today on the user's calendar, YYYY-MM-DD. */
  readonly today: string;
  /** The past date that every screen is shown as of; null is today. */
  readonly asOf: string | null;
  readonly showAsOf: (date: string | null) => void;
  readonly undo: NamedAct | null;
  readonly redo: NamedAct | null;
  /** Rows of the workbook that match what was typed; absent while nothing can be searched. */
  readonly search?: (text: string, signal: AbortSignal) => Promise<readonly SearchGroup[]>;
  readonly commands: readonly Command[];
  readonly locale: LocaleSettings;
}

export const emptyWorkspace: Workspace = {
  isOpen: false,
  workbookName: 'Hoistday',
  builds: [],
  buildId: null,
  chooseBuild: () => undefined,
  today: '1970-01-01',
  asOf: null,
  showAsOf: () => undefined,
  undo: null,
  redo: null,
  commands: [],
  locale: standardLocale,
};

export const WorkspaceContext = createContext<Workspace>(emptyWorkspace);

/** The open workbook as the frame knows it. */
export const useWorkspace = (): Workspace => useContext(WorkspaceContext);

/**
 * The build and date that a read of one build takes, ready to hand to the client:
 * `api.gate.review({ ...reading })`. Null while no build is chosen.
 */
export function useReading(): { readonly build: number; readonly asOf?: string } | null {
  const { buildId, asOf } = useWorkspace();
  if (buildId === null) return null;
  return asOf === null ? { build: buildId } : { build: buildId, asOf };
}
