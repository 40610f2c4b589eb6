import { createContext, useContext } from 'react';
import { type LocaleSettings, standardLocale } from '../parts/locale.tsx';
import type { Command, SearchGroup } from '../parts/palette.tsx';

/** Something that can be taken back or done again, by its name: "receipt of 12 lines". */
export interface NamedAct {
  readonly label: string;
  readonly run: () => void | Promise<void>;
}

export interface BuildChoice {
  readonly id: string;
  readonly name: string;
}

/** What the frame around every screen needs to know about the open workbook. */
export interface Workspace {
  readonly workbookName: string;
  readonly builds: readonly BuildChoice[];
  readonly buildId: string | null;
  readonly chooseBuild: (id: string) => void;
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
