import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { hostileAddresses, StandInContents, StandInWindow, standIn, state } from './electron-stand-in.ts';

const host = {
  options: [] as object[],
  handle: vi.fn(async (request: Request) => Response.json({ method: request.method })),
  openFile: vi.fn((_path: string): void => undefined),
  current: vi.fn((): { name: string; path: string; readOnly: boolean } | null => null),
  close: vi.fn(),
};
vi.mock('electron', () => standIn);
vi.mock('../../../core/procedures/host.ts', () => ({
  createHost: (options: object) => {
    host.options.push(options);
    return host;
  },
}));

const { app, session, dialog, shell } = state;
const argv = process.argv;
const workbook = (name: string) => {
  const file = path.join(app.folder, name);
  writeFileSync(file, '');
  return file;
};

async function startMain(...args: string[]): Promise<void> {
  process.argv = ['hoistday', ...args];
  vi.stubEnv('HOISTDAY_FOLDER', path.join(app.folder, 'workbooks'));
  await import('../../../electron/desktop/main.ts');
}

async function becomeReady(): Promise<StandInWindow> {
  app.ready();
  await vi.waitFor(() => expect(StandInWindow.all.length).toBe(1));
  return StandInWindow.all[0] as StandInWindow;
}

beforeEach(() => {
  vi.resetModules();
  vi.clearAllMocks();
  StandInWindow.all = [];
  app.calls.length = 0;
  app.listeners.clear();
  session.listeners.clear();
  session.schemes.clear();
  state.verbs.clear();
  state.schemes.length = 0;
  host.options.length = 0;
  app.lock = true;
  const page = path.join(app.folder, 'dist', 'renderer', 'assets');
  mkdirSync(page, { recursive: true });
  writeFileSync(path.join(page, '..', 'index.html'), '<html><head></head></html>');
  writeFileSync(path.join(page, 'index-AbCd1234.js'), 'export {};');
  rmSync(path.join(app.folder, 'recent.json'), { force: true });
});
afterEach(() => {
  vi.unstubAllEnvs();
  process.argv = argv;
  process.removeAllListeners('uncaughtException');
});

describe('starting', () => {
  it('items 4 and 18: the sandbox and the scheme come before ready, once, without a way around the page policy', async () => {
    await startMain();
    expect(app.calls).toEqual(['schemes', 'sandbox', 'lock']);
    expect(state.schemes).toEqual([
      { scheme: 'hoistday', privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true } },
    ]);
    await becomeReady();
    expect([...session.schemes.keys()]).toEqual(['hoistday']);
  });

  it('ends at once, and opens nothing, when the program already runs; its files are handed over', async () => {
    app.lock = false;
    const file = workbook('a.hoistday');
    await startMain(file);
    app.ready();
    await Promise.resolve();
    expect(app.quit).toHaveBeenCalled();
    expect(app.handed).toEqual({ files: [file] });
    expect(host.options).toEqual([]);
    expect(StandInWindow.all).toEqual([]);
  });

  it('opens the file that was double-clicked, and passes over whatever else stands in the arguments', async () => {
    const file = workbook('Drover.HOISTDAY');
    await startMain('--type=x', '-psn_0_1', '/not/there.hoistday', app.folder, 'https://evil.example/x.hoistday', file);
    await becomeReady();
    expect(host.openFile.mock.calls).toEqual([[file]]);
    expect(host.options).toMatchObject([{ allowAnyPath: true }]);
  });

  it('keeps a file that arrives before it is ready', async () => {
    await startMain();
    const file = workbook('early.hoistday');
    expect(app.fire('open-file', {}, file)).toBe(true);
    await becomeReady();
    expect(host.openFile.mock.calls).toEqual([[file]]);
  });

  it('brings the window forward for a second start, and opens its file there', async () => {
    await startMain();
    const window = await becomeReady();
    window.minimized = true;
    const file = workbook('second.hoistday');
    app.fire('second-instance', {}, ['hoistday', '--', '/etc/passwd'], '/', { files: [file] });
    expect(host.openFile.mock.calls).toEqual([[file]]);
    expect(window.restore).toHaveBeenCalled();
    expect(window.focus).toHaveBeenCalled();
    expect(window.loadURL).toHaveBeenCalledTimes(2);
    for (const odd of [null, 7, {}, { files: 'x' }, { files: [7, null, '/etc/passwd', 'x\0.hoistday'] }]) {
      app.fire('second-instance', {}, [], '/', odd);
    }
    expect(host.openFile).toHaveBeenCalledTimes(1);
    expect(StandInWindow.all).toHaveLength(1);
  });

  it('says why a file was not opened and goes on', async () => {
    // Modules are loaded anew for each test, and the class with them.
    const { Refusal } = await import('../../../core/refusal.ts');
    host.openFile.mockImplementationOnce(() => {
      throw new Refusal('not-a-workbook', 'This is not a workbook. Nothing was changed.');
    });
    await startMain(workbook('text.hoistday'));
    await becomeReady();
    expect(dialog.showMessageBox.mock.calls[0]?.[0]).toMatchObject({
      message: 'text.hoistday could not be opened.',
      detail: 'This is not a workbook. Nothing was changed.',
    });
  });

  it('stops with a message when there is no page to show', async () => {
    rmSync(path.join(app.folder, 'dist'), { recursive: true });
    await startMain();
    app.ready();
    await vi.waitFor(() => expect(app.exit).toHaveBeenCalledWith(1));
    expect(dialog.showErrorBox.mock.calls[0]?.[1]).toContain('The page has not been built');
  });

  it('closes the workbook when it ends', async () => {
    await startMain();
    await becomeReady();
    app.fire('window-all-closed');
    expect(app.quit).toHaveBeenCalled();
    app.fire('will-quit');
    expect(host.close).toHaveBeenCalledTimes(1);
  });
});

