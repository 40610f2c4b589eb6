import type { DemoConnection, DemoDeclaredFit } from '../types.ts';

/** What has to join, by the slugs of its ports; a text in quotes that is no slug is typed for something not on the list. */
export const connections: readonly DemoConnection[] = [
  {
    title: 'Oil pressure sensor in the main gallery',
    one: 'pressure-sensor-thread',
    other: 'block-pressure',
    medium: 'engine oil',
  },
  {
    title: 'Coolant temperature sensor in the housing',
    one: 'coolant-sensor-thread',
    other: 'housing-sensor',
    medium: 'coolant',
  },
  { title: 'Oil filter on the remote head', one: 'filter-thread', other: 'filter-head-spigot', medium: 'engine oil' },
  { title: 'Drain flange on the turbo', one: 'drain-flange', other: 'turbo-oil-drain', medium: 'engine oil drain' },
  { title: 'Water banjo on the turbo', one: 'water-kit-banjo', other: 'turbo-water-in', medium: 'coolant' },
  { title: 'Turbo on the manifold', one: 'turbo-inlet', other: 'manifold-outlet', role: 'gas', medium: 'exhaust' },
  { title: 'Head studs in the block', one: 'stud-thread', other: 'block-stud', role: 'fastener' },
  { title: 'Flywheel bolts in the crank', one: 'flywheel-bolt-thread', other: 'crank-bolt', role: 'fastener' },
  {
    title: 'Breather hose on the catch tank',
    one: 'catch-tank-in',
    typed: 'hose 19 mm',
    role: 'gas',
    medium: 'breather',
  },
  // Found while the switch is still on the list: it must not be ordered as it stands.
  { title: 'Fan switch in the radiator', one: 'fan-switch-thread', other: 'radiator-switch', medium: 'coolant' },
  {
    title: 'Catch tank drain hose',
    one: 'catch-tank-drain',
    typed: 'hose 16 mm',
    medium: 'engine oil drain',
    beforeGate: false,
    note: 'The adapter has to be chosen.',
  },
  {
    title: 'Knock sensor on the block',
    one: 'knock-thread',
    other: 'block-knock',
    role: 'fastener',
    beforeGate: false,
    note: 'Stud or bolt? The sheet doesn’t say.',
  },
];

/** Fits that aren't threads, from those that ship. Figures are invented, like the engine. */
export const declaredFits: readonly DemoDeclaredFit[] = [
  {
    shipped: 'gasket_bore',
    title: 'Head gasket clears the cylinder',
    things: { gasket: 'head-gasket', block: 'block' },
    values: [['gasket.fire_ring_limit', '88.5', 'mm']],
  },
  {
    shipped: 'head_bolt_thread',
    title: 'Thread of head stud and block',
    things: { head_bolt: 'head-studs', block: 'block' },
    values: [],
  },
  {
    shipped: 'spark_plug',
    title: 'Spark plug and head',
    things: { spark_plug: 'plugs', head: 'head' },
    values: [
      ['spark_plug.reach', '19', 'mm'],
      ['head.spark_plug_reach', '19', 'mm'],
      ['spark_plug.seat', 'flat'],
      ['head.spark_plug_seat', 'flat'],
    ],
  },
  {
    shipped: 'map_sensor_range',
    title: 'Pressure sensor covers the boost planned',
    things: { sensor: 'map-sensor' },
    values: [],
  },
  {
    shipped: 'thermostat_range',
    title: 'Thermostat opens where it should',
    things: { thermostat: 'thermostat' },
    values: [['plan.thermostat_range', '80 to 88', 'degC']],
  },
];
