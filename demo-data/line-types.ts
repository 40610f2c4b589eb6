/** The lines of the demo as plain data. */
import type { LineDefinition } from '../core/contract/records.ts';

export interface DemoLine {
  readonly slug: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly system: string;
  readonly job: string;
  /** Comes after the engine is in. */
  readonly afterHoist?: true;
  readonly is: LineDefinition;
}

export interface DemoHoseLength {
  readonly hose: string;
  readonly boreMm?: number;
  readonly lengthMm: number;
  readonly count: number;
  readonly note: string;
}
