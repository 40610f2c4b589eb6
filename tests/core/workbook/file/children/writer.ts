// Opens the workbook and prints each committed id; ends when it is killed.
import { writeSync } from 'node:fs';
import { openWorkbookFile } from '../../../../../core/workbook/file/open-file.ts';
import { now, schemaOne } from '../sample-schema.ts';

const { db } = openWorkbookFile(process.argv[2] ?? '', { now, migrations: schemaOne });
const insert = db.prepare('INSERT INTO orders (name) VALUES (?)');
const line = db.prepare('INSERT INTO lines (order_id, amount_minor) VALUES (?, 1)');
const add = db.transaction(() => {
  const { lastInsertRowid } = insert.run('kept');
  line.run(lastInsertRowid);
  return lastInsertRowid;
});
for (;;) writeSync(1, `${add.immediate()}\n`);
