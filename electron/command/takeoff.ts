import { readFileSync } from 'node:fs';
import { trimMm } from '../../core/plumbing/bill.ts';
import type { HosePlan } from '../../core/plumbing/cut-list.ts';
import { isData } from '../../core/plumbing/fields.ts';
import type { LineNeed } from '../../core/plumbing/needs.ts';
import { toTenth } from '../../core/plumbing/round.ts';
import { cutToleranceSource } from '../../core/plumbing/tables/cut-tolerance.ts';
import { type TakeOff, takeOffCaution } from '../../core/plumbing/take-off.ts';
import { readTakeOffSet } from '../../core/plumbing/take-off-set.ts';
import { needExisting } from './open.ts';
import { exitCodes, type Given, type Room, UsageError, type Verb } from './verb.ts';

const wanted =
  'Give JSON such as {"route":"straight","length":620,"c1":32,"c2":32,"hose_type":"100R5 -8","fluid":"engine oil"}.';

function textOf(given: Given, room: Room): string {
  const from = given.text('in');
  if (from === undefined) throw new UsageError(`takeoff needs --in FILE, or --in - to read standard input. ${wanted}`);
  if (from === '-') return room.input === undefined ? readFileSync(0, 'utf8') : room.input();
  return readFileSync(needExisting(room, from, 'The line'), 'utf8');
}

function readJson(text: string): Readonly<Record<string, unknown>> {
  let said: unknown;
  try {
    said = JSON.parse(text);
  } catch (error) {
    throw new UsageError(`This is not JSON: ${error instanceof Error ? error.message : String(error)}. ${wanted}`);
  }
  // A bare list is a list of lines.
  if (Array.isArray(said)) return { lines: said };
  if (!isData(said)) throw new UsageError(`This is no line. ${wanted}`);
  // As calculators are asked: the fields may stand in `inputs`.
  const { inputs, ...rest } = said;
  return isData(inputs) ? { ...rest, ...inputs } : said;
}

const tenth = (value: number | undefined): number | undefined => (value === undefined ? undefined : toTenth(value));

/** One line in the words of its JSON; figures that the route doesn't have are left out. */
function lineData({ line, hose, lengths, bend, clocking, joints, checks, verdict, bill, making, notes }: TakeOff) {
  const [first, second] = bend?.leads ?? [];
  return {
    id: line.id,
    name: line.name,
    route: line.path.route,
    hose: hose.label,
    quantity: line.quantity,
    path_mm: toTenth(lengths.pathMm),
    free_hose_mm: toTenth(lengths.freeHoseMm),
    cut_exact_mm: toTenth(lengths.cutExactMm),
    cut_mm: lengths.cutMm,
    spare_mm: trimMm,
    tolerance_mm: lengths.toleranceText,
    tolerance_plus_minus_mm: toTenth(lengths.toleranceMm),
    tolerance_source: cutToleranceSource,
    contraction: lengths.contraction,
    inside_radius_mm: tenth(bend?.insideRadiusMm),
    min_bend_radius_mm: bend?.minBendRadiusMm,
    bend: bend?.verdict,
    bend_close: bend === undefined ? undefined : bend.close,
    bend_text: bend?.message,
    min_free_hose_mm: tenth(bend?.minFreeHoseMm),
    ...(line.path.route === 'corner' ? { lead1: first, lead2: second } : {}),
    ...(line.path.route === 'offset' ? { leads: first } : {}),
    advice: bend?.advice ?? [],
    clocking: clocking.applies
      ? { clock_deg: clocking.clockDeg, tolerance_deg: clocking.toleranceDeg, text: clocking.text }
      : undefined,
    joints: joints.map(({ end, from, to, verdict: fits, reason, needs, adapters }) => ({
      end,
      from,
      to,
      verdict: fits,
      reason,
      needs,
      adapters,
    })),
    verdict,
    checks,
    bill: bill.map(({ kind, text, quantityMilli, unit }) => ({
      item: text,
      kind,
      quantity: quantityMilli / 1000,
      unit,
    })),
    making,
    notes,
  };
}

const needData = ({ text, kind, unit, neededMilli, onListMilli, fromStockMilli, toOrderMilli }: LineNeed) => ({
  item: text,
  kind,
  unit,
  needed: neededMilli / 1000,
  on_list: onListMilli / 1000,
  from_stock: fromStockMilli / 1000,
  order: toOrderMilli / 1000,
});

const planData = ({ hose, lengths, unplaced, ...sums }: HosePlan) => ({
  hose,
  lengths: lengths.map(({ from, id, lengthMm, cuts, usedMm, restMm, rest }) => ({
    from,
    id,
    length_mm: lengthMm,
    cuts: cuts.map((cut) => ({ line: cut.id, taken_mm: cut.lengthMm })),
    used_mm: usedMm,
    rest_mm: restMm,
    rest,
  })),
  unplaced: unplaced.map((cut) => ({ line: cut.id, taken_mm: cut.lengthMm })),
  bought_mm: sums.boughtMm,
  bought_at_least_mm: sums.boughtAtLeastMm,
  stock_used_mm: sums.stockUsedMm,
  waste_mm: sums.wasteMm,
  kept_mm: sums.keptMm,
  waste_share: Number(sums.wasteShare.toFixed(4)),
  proven_best: sums.proven,
});

export const takeoff: Verb = {
  name: 'takeoff',
  summary: 'take a hose line off: lengths, checks, what to order, cut list; JSON in, JSON out',
  usage: '',
  options: { in: { type: 'string' } },
  optionHelp: [
    ['--in FILE', 'the line, or {"lines": [...]}, as JSON; - reads standard input'],
    ['  route', 'straight or measured: length; u: spacing; corner: a, b, r; offset: x, y, r'],
    ['  ends', 'c1, c2, or end1 and end2 {cutoff_mm, angle, style, port, swivel, max_bar, bore_mm}; clock_deg'],
    ['  hose', 'hose_type, dash, od, bore_mm, rmin, k, move, tube_material, hose_class, hose_max_bar, hose_max_C'],
    ['  line', 'fluid, service, pressure_bar, vacuum_bar, temp_max_C, ambient_max_C, flow_l_min, from_port, to_port'],
    ['  more', 'quantity, sleeve, clip_spacing_mm, adapters, drain {housing_hole_mm, min_slope_deg, …}'],
    [
      '  beside',
      'in_stock and on_list [{item, quantity}], hose_stock [{hose_type, length_mm}], sold_lengths_mm, kerf_mm',
    ],
    ['  units', 'mm, bar, °C, degrees; text may carry another: "24 in"'],
  ],
  examples: ['takeoff --in drain.json', 'takeoff --in - < lines.json'],
  takes: [0, 0],
  speaksJson: () => true,
  refusedExit: exitCodes.usage,
  async run(given, room) {
    const data = readJson(textOf(given, room));
    const { lines, needs, cutList } = readTakeOffSet(data);
    const shared = { needs: needs.map(needData), cut_list: cutList.map(planData), caution: takeOffCaution };
    const [only] = lines;
    return {
      lines: [],
      data:
        Object.hasOwn(data, 'lines') || only === undefined
          ? { lines: lines.map(lineData), ...shared }
          : { ...lineData(only), ...shared },
    };
  },
};
