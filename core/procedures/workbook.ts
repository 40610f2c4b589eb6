import { existsSync } from 'node:fs';
import type { WorkbookStatus } from '../contract/workbook.ts';
import { Refusal } from '../refusal.ts';
import { readWorkingTime } from '../schedule/working-time.ts';
import { SCHEMA_VERSION } from '../workbook/file/identity.ts';
import { all, readSettings, writeSettings } from '../workbook/store/connection.ts';
import { verifyWorkbook } from '../workbook/store/verify.ts';
import { createBuild } from './builds.ts';
import { type Context, procedures } from './context.ts';
import { checkCurrency } from './record-checks.ts';

const { workbook } = procedures;

/** Version of the program as package.json has it; a test compares the two. */
export const appVersion = '0.1.0';

function status(context: Context): WorkbookStatus {
  const book = context.current();
  return {
    open:
      book === null
        ? null
        : {
            name: book.name,
            path: book.path,
            readOnly: book.readOnly,
            notices: [...book.notices],
            schemaVersion: SCHEMA_VERSION,
            baseCurrency: readSettings(book.connection).currency,
          },
    folder: context.files.folder,
    found: context.files.find(),
    appVersion,
    today: context.today(),
  };
}

function needWritable(context: Context): void {
  if (context.book().readOnly) {
    throw new Refusal('read-only', 'This workbook is open for reading only. Nothing was changed.', {
      accepted: 'a workbook that this program may write',
    });
  }
}

/** Name of the demo workbook in the folder. */
export const demoName = 'Demo - Tarnwell Drover';

export const workbookProcedures = {
  status: workbook.status.handler(({ context }) => status(context)),
  create: workbook.create.handler(({ context, input }) => {
    checkCurrency(input.currency, 'currency');
    context.files.create(input.name, input.path);
    const { connection } = context.book();
    writeSettings(connection, { ...readSettings(connection), currency: input.currency });
    if (input.build !== undefined) {
      const on = context.today();
      createBuild(context, { key: crypto.randomUUID(), on }, { name: input.build });
    }
    return status(context);
  }),
  open: workbook.open.handler(({ context, input }) => {
    context.files.open(input.path, input.readOnly ?? false);
    return status(context);
  }),
  demo: workbook.demo.handler(async ({ context }) => {
    const path = context.files.pathFor(demoName);
    if (existsSync(path)) context.files.open(path, false);
    else {
      const { makeDemo } = await import('./demo.ts');
      await makeDemo(context, path);
    }
    return status(context);
  }),
  close: workbook.close.handler(({ context }) => {
    context.files.close();
    return status(context);
  }),
  verify: workbook.verify.handler(({ context }) => verifyWorkbook(context.book().connection)),
  backUp: workbook.backUp.handler(({ context }) => context.files.backUp()),
  backups: workbook.backups.handler(({ context }) => context.files.backups()),
  restore: workbook.restore.handler(({ context, input }) => {
    context.files.restore(input.file);
    return status(context);
  }),
  settings: workbook.settings.handler(({ context }) => readSettings(context.book().connection)),
  saveSettings: workbook.saveSettings.handler(({ context, input }) => {
    needWritable(context);
    const { connection } = context.book();
    const before = readSettings(connection);
    const wanted = input.settings.currency;
    if (wanted !== undefined && wanted !== before.currency) {
      checkCurrency(wanted, 'settings.currency');
      const used = all(connection, 'SELECT 1 FROM postings WHERE amount_minor <> 0 LIMIT 1').length > 0;
      if (used) {
        throw new Refusal(
          'in-use',
          `Amounts in ${before.currency} have been written, so the workbook's currency stays. Nothing was changed.`,
          { field: 'settings.currency', accepted: before.currency },
        );
      }
    }
    if (input.settings.weekWindows !== undefined)
      readWorkingTime({ weekly: input.settings.weekWindows, exceptions: [] });
    const given = Object.fromEntries(Object.entries(input.settings).filter(([, value]) => value !== undefined));
    writeSettings(connection, { ...before, ...given });
    context.announce({ act: 0, label: 'Settings', parts: null });
    return readSettings(connection);
  }),
};
