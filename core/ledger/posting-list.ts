import type { Account, Posting } from './accounts.ts';
import type { LineFacts, LotFacts, PartState } from './part-state.ts';

/** What one posting moves: units, money, or both. */
export interface Movement {
  readonly quantityMilli?: number;
  readonly amountMinor?: number;
}

/** Collects the postings of one entry about one part line. Movements of nothing are left out. */
export class PostingList {
  readonly postings: Posting[] = [];
  private readonly state: PartState;

  constructor(state: PartState) {
    this.state = state;
  }

  /** On the part line as a whole. */
  part(account: Account, moved: Movement): void {
    this.add(account, 0, 0, 0, moved);
  }

  /** On an order line. */
  line(line: LineFacts, account: Account, moved: Movement): void {
    this.add(account, line.order, line.line, 0, moved);
  }

  /** On a lot, and through it on the order line that it came on. */
  lot(lot: LotFacts, account: Account, moved: Movement): void {
    const line = this.state.lines.find((one) => one.line === lot.line);
    this.add(account, line?.order ?? 0, lot.line, lot.lot, moved);
  }

  private add(account: Account, order: number, line: number, lot: number, moved: Movement): void {
    const quantityMilli = moved.quantityMilli ?? 0;
    const amountMinor = moved.amountMinor ?? 0;
    if (quantityMilli === 0 && amountMinor === 0) return;
    const subject = { subjectKind: '', subject: 0 } as const;
    this.postings.push({
      account,
      part: this.state.part,
      order,
      line,
      lot,
      ...subject,
      // No minus zero: it would be told apart from 0 when entries are compared.
      quantityMilli: quantityMilli + 0,
      amountMinor: amountMinor + 0,
    });
  }
}
