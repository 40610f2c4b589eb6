import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { FILE_ENDING } from './identity.ts';

/** Where a file lives, as far as it matters for keeping a database there. */
export type Place = 'this-machine' | 'network' | 'synced';

const networkType = /^(nfs\d?|cifs|smb\w*|afpfs|afs|9p|webdav|davfs|ncpfs|fuse\.\w*(ssh|dav|smb|nfs)\w*)$/;
// Folder names that services which copy files between machines give their folders. A wrong guess costs a notice.
const syncedName = /cloud|sync|mobile documents|\w ?drive( -|$)|drop ?box/i;

/** The file system type holding `path`, from a mount table in the form of Linux or of macOS. */
export function mountTypeOf(path: string, table: string): string | undefined {
  let best = { at: '', type: undefined as string | undefined };
  for (const line of table.split('\n')) {
    const [, at, type] = /^.+? on (\/.*) \((\w+)[,)]/.exec(line) ?? /^\S+ (\/\S*) (\S+) /.exec(line) ?? [];
    if (at === undefined || at.length < best.at.length) continue;
    const plain = at.replace(/\\040/g, ' ');
    if (plain === '/' || path === plain || path.startsWith(`${plain}/`)) best = { at, type };
  }
  return best.type;
}

function mountTable(): string {
  if (process.platform === 'linux') return readFileSync('/proc/self/mounts', 'utf8');
  if (process.platform === 'darwin') return execFileSync('/sbin/mount', { encoding: 'utf8', timeout: 2000 });
  return '';
}

/** Is this folder name one that a syncing service would use? */
export const looksSynced = (folder: string): boolean => folder.split(/[\\/]/).some((name) => syncedName.test(name));

/** Where `path` (absolute, links followed) lives. What can't be found out counts as this machine. */
export function placeOf(path: string): Place {
  if (/^[\\/]{2}[^\\/?.]/.test(path) || /^\\\\\?\\UNC\\/i.test(path)) return 'network';
  try {
    if (networkType.test(mountTypeOf(path, mountTable()) ?? '')) return 'network';
  } catch {
    // no mount table to be had
  }
  return looksSynced(dirname(path)) ? 'synced' : 'this-machine';
}

/** What a person should know about keeping the workbook where it is. */
export function placeNotices(path: string, place: Place): string[] {
  const notices: string[] = [];
  if (place === 'network') {
    notices.push(
      'This workbook is on a network drive. Locks on such drives are not always kept: open it on one machine at a time, ' +
        'and keep backups on a disk of this machine.',
    );
  }
  if (place === 'synced') {
    notices.push(
      'This folder looks like one that is copied between machines. Close the workbook before opening it on another ' +
        'machine, and let the copying finish. It is safer to keep the workbook outside and its backups inside.',
    );
  }
  const stem = basename(path, FILE_ENDING);
  const conflicts = readdirSync(dirname(path)).filter((name) => {
    return name !== basename(path) && name.startsWith(stem) && name.endsWith(FILE_ENDING) && /conflict/i.test(name);
  });
  if (conflicts.length > 0) {
    notices.push(`Beside this workbook lies another version of it: ${conflicts.join(', ')}. Compare the two.`);
  }
  return notices;
}
