/** The steps of the story. Amounts are decimal text, quantities plain numbers of the part's unit, days ISO text. */

/** A part, or a part with a quantity; without one, all that the act could move. */
export type Some = string | readonly [part: string, quantity: number];
export type Rejection = readonly [part: string, quantity: number, reason: RejectWord, note: string];
export type RejectWord = 'wrong part' | 'faulty' | 'transit damage' | 'wrong quantity';

export interface OrderStep {
  readonly do: 'order';
  readonly vendor: string;
  readonly number: string;
  /** Price each in the order's currency; the core deposit is in US dollars. */
  readonly lines: readonly (readonly [part: string, quantity: number, each: string, coreDeposit?: string])[];
  readonly currency?: string;
  readonly rate?: string;
  readonly discount?: string;
  readonly shipping?: string;
  readonly duty?: string;
  /** Sales tax on goods, per cent. */
  readonly taxPercent?: string;
  readonly promised?: string;
  readonly paid?: true;
  readonly note?: string;
}

export interface ReceiveStep {
  readonly do: 'receive';
  readonly order: string;
  readonly into: string | null;
  /** What came and is good; every line in full when absent. */
  readonly good?: readonly (readonly [part: string, quantity: number])[];
  readonly bad?: readonly Rejection[];
  readonly extra?: readonly (readonly [part: string, quantity: number])[];
  /** Parts whose rest is on back-order, with the day promised or null. */
  readonly rest?: readonly (readonly [part: string, promised: string | null])[];
  readonly inspect?: true;
  readonly note?: string;
  /** Name by which a later step takes this one back. */
  readonly label?: string;
}

export interface MoveStep {
  readonly do:
    | 'accept'
    | 'reject'
    | 'send back'
    | 'allocate'
    | 'trial-fit'
    | 'fit'
    | 'take off'
    | 'snug'
    | 'verify'
    | 'lend'
    | 'give back'
    | 'lose'
    | 'use up'
    | 'settle by exchange'
    | 'bin';
  readonly parts: readonly Some[];
  readonly reason?: string;
  readonly rejectReason?: RejectWord;
  readonly bin?: string;
  readonly owner?: string;
  readonly dueOn?: string;
  readonly by?: string;
  readonly note?: string;
  readonly label?: string;
}

export interface BringInStep {
  readonly do: 'own' | 'donor' | 'borrow' | 'find' | 'make';
  readonly parts: readonly Some[];
  readonly into?: string;
  /** Value of each item in US dollars. */
  readonly value?: string;
  readonly owner?: string;
  readonly dueOn?: string;
  readonly note?: string;
}

/** Readings written on a sheet, place by place in its order; null where none was taken. */
export interface MeasureStep {
  readonly do: 'measure';
  readonly sheet: string;
  readonly readings: readonly (readonly string[] | null)[];
  readonly temperatureC?: number;
}

export type StoryAct =
  | MeasureStep
  /** Something learned about a part: facts that join those it has. */
  | {
      readonly do: 'facts';
      readonly part: string;
      readonly more: readonly (readonly [key: string, value: string, unit?: string])[];
    }
  | { readonly do: 'list'; readonly parts: readonly string[] }
  /** Writes down where things join, and what has to. */
  | { readonly do: 'ports' }
  | { readonly do: 'fits' }
  /** Writes down the lines; then steps of making one are ticked off, all of them or the first few. */
  | { readonly do: 'lines' }
  | { readonly do: 'make-line'; readonly line: string; readonly first?: number; readonly note?: string }
  /** Keeps what the forecast says on the day. */
  | { readonly do: 'forecast' }
  /** Keeps what is planned now. */
  | { readonly do: 'baseline'; readonly name: string }
  | {
      readonly do: 'quote';
      readonly part: string;
      readonly vendor: string;
      readonly each: string;
      readonly currency?: string;
      readonly validUntil?: string;
      readonly asEstimate?: true;
      readonly note?: string;
    }
  | OrderStep
  | ReceiveStep
  | MoveStep
  | BringInStep
  | { readonly do: 'acknowledge'; readonly order: string; readonly promised?: string }
  | {
      readonly do: 'back-order';
      readonly order: string;
      readonly lines: readonly Some[];
      readonly promised: string | null;
      readonly note?: string;
    }
  | {
      readonly do: 'promise';
      readonly order: string;
      readonly parts: readonly string[];
      readonly promised: string | null;
      readonly note?: string;
    }
  | {
      readonly do: 'ship';
      readonly order: string;
      readonly lines?: readonly Some[];
      readonly tracking: string;
      readonly expected: string | null;
    }
  | { readonly do: 'chase'; readonly order: string; readonly note: string }
  | { readonly do: 'cancel'; readonly order: string; readonly lines: readonly Some[]; readonly reason: string }
  | {
      readonly do: 'reprice';
      readonly order: string;
      readonly prices: readonly (readonly [part: string, each: string])[];
      readonly note: string;
    }
  | {
      readonly do: 'pay';
      readonly order: string;
      /** In the order's currency, or all that is open. */
      readonly amount: string | 'rest';
      readonly rate?: string;
      readonly method: string;
      readonly note?: string;
    }
  | {
      readonly do: 'refund';
      readonly order: string;
      readonly part: string;
      /** What the vendor keeps; the rest of the claim comes back. */
      readonly fee: string;
      readonly settles: number;
      readonly note?: string;
    }
  | {
      readonly do: 'deposit';
      readonly order: string;
      readonly part: string;
      readonly what: 'paid' | 'old unit sent' | 'refunded' | 'kept by vendor';
      readonly amount: string;
      readonly dueOn?: string;
    }
  | { readonly do: 'drop'; readonly parts: readonly string[]; readonly reason: string }
  | {
      readonly do: 'budget';
      readonly kind: 'change' | 'contingency' | 'contingency drawn';
      /** System whose line it is; null for the contingency. */
      readonly line: string | null;
      readonly amount: string;
      readonly reason: string;
    }
  | {
      readonly do: 'tool';
      readonly tool: string;
      readonly atHand: boolean;
      readonly where?: string;
      readonly dueOn?: string;
    }
  | { readonly do: 'decide'; readonly decision: string; readonly choice: string; readonly reason: string }
  | {
      readonly do: 'bolts';
      readonly group: string;
      readonly to: 'snug' | 'final' | 'loose';
      readonly count: number;
      readonly wrench?: string;
      readonly reason?: string;
    }
  | { readonly do: 'job'; readonly job: string; readonly hours: number; readonly note?: string }
  | { readonly do: 'hours'; readonly job: string; readonly hours: number; readonly note?: string }
  | { readonly do: 'reopen'; readonly job: string; readonly reason: string }
  | {
      readonly do: 'waive';
      readonly kind: 'decision open' | 'trial part on' | 'tool missing' | 'job open' | 'part not in hand';
      readonly subject: readonly ['part' | 'job' | 'tool' | 'decision', string];
      readonly reason: string;
      readonly until: string | null;
    }
  /** Takes an earlier step back, whole. */
  | { readonly do: 'correct'; readonly of: string; readonly reason: string };

export type StoryStep = { readonly on: string } & StoryAct;
