import type { OrderDraft } from '../../../../core/contract/orders.ts';
import type { Settings } from '../../../../core/contract/workbook.ts';
import { type ChargesDraft, chargesOf, plainCharges } from '../charges-draft.ts';

/** A need of the build that could go on the order. */
export interface Need {
  readonly part: number;
  readonly description: string;
  readonly partNumber: string;
  readonly unit: string;
  readonly vendor: number | null;
  readonly uncoveredMilli: number;
  readonly estimateEachE4: number | null;
}

/** A line while it is typed; null where what is typed can't be read. */
export interface LineDraft {
  readonly key: number;
  readonly part: number | null;
  readonly description: string;
  readonly unit: string;
  readonly quantityMilli: number | null;
  readonly eachE4: number | null;
  readonly coreDepositMinor: number | null;
}

export interface NewDraft {
  readonly vendor: number | null;
  readonly currency: string;
  readonly rate: string | null;
  readonly on: string | null;
  readonly promisedOn: string | null;
  readonly number: string;
  readonly note: string;
  readonly paid: boolean;
  /** Why parts that don't fit are ordered all the same. */
  readonly despiteFits: string;
  readonly charges: ChargesDraft;
  readonly lines: readonly LineDraft[];
  readonly nextKey: number;
}

export function emptyDraft(settings: Settings, today: string, vendor: number | null): NewDraft {
  return {
    vendor,
    currency: settings.currency,
    rate: null,
    on: today,
    promisedOn: null,
    number: '',
    note: '',
    paid: false,
    despiteFits: '',
    charges: plainCharges(settings),
    lines: [],
    nextKey: 1,
  };
}

/** The draft with a line for each need; the estimate is its price where the order is in the workbook's currency. */
export function withNeeds(draft: NewDraft, needs: readonly Need[], base: string): NewDraft {
  const there = new Set(draft.lines.map(({ part }) => part));
  const added = needs
    .filter(({ part }) => !there.has(part))
    .map((need, index) => ({
      key: draft.nextKey + index,
      part: need.part,
      description: need.description,
      unit: need.unit,
      quantityMilli: need.uncoveredMilli,
      eachE4: draft.currency === base ? need.estimateEachE4 : null,
      coreDepositMinor: null,
    }));
  return { ...draft, lines: [...draft.lines, ...added], nextKey: draft.nextKey + added.length };
}

/** The draft with one line more for something that no part line needs. */
export function withSpare(draft: NewDraft): NewDraft {
  const spare: LineDraft = {
    key: draft.nextKey,
    part: null,
    description: '',
    unit: 'each',
    quantityMilli: 1000,
    eachE4: null,
    coreDepositMinor: null,
  };
  return { ...draft, lines: [...draft.lines, spare], nextKey: draft.nextKey + 1 };
}

/** What is sent; null while the vendor or a line isn't whole yet. */
export function orderOf(draft: NewDraft, build: number, base: string): OrderDraft | null {
  const { vendor, currency, rate, charges, promisedOn, number, note } = draft;
  const lines: OrderDraft['lines'] = [];
  for (const { part, description, quantityMilli, eachE4, coreDepositMinor } of draft.lines) {
    if (quantityMilli === null || eachE4 === null || (part === null && description.trim() === '')) return null;
    lines.push({
      part,
      ...(part === null ? { description: description.trim() } : {}),
      quantityMilli,
      eachE4,
      ...(coreDepositMinor === null || coreDepositMinor === 0 ? {} : { coreDepositMinor }),
    });
  }
  if (vendor === null || lines.length === 0) return null;
  return {
    build,
    vendor,
    number: number.trim(),
    currency,
    ...(rate === null || currency === base ? {} : { rate }),
    charges: chargesOf(charges),
    promisedOn,
    note: note.trim(),
    lines,
  };
}
