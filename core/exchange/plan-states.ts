/** Every distinct word that says where a part stands, collected once, with our guess or the user's answer. */
import { plainWords } from './clean-text.ts';
import { type ImportAnswers, type ImportField, type ImportState, importStates } from './import-types.ts';
import type { DateValues } from './plan-dates.ts';
import type { RowReader } from './row-reader.ts';
import { guessState, saysMore, stateWord } from './state-words.ts';
import type { ImportQuestion, TableRow } from './table-types.ts';

const stateFields = [
  'state',
  'fittedState',
  'orderedOn',
  'promisedOn',
  'arrivedOn',
] as const satisfies readonly ImportField[];
export type StateField = (typeof stateFields)[number];

export interface RowWord {
  readonly field: StateField;
  readonly column: string;
  /** As written. */
  readonly text: string;
  readonly state: ImportState;
  readonly bin?: string;
  /** The text tells more than the state does. */
  readonly more: boolean;
}

export interface StateValues {
  words(row: TableRow): readonly RowWord[];
  readonly questions: readonly ImportQuestion[];
}

/** Collects the words of state columns, and those found where a date was expected ("yes", "borrowed"). */
export function readStates(
  rows: readonly TableRow[],
  reader: RowReader,
  dates: DateValues,
  answers: ImportAnswers,
): StateValues {
  const byRow = new Map<number, RowWord[]>();
  const questions = new Map<string, { question: ImportQuestion; rows: number[] }>();
  for (const field of stateFields) {
    if (!reader.has(field)) continue;
    // Words repeat down a column, so each spelling is looked up once.
    const read = new Map<string, ReadWord>();
    for (const row of rows) {
      const text = reader.text(row, field);
      if (text === '') continue;
      let word = read.get(text);
      if (word === undefined) {
        word = readWord(text, field, reader.title(field), answers);
        read.set(text, word);
      }
      if (field !== 'state' && field !== 'fittedState' && !isWord(dates, row, field, text, word.guess)) continue;
      const words = byRow.get(row.row);
      if (words === undefined) byRow.set(row.row, [word.word]);
      else words.push(word.word);
      const known = questions.get(word.question.id);
      if (known !== undefined) known.rows.push(row.row);
      else questions.set(word.question.id, { question: word.question, rows: [row.row] });
    }
  }
  return {
    words: (row) => byRow.get(row.row) ?? [],
    questions: [...questions.values()].map(({ question, rows: rowsConcerned }) => ({ ...question, rowsConcerned })),
  };
}

interface ReadWord {
  readonly word: RowWord;
  readonly guess: ImportState;
  readonly question: ImportQuestion;
}

function readWord(text: string, field: StateField, column: string, answers: ImportAnswers): ReadWord {
  const { key, bin } = stateWord(text);
  const guess = guessState(key, field, bin !== undefined);
  const id = field === 'state' ? `state:${key}` : `state:${field}:${key}`;
  const given = Object.hasOwn(answers, id) ? answers[id] : undefined;
  const answer = importStates.find((state) => state === given) ?? null;
  const word = { field, column, text, state: answer ?? guess, more: saysMore(key) };
  return {
    word: bin === undefined ? word : { ...word, bin },
    guess,
    question: stateQuestion(id, column, text, guess, answer),
  };
}

/** Text in a date column is a word about the part when it has no figures, or when we know what it means. */
function isWord(
  dates: DateValues,
  row: TableRow,
  field: 'orderedOn' | 'promisedOn' | 'arrivedOn',
  text: string,
  guess: ImportState,
): boolean {
  const reading = dates.value(row, field);
  return reading.kind === 'error' && reading.reason === 'not-a-date' && (guess !== 'unknown' || !/\d/.test(text));
}

function stateQuestion(
  id: string,
  column: string,
  text: string,
  guess: ImportState,
  answer: ImportState | null,
): ImportQuestion {
  const shown = text.length > 60 ? `${text.slice(0, 60)}…` : text;
  return {
    id,
    kind: 'state',
    column,
    text: `What does “${shown}” under “${column}” say about a part?`,
    choices: importStates.map((value) => ({ value, label: value })),
    guess,
    rowsConcerned: [],
    blocking: false,
    answer,
  };
}

const atHand: readonly ImportState[] = [
  'on-shelf',
  'allocated',
  'trial-fitted',
  'fitted',
  'snug',
  'verified',
  'borrowed',
  'donor',
  'already-owned',
  'wrong-part',
  'sent-back',
];
const onEngine: readonly ImportState[] = ['trial-fitted', 'fitted', 'snug', 'verified'];

/** Whether a state says that the part came in, whatever happened to it since. */
export function cameIn(state: ImportState): boolean {
  return atHand.includes(state);
}

/** Whether a state says that the part sits on the engine, for trial or for good. */
export function sitsOnEngine(state: ImportState): boolean {
  return onEngine.includes(state);
}

export interface PartState {
  readonly state: ImportState;
  readonly stateText: string;
  readonly borrowed: boolean;
  readonly bin?: string;
}

/**
 * One state from all the words of a row and from its dates: what sits on the engine goes before what is on the shelf,
 * a word before a date, and a row that says nothing is needed, or ordered or arrived by its dates.
 */
export function stateOfRow(words: readonly RowWord[], ordered: boolean, arrived: boolean): PartState {
  const bin = words.find((word) => word.bin !== undefined)?.bin;
  const borrowed = words.some((word) => word.state === 'borrowed');
  const byDate: ImportState = arrived ? 'on-shelf' : ordered ? 'ordered' : 'needed';
  const said = words.filter((word) => word.field === 'state' || !saysNothing(word));
  const main =
    said.find((word) => sitsOnEngine(word.state)) ??
    said.find((word) => word.field === 'state' && word.state !== 'unknown') ??
    said.find((word) => word.field === 'state') ??
    // Under dates alone, what arrived goes before what was ordered.
    said.at(-1);
  let state = main?.state ?? byDate;
  if (main === undefined && words.length > 0 && state === 'needed' && ordered) state = 'ordered';
  const stateText = main?.text ?? words[0]?.text ?? '';
  return { state, stateText, borrowed, ...(bin === undefined ? {} : { bin }) };
}

/** "no" under Fitted or Arrived only says that it isn't, which is no state of its own. */
function saysNothing(word: RowWord): boolean {
  return word.state === 'needed' && /^(?:no|n|nein|non|false|not yet|noch nicht)$/.test(plainWords(word.text));
}
