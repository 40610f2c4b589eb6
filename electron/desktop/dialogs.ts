import path from 'node:path';
import { type BrowserWindow, dialog, shell } from 'electron';
import { Refusal } from '../../core/refusal.ts';
import type { HostLike } from '../host-like.ts';
import { openExternalLink } from './external-link.ts';

export const workbookExtension = 'hoistday';
const filters = [{ name: 'Hoistday workbook', extensions: [workbookExtension] }];

/** The verbs behind the page's bridge: the operating system's own dialogs, and the way to the folder and browser. */
export function verbs(host: HostLike, folder: string) {
  return {
    'choose-workbook-to-open': async (window: BrowserWindow) => {
      const chosen = await dialog.showOpenDialog(window, {
        title: 'Open a workbook',
        defaultPath: folder,
        filters,
        properties: ['openFile'],
      });
      return chosen.filePaths[0] ?? null;
    },
    'choose-workbook-to-create': (window: BrowserWindow, name: string) =>
      choosePlace(window, 'New workbook', path.join(folder, fileName(name))),
    'choose-backup-place': (window: BrowserWindow, name: string) =>
      choosePlace(window, 'Back up the workbook', path.join(folder, fileName(name))),
    'show-in-folder': async () => {
      const open = host.current();
      if (open !== null) shell.showItemInFolder(open.path);
      return open !== null;
    },
    'open-link': openExternalLink,
  };
}

async function choosePlace(window: BrowserWindow, title: string, defaultPath: string): Promise<string | null> {
  const chosen = await dialog.showSaveDialog(window, { title, defaultPath, filters, properties: ['createDirectory'] });
  if (chosen.canceled || chosen.filePath === '') return null;
  return withExtension(chosen.filePath);
}

/** A name to start from that every file system takes; the person may type another. */
function fileName(name: string): string {
  const plain = [...name]
    .map((sign) => (/[<>:"/\\|?*\p{Cc}]/u.test(sign) ? ' ' : sign))
    .join('')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80);
  return withExtension(plain === '' ? 'Workbook' : plain);
}

function withExtension(file: string): string {
  return file.toLowerCase().endsWith(`.${workbookExtension}`) ? file : `${file}.${workbookExtension}`;
}

/** Says why a file could not be opened, in the refusal's own words. Other failures are ours and surface. */
export function showRefusal(window: BrowserWindow | null, file: string, failure: unknown): void {
  if (!(failure instanceof Refusal)) throw failure;
  const message = {
    type: 'warning' as const,
    message: `${path.basename(file)} could not be opened.`,
    detail: failure.accepted === undefined ? failure.message : `${failure.message}\n${failure.accepted}`,
    buttons: ['Close'],
  };
  void (window === null ? dialog.showMessageBox(message) : dialog.showMessageBox(window, message));
}
