import Database from 'better-sqlite3';
import { migrations as ownMigrations } from '../../../migrations/index.ts';
import { Refusal } from '../../refusal.ts';
import { integrityFindings, schemaDifferences } from './checks.ts';
import { openElsewhere, refusing } from './file-refusals.ts';
import { readHeader } from './header.ts';
import { schemaVersionOf } from './identity.ts';
import { isHeldHere, keepWritersAway } from './lock.ts';
import { migrate, schemaVersion } from './migrate.ts';
import type { Migration } from './migration.ts';
import type { OpenOptions, OpenWorkbook } from './open-file.ts';
import { type PrivateCopy, privateCopyOf } from './private-copy.ts';
import { applyProfile, applyReadingProfile } from './profile.ts';

function opened(db: Database.Database, notices: readonly string[], afterwards: () => void): OpenWorkbook {
  return {
    db,
    readOnly: true,
    notices,
    close() {
      if (!db.open) return undefined;
      db.close();
      afterwards();
      return undefined;
    },
  };
}

/** Reads beside a writer, as the write-ahead log allows. What the writer saves shows at the next look. */
function openBesideWriter(path: string, list: readonly Migration[], notices: readonly string[]): OpenWorkbook {
  return refusing(path, () => {
    const db = new Database(path, { readonly: true, fileMustExist: true, timeout: 500 });
    try {
      applyReadingProfile(db);
      // A writer with another schema would show tables this program can't read, or is just changing them.
      if (schemaVersion(db) !== schemaVersionOf(list)) throw openElsewhere(path);
      const open = 'This workbook is open in another window or program, so it is shown read-only.';
      return opened(db, [...notices, open], () => undefined);
    } catch (error) {
      db.close();
      throw error;
    }
  });
}

/** Brings the copy to this program's schema where that can be done, and says what is wrong with it. */
function prepareCopy(db: Database.Database, path: string, options: OpenOptions, list: readonly Migration[]): string[] {
  const version = schemaVersion(db);
  const known = schemaVersionOf(list);
  if (version > known) {
    return [`This workbook has schema ${version}; this program knows ${known}. What is newer can't be shown.`];
  }
  const findings = integrityFindings(db, 'quick');
  if (findings.length === 0) findings.push(...schemaDifferences(db, list, version));
  const notices =
    findings.length > 0 ? [`This workbook is damaged; some of it may be missing or wrong here (${findings[0]}).`] : [];
  try {
    applyProfile(db);
    migrate(path, db, { now: options.now, migrations: list, copy: 'none' });
  } catch (error) {
    if (findings.length === 0) throw error; // only a damaged copy is shown as far as it goes
  }
  return notices;
}

function openCopy(copy: PrivateCopy, path: string, options: OpenOptions, notices: readonly string[]): OpenWorkbook {
  return refusing(path, () => {
    const db = new Database(copy.path, { fileMustExist: true });
    try {
      const found = prepareCopy(db, path, options, options.migrations ?? ownMigrations);
      applyReadingProfile(db);
      return opened(db, [...notices, ...found], copy.remove);
    } catch (error) {
      db.close();
      throw error;
    }
  });
}

/** See `openWorkbookFile`: beside its writer when it has one, otherwise as a private copy that goes when it is closed. */
export function openForReading(path: string, options: OpenOptions, notices: readonly string[]): OpenWorkbook {
  const list = options.migrations ?? ownMigrations;
  if (isHeldHere(path)) return openBesideWriter(path, list, notices);
  readHeader(path);
  let release: () => void;
  try {
    release = keepWritersAway(path);
  } catch (error) {
    if (error instanceof Refusal && error.code === 'open-elsewhere') return openBesideWriter(path, list, notices);
    throw error;
  }
  let copy: PrivateCopy;
  try {
    copy = privateCopyOf(path);
  } finally {
    release();
  }
  try {
    return openCopy(copy, path, options, notices);
  } catch (error) {
    copy.remove();
    throw error;
  }
}
