/** What a line is made of, as things to order. Quantities in thousandths: of a piece, or of a metre (so: millimetres). */
import { readFluid } from './fluid.ts';
import type { Hose } from './hose.ts';
import type { LineJoint } from './joint.ts';
import type { Lengths } from './lengths.ts';
import type { Line, LineEnd } from './line.ts';

export type BillKind = 'hose-end' | 'hose' | 'clamp' | 'clip' | 'seal' | 'adapter' | 'sleeve' | 'label';

export interface BillItem {
  /** The same for the same thing, however it is written. */
  readonly key: string;
  readonly kind: BillKind;
  readonly text: string;
  readonly quantityMilli: number;
  readonly unit: 'piece' | 'm';
}

/** Hose to spare on each cut, so that an end can be cut square once more [mm]. */
export const trimMm = 25;

/** One spelling for one thing: case, spaces and commas don't count. */
export const itemKey = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s,]+/g, ' ')
    .trim();

const pieces = (kind: BillKind, text: string, count: number): BillItem => ({
  key: itemKey(text),
  kind,
  text,
  quantityMilli: count * 1000,
  unit: 'piece',
});

const metres = (kind: BillKind, text: string, mm: number): BillItem => ({
  key: itemKey(text),
  kind,
  text,
  quantityMilli: Math.ceil(mm),
  unit: 'm',
});

function endText(end: LineEnd, port: string | undefined, hose: Hose): string {
  const shape = end.angleDeg === 0 ? 'straight' : `${end.angleDeg}°`;
  const joins = end.port ?? (port === undefined ? undefined : `to join ${port}`);
  return [
    `hose end ${shape}`,
    ...(end.style === undefined || joins?.toLowerCase().startsWith(end.style) === true ? [] : [end.style]),
    ...(joins === undefined ? [] : [joins]),
    ...(end.swivel === true ? ['swivel'] : []),
    `for hose ${hose.label}${hose.choice.dash !== undefined && hose.bore !== undefined ? ` (bore ${hose.bore.value} mm)` : ''}`,
  ].join(', ');
}

/** Whether the hose goes straight onto a barb or tube of the component, so that no end is ordered. */
export const isBare = (end: LineEnd, port: string | undefined): boolean =>
  end.style === 'barb' && end.port === undefined && /^(?:barb|tube)\b/i.test(port ?? '');

/** Two clamps a barb where the joint is pressed apart: boost, and coolant under pressure. Common practice. */
function clampsOf(line: Line, hose: Hose): readonly BillItem[] {
  const barbs = line.ends.filter(({ style }) => style === 'barb').length;
  if (barbs === 0) return [];
  const { family } = readFluid(line.fluid, { ethanolPercent: line.ethanolPercent });
  const boost = line.service === 'boost' || family === 'boost';
  const pressed = boost || (family === 'coolant' && (line.pressureBar ?? 0) > 0);
  const size = hose.outside === undefined ? `on hose ${hose.label}` : `on ${hose.outside.value} mm`;
  return [pieces('clamp', `hose clamp ${size}`, barbs * (pressed ? 2 : 1))];
}

/** Supports between the ends, so that no stretch is longer than asked. */
function clipsOf({ clipSpacingMm }: Line, hose: Hose, { freeHoseMm }: Lengths): readonly BillItem[] {
  const count = clipSpacingMm === undefined ? 0 : Math.ceil(freeHoseMm / clipSpacingMm - 1e-9) - 1;
  const size = hose.outside === undefined ? `for hose ${hose.label}` : `for ${hose.outside.value} mm`;
  return count > 0 ? [pieces('clip', `support clip ${size}`, count)] : [];
}

/**
 * Seals of a joint, or the pieces and seals of its first adapter; a piece that the line names itself is on its bill
 * already. Clamps are counted by `clampsOf`.
 */
function looseItems(line: Line, { end, verdict, needs, adapters }: LineJoint): readonly BillItem[] {
  const [adapter] = verdict === 'adapter' ? adapters : [];
  const named = new Set(line.adapters.map(({ text }) => itemKey(text)));
  const barb = line.ends[end - 1]?.style === 'barb';
  return [
    ...(adapter?.pieces ?? []).filter((text) => !named.has(itemKey(text))).map((text) => pieces('adapter', text, 1)),
    ...[...needs, ...(adapter?.needs ?? [])]
      .filter((text) => !(barb && /clamp/i.test(text)))
      .map((text) => pieces('seal', text, 1)),
  ];
}

function times(item: BillItem, count: number): BillItem {
  return { ...item, quantityMilli: item.quantityMilli * count };
}

/** Everything for all copies of one line. */
export function billOf(line: Line, hose: Hose, lengths: Lengths, joints: readonly LineJoint[]): readonly BillItem[] {
  const [first, second] = line.ends;
  const one: readonly BillItem[] = [
    ...(isBare(first, line.from) ? [] : [pieces('hose-end', endText(first, line.from, hose), 1)]),
    ...(isBare(second, line.to) ? [] : [pieces('hose-end', endText(second, line.to, hose), 1)]),
    metres('hose', `hose ${hose.label}`, lengths.cutMm + trimMm),
    ...clampsOf(line, hose),
    ...clipsOf(line, hose, lengths),
    ...joints.flatMap((joint) => looseItems(line, joint)),
    ...line.adapters.map(({ text }) => pieces('adapter', text, 1)),
    ...(line.sleeve === undefined
      ? []
      : [metres('sleeve', `${line.sleeve} sleeve for hose ${hose.label}`, lengths.freeHoseMm)]),
    pieces('label', 'line label', 1),
  ];
  return addUp(one.map((item) => times(item, line.quantity)));
}

/** The same things together, in the order in which they first come. */
export function addUp(items: readonly BillItem[]): readonly BillItem[] {
  const sums = new Map<string, BillItem>();
  for (const item of items) {
    const before = sums.get(item.key);
    sums.set(
      item.key,
      before === undefined ? item : { ...before, quantityMilli: before.quantityMilli + item.quantityMilli },
    );
  }
  return [...sums.values()];
}
