import type { PartAct, PartActInput } from '../contract/parts.ts';
import { partActs } from '../contract/parts.ts';
import { room, uncovered } from '../ledger/coverage.ts';
import type { EntryDraft, EntryPayload, LotSource } from '../ledger/entry.ts';
import { chooseLots, type LotPick } from '../ledger/lot-choice.ts';
import { available, type UnitMoveKind } from '../ledger/moves.ts';
import type { PartState } from '../ledger/part-state.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { needPart } from './part-writing.ts';

/** Acts that bring units in without an order, and where the lot then says that they came from. */
const sources: Partial<Record<PartAct, LotSource>> = {
  own: 'owned',
  donor: 'donor',
  borrow: 'borrowed',
  find: 'found',
  make: 'made',
};

const moveOf: Partial<Record<PartAct, UnitMoveKind>> = {
  accept: 'accepted',
  reject: 'rejected',
  'send back': 'sent-back',
  allocate: 'allocated',
  release: 'released',
  'trial-fit': 'trial-fitted',
  fit: 'fitted',
  'take off': 'taken-off',
  snug: 'snugged',
  verify: 'verified',
  withdraw: 'verification-withdrawn',
  lend: 'lent',
  'come back': 'came-back',
  'give back': 'given-back',
  lose: 'lost',
  'find again': 'found-again',
  scrap: 'scrapped',
  'use up': 'consumed',
};

/** What an act is called in the journal and on the undo button. */
export const actNouns: Record<PartAct, string> = {
  own: 'Own stock',
  donor: 'Donor parts',
  borrow: 'Borrowing',
  find: 'Find',
  make: 'Own making',
  accept: 'Acceptance',
  reject: 'Rejection',
  'send back': 'Return',
  bin: 'Binning',
  allocate: 'Setting aside',
  release: 'Release',
  'trial-fit': 'Trial fit',
  fit: 'Fitting',
  'take off': 'Taking off',
  snug: 'Snugging',
  verify: 'Final check',
  withdraw: 'Withdrawal of the final check',
  lend: 'Lending',
  'come back': 'Coming back',
  'give back': 'Giving back',
  lose: 'Loss',
  'find again': 'Turning up',
  scrap: 'Scrapping',
  'use up': 'Use',
  'settle by exchange': 'Exchange',
};

/** Most units that an act could move on a part line as it stands; 0 = not possible now. */
export function mostOf(state: PartState, partAct: PartAct): number {
  if (sources[partAct] !== undefined) return Math.max(uncovered(state), 0);
  if (partAct === 'settle by exchange') return available(state, 'exchanged');
  const kind = moveOf[partAct];
  if (kind === undefined) return available(state, 'lost');
  const here = available(state, kind);
  return kind === 'fitted' ? Math.min(here, Math.max(0, room(state))) : here;
}

/** The acts that make sense on a part line now, each with the most units. */
export function possibleActs(state: PartState): { act: PartAct; mostMilli: number }[] {
  return partActs
    .map((partAct) => ({ act: partAct, mostMilli: mostOf(state, partAct) }))
    .filter(({ act: partAct, mostMilli }) => mostMilli > 0 || sources[partAct] !== undefined);
}

const given = <K extends string>(key: K, value: string | number | null | undefined): EntryPayload =>
  value === undefined || value === null || value === '' ? {} : { [key]: value };

function bringIn(writer: ActWriter, input: PartActInput, item: PartActInput['items'][number], source: LotSource): void {
  const { part } = item;
  if (source === 'borrowed' && ((input.owner ?? '') === '' || input.dueOn === undefined || input.dueOn === null)) {
    const missing = (input.owner ?? '') === '' ? 'owner' : 'dueOn';
    throw new Refusal('bad-input', 'A borrowed part needs its owner and the day it is due back. Nothing was changed.', {
      field: missing,
      accepted: missing === 'owner' ? 'the name of the owner' : 'the day it is due back',
    });
  }
  const state = writer.state(part);
  const wanted = item.quantityMilli ?? Math.max(uncovered(state), source === 'borrowed' ? state.needMilli : 0);
  if (wanted <= 0) {
    throw new Refusal(
      'not-allowed-from-here',
      'Everything that is needed is in hand or on the way; say how many came in. Nothing was changed.',
      {
        field: 'quantityMilli',
        accepted: 'a quantity above zero',
        detail: { bucket: 'uncovered', available: 0 },
      },
    );
  }
  const bin = input.bin ?? null;
  const lot = writer.make('lots', {
    part,
    build: state.build,
    source,
    owner: input.owner ?? '',
    dueOn: input.dueOn ?? null,
    bin,
    cameInOn: input.on,
  });
  const binEdit = bin === null ? undefined : writer.change('parts', part, { bin });
  writer.post(
    {
      kind: 'came-in',
      on: input.on,
      build: state.build,
      part,
      lot: lot.id,
      quantityMilli: wanted,
      ...(input.valueMinor === undefined ? {} : { amountMinor: input.valueMinor }),
      ...(input.note === undefined ? {} : { note: input.note }),
      payload: {
        source,
        ...given('owner', input.owner),
        ...given('dueOn', input.dueOn),
        ...given('reason', input.reason),
      },
    },
    binEdit === undefined ? [lot.edit] : [lot.edit, binEdit],
  );
}

