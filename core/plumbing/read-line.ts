/** A line read from data: a form, a file or the command line. */
import { type Fields, refuseField, refuseMissing } from './fields.ts';
import { splitHoseText } from './hose.ts';
import {
  type DrainFacts,
  endStyles,
  type HoseChoice,
  type Line,
  type LineEnd,
  type Path,
  routes,
  services,
  sleeves,
} from './line.ts';

const length = { dimension: 'length', unit: 'mm', atMost: 1_000_000 } as const;
const some = { ...length, above: 0 } as const;
const any = { ...length, atLeast: 0 } as const;
const angle = { dimension: 'angle', unit: 'deg' } as const;
const celsius = { dimension: 'temperature', unit: 'degC', atLeast: -273.15, atMost: 2000 } as const;
const gauge = { dimension: 'pressureGauge', unit: 'bar', atLeast: 0, atMost: 10_000 } as const;
const share = { dimension: 'number', unit: '-' } as const;

function needed(value: number | undefined, fields: Fields, names: readonly string[], why: string): number {
  if (value !== undefined) return value;
  const [name = ''] = names;
  return refuseMissing(
    fields.said(names),
    `The ${name} is missing: ${why}.`,
    'a number above 0 in mm, or text such as "24 in"',
  );
}

const lengthNames = ['length', 'length_mm'] as const;
const spacingNames = ['spacing', 'spacing_mm'] as const;
const radiusNames = ['r', 'radius', 'radius_mm', 'r_mm'] as const;

function readPath(fields: Fields): Path {
  const route = fields.choice('route', routes);
  const given = {
    length: fields.number(lengthNames, some),
    spacing: fields.number(spacingNames, some),
    a: fields.number(['a', 'a_mm'], some),
    b: fields.number(['b', 'b_mm'], some),
    x: fields.number(['x', 'x_mm'], some),
    y: fields.number(['y', 'y_mm'], some),
    r: fields.number(radiusNames, some),
    turn: fields.number(['turn_deg', 'bend_deg'], { ...angle, atLeast: 0, atMost: 3600 }),
  };
  const need = (value: number | undefined, names: readonly string[], why: string) => needed(value, fields, names, why);
  switch (route) {
    case 'straight':
      return { route, lengthMm: need(given.length, lengthNames, 'it is the way from seat to seat') };
    case 'measured':
      return {
        route,
        lengthMm: need(given.length, lengthNames, 'it is measured with a string or rod along the hose'),
        radiusMm: given.r,
        turnDeg: given.turn,
      };
    case 'u':
      return { route, spacingMm: need(given.spacing, spacingNames, 'it is the distance of the parallel ports') };
    case 'corner':
      return {
        route,
        aMm: need(given.a, ['a'], 'it is the first leg, to where the axes cross'),
        bMm: need(given.b, ['b'], 'it is the second leg, to where the axes cross'),
        radiusMm: need(given.r, radiusNames, 'it is the centre-line radius of the turn'),
      };
    case 'offset':
      return {
        route,
        xMm: need(given.x, ['x'], 'it is the distance along the axis'),
        yMm: need(given.y, ['y'], 'it is the distance sideways'),
        radiusMm: need(given.r, radiusNames, 'it is the centre-line radius of both bends'),
      };
    default:
      return refuseMissing('route', 'The route is missing.', `one of ${routes.join(', ')}`);
  }
}

function readEnd(fields: Fields, which: 1 | 2): LineEnd {
  const short = fields.number([`c${which}`, `c${which}_mm`], any);
  const end = fields.record(`end${which}`);
  const own = end?.number(['cutoff_mm', 'cutoff'], any);
  const visible = end?.number(['visible_mm', 'visible'], some);
  const insert = end?.number(['insert_mm', 'insert'], any);
  const read: LineEnd = {
    port: end?.text('port'),
    style: end?.choice('style', endStyles),
    angleDeg: end?.number(['angle', 'angle_deg'], { ...angle, atLeast: 0, atMost: 180 }) ?? 0,
    cutoffMm: cutoffOf(which, { short, own, visible, insert }),
    dropMm: end?.number(['drop_mm', 'drop'], any),
    insertMm: insert,
    swivel: end?.flag('swivel'),
    maxBar: end?.number(['max_bar', 'pressure_bar'], gauge),
    boreMm: end?.number(['bore_mm', 'bore'], some),
  };
  end?.done();
  return read;
}

/** The cut-off dimension as given, or what is seen of the end less what goes into it. */
function cutoffOf(
  which: 1 | 2,
  given: Readonly<Record<'short' | 'own' | 'visible' | 'insert', number | undefined>>,
): number {
  const { short, own, visible, insert } = given;
  if (short !== undefined && own !== undefined && short !== own) {
    refuseField(`c${which}`, `c${which} and end${which}.cutoff_mm are one thing and differ.`, 'one of them');
  }
  const said = short ?? own;
  if (said !== undefined) return said;
  if (visible === undefined || insert === undefined) {
    return refuseMissing(
      `c${which}`,
      `The cut-off dimension of end ${which} is missing: its maker's drawing has it, or measure an empty end.`,
      `a number from 0 in mm as c${which} or end${which}.cutoff_mm, or end${which}.visible_mm and end${which}.insert_mm`,
    );
  }
  if (insert > visible) {
    refuseField(`end${which}.insert_mm`, 'More hose goes in than the end is long.', `at most ${visible} mm`);
  }
  return visible - insert;
}

