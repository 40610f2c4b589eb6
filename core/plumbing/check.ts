/** The answer to one question about a line. */
export type CheckVerdict = 'pass' | 'caution' | 'fail' | 'unknown';

export interface Check {
  readonly id: string;
  /** What was asked, in a few words. */
  readonly title: string;
  readonly verdict: CheckVerdict;
  readonly text: string;
  /** Whether the question arises for this line at all; one that doesn't passes. */
  readonly applies: boolean;
  /** One that nobody has to answer, so that "unknown" doesn't hold the line up. */
  readonly optional?: true;
  readonly source: string;
}

/** Whether a question still waits for its answer, so that the line can't be called right. */
export const isOpen = ({ verdict, optional }: Pick<Check, 'verdict' | 'optional'>): boolean =>
  verdict === 'unknown' && optional !== true;

const badness: Readonly<Record<CheckVerdict, number>> = { pass: 0, caution: 1, unknown: 2, fail: 3 };

/** The worst of the verdicts: fail, then unknown, then caution. Optional questions without an answer don't count. */
export function worstOf(checks: readonly Pick<Check, 'verdict' | 'optional'>[]): CheckVerdict {
  return checks
    .filter(({ verdict, optional }) => !(optional === true && verdict === 'unknown'))
    .reduce<CheckVerdict>((worst, { verdict }) => (badness[verdict] > badness[worst] ? verdict : worst), 'pass');
}

/** Makes the checks of one kind, with their title and source said once. */
export function checkOf(id: string, title: string, source: string) {
  const answer = (verdict: CheckVerdict, text: string, applies = true): Check => ({
    id,
    title,
    verdict,
    text,
    applies,
    source,
  });
  return {
    pass: (text: string) => answer('pass', text),
    caution: (text: string) => answer('caution', text),
    fail: (text: string) => answer('fail', text),
    unknown: (text: string) => answer('unknown', text),
    /** An optional question that nobody answered. */
    open: (text: string): Check => ({ ...answer('unknown', text), optional: true }),
    none: (text: string) => answer('pass', `Does not apply: ${text}`, false),
  };
}
