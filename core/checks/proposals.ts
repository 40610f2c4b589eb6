/** What the description of a part says plainly, as proposals to accept. What isn't plain is left alone. */
import { type FactTerm, factTerms, plainKey } from './fact-terms.ts';
import { type PartKind, partKinds } from './part-kinds.ts';
import type { Fact } from './read-fact.ts';

export interface Proposal {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  /** The piece of the text that says it. */
  readonly because: string;
}

export interface KindProposal {
  readonly kind: string;
  readonly because: string;
}

/** The kind that the words name; none when they name none or could be for something beside it. */
export function proposeKind(description: string): KindProposal {
  for (const { kind, words, unless } of partKinds) {
    const match = words?.exec(description) ?? null;
    if (match === null) continue;
    const rest = description.replace(match[0], ' ');
    // “…, with seals” tells what comes along, not what it is.
    const head = rest.split(/,| with | incl/i)[0] ?? rest;
    if (unless === null || !unless.test(head)) return { kind, because: match[0] };
  }
  return { kind: '', because: '' };
}

interface Reading {
  readonly kinds: readonly string[];
  readonly key: string;
  readonly unit: string;
  readonly pattern: RegExp;
}

const number = String.raw`(\d{1,5}(?:[.,]\d{1,3})?)`;
const flow = new RegExp(String.raw`(?<![\d.,])${number}\s*(?:cc(?:\s*\/\s*min)?|ccm|ml\s*\/\s*min)\b(?!\s*\/)`, 'gi');
const mm = (before: string, after = ''): RegExp =>
  new RegExp(String.raw`${before}(?<![\d.,x×])${number}\s*mm\b(?!\s*[x×])${after}`, 'gi');

const readings: readonly Reading[] = [
  { kinds: ['injector'], key: 'injector flow', unit: 'cc/min', pattern: flow },
  {
    kinds: ['injector'],
    key: 'resistance',
    unit: 'ohm',
    pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*(?:ohms?\b|Ω)`, 'gi'),
  },
  {
    kinds: ['fuel pump'],
    key: 'pump flow',
    unit: 'L/h',
    pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*(?:l\s*\/\s*h|lph)\b`, 'gi'),
  },
  { kinds: ['piston', 'piston ring set'], key: 'bore', unit: 'mm', pattern: mm('') },
  { kinds: ['head gasket'], key: 'gasket bore', unit: 'mm', pattern: mm('', String.raw`\s*bore`) },
  { kinds: ['head gasket'], key: 'gasket thickness', unit: 'mm', pattern: mm('', String.raw`\s*(?:thick|compressed)`) },
  { kinds: ['connecting rod'], key: 'rod length', unit: 'mm', pattern: mm('') },
  { kinds: ['crankshaft'], key: 'stroke', unit: 'mm', pattern: mm('', String.raw`(?:\s*stroke)`) },
  {
    kinds: ['cylinder head'],
    key: 'chamber volume',
    unit: 'cc',
    pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*cc\b`, 'gi'),
  },
  {
    kinds: ['turbocharger'],
    key: 'compressor inducer',
    unit: 'mm',
    pattern: mm('', String.raw`\s*(?:compressor|inducer)`),
  },
  { kinds: ['turbocharger'], key: 'turbine flange', unit: '', pattern: /\b(T\d{1,2})\b(?=\s*flange|,|$)/g },
  {
    kinds: ['thermostat'],
    key: 'opening temperature',
    unit: 'degC',
    pattern: /(?<![\d.,])(\d{2,3})\s*(?:°\s*C|deg\s*C|C\b)/gi,
  },
  {
    kinds: ['pressure cap'],
    key: 'opening pressure',
    unit: 'bar',
    pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*bar\b`, 'gi'),
  },
  { kinds: ['exhaust pipe', 'charge pipe'], key: 'outside diameter', unit: 'mm', pattern: mm('') },
  {
    kinds: ['wire', 'fuel pump wire', 'fan wire'],
    key: 'cross-section',
    unit: 'mm2',
    pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*mm(?:2|²)`, 'gi'),
  },
  { kinds: ['wire', 'fuel pump wire', 'fan wire'], key: 'wire gauge', unit: '-', pattern: /\b(\d{1,2})\s*AWG\b/gi },
  { kinds: ['fuse'], key: 'fuse', unit: 'A', pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*A\b`, 'g') },
  { kinds: ['fan'], key: 'diameter', unit: 'mm', pattern: mm('') },
  { kinds: ['timing belt', 'belt'], key: 'belt teeth', unit: '-', pattern: /\b(\d{2,3})\s*(?:teeth|tooth)\b/gi },
];

