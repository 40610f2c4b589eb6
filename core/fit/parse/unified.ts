import { unifiedRows, unifiedThread } from '../thread.ts';
import type { ReadThread } from './metric.ts';
import { commonSides, inches, mixed, type Reader, type Rejected, rejected, understood } from './outcome.ts';

/** A class of fit stands apart from the threads per inch, or it would be read as part of them. */
const full = new RegExp(
  String.raw`^(# ?\d+|${mixed})(?: in)?(?: ?[-x] ?| )(\d+)(?: ?tpi)?(?: ?-? ?(unc|unf|unef|unjf|uns|un)(?: ?-? ?[123][ab]?)?|(?: ?- ?| )[123][ab]?)?$`,
);
const bySeries = new RegExp(String.raw`^(# ?\d+|${mixed})(?: in)? ?-? ?(unc|unf)(?: ?-? ?[123][ab]?)?$`);

/** Sizes that are numbers even without their sign, when the threads per inch fit. */
const numberSizes = ['4', '5', '6', '8', '10', '12'];

const listedFor = (size: string): readonly string[] =>
  unifiedRows.filter((row) => row.size === size).map(({ tpi, series }) => `${size}-${tpi} ${series}`);

/** `1/8` for `2/16`: the size as the tables write it. */
function lowest(size: string): string {
  if (size.startsWith('#')) return size.replace(' ', '');
  const value = inches(size);
  return unifiedRows.find((row) => !row.size.startsWith('#') && inches(row.size) === value)?.size ?? size;
}

function notListed(size: string, tpi: string): Rejected {
  const listed = listedFor(size);
  return rejected(
    listed.length === 0
      ? `${size} is not a listed unified thread size`
      : `${size}-${tpi} is not a listed unified thread; listed for ${size}: ${listed.join(', ')}`,
    ...(listed.length === 0 ? ['7/16-20 UNF', '#10-32 UNF'] : listed),
  );
}

/** The unified thread in this text, undefined when it isn't one. Size and threads per inch must be listed, the series word agree. */
export function readUnified(core: string): ReadThread | Rejected | undefined {
  const series = bySeries.exec(core);
  if (series !== null) {
    const plainSize = series[1] ?? '';
    const size = lowest(numberSizes.includes(plainSize) ? `#${plainSize}` : plainSize);
    const word = (series[2] ?? '').toUpperCase();
    const row = unifiedRows.find((one) => one.size === size && one.series === word);
    const thread = row === undefined ? undefined : unifiedThread(row.size, row.tpi);
    if (thread !== undefined) return { ok: true, thread, warnings: [] };
    const listed = listedFor(size);
    return rejected(
      `${size} has no listed ${word} thread${listed.length === 0 ? '' : `; listed for ${size}: ${listed.join(', ')}`}`,
      ...(listed.length === 0 ? ['7/16-20 UNF', '#10-32 UNF'] : listed),
    );
  }
  const found = full.exec(core);
  if (found === null) return undefined;
  const [, sizeText = '', tpi = '', word] = found;
  const size = lowest(numberSizes.includes(sizeText) ? `#${sizeText}` : sizeText);
  const thread = unifiedThread(size, Number(tpi));
  if (thread === undefined) return notListed(size, tpi);
  const is = thread.name.split(' ').at(-1) ?? '';
  // J-form threads have a rounded root and the same size, pitch and flanks as UNF.
  const said = word === undefined ? undefined : word === 'unjf' ? 'UNF' : word.toUpperCase();
  if (said !== undefined && said !== is) {
    return rejected(`${size}-${tpi} is ${is}, not ${word?.toUpperCase()}`, thread.name, ...listedFor(size));
  }
  return { ok: true, thread, warnings: [] };
}

export const unifiedReader: Reader = (core, sides) => {
  const read = readUnified(core);
  if (read === undefined || !read.ok) return read;
  return understood({ kind: 'thread', thread: read.thread, ...commonSides(sides) });
};
