import { type ConnectionRow, type DeclaredRow, type FitsView, fitSeverities } from '../../../core/contract/fits.ts';
import { declaredLookOf, type FitLook, lookOf } from '../../parts/fit-mark.tsx';
import { sentence, sideText } from './port-text.ts';

/** A fit that is wrong or lacks something, of either sort, as the list shows it. */
export interface WrongFit {
  readonly kind: 'connection' | 'declared';
  readonly id: number;
  readonly title: string;
  readonly look: FitLook;
  readonly severity: (typeof fitSeverities)[number];
  readonly says: string;
  readonly consequence: string;
  readonly sides: string;
  readonly howToTell: string;
  readonly missing: readonly string[];
  readonly accepted: ConnectionRow['accepted'];
  readonly caution: string;
  /** Settled by a reason that counts: listed after what still stands. */
  readonly settled: boolean;
}

/** What is missing and isn't named in the sentence already. */
const unsaid = (missing: readonly string[], said: string): readonly string[] =>
  missing.filter((one) => !said.includes(one));

const isSettled = ({ accepted }: Pick<ConnectionRow, 'accepted'>): boolean => accepted !== null && !accepted.lapsed;

const ofConnection = (row: ConnectionRow): WrongFit => ({
  kind: 'connection',
  id: row.id,
  title: row.title,
  look: lookOf(row),
  severity: row.fit.severity,
  says: sentence(row.fit.reason),
  consequence: row.fit.verdict === 'mates' ? '' : row.fit.consequence,
  sides: `${sideText(row.one)}, to ${sideText(row.other)}`,
  howToTell: row.fit.verdict === 'lookalike' ? row.fit.howToTell : '',
  missing: unsaid(row.fit.missing, row.fit.reason),
  accepted: row.accepted,
  caution: row.fit.severity === 'stop' || row.fit.severity === 'danger' ? row.fit.caution : '',
  settled: isSettled(row),
});

const ofDeclared = (row: DeclaredRow): WrongFit => ({
  kind: 'declared',
  id: row.id,
  title: row.title,
  look: declaredLookOf(row),
  severity: row.severity,
  says: row.says,
  consequence: '',
  sides: '',
  howToTell: '',
  missing: unsaid(
    row.missing.map(({ label }) => label),
    row.says,
  ),
  accepted: row.accepted,
  caution: row.outcome === 'fail' ? row.caution : '',
  settled: isSettled(row),
});

const isListed = (row: Pick<ConnectionRow, 'stands' | 'accepted'>): boolean =>
  row.stands !== 'fits' || row.accepted !== null;

/** What is wrong, what lacks something and what was accepted, by severity; what a reason settled comes last. */
export function wrongFits({ connections, declared }: FitsView): readonly WrongFit[] {
  const rank = (one: WrongFit): number => (one.settled ? 100 : 0) - 2 * fitSeverities.indexOf(one.severity);
  const lacks = (one: WrongFit): number => (one.look === 'unknown' ? 1 : 0);
  return [...connections.filter(isListed).map(ofConnection), ...declared.filter(isListed).map(ofDeclared)].toSorted(
    (one, other) => rank(one) + lacks(one) - (rank(other) + lacks(other)) || one.title.localeCompare(other.title, 'en'),
  );
}
