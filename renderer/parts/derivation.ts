/** One entry or input behind a figure. */
export interface DerivationRow {
  readonly date?: string;
  readonly label: string;
  readonly quantityMilli?: number;
  readonly unit?: string;
  readonly amountMinor?: number;
  readonly currency?: string;
  /** An input that is neither money nor a count, already written with its unit. */
  readonly value?: string;
  readonly note?: string;
  /** The entry in the journal that this row comes from. */
  readonly entryId?: number | string;
}

/** Where a figure comes from: the one shape that every screen hands to the Why panel. */
export interface Derivation {
  readonly title: string;
  /** The figure itself, as shown on the screen. */
  readonly result: string;
  readonly rows: readonly DerivationRow[];
  /** How the rows make the result, as written in the source. */
  readonly formula?: string;
  /** The handbook, standard or rule that the formula comes from. */
  readonly source?: string;
  /** One line where the figure can hurt someone. */
  readonly caution?: string;
}
