import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { integrityFindings, rowCounts, schemaDifferences } from '../../core/workbook/file/checks.ts';
import { createWorkbookFile } from '../../core/workbook/file/create-file.ts';
import { SCHEMA_VERSION } from '../../core/workbook/file/identity.ts';
import { openWorkbookFile } from '../../core/workbook/file/open-file.ts';
import { migrations } from '../../migrations/index.ts';

const now = new Date('2026-03-04T05:06:07Z');

function place(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hoistday-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'drover.hoistday');
}

it('makes a workbook of the present schema that passes every check', () => {
  const path = place();
  createWorkbookFile(path, { now });
  const { db, notices, close } = openWorkbookFile(path, { now });
  expect(notices).toEqual([]);
  expect(db.pragma('user_version', { simple: true })).toBe(SCHEMA_VERSION);
  expect(integrityFindings(db)).toEqual([]);
  expect(schemaDifferences(db, migrations, SCHEMA_VERSION)).toEqual([]);
  close();
});

it.each(migrations.map(({ name }, index) => [name, index]))(
  'from the schema before %s to the present one',
  (_, count) => {
    const path = place();
    createWorkbookFile(path, { now, migrations: migrations.slice(0, count) });
    const { db, close } = openWorkbookFile(path, { now });
    expect(schemaDifferences(db, migrations, SCHEMA_VERSION)).toEqual([]);
    const fresh = place();
    createWorkbookFile(fresh, { now });
    const other = openWorkbookFile(fresh, { now });
    expect(rowCounts(db)).toEqual(rowCounts(other.db));
    other.close();
    close();
  },
);
