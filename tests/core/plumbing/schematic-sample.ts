import type { Lack, SchematicFacts, SchematicLine, SchematicPort } from '../../../core/plumbing/schematic.ts';

/** A plumbing of 25 lines with long names, returns, two lines to nowhere and a port that carries two. Invented. */

const bends: Lack = {
  kind: 'wrong',
  short: 'Bend radius',
  text: 'Bend radius: 42 mm on the way is tighter than the 51 mm that the hose allows.',
};
const lacksPressure: Lack = { kind: 'missing', short: 'Not known: pressure', text: 'Enter the working pressure.' };

type Row = readonly [string, string, string, string, string, SchematicLine['standing'], ...Lack[]];
const rows: readonly Row[] = [
  ['Tank to lift pump', 'E85', '100R14 -8', 'Fuel tank/outlet', 'Lift pump/inlet', 'made'],
  ['Lift pump to swirl pot', 'E85', '100R14 -6', 'Lift pump/outlet', 'Swirl pot/feed', 'made'],
  ['Swirl pot to main pump', 'E85', '100R14 -8', 'Swirl pot/outlet', 'Main pump/inlet', 'not made'],
  ['Main pump to filter', 'E85', '100R14 -6', 'Main pump/outlet', 'Fuel filter/inlet', 'not made'],
  ['Filter to rail', 'E85', '100R14 -6', 'Fuel filter/outlet', 'Fuel rail/inlet', 'unfit', bends],
  ['Rail to regulator', 'E85', '100R14 -6', 'Fuel rail/outlet', 'Fuel pressure regulator/inlet', 'not made'],
  ['Regulator return', 'E85', '100R14 -6', 'Fuel pressure regulator/return', 'Swirl pot/return', 'not made'],
  ['Swirl pot overflow', 'E85', '100R14 -6', 'Swirl pot/overflow', 'Fuel tank/return', 'not made'],
  [
    'Regulator reference',
    'vacuum',
    '4 mm silicone',
    'Intake manifold/reference',
    'Fuel pressure regulator/reference',
    'not made',
  ],
  [
    'Turbocharger oil feed',
    'engine oil',
    '100R14 -4',
    'Block/oil gallery',
    'Turbocharger/oil inlet',
    'unfit',
    bends,
    lacksPressure,
  ],
  ['Turbocharger oil drain', 'engine oil', '100R6 -10', 'Turbocharger/oil drain', 'Sump/drain return', 'not made'],
  ['Filter head to cooler', 'engine oil', '100R5 -10', 'Oil filter head/to cooler', 'Oil cooler/inlet', 'not made'],
  ['Cooler to filter head', 'engine oil', '100R5 -10', 'Oil cooler/outlet', 'Oil filter head/from cooler', 'not made'],
  [
    'Turbocharger coolant feed',
    'coolant',
    'heater hose 13',
    'Block/coolant feed',
    'Turbocharger/coolant inlet',
    'not made',
  ],
  [
    'Turbocharger coolant return',
    'coolant',
    'heater hose 13',
    'Turbocharger/coolant outlet',
    'Water pump/turbo return',
    'not made',
  ],
  ['Top radiator hose', 'coolant', 'moulded 38 mm', 'Thermostat housing/outlet', 'Radiator/top', 'made'],
  ['Bottom radiator hose', 'coolant', 'moulded 38 mm', 'Radiator/bottom', 'Water pump/inlet', 'made'],
  ['Heater feed', 'coolant', 'heater hose 16', 'Head/heater outlet', 'Heater core/inlet', 'made'],
  ['Heater return', 'coolant', 'heater hose 16', 'Heater core/outlet', 'Water pump/heater return', 'made'],
  ['Overflow to expansion tank', 'coolant', 'heater hose 8', 'Radiator/overflow', 'Expansion tank/inlet', 'not made'],
  [
    'Turbocharger to charge cooler',
    'boost air',
    'silicone 63 mm',
    'Turbocharger/compressor outlet',
    'Charge cooler/inlet',
    'not made',
  ],
  [
    'Charge cooler to throttle',
    'boost air',
    'silicone 70 mm',
    'Charge cooler/outlet',
    'Throttle body/inlet',
    'not made',
  ],
  ['Wastegate signal', 'boost air', '4 mm silicone', 'Turbocharger/signal', 'Wastegate actuator/port', 'not made'],
  ['Breather to catch can', 'crankcase vapour', '100R6 -10', 'Valve cover/breather', '', 'not made', lacksPressure],
  ['Brake servo vacuum', 'vacuum', 'vacuum hose 10', 'Intake manifold/reference', 'Brake servo/vacuum', 'not made'],
];

const onEngine = new Set(['Block', 'Head', 'Sump', 'Valve cover']);
const standings: Readonly<Record<string, string>> = {
  Turbocharger: 'back-ordered',
  'Oil cooler': 'needed',
  'Charge cooler': 'wrong',
  Radiator: 'fitted',
};

function sample(): SchematicFacts {
  const owners = new Map<string, number>();
  const ports = new Map<string, SchematicPort>();
  const port = (text: string): number | null => {
    const [owner = '', name = ''] = text.split('/');
    if (owner === '') return null;
    const part = onEngine.has(owner) ? null : (owners.get(owner) ?? owners.size + 1);
    if (part !== null) owners.set(owner, part);
    const known = ports.get(text) ?? {
      id: ports.size + 1,
      name,
      part,
      place: part === null ? owner.toLowerCase() : '',
      flows: true,
      text: 'JIC -6 (9/16-18 UNF) male',
      problem: '',
    };
    ports.set(text, known);
    return known.id;
  };
  const lines = rows.map(([name, fluid, hose, from, to, standing, ...wrong], at) => ({
    id: at + 1,
    name,
    fluid,
    hose,
    from: port(from),
    to: port(to),
    standing,
    wrong,
  }));
  port('Turbocharger/actuator drain');
  return {
    parts: [...owners].map(([title, id]) => ({
      id,
      title,
      standing: standings[title] ?? 'in hand',
      standingText: `1 needed: 1 ${standings[title] ?? 'in hand'}`,
    })),
    ports: [...ports.values()],
    lines,
    joints: [],
  };
}

export const sampleFacts = sample();
