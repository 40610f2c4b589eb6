/**
 * Figures that a build works out from its targets and parts on the way to a check, such as the density of the fuel or
 * the air that the power takes. A check names one like a line of the target sheet; a line of that name that somebody
 * typed goes first. Each is a calculator's output, or the first of several places that has an answer.
 */
import type { CheckSource } from './source.ts';

export type FigurePlan =
  /** The first place that has an answer. */
  | { readonly first: readonly CheckSource[] }
  /** One at the blend with the least ethanol, another at that with the most. */
  | { readonly atLeast: CheckSource; readonly atMost: CheckSource }
  | { readonly calculator: string; readonly inputs: Readonly<Record<string, CheckSource>>; readonly output: string }
  | { readonly rule: RuleName; readonly of: Readonly<Record<string, CheckSource>> };

export type RuleName = 'product' | 'sum' | 'pump curve' | 'bore of a pipe' | 'thread diameter' | 'thread pitch';

export const target = (name: string): CheckSource => ({ from: 'target', target: name });
export const fact = (partKind: string, name: string): CheckSource => ({
  from: 'fact',
  fact: name,
  part: null,
  partKind,
});
export const typed = (value: number | string | boolean, unit: string, source: string): CheckSource => ({
  from: 'typed',
  given: { value, unit },
  source,
});

/** Where a figure gets what it is worked out from; nothing for a name that isn't a figure. */
export function sourcesOfFigure(name: string): readonly CheckSource[] {
  const plan = Object.hasOwn(figures, name) ? figures[name] : undefined;
  if (plan === undefined) return [];
  if ('first' in plan) return plan.first;
  if ('atLeast' in plan) return [plan.atLeast, plan.atMost];
  return Object.values('rule' in plan ? plan.of : plan.inputs);
}

const mean = 'the mean flow of one injector is asked for, so it is taken as open all the time';
const powerInputs = {
  power: target('power'),
  bsfc: target('fuel consumption'),
  afr: target('air to fuel'),
  displacement: target('displacement'),
  rpm: target('power rpm'),
  ve: target('volumetric efficiency'),
  charge_temp: target('charge temperature'),
  baro: target('ambient pressure'),
};
const pump = {
  power: target('power'),
  bsfc: target('fuel consumption'),
  density: target('fuel density'),
  headroom: target('pump head-room'),
  base_pressure: target('fuel base pressure'),
  boost_gauge: target('boost'),
  line_loss: target('fuel line loss'),
};
const pipe = (kind: string): FigurePlan => ({
  rule: 'bore of a pipe',
  of: { outside: fact(kind, 'outside diameter'), wall: fact(kind, 'wall thickness') },
});
const dashBore = (kind: string): FigurePlan => ({
  calculator: 'E1',
  inputs: { dash: fact(kind, 'dash size') },
  output: 'tube_equivalent_hose_id',
});

