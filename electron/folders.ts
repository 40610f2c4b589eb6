import { homedir } from 'node:os';
import path from 'node:path';

/** What decides where workbooks are kept: the environment, the platform and the person's home folder. */
export interface FolderFacts {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly home: string;
}

/**
 * The folder that workbooks are kept in when nobody says otherwise: `HOISTDAY_FOLDER` if set, else the place that the
 * platform gives programs for their data (on Linux as in the XDG Base Directory Specification 0.8: `XDG_DATA_HOME` if
 * it is an absolute path, else `~/.local/share`).
 */
export function workbookFolder(facts: FolderFacts = { env: process.env, platform: process.platform, home: homedir() }) {
  const { env, platform, home } = facts;
  const paths = platform === 'win32' ? path.win32 : path.posix;
  const chosen = env['HOISTDAY_FOLDER'];
  if (chosen) return paths.resolve(chosen);
  if (platform === 'darwin') return paths.join(home, 'Library', 'Application Support', 'Hoistday');
  if (platform === 'win32') return paths.join(env['APPDATA'] || paths.join(home, 'AppData', 'Roaming'), 'Hoistday');
  const data = env['XDG_DATA_HOME'];
  return paths.join(data && paths.isAbsolute(data) ? data : paths.join(home, '.local', 'share'), 'hoistday');
}
