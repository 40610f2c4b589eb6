import { createRouterClient } from '@orpc/server';
import { expect, it } from 'vitest';
import { benchProcedures } from '../../../core/procedures/bench.ts';
import { oilFeed, openPlumbingBench } from './plumbing-bench.ts';

it('the bench says how many lines are to make, as many as its list shows', async () => {
  const bench = await openPlumbingBench();
  const work = createRouterClient(benchProcedures, { context: bench.context });
  const answer = async (asOf?: string) =>
    (await work.view({ build: bench.build, ...(asOf === undefined ? {} : { asOf }) })).answer;
  expect(await answer()).toBe('No measuring sheet, no bolt group and no line is written down yet.');
  const feed = await bench.line('oil feed', oilFeed);
  await bench.line('oil return', oilFeed);
  // One that can't be taken off yet has no steps, so there is nothing to do at the bench.
  await bench.line('breather', { fluid: 'crankcase gas' });
  expect(await answer()).toBe('2 lines to make.');
  for (const step of ['tape', 'cut', 'socket', 'nipple', 'debris', 'pressure', 'label']) await bench.tick(feed, step);
  expect(await answer()).toBe('1 line to make.');
  expect(await answer('2026-02-01')).toBe('No measuring sheet, no bolt group and no line is written down yet.');
});
