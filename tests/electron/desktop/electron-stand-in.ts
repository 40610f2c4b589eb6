import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { vi } from 'vitest';

type Listener = (...given: never[]) => unknown;

/** Keeps listeners and fires them, as every object of Electron does. */
export class Emitter {
  readonly listeners = new Map<string, Listener[]>();

  on(name: string, listener: Listener): this {
    this.listeners.set(name, [...(this.listeners.get(name) ?? []), listener]);
    return this;
  }

  once(name: string, listener: Listener): this {
    return this.on(name, listener);
  }

  /** Fires an event with a fresh event object; answers whether it was prevented. */
  fire(name: string, more: object = {}, ...rest: unknown[]): boolean {
    const event = { ...more, preventDefault: vi.fn() };
    for (const listener of this.listeners.get(name) ?? [])
      (listener as (...given: unknown[]) => unknown)(event, ...rest);
    return event.preventDefault.mock.calls.length > 0;
  }
}

export class StandInContents extends Emitter {
  readonly mainFrame = { url: 'hoistday://workbook/', detached: false };
  readonly send = vi.fn();
  openHandler: (details: { url: string }) => { action: string } = () => ({ action: 'allow' });

  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
}

export interface WindowOptions {
  readonly x?: number;
  readonly width: number;
  readonly webPreferences: Readonly<Record<string, unknown>>;
}

/** Records windows, with the options that they were opened with. */
export class StandInWindow extends Emitter {
  static all: StandInWindow[] = [];
  readonly options: WindowOptions;
  readonly webContents = new StandInContents();
  readonly loadURL = vi.fn(async (_address: string) => undefined);
  readonly show = vi.fn();
  readonly focus = vi.fn();
  readonly restore = vi.fn();
  readonly maximize = vi.fn();
  readonly setRepresentedFilename = vi.fn();
  destroyed = false;
  minimized = false;

  constructor(options: WindowOptions) {
    super();
    this.options = options;
    StandInWindow.all.push(this);
    state.app.fire('web-contents-created', {}, this.webContents);
  }

  isDestroyed = () => this.destroyed;
  isMinimized = () => this.minimized;
  isMaximized = () => false;
  getNormalBounds = () => ({ x: 10, y: 20, width: 900, height: 700 });
}

class StandInApp extends Emitter {
  readonly calls: string[] = [];
  readonly folder = mkdtempSync(path.join(tmpdir(), 'hoistday-desktop-'));
  lock = true;
  isPackaged = true;
  handed: unknown;
  ready: () => void = () => undefined;
  readonly whenReady = () =>
    new Promise<void>((resolve) => {
      this.ready = () => {
        this.calls.push('ready');
        resolve();
      };
    });
  readonly quit = vi.fn();
  readonly exit = vi.fn();
  readonly addRecentDocument = vi.fn();
  readonly clearRecentDocuments = vi.fn();
  getAppPath = () => this.folder;
  getPath = () => this.folder;
  getVersion = () => '0.1.0';

  enableSandbox(): void {
    this.calls.push('sandbox');
  }

  requestSingleInstanceLock(handed: unknown): boolean {
    this.calls.push('lock');
    this.handed = handed;
    return this.lock;
  }
}

type Handle = (request: Request) => Promise<Response>;

class StandInSession extends Emitter {
  permission: ((contents: unknown, name: string, answer: (allowed: boolean) => void) => void) | undefined;
  check: (() => boolean) | undefined;
  device: (() => boolean) | undefined;
  request: ((details: { url: string }, answer: (verdict: { cancel: boolean }) => void) => void) | undefined;
  readonly schemes = new Map<string, Handle>();
  readonly protocol = { handle: (scheme: string, handler: Handle) => this.schemes.set(scheme, handler) };
  readonly webRequest = {
    onBeforeRequest: (listener: NonNullable<StandInSession['request']>) => {
      this.request = listener;
    },
  };

