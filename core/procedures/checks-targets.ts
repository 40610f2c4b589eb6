import type { z } from 'zod';
import { plainKey } from '../checks/fact-terms.ts';
import { sourcesOfFigure } from '../checks/figures.ts';
import type { CheckSource } from '../checks/source.ts';
import { checkTarget, targetTerms } from '../checks/target-terms.ts';
import type { checksContract, TargetRow } from '../contract/checks.ts';
import type { ActResult } from '../contract/common.ts';
import { unitsOf } from '../units/measure.ts';
import type { KeptCheck, WorkedBuild } from '../workbook/store/checks.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { act, type Context, counted } from './context.ts';
import { changeRecord, createRecord } from './records.ts';

/** Names that a source reads from the target sheet, and those that the figures behind it read. */
function namesBehind(source: CheckSource, seen: Set<string>): void {
  if (source.from !== 'target') return;
  const name = plainKey(source.target);
  if (seen.has(name)) return;
  seen.add(name);
  for (const one of sourcesOfFigure(name)) namesBehind(one, seen);
}

function namesRead({ inputs, limit }: KeptCheck): Set<string> {
  const seen = new Set<string>();
  for (const source of Object.values(inputs)) namesBehind(source, seen);
  for (const source of [limit.leastFrom, limit.mostFrom]) if (source !== undefined) namesBehind(source, seen);
  return seen;
}

/** The target sheet: its vocabulary with what is filled in, and the builder's own lines after it. */
export function targetRows({ targets, checks }: WorkedBuild): TargetRow[] {
  const reads = checks.map(namesRead);
  const uses = (name: string): number => reads.filter((names) => names.has(plainKey(name))).length;
  const lineOf = (name: string) => targets.find((line) => plainKey(String(line['name'])) === name);
  const known = new Set(targetTerms.map(({ name }) => name));
  const rows = targetTerms.map((term): TargetRow => {
    const line = lineOf(term.name);
    const hint =
      term.assumed === undefined
        ? term.hint
        : [
            term.hint,
            `while empty ${term.assumed.value}${term.unit === '-' ? '' : ` ${term.unit}`} is taken: ${term.assumed.source}`,
          ]
            .filter((text) => text !== '')
            .join('; ');
    return {
      id: line?.id ?? null,
      revision: line?.revision ?? null,
      name: term.name,
      label: term.label,
      hint,
      value: String(line?.['value'] ?? ''),
      unit: line === undefined ? (term.unit === '-' ? '' : term.unit) : String(line['unit'] ?? ''),
      units: unitsOf(term.dimension).filter((unit) => unit !== '-'),
      source: String(line?.['source'] ?? ''),
      note: String(line?.['note'] ?? ''),
      uses: uses(term.name),
    };
  });
  const own = targets
    .filter((line) => !known.has(plainKey(String(line['name']))))
    .map(
      (line): TargetRow => ({
        id: line.id,
        revision: line.revision,
        name: String(line['name']),
        label: String(line['name']),
        hint: '',
        value: String(line['value']),
        unit: String(line['unit'] ?? ''),
        units: [],
        source: String(line['source'] ?? ''),
        note: String(line['note'] ?? ''),
        uses: uses(String(line['name'])),
      }),
    );
  return [...rows, ...own];
}

type SetTargets = z.infer<NonNullable<(typeof checksContract.setTargets)['~orpc']['inputSchema']>>;

/** Fills in, changes and takes off lines of the target sheet, all in one act or none. */
export function setTargets(context: Context, input: SetTargets): ActResult {
  for (const { name, value, unit } of input.targets) if (value !== '') checkTarget(name, value, unit);
  const [only] = input.targets;
  const label =
    input.targets.length === 1 && only !== undefined
      ? `Target ${only.name}`
      : `Change of ${counted(input.targets.length, 'target')}`;
  return act(context, input, label, (writer) => {
    for (const { name, value, unit, source } of input.targets) {
      const line = listRecords(writer.connection, 'targets', 'build = ? AND retired_on IS NULL', input.build).find(
        (one) => plainKey(String(one['name'])) === plainKey(name),
      );
      if (line === undefined) {
        if (value !== '') createRecord(writer, 'target', input.build, input.on, { name, value, unit, source });
      } else if (value !== '') {
        changeRecord(writer, 'target', line, input.on, { value, unit, source });
      } else {
        const edit = writer.change('targets', line.id, { retiredOn: input.on });
        writer.post(
          {
            kind: 'record',
            on: input.on,
            build: input.build,
            payload: { record: 'target', id: line.id, did: 'retired', name: String(line['name']) },
          },
          edit === undefined ? [] : [edit],
        );
      }
    }
    return undefined;
  });
}
