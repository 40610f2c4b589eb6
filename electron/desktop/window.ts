import path from 'node:path';
import { app, BrowserWindow, dialog, screen } from 'electron';
import { startAddress } from './own-page.ts';
import { keepWindowState, openingState, readWindowState, smallest } from './window-state.ts';

/** The built preload and the file that keeps the window's place. */
export interface WindowParts {
  readonly preload: string;
  readonly stateFile: string;
}

/** The files of a window in this program's folders. */
export function windowParts(): WindowParts {
  return {
    preload: path.join(app.getAppPath(), 'dist', 'desktop', 'preload.cjs'),
    stateFile: path.join(app.getPath('userData'), 'window.json'),
  };
}

/** Opens the one window, shut off from the machine except for the preload's named verbs. */
export function openWindow(parts: WindowParts): BrowserWindow {
  const main = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter((display) => display.id !== main.id);
  const state = openingState(
    readWindowState(parts.stateFile),
    [main, ...others].map((display) => display.workArea),
  );
  const { maximized, ...bounds } = state;
  const window = new BrowserWindow({
    ...bounds,
    minWidth: smallest.width,
    minHeight: smallest.height,
    title: 'Hoistday',
    show: false,
    webPreferences: {
      preload: parts.preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      devTools: !app.isPackaged,
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => {
    if (maximized) window.maximize();
    window.show();
  });
  window.on('close', () => {
    keepWindowState(parts.stateFile, { ...window.getNormalBounds(), maximized: window.isMaximized() });
  });
  window.webContents.on('render-process-gone', () => void offerReload(window));
  void window.loadURL(startAddress);
  return window;
}

/** Loads the page anew: what it shows belongs to a workbook that is no longer the open one. */
export function showAfresh(window: BrowserWindow): void {
  void window.loadURL(startAddress);
}

/** Brings the window to the front. */
export function bringForward(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}

async function offerReload(window: BrowserWindow): Promise<void> {
  if (window.isDestroyed()) return;
  const { response } = await dialog.showMessageBox(window, {
    type: 'error',
    message: 'The page stopped working.',
    detail: 'Everything that was saved is in the workbook. Text that was typed and not saved is gone.',
    buttons: ['Load the page again', 'Quit'],
    defaultId: 0,
    cancelId: 0,
  });
  if (response === 0) showAfresh(window);
  else app.quit();
}