describe('the window', () => {
  it('items 1 to 4, 6, 8 to 11: is shut off from the machine and loads our page only', async () => {
    await startMain();
    const window = await becomeReady();
    expect(window.options.webPreferences).toEqual({
      preload: path.join(app.folder, 'dist', 'desktop', 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      devTools: false,
      spellcheck: false,
    });
    expect(window.loadURL.mock.calls).toEqual([['hoistday://workbook/']]);
  });

  it('item 5: every permission is refused', async () => {
    await startMain();
    await becomeReady();
    const names =
      'media geolocation notifications midi midiSysex pointerLock fullscreen openExternal clipboard-read usb hid serial';
    for (const name of names.split(' ')) {
      const answered = vi.fn();
      session.permission?.(null, name, answered);
      expect(answered.mock.calls, name).toEqual([[false]]);
    }
    expect([session.check?.(), session.device?.()]).toEqual([false, false]);
  });

  it('items 12 to 14: goes nowhere else, opens no window and embeds no page', async () => {
    await startMain();
    const { webContents } = await becomeReady();
    const later = new StandInContents();
    app.fire('web-contents-created', {}, later);
    expect(hostileAddresses.length).toBeGreaterThanOrEqual(30);
    for (const contents of [webContents, later]) {
      for (const url of hostileAddresses) {
        for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect']) {
          expect(contents.fire(name, { url }), `${name} ${url}`).toBe(true);
        }
        expect(contents.openHandler({ url }).action, url).toBe('deny');
      }
      expect(contents.openHandler({ url: 'hoistday://workbook/' }).action).toBe('deny');
      expect(contents.fire('will-navigate', { url: 'hoistday://workbook/' })).toBe(false);
      expect(contents.fire('will-attach-webview')).toBe(true);
    }
  });

  it('loads nothing from elsewhere, and downloads only what the workbook made', async () => {
    await startMain();
    await becomeReady();
    const cancelled = (url: string) => {
      const answer = vi.fn();
      session.request?.({ url }, answer);
      return answer.mock.calls[0]?.[0].cancel;
    };
    for (const url of ['https://evil.example/x.js', 'http://127.0.0.1/', 'ws://evil.example/', 'file:///etc/passwd']) {
      expect(cancelled(url), url).toBe(true);
    }
    for (const url of ['hoistday://workbook/assets/a.js', 'blob:hoistday://workbook/1', 'data:image/png;base64,AA']) {
      expect(cancelled(url), url).toBe(false);
    }
    const stopped = (url: string) => session.fire('will-download', {}, { getURL: () => url });
    expect([stopped('https://evil.example/x.exe'), stopped('hoistday://workbook/index.html')]).toEqual([true, true]);
    expect([stopped('hoistday://workbook/api/export'), stopped('blob:hoistday://workbook/1')]).toEqual([false, false]);
  });

  it('keeps its place, and offers to load the page again when it stopped', async () => {
    await startMain();
    const window = await becomeReady();
    window.fire('close');
    const kept: unknown = JSON.parse(readFileSync(path.join(app.folder, 'window.json'), 'utf8'));
    expect(kept).toEqual({ x: 10, y: 20, width: 900, height: 700, maximized: false });
    window.webContents.fire('render-process-gone');
    await vi.waitFor(() => expect(window.loadURL).toHaveBeenCalledTimes(2));
    rmSync(path.join(app.folder, 'window.json'));
  });
});

