/**
 * A measuring sheet worked out: places × readings, corrected to 20 °C, against limits, and as clearances against another
 * sheet. Everything is in the unit of the sheet; nothing here knows a clock or a disk.
 */
import { expansionCoefficients } from '../calculators/g/expansion-table.ts';
import { correctionTo20 } from '../calculators/g/reference-length.ts';
import { deviationOf, meanOf, rangeOf } from '../calculators/g/statistics.ts';
import { unitsOf } from '../units/measure.ts';

export interface SheetLimits {
  readonly least: number | null;
  readonly most: number | null;
  readonly source: string;
}

export interface SheetReading {
  readonly place: string;
  readonly name: string;
  readonly value: number;
  /** Of part and instrument, °C; null = taken as 20 °C. */
  readonly temperatureC: number | null;
}

export interface SheetSetup {
  readonly title: string;
  readonly quantity: string;
  readonly unit: string;
  readonly places: readonly string[];
  readonly readings: readonly string[];
  readonly limits: SheetLimits;
  readonly clearance: SheetLimits;
  /** Smallest step shown, and stated uncertainty (expanded, k = 2); null = not known. */
  readonly resolution: number | null;
  readonly uncertainty: number | null;
  /** Expansion of the part, millionths per kelvin; null = no correction is made. */
  readonly expansionPpm: number | null;
}

export type PlaceVerdict = 'pass' | 'at limit' | 'out' | 'missing' | 'no limits';

export interface PlaceResult<R extends SheetReading = SheetReading> {
  readonly place: string;
  readonly readings: readonly (R & { readonly corrected: number })[];
  /** Names not read yet. */
  readonly missing: readonly string[];
  readonly mean: number | null;
  readonly least: number | null;
  readonly most: number | null;
  readonly outOfRound: number | null;
  readonly taper: number | null;
  readonly verdict: PlaceVerdict;
  readonly clearance: number | null;
  readonly clearanceUncertainty: number | null;
  readonly clearanceVerdict: PlaceVerdict;
}

export interface SheetResult<R extends SheetReading = SheetReading> {
  readonly places: readonly PlaceResult<R>[];
  readonly count: number;
  readonly mean: number | null;
  readonly range: number | null;
  readonly deviation: number | null;
  readonly standing: 'in limits' | 'missing' | 'out';
  readonly says: string;
}

/** Steel, of which micrometers and setting pieces are made [1/K]. */
const instrumentAlpha = expansionCoefficients[0].coefficients[0];

/**
 * What a length read at a temperature would be at 20 °C (ISO 1), for a part and a steel instrument at the same
 * temperature: the formula of calculator G7.
 * @param expansionPpm of the part, 0 to 100 millionths per kelvin. @param temperatureC −40 to 200.
 */
export function lengthAt20(reading: number, temperatureC: number | null, expansionPpm: number | null): number {
  if (temperatureC === null || expansionPpm === null) return reading;
  const above = temperatureC - 20;
  return reading + correctionTo20(reading, { alpha: expansionPpm * 1e-6, above }, { alpha: instrumentAlpha, above });
}

/**
 * Standard uncertainty of one reading: half the stated (expanded, k = 2) uncertainty of the instrument, and a step of
 * its scale as a rectangle, step/√12, added by squares. Source: JCGM 100:2008 (GUM), 4.3.4, 4.3.7 and 5.1.2.
 * Null when nothing is known of the instrument.
 */
export function readingUncertainty(uncertainty: number | null, resolution: number | null): number | null {
  if (uncertainty === null && resolution === null) return null;
  return Math.hypot((uncertainty ?? 0) / 2, (resolution ?? 0) / Math.sqrt(12));
}

const levels = /^(top|upper|middle|mid|bottom|lower|front|rear|back)\b/i;

/** Readings of one section, by the level that their name begins with: "top thrust" and "top across" belong together. */
function sections(readings: readonly { readonly name: string; readonly corrected: number }[]): number[][] {
  const groups = Map.groupBy(readings, ({ name }) => (levels.exec(name.trim())?.[1] ?? '').toLowerCase());
  return [...groups.values()].map((group) => group.map(({ corrected }) => corrected));
}

const roundThings: ReadonlySet<string> = new Set(['journal', 'bore']);

/** Decimal readings leave binary dust in their differences; a thousandth of the finest step is none. */
const dust = 1e-9;

function verdictOf(values: readonly number[], limits: SheetLimits, within: number): PlaceVerdict {
  const { least, most } = limits;
  if (values.length === 0) return 'missing';
  if (least === null && most === null) return 'no limits';
  const room = values.map((value) =>
    Math.min(
      least === null ? Number.POSITIVE_INFINITY : value - least,
      most === null ? Number.POSITIVE_INFINITY : most - value,
    ),
  );
  const nearest = Math.min(...room);
  const slack = dust * Math.max(...values.map(Math.abs), 1);
  if (nearest < -slack) return 'out';
  return nearest <= within + slack ? 'at limit' : 'pass';
}

/**
 * Works a sheet out. A place is out as soon as one of its readings is, and missing while one is to be read; inside its
 * limits but within the uncertainty of one it is “at limit”, which doesn't block. A clearance is the place's mean less the mean of the same place (by its
 * position) on the other sheet; its uncertainty is expanded (k = 2), root of the sum of squares.
 * @param less the sheet taken off, worked out, with its own instrument.
 */
