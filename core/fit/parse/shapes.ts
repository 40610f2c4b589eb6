import { banjoSizes } from '../tables/metric-ports.ts';
import { splitFlangeSizes, turbineFlangeNames } from '../tables/other-ends.ts';
import { readMetric } from './metric.ts';
import { commonSides, decimal, type Reader, rejected, type Sides, understood } from './outcome.ts';
import { readUnified } from './unified.ts';

const ungendered = ({ seal }: Sides): Sides => (seal === undefined ? {} : { seal });

export const banjoReader: Reader = (core, sides, context) => {
  const found = /^banjo(?: bolt)? ?(.+)$/.exec(core);
  if (found === null) return undefined;
  const text = found[1] ?? '';
  if (sides.gender === 'female') {
    return rejected('a banjo bolt counts as male: its eye is clamped by the bolt', 'banjo M12x1.5');
  }
  const read = readMetric(text, context) ?? readUnified(text);
  if (read === undefined) return rejected(`not understood: "${text}" is not a thread`, 'banjo M12x1.5');
  if (!read.ok) return read;
  const short = read.thread.name.replace(/ UN\w*$/, '');
  const listed = banjoSizes.map(({ thread }) => thread);
  return understood(
    { kind: 'banjo', thread: read.thread, ...commonSides(ungendered(sides)) },
    listed.includes(short)
      ? read.warnings
      : [...read.warnings, `${short} is not a usual banjo thread: ${listed.join(', ')}`],
  );
};

export const flangeReader: Reader = (core, sides) => {
  const split = /^(?:split )?flange code ?(\d+) ?(?:dash|size)? ?-?0?(\d+)$/.exec(core);
  if (split !== null) {
    const row = splitFlangeSizes.find((one) => one.code === Number(split[1]) && one.dash === Number(split[2]));
    if (row !== undefined) {
      return understood({ kind: 'splitflange', code: row.code, dash: row.dash, ...commonSides(ungendered(sides)) });
    }
    const listed = splitFlangeSizes.map((one) => `code${one.code} -${one.dash}`).join(', ');
    return rejected(
      `code${split[1]} -${split[2]} is not a listed split flange; listed: ${listed}`,
      'flange code61 -12',
    );
  }
  const named = /^flange (t\d+(?:\/t\d+)?(?: divided)?)$/.exec(core);
  if (named === null) {
    return core.startsWith('flange')
      ? rejected(
          `not understood: "${core}" is not a flange that is listed`,
          'flange code61 -12',
          'flange T3',
          'pattern 4xM8 pcd 75',
        )
      : undefined;
  }
  const name = (named[1] ?? '').replaceAll('t', 'T');
  return understood(
    { kind: 'tradeflange', name, ...commonSides(ungendered(sides)) },
    turbineFlangeNames.includes(name) ? [] : [`${name} is not a usual flange name: ${turbineFlangeNames.join(', ')}`],
    ['name only: no published geometry, measure holes, spacing and opening'],
  );
};

const pattern = new RegExp(
  String.raw`^pattern (\d+) ?x ?(m ?${decimal}(?: ?x ?${decimal})?),? ?(?:pcd ?(${decimal})|(${decimal}) ?x ?(${decimal}))(?: ?mm)?$`,
);

export const patternReader: Reader = (core, sides, context) => {
  if (!core.startsWith('pattern')) return undefined;
  const found = pattern.exec(core);
  const ways = ['pattern 4xM8 pcd 75', 'pattern 4xM8 66x50'] as const;
  if (found === null) {
    return rejected(`not understood: "${core}": a pattern is count x screw, then pcd or the sides`, ...ways);
  }
  const [, countText, screwText = '', pcd, long, short] = found;
  const screw = readMetric(screwText, { ...context, role: 'fastener' });
  if (screw === undefined || !screw.ok) return screw ?? rejected(`"${screwText}" is not a thread`, ...ways);
  const count = Number(countText);
  const sizes = pcd === undefined ? [Number(long), Number(short)] : [Number(pcd)];
  if (count < 1 || count > 60 || sizes.some((one) => one <= 0)) {
    return rejected('a pattern has 1 to 60 holes and a spacing above 0 mm', ...ways);
  }
  const [first = 0, second] = sizes;
  const spacing = second === undefined ? ([first] as const) : ([first, second] as const);
  return understood({ kind: 'pattern', count, screw: screw.thread, spacing, ...commonSides(ungendered(sides)) });
};

export const electricalReader: Reader = (core, sides) => {
  const found = /^(?:elec|connector|conn) (\d+)(?:[ -]?(?:way|pins?|cavities))?$/.exec(core);
  if (found === null) return undefined;
  const cavities = Number(found[1]);
  if (cavities < 1 || cavities > 300) {
    return rejected('a connector has 1 to 300 cavities', 'elec 6 female key a family x');
  }
  const { key, family } = sides;
  return understood({
    kind: 'elec',
    cavities,
    ...(key === undefined ? {} : { key }),
    ...(family === undefined ? {} : { family }),
    ...commonSides(sides),
  });
};
