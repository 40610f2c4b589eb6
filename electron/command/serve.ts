import { dirname, resolve } from 'node:path';
import { createHost } from '../../core/procedures/host.ts';
import { startBrowserShell } from '../browser/shell.ts';
import { fullPath } from './open.ts';
import { type Room, UsageError, type Verb } from './verb.ts';

/** Waits until the process is asked to end. */
const untilStopped = (): Promise<void> =>
  new Promise((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
  });

export const serve: Verb = {
  name: 'serve',
  summary: 'serve the workbook to a browser on this machine until stopped',
  usage: '[FILE]',
  takes: [0, 1],
  options: { port: { type: 'string' }, folder: { type: 'string' } },
  optionHelp: [
    ['--port N', 'a fixed port; a free one unless said'],
    ['--folder PATH', 'folder whose workbooks the page may open (the file’s own folder unless said)'],
  ],
  examples: ['serve drover.hoistday', 'serve --folder ~/builds --port 8126'],
  async run(given, room: Room) {
    const file = given.positionals[0];
    const folder = given.text('folder');
    const port = Number(given.text('port') ?? '0');
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw new UsageError(`--port ${given.text('port')}: a whole number from 0 to 65535.`);
    const home =
      folder !== undefined
        ? fullPath(room, folder)
        : file !== undefined
          ? dirname(fullPath(room, file))
          : room.workbookFolder();
    const host = createHost({ folder: home, allowAnyPath: false, now: room.now, log: room.error });
    try {
      if (file !== undefined) host.openFile(fullPath(room, file));
      const rendererFolder = resolve(import.meta.dirname, '../../dist/renderer');
      const shell = await startBrowserShell({ host, rendererFolder, port, log: room.error });
      room.out(
        given.flag('json')
          ? JSON.stringify({ url: shell.url, port: shell.port })
          : `The workbook is at ${shell.url}\nIt is served to this machine only. Stop with Ctrl+C.`,
      );
      await untilStopped();
      await shell.close();
      return { data: { stopped: true }, lines: ['Stopped; the workbook is closed.'] };
    } finally {
      host.close();
    }
  },
};
