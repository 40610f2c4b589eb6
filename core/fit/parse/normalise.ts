import type { Sides } from './outcome.ts';

const vulgar = /(\d)\s*([\u00bc-\u00be\u2150-\u215e])/g;
const inchMarks = /["\u201c\u201d\u2033\u02ba]|''|\u2032\u2032/g;
const dashes = /[\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/g;

/** Brings the ways in which people type the same thing to one: signs, fractions, decimal comma, case and spaces. */
export function normalise(typed: string): string {
  let text = typed.replace(vulgar, '$1-$2').replace(inchMarks, ' in ').replaceAll('\u00ba', '°');
  text = text.normalize('NFKC').replaceAll('\u2044', '/');
  text = text.replace(/[×*✕✖]/g, 'x').replace(dashes, '-');
  if (text.split(',').length === 2) text = text.replace(/(\d),(\d)/, '$1.$2');
  text = text.toLowerCase().replace(/\s+/g, ' ').trim();
  text = text
    .replace(/(?<=\d) ?inch(?:es)?\b/g, ' in')
    .replace(/ ?\bdegrees?\b/g, '°')
    .replace(/ ?\bdeg\b\.?/g, '°')
    .replace(/(\d) °/g, '$1°');
  // 1.1/16 and 1 1/16 are both one and a sixteenth.
  return text.replace(/(?<![a-z\d./-])([1-9])[. ](\d+\/\d+)/g, '$1-$2');
}

const words: readonly (readonly [
  RegExp,
  (sides: { -readonly [Side in keyof Sides]: Sides[Side] }, said: string) => void,
])[] = [
  [/(?:^| )key ([a-z\d]+)(?= |$)/, (sides, said) => Object.assign(sides, { key: said.toUpperCase() })],
  [/(?:^| )profile ([a-z\d.-]+)(?= |$)/, (sides, said) => Object.assign(sides, { profile: said })],
  [/(?:^| )family ([a-z\d.-]+)(?= |$)/, (sides, said) => Object.assign(sides, { family: said })],
  [/(?:^| )washer(?= |$)/, (sides) => Object.assign(sides, { seal: 'washer' })],
  [/(?:^| )sealant(?= |$)/, (sides) => Object.assign(sides, { seal: 'sealant' })],
  [/(?:^| )swivel(?= |$)/, (sides) => Object.assign(sides, { swivel: true })],
];

const femaleWord = /(?:^| )(?:female|internal|int|inside|\(f\))(?= |$)/;
const maleWord = /(?:^| )(?:male|external|ext|outside|\(m\))(?= |$)/;

/** What stands beside the designation, taken out of it. `both` when male and female are both said. */
export function takeSides(text: string): { readonly core: string; readonly sides: Sides; readonly both: boolean } {
  let core = ` ${text} `
    .replaceAll(/\(([mf])\)/g, ' ($1) ')
    .replace(/\s+/g, ' ')
    .trim();
  const sides: Sides = {};
  for (const [pattern, put] of words) {
    const found = pattern.exec(core);
    if (found === null) continue;
    put(sides, found[1] ?? '');
    core = core.replace(pattern, ' ').replace(/\s+/g, ' ').trim();
  }
  const female = femaleWord.test(core) || / f$/.test(core);
  core = core.replace(femaleWord, ' ').replace(/ f$/, '').trim();
  const male = maleWord.test(core) || / m$/.test(core);
  core = core.replace(maleWord, ' ').replace(/ m$/, '').replace(/\s+/g, ' ').trim();
  const gender = female ? ('female' as const) : male ? ('male' as const) : undefined;
  return { core, sides: gender === undefined ? sides : { ...sides, gender }, both: female && male };
}
