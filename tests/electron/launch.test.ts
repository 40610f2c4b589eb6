import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { workbookFolder } from '../../electron/folders.ts';
import {
  decideLaunch,
  electronBinary,
  hasDisplay,
  launchChoices,
  type MachineFacts,
} from '../../electron/launch-decision.ts';
import { opener } from '../../electron/open-link.ts';

const machine: MachineFacts = {
  platform: 'linux',
  display: true,
  administrator: false,
  binary: '/x/electron',
  fetching: 'possible',
};
const browser = (why: string | null) => ({ kind: 'browser', why });

describe('which shell is started', () => {
  it.each<[string, Partial<MachineFacts>, boolean, object]>([
    ['program and display', {}, false, { kind: 'desktop', binary: '/x/electron' }],
    ['the browser was asked for', {}, true, browser(null)],
    ['the browser was asked for, nothing else there', { binary: null, display: false }, true, browser(null)],
    ['no display', { display: false }, false, browser('there is no display')],
    ['no display: nothing is fetched', { display: false, binary: null }, false, browser('there is no display')],
    ['administrator', { administrator: true }, false, browser('it does not run as the administrator')],
    ['not fetched yet', { binary: null }, false, { kind: 'fetch' }],
    ['fetching failed', { binary: null, fetching: 'tried' }, false, browser('its program could not be fetched')],
    [
      'not connected',
      { binary: null, fetching: 'offline' },
      false,
      browser('its program is not on this machine and there is no connection to fetch it'),
    ],
    [
      'fetching not wanted',
      { binary: null, fetching: 'not-wanted' },
      false,
      browser('its program is not on this machine'),
    ],
  ])('%s', (_case, facts, asked, expected) => {
    expect(decideLaunch({ ...machine, ...facts }, { browser: asked })).toEqual(expected);
  });

  it.each<[NodeJS.Platform, Record<string, string>, boolean]>([
    ['linux', {}, false],
    ['linux', { DISPLAY: '' }, false],
    ['linux', { DISPLAY: ':0' }, true],
    ['linux', { WAYLAND_DISPLAY: 'wayland-0' }, true],
    ['win32', {}, true],
    ['darwin', {}, true],
  ])('display on %s with %o: %s', (platform, env, expected) => {
    expect(hasDisplay(platform, env)).toBe(expected);
  });

  it('finds the desktop program where its package keeps it', () => {
    const project = mkdtempSync(path.join(tmpdir(), 'hoistday-launch-'));
    const home = path.join(project, 'node_modules', 'electron');
    expect(electronBinary(project, undefined)).toBeNull();
    mkdirSync(path.join(home, 'dist'), { recursive: true });
    writeFileSync(path.join(home, 'path.txt'), 'electron');
    expect(electronBinary(project, undefined)).toBeNull();
    writeFileSync(path.join(home, 'dist', 'electron'), '');
    expect(electronBinary(project, undefined)).toBe(path.join(home, 'dist', 'electron'));
    expect(electronBinary(project, path.join(project, 'elsewhere'))).toBeNull();
  });

  it('knows how each system opens a link', () => {
    const url = 'http://127.0.0.1:8000/#t=a';
    expect(opener('linux', true, url)).toEqual(['xdg-open', url]);
    expect(opener('linux', false, url)).toBeNull();
    expect(opener('darwin', true, url)).toEqual(['open', url]);
    expect(opener('win32', true, url)?.at(-1)).toBe(url);
  });
});

describe('the command line', () => {
  it('has defaults', () => {
    expect(launchChoices([])).toEqual({
      open: true,
      browser: false,
      port: 0,
      file: null,
      folder: null,
      demo: false,
      help: false,
    });
  });

  it('takes every choice', () => {
    const args = ['--no-open', '--browser', '--port', '8123', '--file', 'a.hoistday', '--folder=/w'];
    expect(launchChoices(args)).toMatchObject({
      open: false,
      browser: true,
      port: 8123,
      file: 'a.hoistday',
      folder: '/w',
    });
    expect(launchChoices(['b.hoistday']).file).toBe('b.hoistday');
  });

  it.each([['80'], ['65536'], ['-1'], ['1e4'], ['8000 '], ['x'], ['']])('refuses --port=%s', (port) => {
    expect(() => launchChoices([`--port=${port}`])).toThrow('is not a port that can be used. Nothing was changed.');
  });

  it.each([[['--prot', '1']], [['--port']], [['-x']], [['a.hoistday', 'b.hoistday']]])('refuses %o', (args) => {
    expect(() => launchChoices(args)).toThrow(/Nothing was changed\.$/);
  });
});

describe('the folder for workbooks', () => {
  const at = (platform: NodeJS.Platform, home: string, env = {}) => workbookFolder({ platform, home, env });

  it('is where each system keeps data of programs, or where the person says', () => {
    // XDG Base Directory Specification 0.8: the default of XDG_DATA_HOME; relative paths are ignored.
    expect(at('linux', '/home/a')).toBe('/home/a/.local/share/hoistday');
    expect(at('linux', '/home/a', { XDG_DATA_HOME: '/data' })).toBe('/data/hoistday');
    expect(at('linux', '/home/a', { XDG_DATA_HOME: 'data' })).toBe('/home/a/.local/share/hoistday');
    expect(at('darwin', '/Users/a')).toBe('/Users/a/Library/Application Support/Hoistday');
    expect(at('win32', 'C:\\Users\\a')).toBe('C:\\Users\\a\\AppData\\Roaming\\Hoistday');
    expect(at('win32', 'C:\\Users\\a', { APPDATA: 'D:\\Data' })).toBe('D:\\Data\\Hoistday');
    expect(at('linux', '/home/a', { HOISTDAY_FOLDER: '/w' })).toBe('/w');
  });
});
