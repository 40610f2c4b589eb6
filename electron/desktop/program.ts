import path from 'node:path';
import { app, type BrowserWindow, dialog, Menu, session } from 'electron';
import type { MenuVerb } from '../../renderer/app/desktop-bridge.ts';
import type { HostLike } from '../host-like.ts';
import type { Bundle } from '../page/bundle.ts';
import { showRefusal, verbs } from './dialogs.ts';
import { guardSession } from './guard.ts';
import { menuTemplate } from './menu.ts';
import { answerVerbs } from './page-verbs.ts';
import { answerScheme } from './protocol.ts';
import { bringForward, openWindow, showAfresh, windowParts } from './window.ts';
import { RecentFiles } from './workbook-files.ts';

/** What the program is made of: the host, the built page, the folder that dialogs start in, and the log. */
export interface ProgramParts {
  readonly host: HostLike;
  readonly bundle: Bundle;
  readonly folder: string;
  readonly log: (line: string) => void;
}

/** The running program with its one window. */
export class Program {
  readonly #parts: ProgramParts;
  readonly #recent = new RecentFiles(path.join(app.getPath('userData'), 'recent.json'));
  #window: BrowserWindow | null = null;

  /** Puts the guards and the scheme in place. The program must be ready. */
  constructor(parts: ProgramParts) {
    this.#parts = parts;
    guardSession(session.defaultSession);
    answerScheme(session.defaultSession.protocol, { ...parts, afterChange: () => this.#noteOpenWorkbook() });
    answerVerbs(() => this.#window, verbs(parts.host, parts.folder));
    this.#drawMenu();
  }

  /** Shows the window, with the first of the files in it if there is one. */
  show(files: readonly string[]): void {
    const [file] = files;
    const opened = file !== undefined && this.#open(file);
    if (this.#window === null) {
      this.#window = openWindow(windowParts());
      this.#window.on('closed', () => {
        this.#window = null;
      });
    } else {
      if (opened) showAfresh(this.#window);
      bringForward(this.#window);
    }
  }

  #open(file: string): boolean {
    try {
      this.#parts.host.openFile(file);
    } catch (failure) {
      showRefusal(this.#window, file, failure);
      return false;
    }
    this.#noteOpenWorkbook();
    return true;
  }

  #noteOpenWorkbook(): void {
    const open = this.#parts.host.current();
    if (open === null || !this.#recent.note(open.path)) return;
    app.addRecentDocument(open.path);
    if (process.platform === 'darwin') this.#window?.setRepresentedFilename(open.path);
    this.#drawMenu();
  }

  #drawMenu(): void {
    const template = menuTemplate({
      tell: (verb: MenuVerb) => this.#window?.webContents.send('menu', verb),
      recent: this.#recent.list(),
      openRecent: (file) => this.show([file]),
      clearRecent: () => {
        this.#recent.clear();
        app.clearRecentDocuments();
        this.#drawMenu();
      },
      about: () => this.#about(),
      mac: process.platform === 'darwin',
      developer: !app.isPackaged,
    });
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  }

  #about(): void {
    const message = {
      type: 'info' as const,
      message: `Hoistday ${app.getVersion()}`,
      detail: 'A workbook for building an engine. Your workbooks stay on this machine; nothing is sent anywhere.',
      buttons: ['Close'],
    };
    void (this.#window === null ? dialog.showMessageBox(message) : dialog.showMessageBox(this.#window, message));
  }
}
