import { formatPort } from './format.ts';
import { apart, type Joint, lookalike, mates, no, unknown } from './joint.ts';
import { lookalikeRow } from './near-threads.ts';
import type {
  BorePort,
  ElectricalPort,
  PatternPort,
  SlipPort,
  SplitFlangePort,
  TradeFlangePort,
  VbandPort,
} from './port.ts';
import { splitFlangeSizes } from './tables/other-ends.ts';
import { plain, sameThread } from './thread.ts';

const rounding = 1e-9;
const ours = 'limits are a choice of this program';

/** A catalogue row as the rest of a look-alike. @throws Error when the table lacks the row, which its test excludes. */
function row(id: string) {
  const found = lookalikeRow(id);
  if (found === undefined) throw new Error(`The look-alike catalogue has no row ${id}.`);
  return found;
}

/** A hose over a barb or tube end: mates within 0.3 mm or 1.6 %, is taken for it within 0.8 mm or 5.5 %. */
export function joinHose(end: BorePort, hose: BorePort): Joint {
  const more = end.mm - hose.mm;
  const source = `SAE J1231 for the form; ${ours}`;
  const sizes = `${plain(end.mm)} mm end in a ${plain(hose.mm)} mm bore`;
  if (Math.abs(more) <= Math.max(0.3, 0.016 * hose.mm) + rounding) {
    return mates(
      sizes,
      source,
      ['hose clamp'],
      end.kind === 'tube' ? ['A plain tube needs a bead, or the hose slides off.'] : [],
    );
  }
  if (Math.abs(more) <= Math.max(0.8, 0.055 * hose.mm) + rounding) {
    const loose = more < 0;
    const alike = row(loose ? 'LA34' : 'LA33');
    return lookalike(`${sizes}: ${plain(Math.abs(more))} mm ${loose ? 'loose' : 'tight'}`, {
      consequence: loose
        ? 'Leaks or slides off even when clamped.'
        : 'The hose is stretched: may split or leave creases.',
      howToTell: alike.howToTell,
      severity: alike.severity,
      source: `${alike.source}; ${ours}`,
      id: alike.id,
    });
  }
  return apart(`${sizes}: ${plain(Math.abs(more))} mm apart`, source);
}

export function joinQuick(male: BorePort, female: BorePort): Joint {
  const source = 'SAE J2044';
  return Math.abs(male.mm - female.mm) < 0.02
    ? mates(`Same nominal, ${plain(male.mm)} mm`, source)
    : apart(`Different nominal: ${plain(male.mm)} against ${plain(female.mm)} mm`, source);
}

export function joinVbands(one: VbandPort, other: VbandPort): Joint {
  const source = 'Trade practice, no published standard';
  if (Math.abs(one.mm - other.mm) > 1 + rounding) {
    return apart(`Tube ${plain(one.mm)} against ${plain(other.mm)} mm`, source);
  }
  const stated = one.profile !== undefined && other.profile !== undefined;
  const sameRegister = one.gender !== undefined && one.gender === other.gender;
  if (stated && one.profile === other.profile && !sameRegister) {
    return mates(`Same tube and the same stated profile, ${one.profile}`, source, ['V-band clamp for this profile']);
  }
  const alike = row('LA36');
  const why = sameRegister
    ? `both registers are ${one.gender}`
    : stated
      ? 'the profiles differ'
      : 'the flange profile is not stated on both';
  return lookalike(`Same tube size, ${plain(one.mm)} mm; ${why}`, { ...alike, source });
}

/** Pipe in pipe: up to 1.0 mm of clearance. */
export function joinSlip(one: SlipPort, other: SlipPort): Joint {
  const source = `Trade practice; ${ours}`;
  if (one.of === other.of) return apart(`Both are ${one.of === 'od' ? 'outside' : 'inside'} diameters`, source);
  const clearance = one.of === 'id' ? one.mm - other.mm : other.mm - one.mm;
  return clearance >= -rounding && clearance <= 1 + rounding
    ? mates(`Clearance ${plain(clearance, 2)} mm`, source, ['band clamp'])
    : apart(`Clearance ${plain(clearance, 2)} mm: it must be 0 to 1.0 mm`, source);
}

