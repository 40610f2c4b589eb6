import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import path from 'node:path';

const most = 1024 * 1024;

/**
 * A log that keeps the last one to two megabytes. It stays on this machine; the ids in it are those of the answers
 * that said that something went wrong. A log that can't be written is not worth stopping for.
 */
export function logFile(file: string, now: () => Date): (line: string) => void {
  return (line) => {
    try {
      mkdirSync(path.dirname(file), { recursive: true });
      if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > most) renameSync(file, `${file}.1`);
      appendFileSync(file, `${now().toISOString()} ${line}\n`, { mode: 0o600 });
    } catch {
      process.stderr.write(`${line}\n`);
    }
  };
}
