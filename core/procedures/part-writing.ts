import { checkFacts, checkKind } from '../checks/read-fact.ts';
import type { PartValues } from '../contract/parts.ts';
import type { PayloadValue } from '../ledger/entry.ts';
import { Refusal } from '../refusal.ts';
import { isCountable, isUnit, units } from '../units/quantity.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { foldText } from '../workbook/store/folded-text.ts';
import { needRecord, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { checkLinks } from './record-checks.ts';

export type NewPart = { [K in keyof PartValues]?: PartValues[K] | undefined } & {
  readonly description: string;
  readonly needMilli: number;
  readonly importKey?: string;
};

/** What a part line starts with where nothing is typed. */
export const partDefaults: Omit<PartValues, 'description' | 'needMilli'> = {
  partNumber: '',
  maker: '',
  link: '',
  unit: 'each',
  system: null,
  phase: null,
  job: null,
  vendor: null,
  priority: 3,
  neededBy: null,
  optional: false,
  needsVerification: false,
  stretchOnce: false,
  attention: '',
  note: '',
  kind: '',
  facts: [],
  estimateEachE4: null,
};

/** What a search for parts looks through. */
function foldedOf(values: object): string {
  const { description, partNumber, maker, note, facts: given } = values as Record<string, unknown>;
  const facts = Array.isArray(given)
    ? (given as { key: string; value: string; unit: string }[]).map(({ key, value, unit }) => `${key} ${value} ${unit}`)
    : [];
  return foldText([description, partNumber, maker, note, ...facts].map((text) => String(text ?? '')).join(' '));
}

/** The kind as the vocabulary spells it; facts of a line that has one must be what the vocabulary says. */
function checkTold(kind: unknown, facts: unknown): string {
  const named = checkKind(String(kind ?? ''));
  if (named !== '' && Array.isArray(facts)) checkFacts(facts as { key: string; value: string; unit: string }[]);
  return named;
}

function checkUnit(unit: unknown, needMilli: number | undefined): void {
  if (typeof unit !== 'string') return;
  if (!isUnit(unit)) {
    throw new Refusal('bad-input', `“${unit}” is not a unit that the workbook knows. Nothing was changed.`, {
      field: 'unit',
      accepted: `one of ${units.join(', ')}`,
    });
  }
  if (needMilli !== undefined && isCountable(unit) && needMilli % 1000 !== 0) {
    throw new Refusal('bad-input', `${needMilli / 1000} ${unit} can't be counted. Nothing was changed.`, {
      field: 'needMilli',
      accepted: 'a whole number for things that are counted, or a unit such as m, L or kg',
    });
  }
}

/** Adds a part line: its record and the entry that lists its need are one. Returns its id. */
export function addPart(writer: ActWriter, build: number, on: string, given: NewPart): number {
  const typed = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as NewPart;
  const values = { ...partDefaults, ...typed };
  checkUnit(values.unit, values.needMilli);
  const kind = checkTold(values.kind, values.facts);
  checkLinks(writer.connection, build, values);
  const { needMilli, estimateEachE4, ...record } = values;
  const made = writer.make('parts', { ...record, kind, build, folded: foldedOf(values) });
  writer.post(
    {
      kind: 'need-added',
      on,
      build,
      part: made.id,
      quantityMilli: needMilli,
      ...(estimateEachE4 === null || estimateEachE4 === undefined ? {} : { payload: { estimateEachE4 } }),
    },
    [made.edit],
  );
  return made.id;
}

/** Changes what was typed about a line; need and estimate go through the ledger, the rest through a record entry. */
export function changePart(
  writer: ActWriter,
  record: RecordValuesRow,
  on: string,
  values: { readonly [K in keyof PartValues]?: PartValues[K] | undefined },
): void {
  const build = Number(record.build);
  const { needMilli, estimateEachE4, ...typed } = values;
  checkUnit(values.unit ?? record['unit'], needMilli);
  if (typed.kind !== undefined || typed.facts !== undefined) {
    const kind = checkTold(typed.kind ?? record['kind'], typed.facts ?? record['facts']);
    if (typed.kind !== undefined) typed.kind = kind;
  }
  checkLinks(writer.connection, build, typed);
  const given = Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== undefined)) as Record<
    string,
    PayloadValue
  >;
  if (Object.keys(given).length > 0) {
    const edit = writer.change('parts', record.id, { ...given, folded: foldedOf({ ...record, ...given }) });
    if (edit !== undefined) {
      const changed = Object.keys(edit.after).filter((name) => name !== 'folded');
      writer.post(
        {
          kind: 'record',
          on,
          build,
          part: record.id,
          payload: { record: 'part line', did: `changed (${changed.join(', ')})` },
        },
        [edit],
      );
    }
  }
  const state = writer.state(record.id);
  const need = needMilli !== undefined && needMilli !== state.needMilli ? { needMilli } : {};
  const estimate = estimateEachE4 !== undefined && estimateEachE4 !== state.estimateEachE4 ? { estimateEachE4 } : {};
  if (Object.keys(need).length + Object.keys(estimate).length > 0) {
    writer.post({ kind: 'need-changed', on, build, part: record.id, payload: { ...need, ...estimate } });
  }
}

/** A part line that stands and takes entries. @throws Refusal `not-found`, `retired`. */
export function needPart(writer: ActWriter, part: number, build?: number): RecordValuesRow {
  const record = needRecord(writer.connection, 'parts', part, 'part');
  if (build !== undefined && record.build !== build) {
    throw new Refusal('bad-input', `Part line ${part} belongs to another build. Nothing was changed.`, {
      field: 'part',
      accepted: 'a part line of this build',
    });
  }
  if (record.retiredOn !== null) {
    throw new Refusal('retired', `“${String(record['description'])}” was dropped from the list. Nothing was changed.`, {
      field: 'part',
      accepted: 'a part line that is on the list',
    });
  }
  return record;
}
