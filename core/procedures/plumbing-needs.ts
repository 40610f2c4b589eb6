import type { LineNeedRow, PlumbingView } from '../contract/plumbing.ts';
import { type BillItem, itemKey } from '../plumbing/bill.ts';
import { cutListOf, type HoseCut, type HosePlan, type HoseStock, takenMm } from '../plumbing/cut-list.ts';
import type { CutEffort } from '../plumbing/cutting.ts';
import { describeHose, splitHoseText } from '../plumbing/hose.ts';
import { type ListedNeed, type ListedPart, needsOnList } from '../plumbing/list-needs.ts';
import { plainQuantity } from '../units/quantity.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { hoseLengths, type ListedPartRow, listedParts } from '../workbook/store/plumbing.ts';
import { remembered } from '../workbook/store/remembered.ts';
import { counted } from './context.ts';
import type { WorkedLine } from './plumbing-lines.ts';

/** A need with the lines that ask for it. */
export interface NeedOfLines extends ListedNeed {
  readonly lines: readonly WorkedLine[];
}

export interface NeedsAndCuts {
  readonly needs: readonly NeedOfLines[];
  readonly cutList: PlumbingView['cutList'];
  /** Lines of which the cut list takes a hose from a length at hand. */
  readonly atHand: ReadonlySet<number>;
}

/** A cut list holds so many hoses; of a type with more, the sum of the lengths is bought. */
const mostCopies = 300;
/** Of so many hoses all that can be tried is tried; with more, somebody waits for the page. */
const triedInFull = 24;
const brief: CutEffort = { searchSteps: 10_000, improveRounds: 20 };

/** Cut lists already worked out: most acts leave cuts and lengths as they are. */
const mostKept = 50;
const keptPlans = new Map<string, readonly HosePlan[]>();

function planOf(cuts: readonly HoseCut[], stock: readonly HoseStock[]): readonly HosePlan[] {
  const key = JSON.stringify([cuts, stock]);
  const before = keptPlans.get(key);
  if (before !== undefined) return before;
  const pieces = cuts.reduce((sum, { count }) => sum + count, 0);
  const plans = cutListOf(cuts, stock, pieces <= triedInFull ? {} : { effort: brief });
  if (keptPlans.size >= mostKept) keptPlans.delete(keptPlans.keys().next().value as string);
  keptPlans.set(key, plans);
  return plans;
}

const units: Readonly<Record<string, BillItem['unit']>> = { each: 'piece', m: 'm' };

function listedPart({ id, description, unit, position }: ListedPartRow, said: readonly string[]): ListedPart[] {
  const spoken = units[unit];
  if (spoken === undefined) return [];
  const { placedMilli, acknowledgedMilli, backOrderedMilli, inTransitMilli } = position;
  const shelfMilli = position.inspectionMilli + position.shelfMilli + position.allocatedMilli;
  const onEngine = position.trialMilli + position.fittedMilli + position.snugMilli + position.verifiedMilli;
  const coming = placedMilli + acknowledgedMilli + backOrderedMilli + inTransitMilli;
  return [
    {
      id,
      keys: new Set([description, ...said].map(itemKey)),
      unit: spoken,
      needMilli: position.needMilli,
      // What is borrowed goes back to its owner.
      coveredMilli: coming + shelfMilli + onEngine + position.lentMilli - position.borrowedMilli,
      shelfMilli,
    },
  ];
}

interface Ready {
  readonly worked: WorkedLine;
  readonly takeOff: Extract<WorkedLine['planned'], { ready: true }>['takeOff'];
}

const readyOf = (lines: readonly WorkedLine[]): readonly Ready[] =>
  lines.flatMap((worked) => (worked.planned.ready ? [{ worked, takeOff: worked.planned.takeOff }] : []));

/** The cut list of what isn't cut yet, out of the lengths at hand. */
function plansOf(connection: Connection, ready: readonly Ready[]): readonly HosePlan[] {
  const cuts = ready.flatMap(({ worked, takeOff: { line, hose, lengths } }) => {
    const count = line.quantity - (worked.made?.cut.length ?? 0);
    return count === 0 ? [] : [{ hose: itemKey(hose.label), line: String(worked.id), cutMm: lengths.cutMm, count }];
  });
  const copies = Map.groupBy(cuts, ({ hose }) => hose);
  const planned = cuts.filter(
    ({ hose }) => (copies.get(hose) ?? []).reduce((sum, { count }) => sum + count, 0) <= mostCopies,
  );
  const stock = hoseLengths(connection).flatMap(({ id, hose, boreMm, lengthMm, count }) => {
    const { type, dash } = splitHoseText(hose);
    const { label } = describeHose({ type, dash, ...(boreMm === null ? {} : { boreMm }) });
    const most = (copies.get(itemKey(label)) ?? []).reduce((sum, one) => sum + one.count, 0);
    // More of one length than there are hoses to cut is of no use.
    const used = Math.min(count, most);
    return used === 0 ? [] : [{ id: String(id), hose: itemKey(label), lengthMm, count: used }];
  });
  // One kind of hose after the other, so that a change of one leaves the others as they were.
  return [...new Set(planned.map(({ hose }) => hose))].flatMap((hose) =>
    planOf(
      planned.filter((cut) => cut.hose === hose),
      stock.filter((length) => length.hose === hose),
    ),
  );
}

