/**
 * The buying plan as a small mixed-integer program, for a gate that is given: which need in which week, so that the floor
 * is never broken. Solved in three steps: most nice-to-haves, least spent, then soonest by priority.
 */
import { type Constraint, type Model, type Solution, type SolutionStatus, solve } from 'yalps';
import {
  type BuyingInput,
  isMust,
  niceValue,
  type OrderWeeks,
  priceInWeek,
  weeksToConsider,
  weighPlan,
} from './buying-plan.ts';
import { weeksForGate } from './buying-plan-quick.ts';

/**
 * Work after which the solver gives up: steps of branching times the size of the table. A count, not a clock, so that the
 * answer repeats on every machine; it comes to about a second.
 */
const mostWork = 6_000_000;
/** A simplex that takes more steps than this goes round in circles. */
const mostPivots = 1500;

export type ModelAnswer =
  | { readonly status: 'solved'; readonly weeks: OrderWeeks }
  | { readonly status: 'none' }
  | { readonly status: 'gave-up' };

type Coefficients = Map<string, number>;

/**
 * The best plan for a gate in `gateWeek`, or that there is none, or that the solver gave up. Most nice-to-haves and least
 * spending are proven then; which of equally cheap plans is soonest is proven too, unless that last step gave up.
 * @param known a plan that keeps this gate and the floor: nothing worse is looked at.
 */
export function solveForGate(input: BuyingInput, gateWeek: number, known: OrderWeeks | null): ModelAnswer {
  const musts = input.items.filter(isMust);
  const candidates = weeksToConsider(input);
  if (musts.some((item) => weeksForGate(item, candidates, gateWeek).length === 0)) return { status: 'none' };
  const model = build(input, gateWeek);
  const size = (model.constraints.size + model.binaries.size) * model.variables.size;
  const steps = Math.max(20, Math.round(mostWork / Math.max(1, size)));
  const ask = (objective: string, direction: 'minimize' | 'maximize') => {
    const whole: Model<string, string> = {
      direction,
      objective,
      constraints: model.constraints,
      variables: model.variables,
      binaries: model.binaries,
    };
    return solve(whole, { maxIterations: steps, maxPivots: mostPivots });
  };
  const figures = known === null ? null : weighPlan(input, known);
  let weeks = known;
  const hold = (key: string, constraint: Constraint): void => {
    model.constraints.set(key, constraint);
  };

  if (input.items.some((item) => !isMust(item))) {
    if (figures !== null) hold('nice', { min: figures.niceValue - 1e-6 });
    const most = ask('nice', 'maximize');
    if (most.status !== 'optimal') return unsolved(most.status);
    hold('nice', { min: most.result - 1e-6 });
    if (figures === null || most.result > figures.niceValue + 1e-6) weeks = null;
  }
  if (figures !== null && weeks !== null) hold('spend', { max: figures.spendMinor / scale + 1e-6 });
  const least = ask('spend', 'minimize');
  if (least.status !== 'optimal') return unsolved(least.status);
  if (figures === null || weeks === null || least.result < figures.spendMinor / scale - 1e-6) weeks = chosen(least);
  else hold('weighted', { max: figures.weightedWeeks + 1e-6 });
  hold('spend', { max: least.result + 1e-6 });
  const soonest = ask('weighted', 'minimize');
  return { status: 'solved', weeks: soonest.status === 'optimal' ? chosen(soonest) : weeks };

  function chosen(answer: Solution<string>): OrderWeeks {
    const orders = new Map<string, number>();
    for (const [name, value] of answer.variables) {
      const choice = model.orders.get(name);
      if (choice !== undefined && value > 0.5) orders.set(choice.id, choice.week);
    }
    return orders;
  }
}

function unsolved(status: SolutionStatus): ModelAnswer {
  return { status: status === 'infeasible' ? 'none' : 'gave-up' };
}

/** Money is counted in hundreds of minor units inside the solver, which likes its numbers near one another. */
const scale = 100;

