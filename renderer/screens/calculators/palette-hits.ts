import { calculators } from '../../../core/calculators/index.ts';
import type { ScreenHit } from '../../app/screens.ts';
import { findCalculators } from './find-calculators.ts';

const most = 8;

/** The calculators that have every word of what is looked for, the ones that say it in their title first. */
export function hits(text: string): readonly ScreenHit[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const inTitle = ({ id, title }: (typeof calculators)[number]) =>
    words.every((word) => `${id} ${title}`.toLowerCase().includes(word));
  return findCalculators(text, calculators)
    .toSorted((a, b) => Number(inTitle(b)) - Number(inTitle(a)))
    .slice(0, most)
    .map(({ id, title, about }) => ({ id, label: `${id} ${title}`, detail: about, params: { id } }));
}
