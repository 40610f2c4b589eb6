import type { LineDefinition, RecordRow, RecordValues } from '../../../core/contract/records.ts';
import { readFluid } from '../../../core/plumbing/fluid.ts';

/** A line while it is being written: every field of its definition as it was typed, by the name that refusals use. */
export interface LineDraft {
  readonly name: string;
  readonly from: number | null;
  readonly to: number | null;
  readonly system: number | null;
  readonly job: number | null;
  readonly beforeGate: boolean;
  readonly note: string;
  readonly texts: Readonly<Record<string, string>>;
  /** What the definition holds and this form has no field for; kept as it was. */
  readonly others: LineDefinition;
}

export const emptyDraft: LineDraft = {
  name: '',
  from: null,
  to: null,
  system: null,
  job: null,
  beforeGate: true,
  note: '',
  texts: { route: 'measured', length_basis: 'estimated', quantity: '1', 'end1.way': 'cut', 'end2.way': 'cut' },
  others: {},
};

/** Other spellings that a definition or a refusal may use, and the name that the form has. */
const spellings: Readonly<Record<string, string>> = {
  length_mm: 'length',
  spacing_mm: 'spacing',
  a_mm: 'a',
  b_mm: 'b',
  x_mm: 'x',
  y_mm: 'y',
  radius: 'r',
  radius_mm: 'r',
  r_mm: 'r',
  bend_deg: 'turn_deg',
  c1: 'end1.cutoff_mm',
  c1_mm: 'end1.cutoff_mm',
  c2: 'end2.cutoff_mm',
  c2_mm: 'end2.cutoff_mm',
  hose: 'hose_type',
  bore_mm: 'bore',
  od_mm: 'od',
  r_min: 'rmin',
  r_min_mm: 'rmin',
  rmin_mm: 'rmin',
  hose_min_c: 'hose_min_C',
  hose_max_c: 'hose_max_C',
  temp_min_c: 'temp_min_C',
  temp_max_c: 'temp_max_C',
  ambient_max_c: 'ambient_max_C',
  medium: 'fluid',
  flow: 'flow_l_min',
  contraction: 'k',
  movement: 'move',
  movement_mm: 'move',
  lead1_mm: 't1',
  lead2_mm: 't2',
  clip_spacing: 'clip_spacing_mm',
  from: 'from_port',
  to: 'to_port',
};

const innerSpellings: Readonly<Record<string, string>> = {
  cutoff: 'cutoff_mm',
  visible: 'visible_mm',
  insert: 'insert_mm',
  angle_deg: 'angle',
  drop: 'drop_mm',
  pressure_bar: 'max_bar',
  bore: 'bore_mm',
  housing_hole: 'housing_hole_mm',
  outlet_angle: 'outlet_angle_deg',
  min_slope: 'min_slope_deg',
  entry_above_oil: 'entry_above_oil_mm',
};

/** The form's name of a field, however a definition or a refusal spells it. */
export function fieldName(said: string): string {
  const plain = said.replace(/^(?:values\.)?definition\./, '').replace(/^values\./, '');
  const [group, inner] = plain.split('.');
  if (inner !== undefined) return `${group}.${innerSpellings[inner] ?? inner}`;
  return spellings[plain] ?? plain;
}

const words = new Set([
  'fluid',
  'service',
  'route',
  'length_basis',
  'hose_type',
  'hose_class',
  'tube_material',
  'sleeve',
  'from_port',
  'to_port',
  'end1.port',
  'end2.port',
  'end1.style',
  'end2.style',
]);
const flags = new Set([
  'near_exhaust',
  'in_tank',
  'add_on_cooler',
  'metal_hose',
  'end1.swivel',
  'end2.swivel',
  'drain.large_frame',
]);
const figures = new Set([
  ...['quantity', 'ethanol_percent', 'pressure_bar', 'vacuum_bar', 'temp_min_C', 'temp_max_C', 'ambient_max_C'],
  ...['flow_l_min', 'length', 'spacing', 'a', 'b', 'x', 'y', 'r', 'turn_deg', 'dash', 'bore', 'od', 'rmin'],
  ...['hose_max_bar', 'hose_vacuum_bar', 'hose_min_C', 'hose_max_C', 'hot_factor', 'k', 'move', 't1', 't2'],
  ...['clock_deg', 'clip_spacing_mm'],
  ...['end1', 'end2'].flatMap((end) =>
    ['angle', 'cutoff_mm', 'visible_mm', 'insert_mm', 'drop_mm', 'max_bar', 'bore_mm'].map((name) => `${end}.${name}`),
  ),
  ...['housing_hole_mm', 'outlet_angle_deg', 'min_slope_deg', 'entry_above_oil_mm'].map((name) => `drain.${name}`),
]);
const known = (name: string): boolean => words.has(name) || flags.has(name) || figures.has(name);

