import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { app, dialog } from 'electron';
import { createHost } from '../../core/procedures/host.ts';
import { workbookFolder } from '../folders.ts';
import { logFile } from '../log-file.ts';
import { loadBundle } from '../page/bundle.ts';
import { guardContents } from './guard.ts';
import { Program } from './program.ts';
import { registerScheme } from './protocol.ts';
import { workbooksIn } from './workbook-files.ts';

registerScheme();
app.enableSandbox();
guardContents(app);

const now = () => new Date();
const waiting = workbooksIn(process.argv.slice(app.isPackaged ? 1 : 2), process.cwd());

// The second start hands its files to the first and ends before it opens anything.
if (app.requestSingleInstanceLock({ files: waiting })) run();
else app.quit();

function run(): void {
  let show = (files: readonly string[]): void => {
    waiting.push(...files);
  };
  app.on('second-instance', (_event, _argv, _folder, handed) => show(workbooksIn(filesOf(handed), path.sep)));
  app.on('open-file', (event, file) => {
    event.preventDefault();
    show(workbooksIn([file], path.sep));
  });
  app.on('window-all-closed', () => app.quit());
  void app.whenReady().then(begin).catch(stop);

  function begin(): void {
    const log = logFile(path.join(app.getPath('logs'), 'hoistday.log'), now);
    const folder = workbookFolder();
    mkdirSync(folder, { recursive: true });
    const host = createHost({ folder, allowAnyPath: true, now, log });
    app.on('will-quit', () => host.close());
    process.once('uncaughtException', (failure) => {
      log(failure.stack ?? failure.message);
      host.close();
      stop(new Error('Everything that was saved is in the workbook. Start Hoistday again.'));
    });
    const bundle = loadBundle(path.join(app.getAppPath(), 'dist', 'renderer'));
    const program = new Program({ host, bundle, folder, log });
    show = (files) => program.show(files);
    show(waiting);
  }
}

function stop(failure: unknown): void {
  dialog.showErrorBox('Hoistday has to stop', failure instanceof Error ? failure.message : String(failure));
  app.exit(1);
}

function filesOf(handed: unknown): readonly unknown[] {
  const files = typeof handed === 'object' && handed !== null && 'files' in handed ? handed.files : [];
  return Array.isArray(files) ? files : [];
}