describe('the scheme', () => {
  const ask = (url: string, init?: RequestInit) =>
    (session.schemes.get('hoistday') as (request: Request) => Promise<Response>)(new Request(url, init));

  it('item 7: sends the page with its policy as a header', async () => {
    await startMain();
    await becomeReady();
    const answer = await ask('hoistday://workbook/');
    const policy = answer.headers.get('content-security-policy') ?? '';
    expect(answer.status).toBe(200);
    for (const part of ["default-src 'none'", "script-src 'self'", "object-src 'none'", "base-uri 'none'"]) {
      expect(policy.split('; ')).toContain(part);
    }
    expect(policy).not.toMatch(/unsafe|\*|http/);
    expect((await ask('hoistday://workbook/assets/index-AbCd1234.js')).headers.get('cache-control')).toContain(
      'immutable',
    );
    expect((await ask('hoistday://workbook/', { method: 'POST' })).status).toBe(405);
  });

  it('item 18: reaches no file outside the page, and answers no other name', async () => {
    await startMain();
    await becomeReady();
    const climbs = ['..', '%2e%2e', '%252e%252e', '..%00', '%c0%ae%c0%ae', '.%2e', '....', '..%5c', '..;'];
    const slashes = ['/', '%2f', '%5c', '\\', '//', '%252f', '%c0%af', '/./'];
    let tried = 0;
    for (const climb of climbs) {
      for (const slash of slashes) {
        for (const end of ['window.json', 'etc/passwd', 'dist/desktop/main.js']) {
          tried += 1;
          const answer = await ask(`hoistday://workbook/${climb}${slash}${climb}${slash}${end}`);
          expect(answer.status).toBe(404);
        }
      }
    }
    expect(tried).toBeGreaterThanOrEqual(200);
    for (const url of ['hoistday://other/', 'hoistday://workbook.evil/api/x', 'hoistday://workbook:1/api/x']) {
      expect((await ask(url)).status, url).toBe(403);
    }
    const headers = { origin: 'https://evil.example' };
    expect((await ask('hoistday://workbook/api/x', { method: 'POST', headers })).status).toBe(403);
    expect(host.handle).not.toHaveBeenCalled();
  });

  it('hands /api to the host and hides what goes wrong inside', async () => {
    await startMain();
    await becomeReady();
    const answer = await ask('hoistday://workbook/api/rpc/x', { method: 'POST', body: '{}' });
    expect(await answer.json()).toEqual({ method: 'POST' });
    expect(answer.headers.get('cache-control')).toBe('no-store');
    host.handle.mockRejectedValueOnce(new Error('SQLITE_ERROR at /home/x.ts:1'));
    const failed = await ask('hoistday://workbook/api/rpc/x');
    const text = await failed.text();
    expect(failed.status).toBe(500);
    expect(text).not.toMatch(/SQLITE|home/);
    const id = /"id":"([0-9a-f-]{36})"/.exec(text)?.[1] ?? 'none';
    expect(readFileSync(path.join(app.folder, 'hoistday.log'), 'utf8')).toContain(id);
  });

  it('lists a workbook that the page opened among the recent ones', async () => {
    await startMain();
    await becomeReady();
    host.current.mockReturnValue({ name: 'Drover', path: path.join(app.folder, 'R&D.hoistday'), readOnly: false });
    await ask('hoistday://workbook/api/rpc/x', { method: 'POST', body: '{}' });
    expect(app.addRecentDocument).toHaveBeenCalledTimes(1);
    expect(JSON.stringify(state.menu)).toContain('R&&D.hoistday');
    host.current.mockReturnValue(null);
  });
});

