/** What a choice in the desktop window's menu asks the page to do. */
export const menuVerbs = [
  'workbook-new',
  'workbook-open',
  'workbook-bring-in',
  'workbook-back-up',
  'workbook-export',
  'theme-system',
  'theme-day',
  'theme-night',
  'density-desk',
  'density-bench',
  'help',
] as const;

export type MenuVerb = (typeof menuVerbs)[number];

/**
 * What the page may ask of the desktop window: the few things that a browser has no safe way to do. Paths come from
 * the operating system's own dialogs; null means that the person closed the dialog.
 */
export interface DesktopBridge {
  /** Asks which workbook to open. */
  chooseWorkbookToOpen(): Promise<string | null>;
  /** Asks where a new workbook shall be, with a name to start from. */
  chooseWorkbookToCreate(suggestedName: string): Promise<string | null>;
  /** Asks where a copy of the workbook shall be written, with a name to start from. */
  chooseBackupPlace(suggestedName: string): Promise<string | null>;
  /** Shows the open workbook's file in its folder. False if no workbook is open. */
  showInFolder(): Promise<boolean>;
  /** Opens an https address in the person's browser, once they have confirmed it. False if it was not opened. */
  openLink(address: string): Promise<boolean>;
  /** Hears choices from the menu; answers the way to stop. */
  onMenu(listener: (verb: MenuVerb) => void): () => void;
}

declare global {
  interface Window {
    /** Only in the desktop window. */
    readonly hoistday?: DesktopBridge;
  }
}

/** The desktop window's verbs, or null in a browser, where file inputs and downloads take their place. */
export function desktopBridge(): DesktopBridge | null {
  return window.hoistday ?? null;
}
