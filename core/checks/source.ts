/** Where an input of a check comes from, and what a check is; the shape in which the workbook keeps them. */
export interface TypedGiven {
  readonly value: number | string | boolean | readonly (number | string)[];
  readonly unit?: string | undefined;
}

export type SheetFigure = 'mean' | 'least' | 'most' | 'clearance mean' | 'clearance least' | 'clearance most';

export type CheckSource =
  | { readonly from: 'fact'; readonly fact: string; readonly part: number | null; readonly partKind: string }
  | { readonly from: 'target'; readonly target: string }
  | { readonly from: 'measurement'; readonly sheet: number; readonly figure: SheetFigure }
  | { readonly from: 'typed'; readonly given: TypedGiven; readonly source: string };

export interface CheckLimit {
  readonly least: number | null;
  readonly most: number | null;
  readonly unit: string;
  readonly closeMilli: number;
  readonly source: string;
  readonly leastFrom?: CheckSource | undefined;
  readonly mostFrom?: CheckSource | undefined;
}

export interface CheckPlan {
  readonly title: string;
  readonly calculator: string;
  readonly inputs: Readonly<Record<string, CheckSource>>;
  readonly output: string;
  readonly limit: CheckLimit;
}

export type PartStanding = 'fitted' | 'in hand' | 'on order' | 'needed';

export interface CheckPart {
  readonly id: number;
  readonly description: string;
  readonly kind: string;
  readonly facts: readonly { readonly key: string; readonly value: string; readonly unit: string }[];
  readonly standing: PartStanding;
}

export interface SheetFigures {
  readonly title: string;
  readonly unit: string;
  readonly figures: Readonly<Partial<Record<SheetFigure, number>>>;
}

/** All that a check may read of a build, now or at the end of a past day. */
export interface CheckContext {
  readonly parts: readonly CheckPart[];
  readonly targets: readonly { readonly name: string; readonly value: string; readonly unit: string }[];
  readonly measurements: ReadonlyMap<number, SheetFigures>;
}
