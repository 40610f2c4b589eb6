import type { ThreadedKind } from '../port.ts';
import type { Severity } from './lookalikes.ts';

/** What becomes of a male and a female end whose threads are the same. */
export interface SameThreadRow {
  readonly male: ThreadedKind;
  readonly female: ThreadedKind;
  readonly verdict: 'mates' | 'lookalike';
  /** What else the joint needs; `none` needs nothing. */
  readonly needs?: string;
  /** The row of the look-alike catalogue that says why not. */
  readonly lookalike?: string;
  readonly severity: Severity;
}

/** Pairs not listed have threads of different systems, which are never the same. Source: the standards of the two kinds. */
export const sameThreadPairs: readonly SameThreadRow[] = [
  {
    male: 'thread',
    female: 'thread',
    verdict: 'mates',
    needs: 'washer or O-ring (fluid); none (bolt)',
    severity: 'info',
  },
  { male: 'thread', female: 'mport_oring', verdict: 'lookalike', lookalike: 'LA29', severity: 'danger' },
  { male: 'thread', female: 'flare37', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'thread', female: 'flare45', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'thread', female: 'flareinv', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'thread', female: 'orb', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'thread', female: 'orfs', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'mport_oring', female: 'thread', verdict: 'lookalike', lookalike: 'LA29', severity: 'danger' },
  { male: 'mport_oring', female: 'mport_oring', verdict: 'mates', needs: 'O-ring', severity: 'info' },
  { male: 'flare37', female: 'thread', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'flare37', female: 'flare37', verdict: 'mates', needs: 'none; clean dry cone', severity: 'info' },
  { male: 'flare37', female: 'flare45', verdict: 'lookalike', lookalike: 'LA15', severity: 'danger' },
  { male: 'flare37', female: 'flareinv', verdict: 'lookalike', lookalike: 'LA19', severity: 'danger' },
  { male: 'flare37', female: 'orb', verdict: 'lookalike', lookalike: 'LA18', severity: 'danger' },
  { male: 'flare37', female: 'orfs', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'flare45', female: 'thread', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'flare45', female: 'flare37', verdict: 'lookalike', lookalike: 'LA15', severity: 'danger' },
  { male: 'flare45', female: 'flare45', verdict: 'mates', needs: 'none', severity: 'info' },
  { male: 'flare45', female: 'flareinv', verdict: 'lookalike', lookalike: 'LA19', severity: 'danger' },
  { male: 'flare45', female: 'orb', verdict: 'lookalike', lookalike: 'LA18', severity: 'danger' },
  { male: 'flare45', female: 'orfs', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'flareinv', female: 'thread', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'flareinv', female: 'flare37', verdict: 'lookalike', lookalike: 'LA19', severity: 'danger' },
  { male: 'flareinv', female: 'flare45', verdict: 'lookalike', lookalike: 'LA19', severity: 'danger' },
  { male: 'flareinv', female: 'flareinv', verdict: 'mates', needs: 'none; double flare', severity: 'info' },
  { male: 'flareinv', female: 'orb', verdict: 'lookalike', lookalike: 'LA18', severity: 'danger' },
  { male: 'flareinv', female: 'orfs', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'orb', female: 'thread', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'orb', female: 'flare37', verdict: 'lookalike', lookalike: 'LA18', severity: 'danger' },
  { male: 'orb', female: 'flare45', verdict: 'lookalike', lookalike: 'LA18', severity: 'danger' },
  { male: 'orb', female: 'flareinv', verdict: 'lookalike', lookalike: 'LA18', severity: 'danger' },
  { male: 'orb', female: 'orb', verdict: 'mates', needs: 'O-ring', severity: 'info' },
  { male: 'orb', female: 'orfs', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'orfs', female: 'thread', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'orfs', female: 'flare37', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'orfs', female: 'flare45', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'orfs', female: 'flareinv', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'orfs', female: 'orb', verdict: 'lookalike', lookalike: 'LA20', severity: 'danger' },
  { male: 'orfs', female: 'orfs', verdict: 'mates', needs: 'O-ring', severity: 'info' },
  { male: 'npt', female: 'npt', verdict: 'mates', needs: 'thread sealant', severity: 'info' },
  { male: 'npt', female: 'nptf', verdict: 'mates', needs: 'thread sealant', severity: 'info' },
  { male: 'nptf', female: 'npt', verdict: 'mates', needs: 'thread sealant', severity: 'info' },
  { male: 'nptf', female: 'nptf', verdict: 'mates', needs: 'none or light sealant', severity: 'info' },
  { male: 'r', female: 'r', verdict: 'mates', needs: 'thread sealant', severity: 'info' },
  { male: 'r', female: 'rp', verdict: 'mates', needs: 'thread sealant', severity: 'info' },
  { male: 'r', female: 'g', verdict: 'lookalike', lookalike: 'LA27', severity: 'caution' },
  { male: 'g', female: 'r', verdict: 'lookalike', lookalike: 'LA28', severity: 'danger' },
  { male: 'g', female: 'rp', verdict: 'mates', needs: 'face washer (thread does not seal)', severity: 'info' },
  { male: 'g', female: 'g', verdict: 'mates', needs: 'washer or O-ring', severity: 'info' },
  { male: 'banjo', female: 'thread', verdict: 'mates', needs: 'two washers', severity: 'info' },
  { male: 'banjo', female: 'mport_oring', verdict: 'lookalike', lookalike: 'LA29', severity: 'danger' },
  { male: 'banjo', female: 'flare37', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'banjo', female: 'flare45', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'banjo', female: 'flareinv', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'banjo', female: 'orb', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
  { male: 'banjo', female: 'orfs', verdict: 'lookalike', lookalike: 'LA40', severity: 'danger' },
];
