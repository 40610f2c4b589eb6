import type { RecordRow } from '../../../core/contract/records.ts';
import { State, type StateName } from '../../parts/state.tsx';
import type { ListKind } from './kinds.ts';
import { boltCounts, standingText } from './value-text.ts';

/** The icon for where a record stands; the word beside it is its own. */
function iconOf(kind: ListKind, record: RecordRow): StateName | null {
  if (record.retiredOn !== null) return 'not needed';
  switch (kind) {
    case 'tool':
      return record.standing['atHand'] === true ? 'in hand' : 'lent';
    case 'decision':
      return record.standing['made'] === true ? 'fitted' : 'needed';
    case 'boltGroup': {
      const { all, loose, final } = boltCounts(record);
      return final === all ? 'final' : loose === all ? 'needed' : 'snug';
    }
    default:
      return null;
  }
}

/** Where a record stands by its counts: icon and word. */
export function Standing({ kind, record }: { readonly kind: ListKind; readonly record: RecordRow }) {
  const icon = iconOf(kind, record);
  return icon === null ? null : <State state={icon} words={standingText(kind, record)} />;
}
