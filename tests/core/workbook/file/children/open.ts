// Opens the workbook with the given schema, says what came of it, and stays a while: open.ts path one|two hold-ms read?

import { Refusal } from '../../../../../core/refusal.ts';
import { openWorkbookFile } from '../../../../../core/workbook/file/open-file.ts';
import { now, schemaOne, schemaTwo } from '../sample-schema.ts';

const [path = '', schema, holdMs, read, user] = process.argv.slice(2);
if (user !== undefined) process.setuid?.(Number(user));
try {
  console.log('opening');
  const migrations = schema === 'two' ? schemaTwo : schemaOne;
  const workbook = openWorkbookFile(path, { now, migrations, readOnly: read === 'read' });
  console.log(`open${workbook.readOnly ? ' read-only' : ''} ${workbook.notices.join(' ')}`);
  setTimeout(() => workbook.close(), Number(holdMs));
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  console.log(error.code);
}
