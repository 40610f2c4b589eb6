/** What a fact is called, and how it is written. */
export interface FactName {
  readonly path: string;
  readonly label: string;
  readonly sort: 'count' | 'length' | 'range' | 'text' | 'port' | 'list' | 'pressure' | 'temperature' | 'number';
}

const rows: readonly (readonly [string, string, FactName['sort']])[] = [
  ['head.bore_centres', 'the bore centres of the head', 'length'],
  ['block.bore_centres', 'the bore centres of the block', 'length'],
  ['head.bolt_holes', 'the count of bolt holes of the head', 'count'],
  ['block.bolt_holes', 'the count of head bolt holes of the block', 'count'],
  ['head_bolt.port', 'the thread of the head bolt', 'port'],
  ['block.head_bolt_port', 'the thread of the head bolt hole in the block', 'port'],
  ['gasket.bore', 'the bore of the head gasket', 'length'],
  ['gasket.fire_ring_limit', 'the largest bore that the fire ring seals', 'length'],
  ['block.bore', 'the cylinder bore', 'length'],
  ['block.cooling', 'the cooling of the block (water or air)', 'text'],
  ['head.coolant_ports', 'the count of coolant ports of the head', 'count'],
  ['block.coolant_ports', 'the count of coolant ports of the block', 'count'],
  ['sensor.range', 'the range of the pressure sensor', 'range'],
  ['plan.boost', 'the manifold pressure planned', 'pressure'],
  ['injector.connector', 'the connector of the injector', 'port'],
  ['loom.injector_connector', 'the injector connector of the loom', 'port'],
  ['rod.width', 'the width of the rod at its big end', 'length'],
  ['plan.rod_side_clearance', 'the side clearance of the rods', 'length'],
  ['crank.journal_width', 'the width of the rod journal', 'length'],
  ['crank.rods_per_journal', 'the count of rods on one journal', 'count'],
  ['turbo.inlet_pattern', 'the hole pattern of the turbine inlet', 'port'],
  ['manifold.outlet_pattern', 'the hole pattern of the manifold outlet', 'port'],
  ['flywheel.bolts', 'the count of bolt holes of the flywheel', 'count'],
  ['crank.flywheel_bolts', 'the count of flywheel bolts of the crank', 'count'],
  ['spark_plug.port', 'the thread of the spark plug', 'port'],
  ['head.spark_plug_port', 'the thread of the spark plug hole', 'port'],
  ['spark_plug.reach', 'the reach of the spark plug', 'length'],
  ['head.spark_plug_reach', 'the reach that the head wants', 'length'],
  ['spark_plug.seat', 'the seat of the spark plug (flat or taper)', 'text'],
  ['head.spark_plug_seat', 'the spark plug seat of the head (flat or taper)', 'text'],
  ['bolt.engagement_in_diameters', 'the engaged thread in bolt diameters', 'number'],
  ['bolt.into', 'what the bolt goes into (steel, cast iron, aluminium)', 'text'],
  ['bolt.property_class', 'the property class of the bolt', 'text'],
  ['joint.classes_allowed', 'the property classes allowed', 'list'],
  ['pulley.ribs', 'the ribs of the pulley', 'count'],
  ['belt.ribs', 'the ribs of the belt', 'count'],
  ['timing_belt.teeth', 'the teeth of the timing belt', 'count'],
  ['engine.timing_belt_teeth', 'the teeth that the engine wants', 'count'],
  ['throttle_body.bore', 'the bore of the throttle body', 'length'],
  ['plenum.opening', 'the opening of the plenum', 'length'],
  ['thermostat.opens_at', 'the temperature at which the thermostat opens', 'temperature'],
  ['plan.thermostat_range', 'the range in which it should open', 'range'],
  ['fuel_hose.fluids', 'the fluids that the fuel hose is made for', 'list'],
  ['plan.fuel', 'the fuel', 'text'],
  ['part.side', 'the side that the part is made for', 'text'],
  ['place.side', 'the side of its place', 'text'],
];

/** The facts that the shipped checks ask for. */
export const factNames: readonly FactName[] = rows.map(([path, label, sort]) => ({ path, label, sort }));

/** What a fact is called in a message; undefined for facts of one's own checks. */
export const factName = (path: string): string | undefined => factNames.find((one) => one.path === path)?.label;
