/** Questions that are asked once for the whole batch. */
import type { ImportAnswers, ImportDefaults } from './import-types.ts';
import type { ImportQuestion } from './table-types.ts';

/** The answer to a question, if it is one of those accepted. */
export function answerTo<T extends string>(answers: ImportAnswers, id: string, accepted: readonly T[]): T | null {
  const given = Object.hasOwn(answers, id) ? answers[id] : undefined;
  return accepted.find((value) => value === given) ?? null;
}

/** May a blank quantity be read as one? */
export function missingQuantity(
  rowsConcerned: readonly number[],
  defaults: ImportDefaults,
  answer: string | null,
  column: string,
): ImportQuestion {
  return {
    id: 'missing-quantity',
    kind: 'missing-quantity',
    column,
    text: 'Some lines give no quantity. Is it one?',
    choices: [
      { value: 'one', label: 'Yes, one of each' },
      { value: 'leave', label: 'No, they have to be filled in or skipped' },
    ],
    guess: 'one',
    rowsConcerned,
    blocking: !defaults.missingQuantityIsOne,
    answer: answer ?? (defaults.missingQuantityIsOne ? 'one' : null),
  };
}

/** Quantity times price, or the line total? */
export function lineTotal(rowsConcerned: readonly number[], answer: string | null, column: string): ImportQuestion {
  return {
    id: 'line-total',
    kind: 'line-total',
    column,
    text: 'On some lines quantity times price is not the line total. Which of the two holds?',
    choices: [
      { value: 'line-total', label: 'The line total' },
      { value: 'quantity-times-price', label: 'Quantity times price' },
    ],
    guess: null,
    rowsConcerned,
    blocking: true,
    answer,
  };
}
