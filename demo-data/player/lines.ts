import { billParts, hoseLengths, linePorts, lines } from '../one-builder/lines.ts';
import { savePort } from './fits.ts';
import { onlyMade, type Stage } from './names.ts';

/** Writes down the lines with the ports that only they need, the hose at hand, and what of it is on the list already. */
export async function keepLines(stage: Stage, on: string): Promise<void> {
  const { client, build } = stage;
  for (const [index, port] of linePorts.entries()) await savePort(stage, on, port, 1000 + index * 10);
  for (const { slug, name, from, to, system, job, is, afterHoist } of lines) {
    const result = await client.records.save({
      ...stage.act(on),
      kind: 'hoseLine',
      build,
      values: {
        name,
        from: stage.id('port', from),
        to: stage.id('port', to),
        system: stage.id('system', system),
        job: stage.id('job', job),
        definition: is,
        beforeGate: afterHoist !== true,
      },
    });
    stage.name('line', slug, onlyMade(result));
  }
  for (const length of hoseLengths) {
    await client.records.save({ ...stage.act(on), kind: 'hoseLength', values: { ...length } });
  }
  const { needs } = await client.plumbing.view({ build });
  for (const { kind, text } of needs) {
    const known = billParts.find(([, of, words]) => of === kind && text.includes(words));
    if (known === undefined) continue;
    const values = { item: text, part: stage.id('part', known[0]) };
    await client.records.save({ ...stage.act(on), kind: 'billPart', build, values });
  }
}

/** Ticks off the first steps of a line, or all of them. */
export async function makeLine(stage: Stage, on: string, slug: string, first: number, note: string): Promise<void> {
  const { client, build } = stage;
  const line = stage.id('line', slug);
  const { making } = await client.plumbing.line({ build, line });
  for (const { id } of making.slice(0, first)) {
    await client.plumbing.step({ ...stage.act(on), line, copy: 1, step: id, done: true, by: stage.by, note });
  }
}
