import type { z } from 'zod';
import type { ActResult } from '../contract/common.ts';
import type { fitsContract } from '../contract/fits.ts';
import { type JudgedConnection, judgeConnection } from '../fit/kept/connection.ts';
import { judgeDeclared } from '../fit/kept/declared.ts';
import type { Acceptance } from '../fit/kept/records.ts';
import type { PayloadValue } from '../ledger/entry.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { buildFits, keptConnection, keptDeclaredFit } from '../workbook/store/fits.ts';
import { listRecords, needRecord, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { act, type Context } from './context.ts';
import { exchange, placeOf, takeBack } from './fit-list.ts';

type Input<K extends 'useAdapter' | 'dropAdapter' | 'listNeeds' | 'unlistNeeds' | 'accept' | 'endAcceptance'> = z.infer<
  NonNullable<(typeof fitsContract)[K]['~orpc']['inputSchema']>
>;
type Chosen = { pieces: string[]; parts: number[] } | null;

function needStanding(connection: Connection, table: 'connections' | 'declaredFits', id: number, field: string) {
  const record = needRecord(connection, table, id, field);
  if (record.retiredOn === null) return record;
  throw new Refusal('retired', `“${String(record['title'])}” was retired. Nothing was changed.`, {
    field,
    accepted: 'a fit that is in use; bring this one back first',
  });
}

function judged(connection: Connection, record: RecordValuesRow): JudgedConnection {
  return judgeConnection(keptConnection(record), buildFits(connection, Number(record.build), undefined).context);
}

/** Changes one value of a fit, with words for the journal. */
function changeFit(
  writer: ActWriter,
  table: 'connections' | 'declaredFits',
  record: RecordValuesRow,
  on: string,
  after: Readonly<Record<string, PayloadValue>>,
  said: Readonly<Record<string, string>>,
): void {
  const edit = writer.change(table, record.id, after);
  if (edit === undefined) return;
  const about = { record: table === 'connections' ? 'connection' : 'fit', name: String(record['title']) };
  writer.post({ kind: 'record', on, build: Number(record.build), payload: { ...about, ...said } }, [edit]);
}

/**
 * Chooses one of the adapters that join a connection. Its pieces and what they need go on the parts list: what an earlier
 * choice of this connection brought stays, what only that one brought goes.
 * @throws Refusal `not-allowed-from-here` when no adapter joins it, `bad-input` for one that isn't offered
 */
export function useAdapter(context: Context, input: Input<'useAdapter'>): ActResult {
  const record = needStanding(context.book().connection, 'connections', input.connection, 'connection');
  const title = String(record['title']);
  return act(context, input, `Adapter for ${title}`, (writer) => {
    const now = judged(writer.connection, record);
    const { adapters } = now.fit;
    if (adapters.length === 0) {
      throw new Refusal(
        'not-allowed-from-here',
        `“${title}” has no adapter to choose: ${now.says} Nothing was changed.`,
        {
          field: 'adapter',
          accepted: 'a connection that an adapter joins',
        },
      );
    }
    const adapter = adapters[input.adapter];
    if (adapter === undefined) {
      throw new Refusal('bad-input', `There is no adapter number ${input.adapter}. Nothing was changed.`, {
        field: 'adapter',
        accepted: `a number from 0 to ${adapters.length - 1}`,
      });
    }
    const before = (record['adapter'] as unknown as Chosen)?.parts ?? [];
    const parts = exchange(writer, Number(record.build), input.on, before, adapter, placeOf(writer.connection, now));
    const pieces = adapter.pieces.map((text) => text.slice(0, 200));
    changeFit(
      writer,
      'connections',
      record,
      input.on,
      { adapter: { pieces, parts } },
      {
        did: `joined by ${pieces.join(', then ')}`,
      },
    );
    return undefined;
  });
}

/** Takes the choice of an adapter back, and from the list what only it brought. */
export function dropAdapter(context: Context, input: Input<'dropAdapter'>): ActResult {
  const record = needStanding(context.book().connection, 'connections', input.connection, 'connection');
  const chosen = record['adapter'] as unknown as Chosen;
  if (chosen === null || chosen.pieces.length === 0) {
    throw new Refusal('not-allowed-from-here', `“${String(record['title'])}” has no adapter. Nothing was changed.`, {
      field: 'connection',
      accepted: 'a connection for which an adapter was chosen',
    });
  }
  return act(context, input, `Adapter taken back, ${String(record['title'])}`, (writer) => {
    for (const part of chosen.parts) takeBack(writer, part, input.on);
    changeFit(writer, 'connections', record, input.on, { adapter: null }, { did: 'adapter taken back' });
    return undefined;
  });
}

/** A line that ends at a side of the connection: its own needs count what the joint takes. */
function lineAt(connection: Connection, { one, other }: JudgedConnection): string | undefined {
  const ports = [one.port, other.port].filter((port) => port !== null);
  return ports
    .flatMap((port) =>
      listRecords(connection, 'hoseLines', 'retired_on IS NULL AND (from_port = ? OR to_port = ?)', port, port),
    )
    .map(({ name }) => String(name))[0];
}

/**
 * Puts what a connection that mates needs besides its two sides on the parts list. What this connection brought before
 * stays, so that nothing is doubled by asking again; what it no longer needs goes.
 * @throws Refusal `not-allowed-from-here` when it doesn't mate, needs nothing, or a line counts its needs already
 */
export function listNeeds(context: Context, input: Input<'listNeeds'>): ActResult {
  const record = needStanding(context.book().connection, 'connections', input.connection, 'connection');
  const title = String(record['title']);
  return act(context, input, `What ${title} needs`, (writer) => {
    const now = judged(writer.connection, record);
    const { verdict, needs } = now.fit;
    const refuse = (message: string, accepted: string): Refusal =>
      new Refusal('not-allowed-from-here', `${message} Nothing was changed.`, { field: 'connection', accepted });
    if (verdict !== 'mates' || needs.length === 0) {
      throw refuse(
        verdict === 'mates'
          ? `“${title}” needs nothing besides its two sides.`
          : `“${title}” does not mate: ${now.says}`,
        'a connection that mates and needs a washer, sealant or the like',
      );
    }
    const line = lineAt(writer.connection, now);
    if (line !== undefined) {
      throw refuse(
        `The line “${line}” ends here and counts this among its own needs.`,
        'what the lines need, in Plumbing',
      );
    }
    const chosen = record['adapter'] as unknown as Chosen;
    const wanted = { pieces: [], needs };
    const parts = exchange(
      writer,
      Number(record.build),
      input.on,
      chosen?.parts ?? [],
      wanted,
      placeOf(writer.connection, now),
    );
    if (chosen !== null && chosen.pieces.length === 0 && chosen.parts.join() === parts.join()) {
      writer.notices.push('Everything that it needs is on the list already.');
    }
    const did = `needs on the list: ${needs.join(', ')}`;
    changeFit(writer, 'connections', record, input.on, { adapter: { pieces: [], parts } }, { did });
    return undefined;
  });
}

/** Takes back from the list what only this connection needed. @throws Refusal when nothing of it was put there */
export function unlistNeeds(context: Context, input: Input<'unlistNeeds'>): ActResult {
  const record = needStanding(context.book().connection, 'connections', input.connection, 'connection');
  const chosen = record['adapter'] as unknown as Chosen;
  const title = String(record['title']);
  if (chosen === null || chosen.pieces.length > 0) {
    throw new Refusal('not-allowed-from-here', `“${title}” has put nothing on the list. Nothing was changed.`, {
      field: 'connection',
      accepted: 'a connection whose needs were put on the list',
    });
  }
  return act(context, input, `What ${title} needs, taken back`, (writer) => {
    for (const part of chosen.parts) takeBack(writer, part, input.on);
    changeFit(writer, 'connections', record, input.on, { adapter: null }, { did: 'needs taken back from the list' });
    return undefined;
  });
}

const tableOf = { connection: 'connections', 'declared-fit': 'declaredFits' } as const;

/** Whether it is wrong now, what it says, and what an acceptance would be for. */
function standsNow(connection: Connection, kind: keyof typeof tableOf, record: RecordValuesRow) {
  if (kind === 'connection') {
    const { fit, says, acceptFor } = judged(connection, record);
    return { wrong: fit.verdict !== 'mates' && fit.verdict !== 'unknown', says, acceptFor };
  }
  const { context } = buildFits(connection, Number(record.build), undefined);
  const { outcome, says, acceptFor } = judgeDeclared(keptDeclaredFit(record), context);
  return { wrong: outcome === 'fail', says, acceptFor };
}

/**
 * Accepts a wrong fit with a reason, for what its sides are now.
 * @throws Refusal `not-allowed-from-here` for a fit that isn't wrong
 */
export function acceptFit(context: Context, input: Input<'accept'>): ActResult {
  const { connection } = context.book();
  const { kind, id } = input.subject;
  const record = needStanding(connection, tableOf[kind], id, 'subject');
  const { wrong, says, acceptFor } = standsNow(connection, kind, record);
  if (!wrong) {
    throw new Refusal('not-allowed-from-here', `There is nothing to accept: ${says} Nothing was changed.`, {
      field: 'subject',
      accepted: 'a fit that is wrong; one that lacks something can be waived in the hoist check',
    });
  }
  return act(context, input, `Acceptance of ${String(record['title'])}`, (writer) => {
    const accepted = { reason: input.reason, by: input.by, on: input.on, for: acceptFor } satisfies Acceptance;
    changeFit(
      writer,
      tableOf[kind],
      record,
      input.on,
      { accepted },
      {
        did: 'accepted although it does not fit',
        reason: input.reason,
        by: input.by,
      },
    );
    return undefined;
  });
}

/** Ends an acceptance: the fit counts as wrong again. */
export function endAcceptance(context: Context, input: Input<'endAcceptance'>): ActResult {
  const { kind, id } = input.subject;
  const record = needStanding(context.book().connection, tableOf[kind], id, 'subject');
  if (record['accepted'] === null) {
    throw new Refusal('not-allowed-from-here', `“${String(record['title'])}” was not accepted. Nothing was changed.`, {
      field: 'subject',
      accepted: 'a fit that was accepted',
    });
  }
  return act(context, input, `End of the acceptance of ${String(record['title'])}`, (writer) => {
    changeFit(writer, tableOf[kind], record, input.on, { accepted: null }, { did: 'no longer accepted' });
    return undefined;
  });
}
