import { inchBores, metricBores, quickConnectSizes, vbandTubes } from '../tables/other-ends.ts';
import { plain } from '../thread.ts';
import {
  commonSides,
  decimal,
  inches,
  mixed,
  type Outcome,
  type Reader,
  rejected,
  type Sides,
  understood,
} from './outcome.ts';

const inchMm = 25.4;
const size = `(${mixed}|${decimal})(?: ?(mm|in))?`;
const isFraction = (text: string): boolean => text.includes('/');
const round = (mm: number, digits: number): number =>
  Number((Math.round(mm * 10 ** digits + 1e-6) / 10 ** digits).toFixed(digits));

/** A size in mm, to these decimals; fractions and `in` are inches. Undefined when the unit contradicts the fraction. */
function millimetres(text: string, unit: string | undefined, digits: number): number | undefined {
  const value = isFraction(text) ? inches(text) : Number(text);
  if (value === undefined || !(value > 0)) return undefined;
  if (isFraction(text)) return unit === 'mm' ? undefined : round(value * inchMm, digits);
  return unit === 'in' ? round(value * inchMm, digits) : round(value, digits);
}

const bore = new RegExp(`^(barb|hose|tube)(?: (?:bore|od|id))? ?${size}$`);
const sizeFirst = new RegExp(`^${size} ?(?:bore |od |id )?(barb|hose|tube)$`);
const byDash = /^(barb|hose|tube) ?(?:(?:dash|size|#) ?-?|-)0?(\d+)$/;
/** Below this a size without a unit could be inches as well. */
const certainlyMm = 3;
const largestBore = 300;

export const boreReader: Reader = (written, sides, context) => {
  // 3/8 hose is hose 3/8.
  const core = written.replace(sizeFirst, (_, text: string, unit: string | undefined, kind: string) =>
    unit === undefined ? `${kind} ${text}` : `${kind} ${text} ${unit}`,
  );
  const dash = byDash.exec(core);
  const kindText = dash?.[1] ?? bore.exec(core)?.[1];
  if (kindText === undefined) return undefined;
  const kind = kindText as 'barb' | 'hose' | 'tube';
  const own = kind === 'hose' ? 'female' : 'male';
  if (sides.gender !== undefined && sides.gender !== own) {
    return rejected(`a ${kind} counts as ${own}, not ${sides.gender}`, `${kind} 9.5 mm`);
  }
  if (dash !== null) return hoseByDash(kind, Number(dash[2]), sides, context.hoseBore);
  const [, , text = '', unit] = bore.exec(core) ?? [];
  if (!isFraction(text) && unit === undefined && Number(text) < certainlyMm) {
    return rejected(
      `"${kind} ${text}" could be mm or inches: add the unit`,
      `${kind} ${text} mm`,
      `${kind} ${text} in`,
    );
  }
  const listed =
    kind === 'tube'
      ? undefined
      : inchBores.find((row) => unit !== 'mm' && isInch(text, unit) && inches(row.inch) === inchValue(text));
  const mm = listed?.mm ?? millimetres(text, unit, kind === 'tube' ? 2 : 1);
  if (mm === undefined || mm > largestBore) {
    return rejected(
      `"${text}${unit === undefined ? '' : ` ${unit}`}" is not a bore: give mm, to ${largestBore}, or inches`,
      `${kind} 9.5 mm`,
      `${kind} 3/8 in`,
    );
  }
  const usual = kind === 'tube' || metricBores.includes(mm) || inchBores.some((row) => row.mm === mm);
  return understood(
    { kind, mm, ...commonSides(withoutGender(sides)) },
    usual ? [] : [`${plain(mm)} mm is not a usual bore: measure it again`],
  );
};

const isInch = (text: string, unit: string | undefined): boolean => isFraction(text) || unit === 'in';
const inchValue = (text: string): number | undefined => (isFraction(text) ? inches(text) : Number(text));

const withoutGender = ({ seal, swivel }: Sides): Sides => ({
  ...(seal === undefined ? {} : { seal }),
  ...(swivel === undefined ? {} : { swivel }),
});

function hoseByDash(
  kind: 'barb' | 'hose' | 'tube',
  dash: number,
  sides: Sides,
  hoseBore: ((dash: number) => number | undefined) | undefined,
): Outcome {
  if (kind === 'tube') {
    return rejected(
      'a tube is written by its outside diameter',
      `tube ${plain((dash * inchMm) / 16, 2)} mm`,
      'tube 3/8 in',
    );
  }
  const mm = kind === 'hose' ? hoseBore?.(dash) : undefined;
  if (mm !== undefined) {
    return understood(
      { kind, mm: round(mm, 1), ...commonSides(withoutGender(sides)) },
      [],
      [`dash ${dash} of the hose type chosen`],
    );
  }
  return rejected(
    `${kind} size by dash is not a bore: 100R5 hose -6 is 7.9 mm, 100R1 hose -6 is 9.5 mm. Give the bore in mm or inch`,
    `${kind} 9.5 mm`,
    `${kind} 3/8 in`,
  );
}

/** The bore behind a dash, for a field that is known to be a hose. */
export const hoseInFamily: Reader = (core, sides, { hoseBore }) => {
  const found = /^(?:dash|size|-|#)? ?-?0?(\d+)$/.exec(core);
  return found === null ? undefined : hoseByDash('hose', Number(found[1]), sides, hoseBore);
};

const quick = new RegExp(`^(?:qc|quick(?:[- ]connect)?) ?${size}$`);

export const quickReader: Reader = (core, sides) => {
  const found = quick.exec(core);
  if (found === null) return undefined;
  const [, text = '', unit] = found;
  const isInchSize = isInch(text, unit);
  const row = quickConnectSizes.find((one) =>
    isInchSize ? inches(one.inch) === inchValue(text) : one.mm === Number(text),
  );
  const mm = row?.mm ?? millimetres(text, unit, 2);
  const listed = quickConnectSizes.map((one) => plain(one.mm)).join(', ');
  if (mm === undefined || (isInchSize && row === undefined)) {
    return rejected(`"${text}" is not a quick-connect size; listed: ${listed}`, 'QC 9.49 male');
  }
  return understood(
    { kind: 'quick', mm, ...commonSides(sides) },
    row === undefined ? [`${plain(mm)} is not a listed quick-connect size: ${listed}`] : [],
  );
};

/** A size under this without a unit is in inches. */
const inchesBelow = 12;

const large = (text: string, unit: string | undefined): number | undefined =>
  millimetres(text, unit ?? (!isFraction(text) && Number(text) < inchesBelow ? 'in' : undefined), 1);

const vband = new RegExp(`^(?:v-?band|v band|vb) ?${size}$`);

export const vbandReader: Reader = (core, sides) => {
  const found = vband.exec(core);
  if (found === null) return undefined;
  const mm = large(found[1] ?? '', found[2]);
  if (mm === undefined || mm > largestBore)
    return rejected(`"${found[1]}" is not a tube size`, 'VB 76.2', 'V-band 3 in');
  const { profile } = sides;
  return understood(
    { kind: 'vband', mm, ...(profile === undefined ? {} : { profile }), ...commonSides(sides) },
    vbandTubes.includes(mm)
      ? []
      : [`${plain(mm)} is not a usual V-band tube: ${vbandTubes.map((one) => plain(one)).join(', ')}`],
  );
};

const slip = new RegExp(`^slip ?${size}(?: (od|id))?$`);

export const slipReader: Reader = (core, sides) => {
  const found = slip.exec(core);
  if (found === null) return undefined;
  const [, text = '', unit, side] = found;
  const mm = large(text, unit);
  if (mm === undefined || mm > largestBore) return rejected(`"${text}" is not a tube size`, 'slip 63.5 od');
  if (side === undefined) {
    return rejected(
      'say whether the size is the outside or the inside diameter',
      `slip ${plain(mm)} od`,
      `slip ${plain(mm)} id`,
    );
  }
  return understood({ kind: 'slip', mm, of: side === 'od' ? 'od' : 'id', ...commonSides(withoutGender(sides)) });
};