/** Sizes that read the same on any kind of part that has the fact. */
const anywhere: readonly { readonly key: string; readonly unit: string; readonly pattern: RegExp }[] = [
  // A whole number behind the x is a pitch up to 3, else a length; a length may follow the pitch.
  { key: 'thread', unit: '', pattern: /\b(M\d{1,2}\s?[x×]\s?(?:\d[.,]\d{1,2}|[1-3]))(?![.,]?\d|\s?mm)/gi },
  {
    key: 'thread',
    unit: '',
    pattern: /(?<![\d/.-])((?:\d[ -])?\d{1,2}\/\d{1,2}\s?-\s?(?:1[0-8]|2[048]|27|32))(?!\d|\s*NPT)/gi,
  },
  { key: 'strength class', unit: '', pattern: /(?<![\d.,])((?:8\.8|10\.9|12\.9))(?![\d.,])/g },
  { key: 'dash size', unit: '-', pattern: /(?:^|[\s(,])(?:-|dash\s?|AN\s?-?)(\d{1,2})(?=$|[\s,)])/gi },
  { key: 'current', unit: 'A', pattern: new RegExp(String.raw`(?<![\d.,])${number}\s*A\b(?!\w)`, 'g') },
];

/** The only match of a pattern; two different ones leave it unclear. */
function onlyMatch(text: string, pattern: RegExp): { readonly value: string; readonly because: string } | undefined {
  const found = [...text.matchAll(pattern)].map((match) => ({
    value: (match[1] ?? '').replace(',', '.'),
    because: match[0].trim().replace(/^[,(]\s*/, ''),
  }));
  // “1,050” may be a thousand and fifty, or one and a bit.
  if (found.some(({ because }) => /(?<!\d)[1-9]\d{0,2},\d{3}(?!\d)/.test(because))) return undefined;
  const [first] = found;
  return first !== undefined && found.every(({ value }) => value === first.value) ? first : undefined;
}

/** A bare number that can only be one thing on this kind: 82 on a thermostat. */
const bare: readonly {
  readonly kind: string;
  readonly key: string;
  readonly unit: string;
  readonly from: number;
  readonly to: number;
}[] = [{ kind: 'thermostat', key: 'opening temperature', unit: 'degC', from: 60, to: 105 }];

/**
 * Facts that the description of a part of a kind says plainly. A fact that the part has already isn't proposed, and one
 * that two numbers could be isn't either.
 */
export function proposeFacts(description: string, kind: PartKind | undefined, has: readonly Fact[]): Proposal[] {
  const proposals = new Map<string, Proposal>();
  const had = new Set(has.map(({ key }) => plainKey(key)));
  const propose = (term: FactTerm | undefined, value: string, unit: string, because: string): void => {
    if (term === undefined || had.has(term.key) || proposals.has(term.key)) return;
    proposals.set(term.key, {
      key: term.key,
      label: term.label,
      value,
      unit: unit === '-' ? '' : unit,
      because: `“${because}”`,
    });
  };
  const termFor = (key: string): FactTerm | undefined =>
    kind === undefined
      ? key === 'thread'
        ? factTerms.get(key)
        : undefined
      : kind.facts.find((one) => one.key === key);
  for (const { kinds, key, unit, pattern } of readings) {
    if (kind === undefined || !kinds.includes(kind.kind)) continue;
    const match = onlyMatch(description, pattern);
    if (match !== undefined) propose(termFor(key), match.value, unit, match.because);
  }
  for (const { key, unit, pattern } of anywhere) {
    const match = onlyMatch(description, pattern);
    if (match !== undefined)
      propose(
        termFor(key),
        key === 'thread' ? match.value.replace(/\s/g, '').replace('×', 'x') : match.value,
        unit,
        match.because,
      );
  }
  for (const { kind: of, key, unit, from, to } of bare) {
    if (kind?.kind !== of) continue;
    const numbers = [...description.matchAll(/(?<![\w.,-])(\d{2,3})(?![\w.,])/g)].map((match) => Number(match[1]));
    const [only] = numbers;
    if (numbers.length === 1 && only !== undefined && only >= from && only <= to)
      propose(termFor(key), String(only), unit, String(only));
  }
  return [...proposals.values()];
}