/** Which units an act takes: the lot asked for, else oldest first; all that it could move when no quantity is given. */
function picksFor(
  state: PartState,
  partAct: PartAct,
  kind: UnitMoveKind | 'exchanged',
  item: PartActInput['items'][number],
): LotPick[] {
  const only = item.lot === undefined ? state : { ...state, lots: state.lots.filter(({ lot }) => lot === item.lot) };
  const most = mostOf(only, partAct);
  const quantity = item.quantityMilli ?? most;
  return chooseLots(state, kind, quantity > 0 ? quantity : 1000, item.lot === undefined ? {} : { lot: item.lot });
}

function move(writer: ActWriter, input: PartActInput, item: PartActInput['items'][number], kind: UnitMoveKind): void {
  const state = writer.state(item.part);
  if (kind === 'rejected' && input.rejectReason === undefined) {
    throw new Refusal('needs-reason', 'Say why the part is rejected. Nothing was changed.', {
      field: 'rejectReason',
      accepted: 'wrong part, faulty, transit damage or wrong quantity',
    });
  }
  for (const pick of picksFor(state, input.act, kind, item)) {
    const payload: EntryPayload = {
      from: pick.from,
      ...given(
        'to',
        kind === 'accepted' ? (input.to ?? 'shelf') : kind === 'taken-off' ? (input.to ?? 'allocated') : undefined,
      ),
      ...given('reason', kind === 'rejected' ? input.rejectReason : input.reason),
      ...given('by', input.by),
      ...given('owner', kind === 'lent' ? input.owner : undefined),
      ...given('dueOn', kind === 'lent' ? input.dueOn : undefined),
      ...given('torqueMilliNm', kind === 'verified' ? input.torqueMilliNm : undefined),
    };
    const draft: EntryDraft = {
      kind,
      on: input.on,
      build: state.build,
      part: item.part,
      lot: pick.lot,
      quantityMilli: pick.quantityMilli,
      ...(input.note === undefined ? {} : { note: input.note }),
      payload,
    };
    const bin =
      kind === 'accepted' && input.bin !== undefined && input.bin !== null
        ? writer.change('parts', item.part, { bin: input.bin })
        : undefined;
    writer.post(draft, bin === undefined ? [] : [bin]);
  }
}

function exchange(writer: ActWriter, input: PartActInput, item: PartActInput['items'][number]): void {
  const state = writer.state(item.part);
  for (const pick of picksFor(state, input.act, 'exchanged', item)) {
    const lot = state.lots.find(({ lot: id }) => id === pick.lot);
    if (lot === undefined || lot.line === 0) continue;
    const order = state.lines.find(({ line }) => line === lot.line)?.order;
    writer.post({
      kind: 'exchanged',
      on: input.on,
      build: state.build,
      part: item.part,
      lot: pick.lot,
      line: lot.line,
      ...(order === undefined ? {} : { order }),
      quantityMilli: pick.quantityMilli,
      ...(input.note === undefined ? {} : { note: input.note }),
      payload: { ...given('reason', input.reason), ...given('promisedOn', input.dueOn) },
    });
  }
}

function putInBin(writer: ActWriter, input: PartActInput, item: PartActInput['items'][number]): void {
  const bin = input.bin ?? null;
  if (bin !== null) needRecord(writer.connection, 'bins', bin, 'bin');
  const edits = [
    writer.change('parts', item.part, { bin }),
    ...(item.lot === undefined ? [] : [writer.change('lots', item.lot, { bin })]),
  ].filter((edit) => edit !== undefined);
  if (edits.length === 0) return;
  const name = bin === null ? 'no bin' : String(needRecord(writer.connection, 'bins', bin)['name']);
  writer.post(
    {
      kind: 'put-in-bin',
      on: input.on,
      build: input.build,
      part: item.part,
      ...(item.lot === undefined ? {} : { lot: item.lot }),
      payload: { to: name },
    },
    edits,
  );
}

/** Does one act on each item; all or none. */
export function doPartAct(writer: ActWriter, input: PartActInput): void {
  for (const item of input.items) {
    const record = needPart(writer, item.part, input.build);
    try {
      const source = sources[input.act];
      const kind = moveOf[input.act];
      if (source !== undefined) bringIn(writer, input, item, source);
      else if (input.act === 'bin') putInBin(writer, input, item);
      else if (input.act === 'settle by exchange') exchange(writer, input, item);
      else if (kind !== undefined) move(writer, input, item, kind);
    } catch (error) {
      if (error instanceof Refusal && input.items.length > 1) {
        throw new Refusal(error.code, `“${String(record['description'])}”: ${error.message}`, {
          ...(error.field === undefined ? {} : { field: error.field }),
          ...(error.accepted === undefined ? {} : { accepted: error.accepted }),
          detail: { ...error.detail, part: item.part },
        });
      }
      throw error;
    }
  }
}
