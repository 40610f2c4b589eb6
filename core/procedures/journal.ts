import type { ActResult } from '../contract/common.ts';
import { Refusal } from '../refusal.ts';
import { runAct } from '../workbook/store/act.ts';
import { all, first, readSettings } from '../workbook/store/connection.ts';
import { listJournal } from '../workbook/store/journal.ts';
import { liveEntries, redoTarget, undoTarget } from '../workbook/store/undo.ts';
import { act, type Context, procedures } from './context.ts';

const { journal } = procedures;

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Undo and redo are acts too: they reverse the entries that now carry the effect of the act named. */
function takeBack(
  context: Context,
  kind: 'undo' | 'redo',
  input: { key: string; act?: number | undefined },
): ActResult {
  const book = context.book();
  if (book.readOnly) throw new Refusal('read-only', 'This workbook is open for reading only. Nothing was changed.');
  const { connection } = book;
  const target = kind === 'undo' ? undoTarget(connection) : redoTarget(connection);
  if (target === undefined) {
    throw new Refusal('nothing-to-undo', `There is nothing to ${kind}. Nothing was changed.`, {
      accepted: kind === 'undo' ? 'an act that stands' : 'an act that was just undone',
    });
  }
  if (input.act !== undefined && input.act !== target.id) {
    throw new Refusal(
      'conflict',
      `The latest act is now “${target.label}”. Nothing was changed; look again before you ${kind}.`,
      {
        detail: { act: target.id },
      },
    );
  }
  const label = `${kind === 'undo' ? 'Undo' : 'Redo'} ${lowerFirst(target.label)}`;
  const result = runAct(
    connection,
    {
      key: input.key,
      label,
      author: readSettings(connection).author,
      recordedAt: context.now().toISOString(),
      kind,
      target: target.id,
    },
    (writer) => {
      for (const seq of liveEntries(connection, target.carriedBy)) writer.reverse(seq, label);
      connection
        .prepare('UPDATE acts SET undone = ?, carried_by = ? WHERE id = ?')
        .run(kind === 'undo' ? 1 : 0, writer.act, target.id);
      return undefined;
    },
  );
  context.announce({ act: result.act, label, parts: result.parts.length > 2000 ? null : result.parts });
  return result;
}

export const journalProcedures = {
  list: journal.list.handler(({ context, input }) => listJournal(context.book().connection, input)),
  undoState: journal.undoState.handler(({ context }) => {
    const { connection } = context.book();
    const undo = undoTarget(connection);
    const redo = redoTarget(connection);
    return {
      undo: undo === undefined ? null : { act: undo.id, label: undo.label },
      redo: redo === undefined ? null : { act: redo.id, label: redo.label },
    };
  }),
  undo: journal.undo.handler(({ context, input }) => takeBack(context, 'undo', input)),
  redo: journal.redo.handler(({ context, input }) => takeBack(context, 'redo', input)),
  reverse: journal.reverse.handler(({ context, input }) => {
    const { connection } = context.book();
    if (input.reason.trim() === '') {
      throw new Refusal('needs-reason', 'Say why the entry is taken back. Nothing was changed.', {
        field: 'reason',
        accepted: 'a few words',
      });
    }
    if ((input.entry === undefined) === (input.wholeAct === undefined)) {
      throw new Refusal('bad-input', 'Name either one entry or one whole act. Nothing was changed.', {
        field: 'entry',
        accepted: 'the number of an entry, or of an act',
      });
    }
    const seqs =
      input.entry === undefined
        ? all<{ seq: number }>(
            connection,
            `SELECT seq FROM entries e WHERE act = ? AND NOT EXISTS (SELECT 1 FROM entries r WHERE r.reverses = e.seq)
             ORDER BY seq DESC`,
            input.wholeAct,
          ).map(({ seq }) => seq)
        : [input.entry];
    const kinds = all<{ kind: string; label: string }>(
      connection,
      'SELECT DISTINCT a.kind, a.label FROM entries e JOIN acts a ON a.id = e.act WHERE e.seq IN (SELECT value FROM json_each(?))',
      JSON.stringify(seqs),
    );
    const undoing = kinds.find(({ kind }) => kind !== 'act');
    if (undoing !== undefined) {
      throw new Refusal(
        'not-allowed-from-here',
        `“${undoing.label}” is taken back with undo and redo, not from the journal. Nothing was changed.`,
        {
          field: 'entry',
          accepted: 'an entry of an act; use undo or redo for this one',
        },
      );
    }
    if (seqs.length === 0) {
      throw new Refusal(
        'already-reversed',
        'Everything of that act has been taken back already. Nothing was changed.',
        { field: 'wholeAct' },
      );
    }
    const label =
      input.entry === undefined
        ? `Correction of ${lowerFirst(String(first<{ label: string }>(connection, 'SELECT label FROM acts WHERE id = ?', input.wholeAct)?.label ?? ''))}`
        : `Correction of entry ${input.entry}`;
    return act(context, input, label, (writer) => {
      for (const seq of seqs) writer.reverse(seq, input.reason);
      return undefined;
    });
  }),
};