/** Hose to have on the parts list by the key of its bill item, in mm: what is bought, and what was cut of it already. */
function wantedHose(ready: readonly Ready[], plans: readonly HosePlan[]): ReadonlyMap<string, number> {
  const wanted = new Map<string, number>();
  for (const { worked, takeOff } of ready) {
    const { hose, lengths, line, bill } = takeOff;
    const key = bill.find(({ kind }) => kind === 'hose')?.key ?? '';
    const plan = plans.find((one) => one.hose === itemKey(hose.label));
    const cut = worked.made?.cut ?? [];
    const taken = takenMm(lengths.cutMm);
    const listed =
      cut.filter(({ offList }) => !offList.has(key)).length + (plan === undefined ? line.quantity - cut.length : 0);
    wanted.set(key, (wanted.get(key) ?? plan?.boughtMm ?? 0) + listed * taken);
  }
  return wanted;
}

/** A line's bill, without what went into its copies from outside the list: nothing of that is to be bought. */
function billOfOpen({ worked, takeOff: { line, bill } }: Ready): readonly BillItem[] {
  return bill.flatMap((item) => {
    const used = (item.kind === 'hose' ? worked.made?.cut : worked.made?.finished) ?? [];
    const outside = used.filter(({ offList }) => offList.has(item.key)).length;
    const quantityMilli = (item.quantityMilli / line.quantity) * (line.quantity - outside);
    return quantityMilli === 0 ? [] : [{ ...item, quantityMilli }];
  });
}

const metres = (mm: number): string => `${plainQuantity(mm)} m`;

function cutRow(plan: HosePlan, ready: readonly Ready[]): PlumbingView['cutList'][number] {
  const name = new Map(ready.map(({ worked }) => [String(worked.id), worked.values.name]));
  const label = ready.find(({ takeOff }) => itemKey(takeOff.hose.label) === plan.hose)?.takeOff.hose.label;
  const pieces = plan.lengths.reduce((sum, { cuts }) => sum + cuts.length, 0);
  const atHand = plan.lengths.filter(({ from }) => from === 'stock').length;
  const says = [
    plan.boughtMm === 0 ? 'nothing to buy' : `buy ${metres(plan.boughtMm)}`,
    ...(atHand === 0 ? [] : [`cut ${counted(atHand, 'length')} at hand`]),
    `${plan.wasteMm} mm of waste`,
  ];
  return {
    hose: label ?? plan.hose,
    answer: `${counted(pieces, 'hose')}, each with 25 mm to spare for a second square cut: ${says.join(', ')}.`,
    lengths: plan.lengths.map(({ from, lengthMm, cuts, restMm }) => ({
      from: from === 'bought' ? `bought, ${metres(lengthMm)}` : `${lengthMm.toLocaleString('en')} mm at hand`,
      lengthMm,
      bought: from === 'bought',
      cuts: cuts.map(({ id, lengthMm: cutMm }) => ({ line: name.get(id) ?? '', mm: cutMm })),
      restMm,
    })),
    boughtMm: plan.boughtMm,
    wasteMm: plan.wasteMm,
    proven: plan.proven,
  };
}

/** What the lines need against the parts list and the lengths at hand, and where their hoses are cut from. */
export function needsOfLines(
  connection: Connection,
  build: number,
  lines: readonly WorkedLine[],
  asOf: string | undefined,
): NeedsAndCuts {
  return remembered(connection, `line needs ${build} ${asOf ?? ''}`, () => {
    const ready = readyOf(lines);
    const { parts, billParts } = listedParts(connection, build, asOf);
    const said = Map.groupBy(billParts, ({ part }) => part);
    const listed = parts.flatMap((part) =>
      listedPart(
        part,
        (said.get(part.id) ?? []).map(({ item }) => item),
      ),
    );
    const plans = plansOf(connection, ready);
    const bill = ready.flatMap(billOfOpen);
    const needs = needsOnList(bill, listed, wantedHose(ready, plans));
    return {
      needs: needs.map((need) => ({
        ...need,
        lines: ready.filter((one) => billOfOpen(one).some(({ key }) => key === need.key)).map(({ worked }) => worked),
      })),
      cutList: plans.map((plan) => cutRow(plan, ready)),
      atHand: new Set(
        plans.flatMap(({ lengths }) =>
          lengths.filter(({ from }) => from === 'stock').flatMap(({ cuts }) => cuts.map(({ id }) => Number(id))),
        ),
      ),
    };
  });
}

export const needRow = ({ lines, raises: _, ...need }: NeedOfLines): LineNeedRow => ({
  ...need,
  lines: lines.map(({ values }) => values.name),
});
