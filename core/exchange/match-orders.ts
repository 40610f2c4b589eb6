/**
 * Which part of the list an order line is for. By part number first; else by likeness of the description, with vendor,
 * quantity and date to help. Only a proposal: it is shown and confirmed before anything is done.
 */
import { daysBetween } from '../dates/calendar-date.ts';
import { plainWords } from './clean-text.ts';
import type { ImportedOrderLine } from './import-types.ts';
import { likeness, plainPartNumber, type TextShape, textShape } from './likeness.ts';

export interface PartToMatch {
  readonly id: string;
  readonly description: string;
  readonly partNumber?: string;
  readonly vendor?: string;
  readonly quantityMilli: number | null;
  readonly orderedOn?: string;
}

export interface OrderMatch {
  /** File row of the order line. */
  readonly row: number;
  readonly partId: string | null;
  readonly how: 'part number' | 'likeness' | 'none';
  /** 0 to 1; 1 is the same part number, vendor and description. */
  readonly score: number;
  /** Up to five other parts worth a look, the best first. */
  readonly alternatives: readonly { readonly partId: string; readonly score: number }[];
}

/** Below this a likeness is no proposal. Ours: chosen so that a shared size alone ("hose -10", "-10") doesn't match. */
const enough = 0.55;
const worthALook = 0.3;
/** How many times a part may be met while looking for those that are alike; bounds the work for one line. */
const partsLookedAt = 5_000;

interface Candidate {
  readonly part: number;
  readonly score: number;
  readonly how: 'part number' | 'likeness';
}

type LineToMatch = Pick<
  ImportedOrderLine,
  'row' | 'description' | 'partNumber' | 'vendor' | 'quantityMilli' | 'orderedOn'
>;

/** Proposes a part for each order line; a part already proposed for a better fit is used twice only by part number. */
export function matchOrdersToParts(
  lines: readonly LineToMatch[],
  parts: readonly PartToMatch[],
): readonly OrderMatch[] {
  const shapes = parts.map((part) => textShape(part.description));
  const byNumber = new Map<string, number[]>();
  const byRun = new Map<string, number[]>();
  parts.forEach((part, index) => {
    const number = plainPartNumber(part.partNumber ?? '');
    if (number !== '') addTo(byNumber, number, index);
    for (const run of shapes[index]?.runs ?? []) addTo(byRun, run, index);
  });

  const candidates = lines.map((line) => candidatesFor(line, parts, shapes, byNumber, byRun));
  const order = lines
    .map((_, index) => index)
    .sort((a, b) => (candidates[b]?.[0]?.score ?? 0) - (candidates[a]?.[0]?.score ?? 0) || a - b);
  const taken = new Set<number>();
  const chosen = new Map<number, Candidate>();
  for (const how of ['part number', 'likeness'] as const) {
    for (const index of order) {
      if (chosen.has(index)) continue;
      const fitting = (candidates[index] ?? []).filter(
        (candidate) => candidate.how === how && candidate.score >= enough,
      );
      const pick =
        fitting.find((candidate) => !taken.has(candidate.part)) ?? (how === 'part number' ? fitting[0] : undefined);
      if (pick === undefined) continue;
      taken.add(pick.part);
      chosen.set(index, pick);
    }
  }
  return lines.map((line, index) => {
    const pick = chosen.get(index);
    const others = (candidates[index] ?? []).filter((candidate) => candidate.part !== pick?.part).slice(0, 5);
    return {
      row: line.row,
      partId: pick === undefined ? null : (parts[pick.part]?.id ?? null),
      how: pick?.how ?? 'none',
      score: pick?.score ?? 0,
      alternatives: others.flatMap(({ part, score }) => {
        const id = parts[part]?.id;
        return id === undefined ? [] : [{ partId: id, score }];
      }),
    };
  });
}

function candidatesFor(
  line: LineToMatch,
  parts: readonly PartToMatch[],
  shapes: readonly TextShape[],
  byNumber: ReadonlyMap<string, readonly number[]>,
  byRun: ReadonlyMap<string, readonly number[]>,
): readonly Candidate[] {
  const shape = textShape(line.description);
  const number = plainPartNumber(line.partNumber ?? '');
  const same = new Set(number === '' ? [] : byNumber.get(number));
  const shared = new Map<number, number>();
  // Rare runs first: what nearly every part has in its name tells nothing, and costs most.
  const lists = [...shape.runs].map((run) => byRun.get(run) ?? []).sort((a, b) => a.length - b.length);
  let looked = 0;
  for (const list of lists) {
    if (looked > 0 && looked + list.length > partsLookedAt) break;
    looked += list.length;
    for (const part of list) shared.set(part, (shared.get(part) ?? 0) + 1);
  }
  const near = [...shared].sort((a, b) => b[1] - a[1]).slice(0, 30);
  const found: Candidate[] = [];
  for (const index of new Set([...same, ...near.map(([part]) => part)])) {
    const part = parts[index];
    const other = shapes[index];
    if (part === undefined || other === undefined) continue;
    const alike = likeness(shape, other);
    if (same.has(index)) {
      found.push({
        part: index,
        how: 'part number',
        score: round(0.8 + 0.1 * alike + 0.1 * circumstances(line, part)),
      });
      continue;
    }
    // Two different numbers from one vendor are two different parts, however alike they sound.
    const otherNumber = plainPartNumber(part.partNumber ?? '');
    const contradicted = number !== '' && otherNumber !== '' && sameVendor(line, part) === true;
    const score = round((contradicted ? 0.5 : 0.85) * alike + (contradicted ? 0 : 0.15 * circumstances(line, part)));
    if (score >= worthALook) found.push({ part: index, how: 'likeness', score });
  }
  return found.sort((a, b) => b.score - a.score || a.part - b.part);
}

function sameVendor(line: LineToMatch, part: PartToMatch): boolean | null {
  if (line.vendor === '' || part.vendor === undefined || part.vendor === '') return null;
  return plainWords(line.vendor) === plainWords(part.vendor);
}

/** Vendor, quantity and date, from 0 to 1; what is not known counts half. */
function circumstances(line: LineToMatch, part: PartToMatch): number {
  const vendor = sameVendor(line, part);
  const quantity =
    line.quantityMilli === null || part.quantityMilli === null ? null : line.quantityMilli === part.quantityMilli;
  const days =
    line.orderedOn === undefined || part.orderedOn === undefined
      ? null
      : Math.abs(daysBetween(line.orderedOn, part.orderedOn));
  const share = (value: boolean | null) => (value === null ? 0.5 : value ? 1 : 0);
  const near = days === null ? 0.5 : days <= 3 ? 1 : days <= 14 ? 0.6 : days <= 60 ? 0.3 : 0;
  return 0.5 * share(vendor) + 0.2 * share(quantity) + 0.3 * near;
}

function round(score: number): number {
  return Math.round(score * 1000) / 1000;
}

function addTo(map: Map<string, number[]>, key: string, index: number): void {
  const known = map.get(key);
  if (known === undefined) map.set(key, [index]);
  else known.push(index);
}
