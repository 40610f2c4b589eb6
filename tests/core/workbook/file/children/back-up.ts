// Backs the workbook up again and again into a folder; ends when it is killed: back-up.ts path folder
// With a third argument it restores the newest backup instead, over and over.
import { writeSync } from 'node:fs';
import { backUp, listBackups } from '../../../../../core/workbook/file/backup.ts';
import { openWorkbookFile } from '../../../../../core/workbook/file/open-file.ts';
import { restoreBackup } from '../../../../../core/workbook/file/restore.ts';
import { now, schemaOne } from '../sample-schema.ts';

const [path = '', folder = '', restore] = process.argv.slice(2);
if (restore !== undefined) {
  const [newest] = listBackups(folder);
  writeSync(1, 'ready\n');
  for (;;) restoreBackup(newest?.path ?? '', path, now, schemaOne);
}
const { db } = openWorkbookFile(path, { now, migrations: schemaOne });
writeSync(1, 'ready\n');
for (;;) backUp(db, path, folder, now);
