import { type BrowserWindow, type IpcMainInvokeEvent, ipcMain } from 'electron';
import { isOwnPage } from './own-page.ts';

/** The page asked for something that it may not ask, or not in this way. */
class RefusedVerb extends Error {
  override readonly name = 'RefusedVerb';
}

const longestText = 4096;

/**
 * Registers verbs that the page may ask for. Each call is answered only for the main frame of our window showing our
 * own page, with at most one piece of short text; the window is handed on, so no verb acts on another.
 */
export function answerVerbs(
  window: () => BrowserWindow | null,
  verbs: Readonly<Record<string, (window: BrowserWindow, text: string) => Promise<string | boolean | null>>>,
): void {
  for (const [name, run] of Object.entries(verbs)) {
    ipcMain.handle(name, async (event: IpcMainInvokeEvent, ...given: unknown[]) => {
      const asked = window();
      if (asked === null || !fromOwnPage(event, asked)) throw new RefusedVerb('Asked from elsewhere than the page.');
      const [text = ''] = given;
      if (given.length > 1 || typeof text !== 'string' || text.length > longestText) {
        throw new RefusedVerb('Asked with something else than a short text.');
      }
      return run(asked, text);
    });
  }
}

function fromOwnPage(event: IpcMainInvokeEvent, window: BrowserWindow): boolean {
  const frame = event.senderFrame;
  if (frame === null || window.isDestroyed() || event.sender !== window.webContents) return false;
  return !frame.detached && frame === window.webContents.mainFrame && isOwnPage(frame.url);
}
