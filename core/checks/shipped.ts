/** The checks that ship, as data. The builder adds those that suit; each can be changed like one of the builder's own. */
import { fact, target, typed } from './figures.ts';
import type { CheckLimit, CheckPlan, CheckSource } from './source.ts';

export interface ShippedCheck extends CheckPlan {
  /** Never changes once it has shipped. */
  readonly shipped: string;
  readonly about: string;
}

const common = 'common practice, no published source';
const byMaker = 'by the maker of the part';

/** A limit; 50 thousandths of it are called close where nothing else is said. */
function held(limit: {
  readonly least?: number | CheckSource;
  readonly most?: number | CheckSource;
  readonly unit: string;
  readonly source?: string;
  readonly closeMilli?: number;
}): CheckLimit {
  const { least, most, unit, source = '', closeMilli = 50 } = limit;
  return {
    least: typeof least === 'number' ? least : null,
    most: typeof most === 'number' ? most : null,
    unit,
    closeMilli,
    source,
    ...(typeof least === 'object' ? { leastFrom: least } : {}),
    ...(typeof most === 'object' ? { mostFrom: most } : {}),
  };
}

const engine = { bore: target('engine bore'), stroke: target('engine stroke') };
const power = {
  power: target('power'),
  bsfc: target('fuel consumption'),
  afr: target('air to fuel'),
  displacement: target('displacement'),
  rpm: target('power rpm'),
  ve: target('volumetric efficiency'),
  charge_temp: target('charge temperature'),
  baro: target('ambient pressure'),
};
const hose = {
  inside_diameter: target('fuel hose bore'),
  length: fact('fuel hose', 'length'),
  density: target('fuel density'),
  viscosity: target('fuel viscosity'),
};
const wire = (kind: string, consumer: string) => ({
  current: fact(consumer, 'current'),
  one_way_length: fact(kind, 'wire length'),
  supply: target('battery volts'),
  conductor_temp: target('wire temperature'),
  area: fact(kind, 'cross-section'),
  ground_return: typed(true, '', 'the way back is as long; safe when the body carries it'),
});
const shells = (kind: string) => ({
  inputs: { bearing_bore: fact(kind, 'bearing bore'), journal: fact(kind, 'journal') },
  limit: held({
    least: fact(kind, 'least clearance'),
    most: fact(kind, 'most clearance'),
    unit: 'mm',
    source: byMaker,
  }),
});

