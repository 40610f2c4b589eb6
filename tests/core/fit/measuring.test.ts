import { expect, it } from 'vitest';
import { measuresOf } from '../../../core/fit/measuring.ts';
import { parsePort } from '../../../core/fit/parse.ts';

const howTo = (text: string): string => {
  const read = parsePort(text);
  if (!('port' in read)) throw new Error(`${text} can't be read`);
  return measuresOf(read.port).howToMeasure;
};

// A nut is read over the tips of its own thread, in the bore: ISO 68-1 puts the inside diameter 1.0825 pitches below the
// nominal one, so an M14×1.25 nut reads 12.65 mm.
it('says how an inside thread is measured, which reads about a pitch less than its size', () => {
  expect(howTo('M14x1.25 male')).toContain('over the tips of the outside thread');
  expect(howTo('M14x1.25 female')).toContain('in the bore, which read about one pitch less');
});
