import { formatPort } from './format.ts';
import { boreReader, hoseInFamily, quickReader, slipReader, vbandReader } from './parse/bores.ts';
import { dashInFamily, dashReader } from './parse/dash.ts';
import { metricReader } from './parse/metric.ts';
import { normalise, takeSides } from './parse/normalise.ts';
import { type ParseContext, type Reader, type Rejected, rejected } from './parse/outcome.ts';
import { bspReader, nptReader } from './parse/pipe.ts';
import { ambiguous, notCovered, withoutLetter } from './parse/refusals.ts';
import { banjoReader, electricalReader, flangeReader, patternReader } from './parse/shapes.ts';
import { unifiedReader } from './parse/unified.ts';
import type { Port } from './port.ts';

/** A designation that was understood. */
export interface ParsedPort {
  readonly ok: true;
  /** As the builder wrote it; kept beside the reading. */
  readonly typed: string;
  readonly port: Port;
  readonly canonical: string;
  readonly warnings: readonly string[];
  readonly notes: readonly string[];
}

/** A designation that was not: what is wrong, and one or two ways to write it. */
export interface UnreadPort extends Rejected {
  readonly typed: string;
}

/** Shown where nothing was recognised. */
const waysToWrite = ['M14x1.5 male', '7/16-20 UNF female', '1/8 NPT male', 'JIC -6', 'ORB -6', 'hose 8 mm'] as const;

const longest = 120;

const readers: readonly Reader[] = [
  metricReader,
  banjoReader,
  boreReader,
  quickReader,
  vbandReader,
  slipReader,
  flangeReader,
  patternReader,
  electricalReader,
  dashReader,
  nptReader,
  bspReader,
  ambiguous,
  unifiedReader,
  withoutLetter,
];

/**
 * Reads a port's designation as people type it. Never throws and never guesses: what can't be told apart is refused with
 * ways to write it. `context.role` decides what AN6 means (fitting or bolt), `context.family` what `-6` alone means.
 */
export function parsePort(typed: string, context: ParseContext = {}): ParsedPort | UnreadPort {
  const refuse = (one: Rejected): UnreadPort => ({ ...one, typed });
  if (typed.trim() === '') return refuse(rejected('nothing is written', ...waysToWrite));
  if (typed.length > longest)
    return refuse(rejected(`a designation is no longer than ${longest} characters`, ...waysToWrite));
  const text = normalise(typed);
  const missing = notCovered(text);
  if (missing !== undefined) return refuse(missing);
  const { core, sides, both } = takeSides(text);
  if (both) return refuse(rejected('both male and female are said', `${core} male`, `${core} female`));
  const first: readonly Reader[] =
    context.family === undefined ? [] : context.family === 'hose' ? [hoseInFamily] : [dashInFamily];
  for (const reader of [...first, ...readers]) {
    const read = reader(core, sides, context);
    if (read === undefined) continue;
    if (!read.ok) return refuse(read);
    return { ...read, typed, canonical: formatPort(read.port) };
  }
  return refuse(rejected(`not understood: "${typed.trim()}"`, ...waysToWrite));
}
