import type { z } from 'zod';
import { factTerms, plainKey } from '../checks/fact-terms.ts';
import type { PartKind } from '../checks/part-kinds.ts';
import { proposeFacts, proposeKind } from '../checks/proposals.ts';
import { checkFacts, checkKind, type Fact } from '../checks/read-fact.ts';
import type { checksContract } from '../contract/checks.ts';
import type { ActResult } from '../contract/common.ts';
import { Refusal } from '../refusal.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { listRecords, type RecordValuesRow, readRecord } from '../workbook/store/record-tables.ts';
import { act, type Context } from './context.ts';
import { changePart, needPart } from './part-writing.ts';

type Proposals = z.infer<NonNullable<(typeof checksContract.proposals)['~orpc']['outputSchema']>>;
type SetFacts = z.infer<NonNullable<(typeof checksContract.setFacts)['~orpc']['inputSchema']>>;

const factsOf = (record: RecordValuesRow): readonly Fact[] => (record['facts'] ?? []) as unknown as Fact[];
const text = (record: RecordValuesRow, name: string): string => String(record[name] ?? '').trim();

/**
 * The same part on another build's list: by number and maker where it has a number, else by the very same description.
 * The latest that says anything goes first.
 */
function samePart(connection: Connection, record: RecordValuesRow): RecordValuesRow | undefined {
  const number = text(record, 'partNumber');
  const found =
    number === ''
      ? listRecords(
          connection,
          'parts',
          'build <> ? AND lower(description) = lower(?)',
          record.build,
          text(record, 'description'),
        )
      : listRecords(
          connection,
          'parts',
          'build <> ? AND lower(part_number) = lower(?) AND lower(maker) = lower(?)',
          record.build,
          number,
          text(record, 'maker'),
        );
  return found.findLast((one) => factsOf(one).length > 0 || text(one, 'kind') !== '');
}

/** What could be written down about a part line: from another build first, then what its description says plainly. */
export function factProposals(
  connection: Connection,
  record: RecordValuesRow,
  kindNamed: (name: string) => PartKind | undefined,
): Proposals {
  const has = factsOf(record);
  const own = text(record, 'kind');
  const same = samePart(connection, record);
  const build =
    same?.build === undefined || same.build === null ? undefined : readRecord(connection, 'builds', same.build);
  const because = build === undefined ? '' : `the same part in ${String(build['name'])}`;
  const copied = same === undefined ? '' : text(same, 'kind');
  const read = proposeKind(text(record, 'description'));
  const kind = own !== '' ? own : copied !== '' ? copied : read.kind;
  const had = new Set(has.map(({ key }) => plainKey(key)));
  const facts = (same === undefined ? [] : factsOf(same))
    .filter(({ key }) => !had.has(plainKey(key)))
    .map(({ key, value, unit }) => ({ key, label: factTerms.get(plainKey(key))?.label ?? key, value, unit, because }));
  const taken = [...has, ...facts];
  return {
    kind: own === '' ? kind : '',
    kindBecause: own !== '' ? '' : copied !== '' ? because : read.kind === '' ? '' : `“${read.because}”`,
    facts: [...facts, ...proposeFacts(text(record, 'description'), kindNamed(kind), taken)],
  };
}

/** Sets kind and facts of a part line in one act. */
export function setFacts(context: Context, input: SetFacts): ActResult {
  const kind = checkKind(input.kind);
  checkFacts(input.facts);
  return act(context, input, 'Facts of a part line', (writer) => {
    const record = needPart(writer, input.part);
    if (input.revision !== undefined && record.revision !== input.revision) {
      throw new Refusal(
        'conflict',
        `“${text(record, 'description')}” was changed since you opened it. Nothing was changed; what you typed is kept here.`,
        { field: 'revision', accepted: 'the line as it stands now', detail: { revision: record.revision } },
      );
    }
    changePart(writer, record, input.on, { kind, facts: input.facts.map((fact) => ({ ...fact })) });
    return `Facts of ${text(record, 'description')}`;
  });
}