describe('item 17: who may ask for a verb', () => {
  it('answers the main frame of our window on our page, and nobody else', async () => {
    await startMain();
    const window = await becomeReady();
    const { webContents } = window;
    const good = { sender: webContents, senderFrame: webContents.mainFrame };
    const verb = (name: string, event: unknown, ...given: unknown[]) => state.verbs.get(name)?.(event, ...given);
    await expect(verb('choose-workbook-to-open', good)).resolves.toBe('/chosen/a.hoistday');
    expect(state.verbs.size).toBe(5);
    dialog.showOpenDialog.mockClear();
    const frame = (more: object) => ({ ...good, senderFrame: { ...webContents.mainFrame, ...more } });
    const strangers = [
      { ...good, senderFrame: null },
      frame({}),
      frame({ url: 'https://evil.example/' }),
      frame({ detached: true }),
      { ...good, sender: new StandInContents() },
    ];
    const tooMuch = [[7], [null], [{ __proto__: { length: 1 } }], [['x']], ['x', 'y'], ['a'.repeat(10_000_000)]];
    for (const name of state.verbs.keys()) {
      for (const event of strangers) await expect(verb(name, event, 'x')).rejects.toThrow('Asked from elsewhere');
      for (const given of tooMuch)
        await expect(verb(name, good, ...given)).rejects.toThrow('Asked with something else');
    }
    webContents.mainFrame.url = 'https://evil.example/';
    await expect(verb('open-link', good, 'https://example.org/')).rejects.toThrow('Asked from elsewhere');
    webContents.mainFrame.url = 'hoistday://workbook/';
    window.destroyed = true;
    await expect(verb('open-link', good, 'https://example.org/')).rejects.toThrow('Asked from elsewhere');
    expect(dialog.showOpenDialog).not.toHaveBeenCalled();
    expect(dialog.showSaveDialog).not.toHaveBeenCalled();
    expect(shell.openExternal).not.toHaveBeenCalled();
  });

  it('asks for places with our extension and shows only the open workbook in its folder', async () => {
    await startMain();
    const { webContents } = await becomeReady();
    const event = { sender: webContents, senderFrame: webContents.mainFrame };
    const verb = (name: string, ...given: unknown[]) => state.verbs.get(name)?.(event, ...given);
    await expect(verb('choose-workbook-to-create', '../../R:<>"D\u0000 ')).resolves.toBe('/chosen/b.hoistday');
    const asked = dialog.showSaveDialog.mock.calls[0]?.[1] as { defaultPath: string };
    expect(path.basename(asked.defaultPath)).toBe('R D.hoistday');
    await expect(verb('show-in-folder', '/etc/passwd')).resolves.toBe(false);
    host.current.mockReturnValueOnce({ name: 'a', path: '/chosen/a.hoistday', readOnly: false });
    await expect(verb('show-in-folder', '/etc/passwd')).resolves.toBe(true);
    expect(shell.showItemInFolder.mock.calls).toEqual([['/chosen/a.hoistday']]);
  });
});

describe('the menu', () => {
  it('tells the page each choice by name', async () => {
    const { menuVerbs } = await import('../../../renderer/app/desktop-bridge.ts');
    await startMain();
    const { webContents } = await becomeReady();
    const press = (items: readonly unknown[]): void => {
      for (const item of items as { submenu?: unknown; click?: () => void; label?: string }[]) {
        if (Array.isArray(item.submenu)) press(item.submenu);
        if (item.click !== undefined && item.label !== 'About Hoistday') item.click();
      }
    };
    press(state.menu);
    expect(webContents.send.mock.calls.map(([, verb]) => verb).toSorted()).toEqual(menuVerbs.toSorted());
    expect(JSON.stringify(state.menu)).not.toContain('toggleDevTools');
  });
});
