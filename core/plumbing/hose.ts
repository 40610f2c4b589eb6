/** The hose of a line: what is marked on it first, then the typical figures of its type. */
import type { HoseChoice } from './line.ts';
import { type HoseClass, type HoseSize, type HoseType, hoseTypes } from './tables/hose-types.ts';

const squeezed = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '')
    .replace(/^sae/, '');

/** `100R5 -8` is type 100R5 in dash 8; `SAE 30R9` has no dash. */
export function splitHoseText(text: string): { readonly type: string; readonly dash?: number } {
  const match = /^(.*?)[\s,]+(?:-|–|−|dash\s*|size\s*)0?(\d{1,2})$/i.exec(text.trim());
  const [, type, dash] = match ?? [];
  return type === undefined ? { type: text.trim() } : { type: type.trim(), dash: Number(dash) };
}

/** A type by its name or another name of it; undefined for hose that isn't in the table. */
export function findHoseType(named: string): HoseType | undefined {
  const key = squeezed(named);
  return hoseTypes.find(({ id, also }) => [id, ...also].some((one) => squeezed(one) === key));
}

/** Where a figure comes from: what the writer gave, or what is usual for the type. */
interface Figure {
  readonly value: number;
  readonly basis: 'given' | 'typical';
}

export interface Hose {
  readonly choice: HoseChoice;
  readonly type?: HoseType | undefined;
  readonly size?: HoseSize | undefined;
  readonly hoseClass?: HoseClass | undefined;
  readonly bore?: Figure | undefined;
  readonly outside?: Figure | undefined;
  readonly minBendRadius?: Figure | undefined;
  readonly maxBar?: Figure | undefined;
  readonly minC?: Figure | undefined;
  readonly maxC?: Figure | undefined;
  /** As given, or as the type or its class settles it. */
  readonly material?: string | undefined;
  /** `100R5 -8`, for people and for adding up what belongs on one roll. */
  readonly label: string;
}

const figure = (given: number | undefined, typical: number | undefined): Figure | undefined => {
  if (given !== undefined) return { value: given, basis: 'given' };
  return typical === undefined ? undefined : { value: typical, basis: 'typical' };
};

/** Everything known of a hose. The figures given go before the typical ones of `hose-types.ts`. */
export function describeHose(choice: HoseChoice): Hose {
  const type = choice.type === undefined ? undefined : findHoseType(choice.type);
  const size = type?.sizes.find(({ dash }) => dash === choice.dash);
  const wanted = choice.className?.toLowerCase().replace(/^class\s*/, '');
  const hoseClass = type?.classes?.find(({ name }) => name.toLowerCase() === wanted);
  const bore = figure(choice.boreMm, size?.boreMm);
  const name = type?.id ?? choice.type ?? 'hose';
  const sized = choice.dash !== undefined ? ` -${choice.dash}` : bore === undefined ? '' : ` ${bore.value} mm bore`;
  return {
    choice,
    type,
    size,
    hoseClass,
    bore,
    outside: figure(choice.outsideMm, size?.outsideMm),
    minBendRadius: figure(choice.minBendRadiusMm, size?.minBendRadiusMm),
    maxBar: figure(choice.maxBar, size?.maxBar ?? type?.maxBar),
    minC: figure(choice.minC, hoseClass?.minC ?? type?.minC),
    maxC: figure(choice.maxC, hoseClass?.maxC ?? type?.maxC),
    material: choice.tubeMaterial ?? hoseClass?.material ?? type?.material,
    label: `${name}${sized}`,
  };
}