function build(input: BuyingInput, gateWeek: number) {
  const candidates = weeksToConsider(input);
  const constraints = new Map<string, Constraint>();
  const variables = new Map<string, Coefficients>();
  const binaries = new Set<string>();
  const orders = new Map<string, { id: string; week: number }>();
  const add = (variable: string, key: string, amount: number): void => {
    const coefficients = variables.get(variable) ?? new Map<string, number>();
    coefficients.set(key, (coefficients.get(key) ?? 0) + amount);
    variables.set(variable, coefficients);
  };

  // What may have been spent up to each week: the least that is above the floor until the next week considered.
  let cash = input.openingMinor - input.floorMinor;
  const room: number[] = [];
  for (let week = 0; week <= input.lastWeek; week += 1) {
    cash += input.cashMinor[week] ?? 0;
    if (candidates.includes(week)) room.push(cash);
    else room[room.length - 1] = Math.min(room.at(-1) as number, cash);
  }
  candidates.forEach((week, index) => {
    constraints.set(`cash ${week}`, { max: (room[index] as number) / scale });
  });
  const spend = (variable: string, week: number, minor: number): void => {
    add(variable, 'spend', minor / scale);
    for (const later of candidates) if (later >= week) add(variable, `cash ${later}`, minor / scale);
  };

  for (const item of input.items) {
    constraints.set(`once ${item.id}`, isMust(item) ? { equal: 1 } : { max: 1 });
    for (const week of weeksForGate(item, candidates, gateWeek)) {
      const order = `order ${item.id} ${week}`;
      orders.set(order, { id: item.id, week });
      binaries.add(order);
      add(order, `once ${item.id}`, 1);
      add(order, 'nice', niceValue(item));
      add(order, 'weighted', item.priority * week);
      spend(order, week, priceInWeek(item, week));
      add(order, `goods ${item.vendor} ${week}`, priceInWeek(item, week) / scale);
      addShipping(order, item.id, item.vendor, week);
    }
  }
  for (const index of (input.priceBreaks ?? []).keys()) addBreak(index);
  return { constraints, variables, binaries, orders };

  function addShipping(order: string, id: string, vendorId: string, week: number): void {
    const vendor = input.vendors.find((each) => each.id === vendorId);
    if (vendor === undefined || vendor.shippingMinor === 0 || vendor.freeFromMinor === 0) return;
    const sent = `sent ${vendorId} ${week}`;
    // Paying for shipping, or reaching the limit, for each need of the order.
    const key = `ship ${id} ${week}`;
    constraints.set(key, { max: 0 });
    add(order, key, 1);
    add(sent, key, -1);
    if (!binaries.has(sent)) {
      binaries.add(sent);
      spend(sent, week, vendor.shippingMinor);
    }
    const goods = input.items.reduce((sum, item) => sum + (item.vendor === vendorId ? item.priceMinor : 0), 0);
    if (vendor.freeFromMinor === null || goods < vendor.freeFromMinor) return;
    const free = `free ${vendorId} ${week}`;
    add(free, key, -1);
    if (!binaries.has(free)) {
      binaries.add(free);
      constraints.set(`goods ${vendorId} ${week}`, { min: 0 });
      add(free, `goods ${vendorId} ${week}`, -vendor.freeFromMinor / scale);
    }
  }

  /** Reached exactly when enough is ordered together: the lower prices then count, wanted or not. */
  function addBreak(index: number): void {
    const each = (input.priceBreaks ?? [])[index];
    if (each === undefined) return;
    const items = input.items.filter((item) => each.priceMinor[item.id] !== undefined);
    const most = items.reduce((sum, item) => sum + (item.quantityMilli ?? 0), 0);
    for (const week of candidates) {
      const reached = `break ${index} ${week}`;
      const saving = items.flatMap((item) => {
        const order = `order ${item.id} ${week}`;
        const saved = priceInWeek(item, week) - (each.priceMinor[item.id] as number);
        return orders.has(order) ? [{ item, order, saved: Math.max(0, saved) }] : [];
      });
      if (saving.length === 0) continue;
      binaries.add(reached);
      constraints.set(`enough ${reached}`, { min: 0 });
      constraints.set(`short ${reached}`, { max: (each.fromQuantityMilli - 1) / 1000 });
      add(reached, `enough ${reached}`, -each.fromQuantityMilli / 1000);
      add(reached, `short ${reached}`, -most / 1000);
      for (const { item, order, saved } of saving) {
        add(order, `enough ${reached}`, (item.quantityMilli ?? 0) / 1000);
        add(order, `short ${reached}`, (item.quantityMilli ?? 0) / 1000);
        if (saved === 0) continue;
        const both = `both ${index} ${item.id} ${week}`;
        for (const limit of [order, reached]) {
          constraints.set(`${both} ${limit}`, { max: 0 });
          add(both, `${both} ${limit}`, 1);
          add(limit, `${both} ${limit}`, -1);
        }
        constraints.set(`${both} all`, { max: 1 });
        add(order, `${both} all`, 1);
        add(reached, `${both} all`, 1);
        add(both, `${both} all`, -1);
        spend(both, week, -saved);
        add(both, `goods ${item.vendor} ${week}`, -saved / scale);
      }
    }
  }
}