function readHose(fields: Fields): HoseChoice {
  const typed = fields.text(['hose_type', 'hose']);
  const split: { readonly type?: string; readonly dash?: number } = typed === undefined ? {} : splitHoseText(typed);
  const dash = fields.number('dash', { ...share, whole: true, above: 0, atMost: 64 });
  if (dash !== undefined && split.dash !== undefined && dash !== split.dash) {
    refuseField('dash', `hose_type says dash ${split.dash} and dash says ${dash}.`, 'one dash size');
  }
  return {
    type: split.type,
    dash: dash ?? split.dash,
    boreMm: fields.number(['bore', 'bore_mm'], some),
    outsideMm: fields.number(['od', 'od_mm'], some),
    minBendRadiusMm: fields.number(['rmin', 'r_min', 'r_min_mm', 'rmin_mm'], any),
    metal: fields.flag('metal_hose'),
    maxBar: fields.number('hose_max_bar', { ...gauge, above: 0 }),
    vacuumBar: fields.number('hose_vacuum_bar', gauge),
    minC: fields.number(['hose_min_C', 'hose_min_c'], celsius),
    maxC: fields.number(['hose_max_C', 'hose_max_c'], celsius),
    className: fields.text('hose_class'),
    tubeMaterial: fields.text('tube_material'),
    hotFactor: fields.number('hot_factor', { ...share, above: 0, atMost: 1 }),
  };
}

function readDrain(drain: Fields): DrainFacts {
  const read: DrainFacts = {
    housingHoleMm: drain.number(['housing_hole_mm', 'housing_hole'], some),
    outletAngleDeg: drain.number(['outlet_angle_deg', 'outlet_angle'], { ...angle, atLeast: 0, atMost: 180 }),
    minSlopeDeg: drain.number(['min_slope_deg', 'min_slope'], { ...angle, atLeast: -90, atMost: 90 }),
    entryAboveOilMm: drain.number(['entry_above_oil_mm', 'entry_above_oil'], length),
    boresMm: drain.numbers(['bores_mm', 'bores'], some),
    largeFrame: drain.flag('large_frame'),
  };
  drain.done();
  return read;
}

/**
 * A line from data with the names of the take-off cases (`length`, `c1`, `od`, `rmin`, `k` …) or their longer ones
 * (`length_mm`, `end1.cutoff_mm`, `od_mm`, `r_min_mm`, `contraction` …). Numbers are in mm, bar, °C and degrees; text may
 * carry another unit (`"24 in"`).
 * @throws Refusal `bad-input` naming the field, also where a field isn't known.
 */
export function readLine(fields: Fields): Line {
  const drain = fields.record('drain');
  const adapters = fields.records('adapters')?.map((one) => {
    const adapter = { text: one.text(['text', 'adapter']) ?? 'adapter', maxBar: one.number('max_bar', gauge) };
    one.done();
    return adapter;
  });
  const line: Line = {
    id: fields.text('id'),
    name: fields.text(['name', 'text', 'line']),
    quantity: fields.number('quantity', { ...share, whole: true, above: 0, atMost: 1000 }) ?? 1,
    fluid: fields.text(['fluid', 'medium']),
    ethanolPercent: fields.number('ethanol_percent', { ...share, atLeast: 0, atMost: 100 }),
    service: fields.choice('service', services) ?? (drain === undefined ? undefined : 'drain'),
    pressureBar: fields.number('pressure_bar', gauge),
    vacuumBar: fields.number('vacuum_bar', { ...gauge, atMost: 1.1 }),
    tempMinC: fields.number(['temp_min_C', 'temp_min_c'], celsius),
    tempMaxC: fields.number(['temp_max_C', 'temp_max_c'], celsius),
    ambientMaxC: fields.number(['ambient_max_C', 'ambient_max_c'], celsius),
    nearExhaust: fields.flag('near_exhaust'),
    inTank: fields.flag('in_tank'),
    addOnCooler: fields.flag('add_on_cooler'),
    flowLitresPerMinute: fields.number(['flow_l_min', 'flow'], {
      dimension: 'volumeFlow',
      unit: 'L/min',
      atLeast: 0,
      atMost: 100_000,
    }),
    from: fields.text(['from_port', 'from']),
    to: fields.text(['to_port', 'to']),
    ends: [readEnd(fields, 1), readEnd(fields, 2)],
    path: readPath(fields),
    pathBasis: fields.choice('length_basis', ['measured', 'estimated']) ?? 'measured',
    hose: readHose(fields),
    contraction: fields.number(['k', 'contraction'], { ...share, atLeast: 0, atMost: 0.2 }),
    movementMm: fields.number(['move', 'movement', 'movement_mm'], any) ?? 0,
    leadsMm: [fields.number(['t1', 'lead1_mm'], any), fields.number(['t2', 'lead2_mm'], any)],
    clockDeg: fields.number('clock_deg', { ...angle, atLeast: 0, atMost: 360 }),
    sleeve: fields.choice('sleeve', sleeves),
    clipSpacingMm: fields.number(['clip_spacing_mm', 'clip_spacing'], { ...length, atLeast: 20 }),
    adapters: adapters ?? [],
    drain: drain === undefined ? undefined : readDrain(drain),
  };
  fields.done();
  return line;
}