  setPermissionRequestHandler(handler: NonNullable<StandInSession['permission']>): void {
    this.permission = handler;
  }

  setPermissionCheckHandler(handler: () => boolean): void {
    this.check = handler;
  }

  setDevicePermissionHandler(handler: () => boolean): void {
    this.device = handler;
  }
}

type Verb = (event: unknown, ...given: unknown[]) => Promise<unknown>;

/** Everything that the program did to Electron, and the means to answer as Electron would. */
export const state = {
  app: new StandInApp(),
  session: new StandInSession(),
  verbs: new Map<string, Verb>(),
  schemes: [] as { scheme: string; privileges: Record<string, boolean> }[],
  menu: [] as unknown[],
  dialog: {
    showMessageBox: vi.fn(async (..._given: unknown[]) => ({ response: 0 })),
    showOpenDialog: vi.fn(async (..._given: unknown[]) => ({ canceled: false, filePaths: ['/chosen/a.hoistday'] })),
    showSaveDialog: vi.fn(async (..._given: unknown[]) => ({ canceled: false, filePath: '/chosen/b' })),
    showErrorBox: vi.fn(),
  },
  shell: { openExternal: vi.fn(async (_address: string) => undefined), showItemInFolder: vi.fn() },
  exposed: new Map<string, Record<string, (...given: never[]) => unknown>>(),
  sent: new Emitter(),
  invoked: vi.fn(async (..._given: unknown[]) => null),
};

/** The module that stands in for `electron`. */
export const standIn = {
  app: state.app,
  BrowserWindow: StandInWindow,
  session: { defaultSession: state.session },
  protocol: {
    registerSchemesAsPrivileged: (schemes: typeof state.schemes) => {
      state.app.calls.push('schemes');
      state.schemes.push(...schemes);
    },
  },
  ipcMain: { handle: (name: string, verb: Verb) => state.verbs.set(name, verb) },
  ipcRenderer: {
    invoke: state.invoked,
    on: (name: string, listener: Listener) => state.sent.on(name, listener),
    off: (name: string) => state.sent.listeners.delete(name),
  },
  contextBridge: {
    exposeInMainWorld: (name: string, verbs: Record<string, () => unknown>) => state.exposed.set(name, verbs),
  },
  Menu: {
    buildFromTemplate: (template: unknown[]) => template,
    setApplicationMenu: (menu: unknown[]) => {
      state.menu = menu;
    },
  },
  dialog: state.dialog,
  shell: state.shell,
  screen: {
    getPrimaryDisplay: () => ({ id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1080 } }),
    getAllDisplays: () => [{ id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1080 } }],
  },
};

/** Thirty addresses that must neither be gone to nor opened: near names, other schemes, hidden signs. */
export const hostileAddresses = [
  'hoistday://workbook.evil/',
  'hoistday://workbook@evil/',
  'hoistday://evil@workbook/',
  'hoistday://a:b@workbook/',
  'hoistday://workbook:80/',
  'hoistday://workbook./',
  'hoistday://WORKBOOK/',
  'hoistday://wоrkbook/',
  'hoistday://evil/workbook/',
  'hoistday:/workbook/',
  'hoistday:workbook',
  'hoistday:///workbook/',
  'hoistdays://workbook/',
  'javascript:alert(1)',
  'JaVaScRiPt:alert(1)',
  ' javascript:alert(1)',
  'data:text/html,<script>alert(1)</script>',
  'file:///etc/passwd',
  'file://server/share',
  'http://workbook/',
  'https://workbook/',
  'http://127.0.0.1:8000/',
  'https://evil.example/#hoistday://workbook/',
  'blob:hoistday://workbook/1234',
  'blob:https://evil.example/1234',
  'about:blank',
  'chrome://settings',
  'view-source:hoistday://workbook/',
  'ftp://evil.example/',
  '\\\\server\\share',
  '//evil.example/',
  '',
];