export function joinSplitFlanges(one: SplitFlangePort, other: SplitFlangePort): Joint {
  const source = 'ISO 6162-1 and -2 / SAE J518';
  const spacing = (port: SplitFlangePort): string => {
    const size = splitFlangeSizes.find(({ code, dash }) => code === port.code && dash === port.dash);
    return size === undefined ? '' : `${plain(size.longMm)} x ${plain(size.shortMm)}`;
  };
  if (one.dash !== other.dash) return apart(`Dash -${one.dash} against -${other.dash}`, source);
  if (one.code === other.code) {
    const screw = splitFlangeSizes.find(({ code, dash }) => code === one.code && dash === one.dash)?.screwMetric;
    return mates(`Same code and dash, ${spacing(one)} mm`, source, [
      'O-ring of the flange',
      `four screws ${screw ?? ''}, in the length of the flange`,
      'pair of flange halves',
    ]);
  }
  return lookalike(`Hole spacing ${spacing(one)} against ${spacing(other)} mm`, row('LA35'));
}

export function joinTradeFlanges(one: TradeFlangePort, other: TradeFlangePort): Joint {
  const source = 'Trade names; no published geometry found';
  if (one.name !== other.name)
    return apart(`The names differ, ${one.name} and ${other.name}; geometry not known`, source);
  return lookalike(`Same name, ${one.name}, and a name says nothing of the geometry`, {
    consequence: 'Hole spacing or opening may differ: it will not bolt up, or leaks and steps the flow.',
    howToTell: 'measure count, thread and spacing of the holes and the opening, and enter both as patterns',
    severity: 'caution',
    source,
  });
}

/** Closest fit of two spacings, mm; undefined when a hole circle stands against a rectangle. A rectangle may be turned. */
function spacingApart({ count, spacing }: PatternPort, other: PatternPort): number | undefined {
  const asSides = (of: readonly number[]): readonly number[] =>
    of.length === 1 && count === 4 ? [(of[0] ?? 0) / Math.SQRT2, (of[0] ?? 0) / Math.SQRT2] : of;
  if (spacing.length === other.spacing.length && spacing.length === 1) return Math.abs(spacing[0] - other.spacing[0]);
  const [first, second] = asSides(spacing);
  const [third, fourth] = asSides(other.spacing);
  if (first === undefined || second === undefined || third === undefined || fourth === undefined) return undefined;
  return Math.min(
    Math.max(Math.abs(first - third), Math.abs(second - fourth)),
    Math.max(Math.abs(first - fourth), Math.abs(second - third)),
  );
}

/** Hole patterns: mate within 0.25 mm, are taken for one another within 2 mm. */
export function joinPatterns(one: PatternPort, other: PatternPort): Joint {
  const source = `Definition of the pattern; ${ours}`;
  if (one.count !== other.count) return no(`The hole count differs: ${one.count} and ${other.count}`, source);
  if (!sameThread(one.screw, other.screw))
    return no(`The screws differ: ${one.screw.name} and ${other.screw.name}`, source);
  const by = spacingApart(one, other);
  if (by === undefined)
    return unknown(['give both spacings as a hole circle or both as the sides of a rectangle'], source);
  if (by <= 0.25 + rounding) {
    return mates('Count, screw and spacing are equal', source, [`${one.count} screws ${one.screw.name}`, 'gasket']);
  }
  if (by > 2 + rounding) return no(`The spacing differs by ${plain(by, 2)} mm`, source);
  return lookalike(`The spacing differs by ${plain(by, 2)} mm`, {
    consequence: 'The screws start but bind, and the flange is pulled crooked.',
    howToTell: 'caliper over the hole spacing, edge to edge plus one hole',
    severity: 'danger',
    source,
  });
}

export function joinConnectors(one: ElectricalPort, other: ElectricalPort): Joint {
  const source = 'Definition of the connector, no single standard';
  if (one.cavities !== other.cavities)
    return no(`The cavity count differs: ${one.cavities} and ${other.cavities}`, source);
  if (one.family !== undefined && other.family !== undefined && one.family !== other.family) {
    return no(`The families differ: ${one.family} and ${other.family}`, source);
  }
  const missing = [one, other].flatMap((port) => [
    ...(port.family === undefined ? [`the family of ${formatPort(port)}`] : []),
    ...(port.key === undefined ? [`the key of ${formatPort(port)} (“key none” if it has none)`] : []),
  ]);
  if (missing.length > 0) return unknown(missing, source);
  return one.key === other.key
    ? mates('Family, cavities and key are equal', source)
    : lookalike(`Keyed differently: ${[one.key, other.key].join(' and ')}`, row('LA37'));
}
