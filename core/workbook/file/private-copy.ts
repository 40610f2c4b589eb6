import { chmodSync, copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { integrityFindings, schemaDifferences } from './checks.ts';
import { damaged, newerVersion, refusing } from './file-refusals.ts';
import { schemaVersionOf } from './identity.ts';
import { schemaVersion } from './migrate.ts';
import type { Migration } from './migration.ts';

/** A copy of a workbook, journal included, in a folder of its own that nobody else looks into. */
export interface PrivateCopy {
  readonly path: string;
  remove(): void;
}

/** Copies a workbook nobody writes, file by file, without opening it. */
export function privateCopyOf(path: string): PrivateCopy {
  return refusing(path, () => {
    const folder = mkdtempSync(join(tmpdir(), 'hoistday-'));
    const remove = () => rmSync(folder, { recursive: true, force: true });
    try {
      const copy = join(folder, 'copy.hoistday');
      for (const ending of ['', '-wal', '-journal']) {
        if (ending !== '' && !existsSync(path + ending)) continue;
        copyFileSync(path + ending, copy + ending);
        chmodSync(copy + ending, 0o600);
      }
      return { path: copy, remove };
    } catch (error) {
      remove();
      throw error;
    }
  });
}

/**
 * Goes through recovery and all checks on a copy, so that a file which turns out to be damaged hasn't been written to.
 * @throws Refusal `damaged`, `newer-version` or `not-a-workbook`.
 */
export function checkPrivately(path: string, migrations: readonly Migration[]): void {
  const copy = privateCopyOf(path);
  try {
    refusing(path, () => {
      const db = new Database(copy.path, { fileMustExist: true });
      try {
        const findings = integrityFindings(db, 'quick');
        if (findings.length > 0) throw damaged(path, findings);
        const version = schemaVersion(db);
        const known = schemaVersionOf(migrations);
        if (version > known) throw newerVersion(path, version, known);
        const differences = schemaDifferences(db, migrations, version);
        if (differences.length > 0) throw damaged(path, differences);
      } finally {
        db.close();
      }
    });
  } finally {
    copy.remove();
  }
}
