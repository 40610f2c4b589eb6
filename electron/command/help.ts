import { exitCodes, type Verb } from './verb.ts';

const runAs = 'npm run -s workbook --';
const pad = (rows: readonly (readonly [string, string])[]): string[] => {
  const width = Math.max(0, ...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
};

/** What every verb does, and how commands end. */
export function helpForAll(verbs: readonly Verb[]): string {
  return [
    'Hoistday: what still stands before the engine goes in, when, and for how much.',
    '',
    `Usage: ${runAs} VERB … [--json]`,
    '',
    ...pad(verbs.map(({ name, summary }) => [name, summary])),
    '',
    `More of a verb: ${runAs} VERB --help`,
    '',
    'How a command ends (its exit code):',
    ...pad([
      [String(exitCodes.done), 'done'],
      [
        String(exitCodes.refused),
        'refused (the reason is on stderr), or an import has open questions (on stdout); nothing was changed',
      ],
      [String(exitCodes.usage), 'the command line can’t be read'],
      [String(exitCodes.found), 'verify found differences, or review --strict found something in the way'],
      [String(exitCodes.failed), 'the program failed'],
    ]),
    '',
    'With --json the answer on stdout, and an error on stderr, is one JSON value. Amounts are whole minor units of the',
    'currency (cents), quantities are thousandths, days are YYYY-MM-DD.',
  ].join('\n');
}

export function helpFor(verb: Verb): string {
  return [
    `${verb.name}: ${verb.summary}`,
    '',
    `Usage: ${runAs} ${verb.name} ${verb.usage} [options]`,
    '',
    ...pad([...verb.optionHelp, ['--json', 'answer as one JSON value'], ['--help', 'this text']]),
    '',
    'Examples:',
    ...verb.examples.map((example) => `  ${runAs} ${example}`),
  ].join('\n');
}
