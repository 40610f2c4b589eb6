import type { LayOut } from './drawing-elk.ts';

/** The library in this window: for where no worker can be started. */
async function inWindow(): Promise<LayOut> {
  const { default: Engine } = await import('elkjs/lib/elk.bundled.js');
  const engine = new Engine();
  return (graph) => engine.layout(graph);
}

async function inWorker(): Promise<LayOut> {
  const worker = new Worker(new URL('./drawing-worker.ts', import.meta.url), { type: 'module' });
  const { default: Engine } = await import('elkjs/lib/elk-api.js');
  const engine = new Engine({ workerFactory: () => worker });
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', () => reject(new Error('The layout could not be started in a worker.')));
  });
  broken.catch(() => undefined);
  return async (graph) => {
    try {
      return await Promise.race([engine.layout(graph), broken]);
    } catch {
      return (await inWindow())(graph);
    }
  };
}

let engine: Promise<LayOut> | undefined;

/** What lays out; started with the first drawing and kept for the next. */
export function layoutEngine(): Promise<LayOut> {
  engine ??= typeof Worker === 'undefined' ? inWindow() : inWorker();
  return engine;
}
