import { connections, declaredFits } from '../one-builder/fits.ts';
import { ports } from '../one-builder/ports.ts';
import type { DemoPort } from '../types.ts';
import { onlyMade, type Stage } from './names.ts';

/** Writes down one place where something joins. */
export async function savePort(stage: Stage, on: string, port: DemoPort, sort: number): Promise<void> {
  const result = await stage.client.records.save({
    ...stage.act(on),
    kind: 'port',
    build: stage.build,
    values: {
      name: port.name,
      part: port.part === null ? null : stage.id('part', port.part),
      place: port.place ?? '',
      role: port.role ?? 'fluid',
      medium: port.medium ?? '',
      designation: port.port,
      sort,
    },
  });
  stage.name('port', port.slug, onlyMade(result));
}

/** Writes down where things join. */
export async function keepPorts(stage: Stage, on: string): Promise<void> {
  for (const [index, port] of ports.entries()) await savePort(stage, on, port, index * 10);
}

/** Says what has to join and what else has to fit. */
export async function keepFits(stage: Stage, on: string): Promise<void> {
  const port = (slug: string) => ({ port: stage.id('port', slug), typed: '' });
  for (const fit of connections) {
    await stage.client.records.save({
      ...stage.act(on),
      kind: 'connection',
      build: stage.build,
      values: {
        title: fit.title,
        one: port(fit.one),
        other: 'typed' in fit ? { port: null, typed: fit.typed } : port(fit.other),
        role: fit.role ?? 'fluid',
        medium: fit.medium ?? '',
        beforeGate: fit.beforeGate ?? true,
        note: fit.note ?? '',
      },
    });
  }
  for (const { shipped, title, things, values } of declaredFits) {
    await stage.client.records.save({
      ...stage.act(on),
      kind: 'declaredFit',
      build: stage.build,
      values: {
        title,
        shipped,
        things: Object.fromEntries(Object.entries(things).map(([name, slug]) => [name, stage.id('part', slug)])),
        values: values.map(([path, value, unit]) => ({ path, value, unit: unit ?? '' })),
      },
    });
  }
}