export function workOutSheet<R extends SheetReading>(
  setup: SheetSetup,
  readings: readonly R[],
  less?: { readonly setup: SheetSetup; readonly places: readonly Pick<PlaceResult, 'mean'>[] },
): SheetResult<R> {
  const own = readingUncertainty(setup.uncertainty, setup.resolution);
  // Linear expansion says nothing of a volume or an angle.
  const expansion = unitsOf('length').includes(setup.unit) ? setup.expansionPpm : null;
  const other = less === undefined ? null : readingUncertainty(less.setup.uncertainty, less.setup.resolution);
  const places = setup.places.map((place, index): PlaceResult<R> => {
    const there = setup.readings.flatMap((name) => {
      const found = readings.find((one) => one.place === place && one.name === name);
      return found === undefined
        ? []
        : [{ ...found, corrected: lengthAt20(found.value, found.temperatureC, expansion) }];
    });
    const values = there.map(({ corrected }) => corrected);
    const missing = setup.readings.filter((name) => !there.some((one) => one.name === name));
    const mean = values.length === 0 ? null : meanOf(values);
    const parts = sections(there);
    const round = roundThings.has(setup.quantity);
    const across = parts.filter((part) => part.length > 1);
    const taken = less?.places[index]?.mean ?? null;
    const clearance = less === undefined || mean === null || taken === null ? null : mean - taken;
    const expanded = 2 * Math.hypot(own ?? 0, other ?? 0);
    const verdict = verdictOf(values, setup.limits, own === null ? 0 : 2 * own);
    return {
      place,
      readings: there,
      missing,
      mean,
      least: values.length === 0 ? null : Math.min(...values),
      most: values.length === 0 ? null : Math.max(...values),
      outOfRound: round && across.length > 0 ? Math.max(...across.map(rangeOf)) : null,
      taper: round && parts.length > 1 ? rangeOf(parts.map(meanOf)) : null,
      // What is out stays out whatever is read next; what is inside so far may not be.
      verdict: missing.length > 0 && verdict !== 'out' ? 'missing' : verdict,
      clearance,
      // Of one instrument alone it would be too small a figure to show.
      clearanceUncertainty: clearance === null || own === null || other === null ? null : expanded,
      clearanceVerdict:
        less === undefined ? 'no limits' : verdictOf(clearance === null ? [] : [clearance], setup.clearance, expanded),
    };
  });
  const all = places.flatMap((place) => place.readings.map(({ corrected }) => corrected));
  return {
    places,
    count: all.length,
    mean: all.length === 0 ? null : meanOf(all),
    range: all.length === 0 ? null : rangeOf(all),
    deviation: all.length < 2 ? null : deviationOf(all),
    ...standingOf(setup, places, less !== undefined),
  };
}

function standingOf(
  setup: SheetSetup,
  places: readonly PlaceResult[],
  hasClearance: boolean,
): Pick<SheetResult, 'standing' | 'says'> {
  const out = places.filter((place) => place.verdict === 'out');
  const wide = places.filter((place) => place.clearanceVerdict === 'out');
  const missing = places.filter((place) => place.missing.length > 0);
  const unpaired = hasClearance ? places.filter((place) => place.clearance === null && place.missing.length === 0) : [];
  const sentences = [
    out.length === 0 ? '' : `Outside ${limitWords(setup.limits, setup.unit)}: ${named(out)}.`,
    wide.length === 0 ? '' : `Clearance outside ${limitWords(setup.clearance, setup.unit)}: ${named(wide)}.`,
    missing.length === 0 ? '' : `Not measured: ${named(missing.map(unread))}.`,
    unpaired.length === 0 ? '' : `No clearance, since the other sheet lacks: ${named(unpaired)}.`,
  ].filter((sentence) => sentence !== '');
  const close = places.filter((place) => place.verdict === 'at limit' || place.clearanceVerdict === 'at limit');
  const standing =
    out.length + wide.length > 0 ? 'out' : missing.length + unpaired.length > 0 ? 'missing' : 'in limits';
  if (standing !== 'in limits') return { standing, says: sentences.join(' ') };
  const free = places.every(
    (place) => place.verdict === 'no limits' && (!hasClearance || place.clearanceVerdict === 'no limits'),
  );
  if (free) return { standing, says: 'All measured; no limits are written down.' };
  const near = close.length === 0 ? '' : ` Within the uncertainty of a limit: ${named(close)}.`;
  return {
    standing,
    says: `${places.length === 1 ? 'It is' : `All ${places.length} places are`} measured and inside the limits.${near}`,
  };
}

/** A place of which nothing is read goes by its name; of others it is said what is left to read. */
function unread({ place, readings, missing }: PlaceResult): { readonly place: string } {
  if (readings.length === 0) return { place };
  const more = missing.length > 3 ? ` and ${missing.length - 3} more` : '';
  return { place: `${place} (${missing.slice(0, 3).join(', ')}${more})` };
}

/** Up to four names, and how many more. */
function named(places: readonly { readonly place: string }[]): string {
  const shown = places.slice(0, 4).map(({ place }) => place);
  const more = places.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

/** "0.04 to 0.06 mm", "0.2 mm or more". */
export function limitWords({ least, most }: SheetLimits, unit: string): string {
  if (least !== null && most !== null) return `${least} to ${most} ${unit}`;
  if (least !== null) return `${least} ${unit} or more`;
  return most === null ? 'no limits' : `${most} ${unit} or less`;
}