export const shippedChecks: readonly ShippedCheck[] = [
  {
    shipped: 'displacement',
    title: 'Displacement',
    about: 'Bore, stroke and cylinders of the parts, against the class or the paper.',
    calculator: 'B1',
    inputs: { ...engine, cylinders: target('cylinder count') },
    output: 'displacement',
    limit: held({ least: target('least displacement'), most: target('most displacement'), unit: 'cc', closeMilli: 2 }),
  },
  {
    shipped: 'compression-ratio',
    title: 'Compression ratio',
    about: 'Static ratio of piston, gasket, deck and chamber, against what fuel and boost allow.',
    calculator: 'B2',
    inputs: {
      ...engine,
      gasket_bore: fact('head gasket', 'gasket bore'),
      gasket_thickness: fact('head gasket', 'gasket thickness'),
      deck_clearance: target('engine deck clearance'),
      piston_dish: fact('piston', 'piston dish'),
      chamber: fact('cylinder head', 'chamber volume'),
    },
    output: 'compression_ratio',
    limit: held({
      least: target('least compression ratio'),
      most: target('most compression ratio'),
      unit: '-',
      closeMilli: 20,
    }),
  },
  {
    shipped: 'injector-duty',
    title: 'Injectors for the power target',
    about: 'Duty with dead time at the power target, on the worse end of the fuel range.',
    calculator: 'D6',
    inputs: {
      rpm: target('power rpm'),
      dead_time: fact('injector', 'dead time'),
      flow_needed: target('flow needed of an injector'),
      injector_flow: target('injector flow at work'),
    },
    output: 'duty',
    limit: held({ most: target('duty limit'), unit: '%' }),
  },
  {
    shipped: 'pump-flow',
    title: 'Fuel pump at its real pressure',
    about: 'Flow wanted with head-room, against what the pump delivers at base pressure, boost and line loss.',
    calculator: 'D7',
    inputs: {
      power: target('power'),
      bsfc: target('fuel consumption'),
      density: target('fuel density'),
      headroom: target('pump head-room'),
      base_pressure: target('fuel base pressure'),
      boost_gauge: target('boost'),
      line_loss: target('fuel line loss'),
    },
    output: 'pump_flow_required',
    limit: held({ most: target('pump flow at work'), unit: 'L/h' }),
  },
  {
    shipped: 'fuel-line-velocity',
    title: 'Fuel line: velocity',
    about: 'How fast the pump’s whole flow runs in the feed hose.',
    calculator: 'D8',
    inputs: { flow: target('pump flow at work'), ...hose },
    output: 'velocity',
    limit: held({ most: 6, unit: 'm/s', source: 'hydraulic guides, 15 to 20 ft/s in pressure lines' }),
  },
  {
    shipped: 'fuel-line-drop',
    title: 'Fuel line: pressure drop',
    about: 'Drop along the feed hose, against the loss that the pump check allows for.',
    calculator: 'D8',
    inputs: { flow: target('pump flow at work'), ...hose },
    output: 'dp_total',
    limit: held({ most: target('fuel line loss'), unit: 'kPa' }),
  },
  {
    shipped: 'airflow',
    title: 'Airflow for the power target',
    about: 'Air that the power takes, against the most that the compressor moves.',
    calculator: 'C2',
    inputs: power,
    output: 'air_mass_flow',
    limit: held({ most: fact('turbocharger', 'most airflow'), unit: 'lb/min' }),
  },
  {
    shipped: 'boost-for-power',
    title: 'Boost for the power target',
    about: 'Boost that the power takes, against the boost target.',
    calculator: 'C2',
    inputs: power,
    output: 'boost_gauge',
    limit: held({ most: target('boost'), unit: 'bar' }),
  },
  {
    shipped: 'pressure-ratio',
    title: 'Compressor pressure ratio',
    about: 'Ratio with the losses before and after the compressor, against its map.',
    calculator: 'C3',
    inputs: {
      map_abs: target('manifold pressure'),
      baro: target('ambient pressure'),
      inlet_loss: target('inlet loss'),
      charge_loss: target('charge loss'),
    },
    output: 'pressure_ratio',
    limit: held({ most: fact('turbocharger', 'most pressure ratio'), unit: '-' }),
  },
  {
    shipped: 'sensor-range',
    title: 'Manifold pressure sensor range',
    about: 'Whether the sensor sees the boost target with head-room for overshoot and a cut.',
    calculator: 'C8',
    inputs: {
      sensor_full_scale_abs: fact('pressure sensor', 'full scale'),
      boost_gauge: target('boost'),
      baro: target('ambient pressure'),
      headroom: target('sensor head-room'),
    },
    output: 'headroom',
    limit: held({ least: target('sensor head-room'), unit: '%' }),
  },
  {
    shipped: 'charge-temperature',
    title: 'Intercooler outlet temperature',
    about: 'Charge temperature behind the cooler, against the one that the airflow is planned with.',
    calculator: 'C4',
    inputs: {
      inlet_temp: target('ambient temperature'),
      pressure_ratio: target('pressure ratio'),
      efficiency: target('efficiency of the compressor'),
      effectiveness: target('effectiveness of the cooler'),
      coolant_temp: target('ambient temperature'),
    },
    output: 'charge_temp',
    limit: held({ most: target('charge temperature'), unit: 'degC' }),
  },
  {
    shipped: 'charge-pipe',
    title: 'Charge pipe velocity',
    about: 'Mach number in the pipe between cooler and engine.',
    calculator: 'J1',
    inputs: {
      mass_flow: target('airflow'),
      temperature: target('charge temperature'),
      pressure_abs: target('manifold pressure'),
      inside_diameter: target('charge pipe bore'),
      pipe: typed('charge', '', ''),
    },
    output: 'mach',
    limit: held({ most: 0.15, unit: '-', source: common }),
  },
  {
    shipped: 'exhaust-pipe',
    title: 'Exhaust pipe velocity',
    about: 'Mach number in the pipe behind the turbine.',
    calculator: 'J1',
    inputs: {
      mass_flow: target('exhaust flow'),
      temperature: target('exhaust temperature'),
      pressure_abs: target('exhaust pressure'),
      inside_diameter: target('exhaust pipe bore'),
      gas_constant: typed(289, 'J/kg/K', 'burned gas, Heywood, from memory'),
      gamma: typed(1.34, '-', 'burned gas, Heywood, from memory'),
      pipe: typed('exhaust', '', ''),
    },
    output: 'mach',
    limit: held({ most: 0.35, unit: '-', source: common }),
  },
  {
    shipped: 'oil-drain',
    title: 'Turbo oil drain: size and slope',
    about: 'How full the drain runs at its smallest slope; more than half backs oil up into the turbocharger.',
    calculator: 'E4',
    inputs: {
      flow: target('turbo oil flow here'),
      inside_diameter: target('oil drain bore'),
      slope: fact('oil drain', 'slope'),
      density: target('oil density'),
      viscosity: target('oil viscosity'),
    },
    output: 'capacity_ratio',
    limit: held({ most: 50, unit: '%', source: common }),
  },
  {
    shipped: 'oil-drain-bore',
    title: 'Turbo oil drain: bore',
    about: 'The bore of the drain, against the least that turbochargers drain through.',
    calculator: 'A7',
    inputs: { value: target('oil drain bore') },
    output: 'result',
    limit: held({ least: 12.7, unit: 'mm', source: common }),
  },
  {
    shipped: 'coolant-flow',
    title: 'Coolant flow',
    about: 'Flow that full power asks for, at the upper end of its band, against what the water pump moves.',
    calculator: 'J3',
    inputs: {
      brake_power: target('power'),
      coolant_to_brake_ratio: target('coolant heat to power'),
      coolant_density: target('coolant density'),
      coolant_cp: target('coolant heat capacity'),
      coolant_rise: target('coolant rise'),
    },
    output: 'coolant_flow_high',
    limit: held({ most: fact('water pump', 'coolant flow'), unit: 'L/min' }),
  },
  {
    shipped: 'belt-teeth',
    title: 'Timing belt: tooth count',
    about: 'Cam sprocket with twice the teeth of the crank sprocket.',
    calculator: 'H1',
    inputs: {
      crank_teeth: fact('timing belt', 'crank teeth'),
      cam_teeth: fact('timing belt', 'cam teeth'),
      belt_teeth: fact('timing belt', 'belt teeth'),
    },
    output: 'ratio_ok',
    limit: held({ least: 1, unit: '', source: 'definition: the cam turns once in two turns of the crank' }),
  },
  {
    shipped: 'piston-speed',
    title: 'Mean piston speed',
    about: 'At the rev limit.',
    calculator: 'B1',
    inputs: { ...engine, cylinders: target('cylinder count'), rpm: target('rev limit') },
    output: 'mean_piston_speed',
    limit: held({ most: target('most piston speed'), unit: 'm/s' }),
  },
  {
    shipped: 'piston-to-wall',
    title: 'Piston to wall',
    about: 'Finished bore less piston, against the clearance of the piston’s maker.',
    calculator: 'G2',
    inputs: { bore: fact('block', 'bore'), piston: fact('piston', 'piston diameter') },
    output: 'clearance',
    limit: held({
      least: fact('piston', 'least clearance'),
      most: fact('piston', 'most clearance'),
      unit: 'mm',
      source: byMaker,
    }),
  },
  {
    shipped: 'ring-gap',
    title: 'Ring end gap',
    about: 'Gap that the ring’s maker asks for, against the smallest that was measured.',
    calculator: 'G3',
    inputs: { bore: target('engine bore'), factor: fact('piston ring set', 'gap to bore') },
    output: 'target_gap',
    limit: held({ most: fact('piston ring set', 'ring gap'), unit: 'mm', source: byMaker }),
  },
  {
    shipped: 'main-bearing-clearance',
    title: 'Main bearing clearance',
    about: 'Bore with the shells in less journal, against the limits of the maker.',
    calculator: 'G1',
    ...shells('main bearing set'),
    output: 'clearance',
  },
  {
    shipped: 'big-end-clearance',
    title: 'Big end bearing clearance',
    about: 'Bore with the shells in less journal, against the limits of the maker.',
    calculator: 'G1',
    ...shells('big end bearing set'),
    output: 'clearance',
  },
  {
    shipped: 'thread-engagement',
    title: 'Thread engagement',
    about: 'Engagement at which the bolt breaks before the thread strips, against what there is.',
    calculator: 'F7',
    inputs: {
      diameter: target('bolt diameter'),
      pitch: target('bolt pitch'),
      bolt_strength: fact('bolt', 'bolt strength'),
      hole_strength: fact('bolt', 'hole strength'),
    },
    output: 'engagement_required',
    limit: held({ most: fact('bolt', 'engagement'), unit: 'mm' }),
  },
  {
    shipped: 'pump-wire',
    title: 'Fuel pump wire: voltage drop',
    about: 'Drop along the feed of the pump, there and back.',
    calculator: 'K2',
    inputs: { ...wire('fuel pump wire', 'fuel pump'), feeds_fuel_pump: typed(true, '', '') },
    output: 'drop_fraction',
    limit: held({ most: 3, unit: '%', source: common }),
  },
  {
    shipped: 'pump-fuse',
    title: 'Fuel pump fuse',
    about: 'Fuse that the pump’s current asks for, against what its wire carries.',
    calculator: 'K3',
    inputs: { continuous_current: fact('fuel pump', 'current'), wire_rating: fact('fuel pump wire', 'wire rating') },
    output: 'fuse',
    limit: held({ most: fact('fuel pump wire', 'wire rating'), unit: 'A', closeMilli: 0 }),
  },
  {
    shipped: 'fan-wire',
    title: 'Fan wire: voltage drop',
    about: 'Drop along the feed of the fan, there and back.',
    calculator: 'K2',
    inputs: wire('fan wire', 'fan'),
    output: 'drop_fraction',
    limit: held({ most: 3, unit: '%', source: common }),
  },
  {
    shipped: 'fan-fuse',
    title: 'Fan fuse',
    about: 'Fuse that the fan’s current asks for, against what its wire carries.',
    calculator: 'K3',
    inputs: { continuous_current: fact('fan', 'current'), wire_rating: fact('fan wire', 'wire rating') },
    output: 'fuse',
    limit: held({ most: fact('fan wire', 'wire rating'), unit: 'A', closeMilli: 0 }),
  },
];

export const shippedCheck = (slug: string): ShippedCheck | undefined =>
  shippedChecks.find(({ shipped }) => shipped === slug);
