import { oneLine, plainWords } from '../exchange/clean-text.ts';
import { convertDocument } from '../money/convert.ts';
import { extendedMinor } from '../money/line-value.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { dayRate } from './order-landing.ts';
import { findOrCreate } from './records.ts';

/** One order line of one part, as entries name it. */
export interface LinePlace {
  readonly build: number;
  readonly part: number;
  readonly order: number;
  readonly line: number;
}

type NamedKind = 'system' | 'phase' | 'vendor' | 'bin' | 'job';

/** Longest name of each kind of record, as its form takes it. */
const longest: Record<NamedKind, number> = { system: 80, phase: 80, vendor: 120, bin: 80, job: 200 };

/** What is written of one list: the act's writer, the names met so far, and what became of each row. */
export class ImportBatch {
  readonly writer: ActWriter;
  readonly build: number;
  /** The day of the act: what a list doesn't date happened on it. */
  readonly on: string;
  readonly base: string;
  private readonly names = new Map<string, number>();
  private readonly sentences = new Map<number, string[]>();
  private readonly parts = new Map<number, number>();

  constructor(writer: ActWriter, build: number, on: string, base: string) {
    this.writer = writer;
    this.build = build;
    this.on = on;
    this.base = base;
  }

  /** The record of this name, made when there is none; null for no name. */
  named(kind: NamedKind, text: string | undefined): number | null {
    const name = oneLine(text ?? '')
      .slice(0, longest[kind])
      .trim();
    if (name === '') return null;
    const key = `${kind} ${plainWords(name)}`;
    const known = this.names.get(key);
    if (known !== undefined) return known;
    const id = findOrCreate(this.writer, kind, this.build, this.on, name);
    this.names.set(key, id);
    return id;
  }

  /** The vendor of an order; a list that names none gets one that says so. */
  vendor(text: string | undefined): number {
    return this.named('vendor', text) ?? (this.named('vendor', 'Vendor not named') as number);
  }

  /** Says what became of a row; sentences of one row add up. */
  say(row: number, text: string): void {
    const known = this.sentences.get(row);
    if (known === undefined) this.sentences.set(row, [text]);
    else known.push(text);
  }

  belongs(row: number, part: number): void {
    this.parts.set(row, part);
  }

  fateOf(row: number): { readonly text: string; readonly part: number | null } {
    return { text: (this.sentences.get(row) ?? []).join('; '), part: this.parts.get(row) ?? null };
  }

  /** Runs `work` for one row; a refusal names the row of the file. */
  atRow<T>(row: number, work: () => T): T {
    try {
      return work();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      throw new Refusal(error.code, `Row ${row}: ${error.message}`, {
        ...(error.field === undefined ? {} : { field: error.field }),
        ...(error.accepted === undefined ? {} : { accepted: error.accepted }),
        detail: { ...error.detail, row },
      });
    }
  }

  /** An amount, or a price in 1/10 000 of a minor unit, in the base currency at the rate on record for a day. */
  inBase(minor: number, currency: string, on: string): number {
    const { rate } = dayRate(this.writer.connection, this.base, currency, on, undefined);
    return rate === null ? minor : convertDocument(minor, currency, this.base, rate);
  }

  /** Receives units of an order line as one lot; good ones go to the shelf. Returns the lot. */
  receive(at: LinePlace, on: string, quantityMilli: number, accept: boolean): number {
    const lot = this.writer.make('lots', {
      part: at.part,
      build: at.build,
      line: at.line,
      source: 'bought',
      owner: '',
      dueOn: null,
      bin: null,
      cameInOn: on,
    });
    this.writer.post({ ...at, kind: 'received', on, lot: lot.id, quantityMilli }, [lot.edit]);
    if (accept) this.writer.post({ ...at, kind: 'accepted', on, lot: lot.id, quantityMilli, payload: { to: 'shelf' } });
    return lot.id;
  }

  /** Pays what an order line is still worth beyond what was paid on it. Says whether anything was paid. */
  payRest(at: LinePlace, on: string): boolean {
    const line = this.writer.state(at.part).lines.find(({ line: id }) => id === at.line);
    const amountMinor = line === undefined ? 0 : line.landedMinor - (line.paidMinor - line.depositsMinor);
    if (amountMinor <= 0) return false;
    this.writer.post({ ...at, kind: 'paid', on, amountMinor });
    return true;
  }
}

export const later = (a: string, b: string): string => (a > b ? a : b);
export const earlier = (a: string, b: string): string => (a < b ? a : b);

/**
 * Price each, in 1/10 000 of a minor unit, at which the line comes to its total: the list's own price where the two
 * agree, else the share of the total. 0 when the list knows neither.
 */
export function eachPrice(
  quantityMilli: number,
  unitPriceE4: number | undefined,
  lineMinor: number | undefined,
): number {
  if (unitPriceE4 !== undefined) {
    if (lineMinor === undefined || extendedMinor(quantityMilli, unitPriceE4) === lineMinor) return unitPriceE4;
  }
  if (lineMinor === undefined || quantityMilli <= 0) return 0;
  const exact = BigInt(lineMinor) * 10_000_000n;
  const divisor = BigInt(quantityMilli);
  return Number((exact + divisor / 2n) / divisor);
}
