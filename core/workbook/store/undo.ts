import { all, type Connection, first } from './connection.ts';

export interface UndoTarget {
  readonly id: number;
  readonly label: string;
  /** The act whose entries carry the effect now. */
  readonly carriedBy: number;
}

/** The act that undo would take back: the latest that stands. An act that changed nothing has no entries and is passed over. */
export function undoTarget(connection: Connection): UndoTarget | undefined {
  return first<UndoTarget>(
    connection,
    "SELECT id, label, carried_by AS carriedBy FROM acts WHERE kind = 'act' AND undone = 0 AND EXISTS (SELECT 1 FROM entries e WHERE e.act = acts.id) ORDER BY id DESC LIMIT 1",
  );
}

/** The act that redo would bring back: the earliest undone one after the latest that stands. */
export function redoTarget(connection: Connection): UndoTarget | undefined {
  const standing = undoTarget(connection)?.id ?? 0;
  return first<UndoTarget>(
    connection,
    "SELECT id, label, carried_by AS carriedBy FROM acts WHERE kind = 'act' AND undone = 1 AND EXISTS (SELECT 1 FROM entries e WHERE e.act = acts.id) AND id > ? ORDER BY id LIMIT 1",
    standing,
  );
}

/** Entries of an act that nobody has taken back, the latest first. */
export function liveEntries(connection: Connection, act: number): number[] {
  return all<{ seq: number }>(
    connection,
    `SELECT seq FROM entries e WHERE act = ? AND NOT EXISTS (SELECT 1 FROM entries r WHERE r.reverses = e.seq) ORDER BY seq DESC`,
    act,
  ).map(({ seq }) => seq);
}
