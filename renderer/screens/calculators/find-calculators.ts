import { type Calculator, groupTitles } from '../../../core/calculators/calculator.ts';

const wordsOf = ({ id, slug, title, about, group, outputs }: Calculator): string =>
  [id, slug, title, about, groupTitles[group], ...Object.values(outputs).map(({ label }) => label)]
    .join(' ')
    .toLowerCase();

/** The calculators in which every word of `text` is found: in the name, the group, the question or what comes out. */
export function findCalculators(text: string, list: readonly Calculator[]): readonly Calculator[] {
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return list;
  return list.filter((calculator) => {
    const told = wordsOf(calculator);
    return words.every((word) => told.includes(word));
  });
}