/** What each route is given by, besides the route. */
export const routeFields: Readonly<Record<string, readonly string[]>> = {
  straight: ['length'],
  measured: ['length', 'r', 'turn_deg'],
  u: ['spacing'],
  corner: ['a', 'b', 'r'],
  offset: ['x', 'y', 'r'],
};
const pathFields = new Set(Object.values(routeFields).flat());

export const isFuel = (fluid: string): boolean => readFluid(fluid === '' ? undefined : fluid).family === 'fuel';

/** Whether the field counts as the draft stands: what the form doesn't show isn't kept either. */
function counts(name: string, { texts, from, to }: LineDraft): boolean {
  if (pathFields.has(name)) return routeFields[texts['route'] ?? '']?.includes(name) ?? false;
  if (name.startsWith('drain.')) return texts['service'] === 'drain';
  if (name === 'ethanol_percent') return isFuel(texts['fluid'] ?? '');
  if (name === 'from_port') return from === null;
  if (name === 'to_port') return to === null;
  const end = /^(end[12])\.(cutoff_mm|visible_mm|insert_mm)$/.exec(name);
  if (end !== null) return (end[2] === 'cutoff_mm') !== (texts[`${end[1]}.way`] === 'seen');
  return true;
}

const plainNumber = /^[+-]?\d{1,12}(?:\.\d{1,9})?$/;

function readAs(name: string, text: string): string | number | boolean {
  if (flags.has(name)) return text === 'yes';
  if (words.has(name)) return text;
  // A dash size is said with its dash.
  const plain = name === 'dash' ? text.replace(/^[-–−]0?/, '') : text;
  return plainNumber.test(plain) ? Number(plain) : plain;
}

/** The definition as a take-off reads it; empty fields are left out. */
function definitionOf(draft: LineDraft): LineDefinition {
  const top: Record<string, LineDefinition[string]> = { ...draft.others };
  const groups: Record<string, Record<string, string | number | boolean>> = {};
  for (const [name, typed] of Object.entries(draft.texts)) {
    const text = typed.trim();
    if (text === '' || !known(name) || !counts(name, draft)) continue;
    const [group = '', inner] = name.split('.');
    if (inner === undefined) top[name] = readAs(name, text);
    else groups[group] = { ...groups[group], [inner]: readAs(name, text) };
  }
  return { ...top, ...groups };
}

/** What is kept of the draft. */
export function valuesOf(draft: LineDraft): RecordValues['hoseLine'] {
  const { name, from, to, system, job, beforeGate, note } = draft;
  return { name: name.trim(), from, to, system, job, beforeGate, note, definition: definitionOf(draft) };
}

const textOf = (value: unknown): string => (value === true ? 'yes' : value === false ? '' : String(value ?? ''));
const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The draft of a line that is kept already. */
export function draftOf(row: RecordRow): LineDraft {
  // The list of records carries the values of its kind.
  const values = row.values as unknown as RecordValues['hoseLine'];
  const texts: Record<string, string> = {};
  const others: Record<string, LineDefinition[string]> = {};
  for (const [said, value] of Object.entries(values.definition)) {
    const inner = isGroup(value) ? Object.entries(value).map(([name, one]) => [`${said}.${name}`, one] as const) : null;
    const fields = (inner ?? [[said, value] as const]).map(([name, one]) => [fieldName(name), one] as const);
    if (fields.every(([name]) => known(name))) for (const [name, one] of fields) texts[name] = textOf(one);
    else others[said] = value;
  }
  for (const end of ['end1', 'end2']) {
    const seen = texts[`${end}.cutoff_mm`] === undefined && texts[`${end}.visible_mm`] !== undefined;
    texts[`${end}.way`] = seen ? 'seen' : 'cut';
  }
  const { name, from, to, system, job, beforeGate, note } = values;
  return {
    name,
    from,
    to,
    system,
    job,
    beforeGate,
    note,
    texts: { quantity: '1', length_basis: 'measured', ...texts },
    others,
  };
}
