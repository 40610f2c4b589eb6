import { type ConnectionRow, type DeclaredRow, type FitsView, fitSeverities } from '../../../core/contract/fits.ts';
import { declaredLookOf, type FitLook, lookOf } from '../../parts/fit-mark.tsx';

/** A fit that is wrong or lacks something, of either sort, as the list shows it. */
export interface WrongFit {
  readonly kind: 'connection' | 'declared';
  readonly id: number;
  readonly title: string;
  readonly look: FitLook;
  readonly severity: (typeof fitSeverities)[number];
  readonly says: string;
  readonly sides: string;
  readonly howToTell: string;
  readonly missing: readonly string[];
  readonly accepted: ConnectionRow['accepted'];
  readonly caution: string;
  /** Settled by a reason that counts: listed after what still stands. */
  readonly settled: boolean;
}

const isSettled = ({ accepted }: Pick<ConnectionRow, 'accepted'>): boolean => accepted !== null && !accepted.lapsed;

const ofConnection = (row: ConnectionRow): WrongFit => ({
  kind: 'connection',
  id: row.id,
  title: row.title,
  look: lookOf(row),
  severity: row.fit.severity,
  says: row.says,
  sides: `${row.one.text}, ${row.one.whose}, to ${row.other.text}, ${row.other.whose}`,
  howToTell: row.fit.verdict === 'lookalike' ? row.fit.howToTell : '',
  missing: row.fit.missing,
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
  sides: '',
  howToTell: '',
  missing: row.outcome === 'unknown' ? row.missing.map(({ label }) => label) : [],
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
