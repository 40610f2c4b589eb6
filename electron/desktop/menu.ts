import path from 'node:path';
import type { MenuItemConstructorOptions } from 'electron';
import type { MenuVerb } from '../../renderer/app/desktop-bridge.ts';

/** What the menu needs: how to tell the page, the recent files, and what this program is. */
export interface MenuParts {
  readonly tell: (verb: MenuVerb) => void;
  readonly recent: readonly string[];
  readonly openRecent: (file: string) => void;
  readonly clearRecent: () => void;
  readonly about: () => void;
  readonly mac: boolean;
  readonly developer: boolean;
}

/** The menu as data. Choices that concern the workbook are told to the page, which does them as its own buttons do. */
export function menuTemplate(parts: MenuParts): MenuItemConstructorOptions[] {
  const say = (label: string, verb: MenuVerb, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    ...(accelerator === undefined ? {} : { accelerator }),
    click: () => parts.tell(verb),
  });
  const line: MenuItemConstructorOptions = { type: 'separator' };
  return [
    ...(parts.mac ? [{ role: 'appMenu' } satisfies MenuItemConstructorOptions] : []),
    {
      label: '&File',
      submenu: [
        say('New workbook…', 'workbook-new', 'CmdOrCtrl+N'),
        say('Open…', 'workbook-open', 'CmdOrCtrl+O'),
        { label: 'Open recent', submenu: recentItems(parts) },
        line,
        say('Bring in a list…', 'workbook-bring-in'),
        say('Export…', 'workbook-export'),
        say('Back up…', 'workbook-back-up'),
        line,
        parts.mac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    { role: 'editMenu' },
    {
      label: '&View',
      submenu: [
        say('Theme: as the system', 'theme-system'),
        say('Theme: day', 'theme-day'),
        say('Theme: night', 'theme-night'),
        line,
        say('Desk: compact rows', 'density-desk'),
        say('Bench: large targets', 'density-bench'),
        line,
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'togglefullscreen' },
        ...(parts.developer ? [line, { role: 'toggleDevTools' } satisfies MenuItemConstructorOptions] : []),
      ],
    },
    { role: 'windowMenu' },
    {
      label: '&Help',
      role: 'help',
      submenu: [say('Help', 'help', 'F1'), { label: 'About Hoistday', click: () => parts.about() }],
    },
  ];
}

function recentItems(parts: MenuParts): MenuItemConstructorOptions[] {
  if (parts.recent.length === 0) return [{ label: 'None yet', enabled: false }];
  return [
    ...parts.recent.map((file) => ({
      // An ampersand in a label marks a key; two stand for itself.
      label: `${path.basename(file)}  (${path.dirname(file)})`.replaceAll('&', '&&'),
      click: () => parts.openRecent(file),
    })),
    { type: 'separator' },
    { label: 'Clear this list', click: () => parts.clearRecent() },
  ];
}