export const figures: Readonly<Record<string, FigurePlan>> = {
  'engine bore': { first: [fact('piston', 'bore'), fact('block', 'bore'), target('bore')] },
  'engine stroke': { first: [fact('crankshaft', 'stroke'), target('stroke')] },
  'cylinder count': { first: [fact('block', 'cylinders'), target('cylinders')] },
  'injector count': { first: [target('injectors'), target('cylinder count')] },
  'engine deck clearance': { first: [fact('block', 'deck clearance'), target('deck clearance')] },
  displacement: {
    calculator: 'B1',
    inputs: { bore: target('engine bore'), stroke: target('engine stroke'), cylinders: target('cylinder count') },
    output: 'displacement',
  },
  ethanol: { atLeast: target('least ethanol'), atMost: target('most ethanol') },
  'fuel consumption': {
    atLeast: target('fuel consumption at least ethanol'),
    atMost: target('fuel consumption at most ethanol'),
  },
  'fuel density': { calculator: 'D1', inputs: { ethanol: target('ethanol') }, output: 'density' },
  'stoichiometric air to fuel': { calculator: 'D1', inputs: { ethanol: target('ethanol') }, output: 'afr_stoich' },
  'air to fuel': { rule: 'product', of: { lambda: target('lambda'), stoich: target('stoichiometric air to fuel') } },
  airflow: { calculator: 'C2', inputs: powerInputs, output: 'air_mass_flow' },
  'manifold pressure': { rule: 'sum', of: { barometer: target('ambient pressure'), boost: target('boost') } },
  'pressure ratio': {
    calculator: 'C3',
    inputs: {
      map_abs: target('manifold pressure'),
      baro: target('ambient pressure'),
      inlet_loss: target('inlet loss'),
      charge_loss: target('charge loss'),
    },
    output: 'pressure_ratio',
  },
  'efficiency of the compressor': {
    first: [fact('turbocharger', 'compressor efficiency'), target('compressor efficiency')],
  },
  'effectiveness of the cooler': { first: [fact('intercooler', 'effectiveness'), target('cooler effectiveness')] },
  'fuel base pressure': { first: [target('base fuel pressure'), fact('fuel pressure regulator', 'base pressure')] },
  'flow needed of an injector': {
    calculator: 'D3',
    inputs: {
      power: target('power'),
      injectors: target('injector count'),
      bsfc: target('fuel consumption'),
      duty: typed(100, '%', mean),
      density: target('fuel density'),
      rated_dp: fact('injector', 'rated pressure'),
      actual_dp: target('fuel base pressure'),
    },
    output: 'injector_flow_at_actual',
  },
  'injector flow at work': {
    calculator: 'D5',
    inputs: {
      flow: fact('injector', 'injector flow'),
      dp: fact('injector', 'rated pressure'),
      new_dp: target('fuel base pressure'),
    },
    output: 'new_flow',
  },
  'pump pressure at work': { calculator: 'D7', inputs: pump, output: 'pump_pressure_gauge' },
  'fuel flow burned': { calculator: 'D7', inputs: pump, output: 'engine_flow' },
  'pump flow at work': {
    rule: 'pump curve',
    of: {
      pressure: target('pump pressure at work'),
      flow: fact('fuel pump', 'pump flow'),
      at: fact('fuel pump', 'pump pressure'),
      secondFlow: fact('fuel pump', 'second pump flow'),
      secondAt: fact('fuel pump', 'second pump pressure'),
    },
  },
  'fuel hose by dash size': dashBore('fuel hose'),
  'fuel hose bore': { first: [fact('fuel hose', 'inside diameter'), target('fuel hose by dash size')] },
  'charge pipe by its wall': pipe('charge pipe'),
  'charge pipe bore': { first: [fact('charge pipe', 'inside diameter'), target('charge pipe by its wall')] },
  'exhaust pipe by its wall': pipe('exhaust pipe'),
  'exhaust pipe bore': { first: [fact('exhaust pipe', 'inside diameter'), target('exhaust pipe by its wall')] },
  'exhaust flow': {
    calculator: 'J2',
    inputs: { air_mass_flow: target('airflow'), afr: target('air to fuel') },
    output: 'exhaust_mass_flow',
  },
  'oil drain by dash size': dashBore('oil drain'),
  'oil drain bore': { first: [fact('oil drain', 'inside diameter'), target('oil drain by dash size')] },
  'turbo oil flow here': { first: [fact('turbocharger', 'oil flow'), target('turbo oil flow')] },
  'bolt diameter by its thread': { rule: 'thread diameter', of: { thread: fact('bolt', 'thread') } },
  'bolt diameter': { first: [fact('bolt', 'nominal diameter'), target('bolt diameter by its thread')] },
  'bolt pitch by its thread': { rule: 'thread pitch', of: { thread: fact('bolt', 'thread') } },
  'bolt pitch': { first: [fact('bolt', 'pitch'), target('bolt pitch by its thread')] },
};
