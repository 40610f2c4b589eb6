import type { ParsedPort, UnreadPort } from '../../../core/fit/parse.ts';
import { parsePort } from '../../../core/fit/parse.ts';
import { type PortRole, portRoles } from '../../../core/fit/port.ts';
import { Refusal } from '../../../core/refusal.ts';
import { fromSI, toSI } from '../../../core/units/measure.ts';
import { parseMeasure } from '../../../core/units/parse-measure.ts';
import { navigate, type Params } from '../../app/route.tsx';

export const viewIds = ['wrong', 'connections', 'declared', 'ports', 'try'] as const;
export type ViewId = (typeof viewIds)[number];

/** The view that the address asks for: the one named, or the one in which what it names is found. */
export function viewOf(params: Params): ViewId {
  const named = viewIds.find((id) => id === params['view']);
  if (named !== undefined) return named;
  if (params['connection'] !== undefined) return 'connections';
  if (params['declared'] !== undefined) return 'declared';
  if (params['port'] !== undefined || params['part'] !== undefined) return 'ports';
  return ['a', 'b', 'd', 'p'].some((name) => params[name] !== undefined) ? 'try' : 'wrong';
}

/** The number that the address names, null where it names none. */
export const numberIn = (text: string | undefined): number | null =>
  text !== undefined && /^\d{1,15}$/.test(text) ? Number(text) : null;

/** Changes some of what the address holds, keeping the rest; leaves no step to go back to. */
export const change = (params: Params, changed: Params): void =>
  navigate('/fit', { ...params, ...changed }, { replace: true });

export const roleOf = ({ role }: Params): PortRole => portRoles.find((one) => one === role) ?? 'fluid';

/** A port as the address has it; undefined while nothing is typed. */
export const portOf = (text: string | undefined, role: PortRole): ParsedPort | UnreadPort | undefined =>
  text === undefined || text.trim() === '' ? undefined : parsePort(text, { role });

export type Reading =
  | { readonly kind: 'empty' }
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'problem'; readonly problem: string };

function readMeasure(text: string | undefined, read: (text: string) => number): Reading {
  if (text === undefined || text.trim() === '') return { kind: 'empty' };
  try {
    return { kind: 'value', value: read(text) };
  } catch (error) {
    if (error instanceof Refusal) return { kind: 'problem', problem: error.message };
    throw error;
  }
}

/**
 * Gauge pressure in bar; `bar` where no unit is typed.
 * @throws Refusal `bad-input` for what can't be read or is below nothing
 */
export function readPressure(typed: string): number {
  const { value, unit } = parseMeasure(typed, 'pressureGauge', { unit: 'bar', field: 'pressure' });
  const bar = fromSI(toSI(value, unit, 'pressureGauge'), 'bar', 'pressureGauge');
  if (bar >= 0) return bar;
  throw new Refusal('bad-input', 'The pressure is below nothing: type a gauge pressure such as 4 bar or 60 psi.', {
    field: 'pressure',
    accepted: 'a gauge pressure of 0 or more',
  });
}

export const pressureOf = (text: string | undefined): Reading => readMeasure(text, readPressure);

const millimetres = (typed: string, field: string): number => {
  const { value, unit } = parseMeasure(typed, 'length', { unit: 'mm', field });
  return Number((toSI(value, unit, 'length') * 1000).toFixed(4));
};

/** Diameter in mm; mm where no unit is typed. */
export const diameterOf = (text: string | undefined): Reading =>
  readMeasure(text, (typed) => millimetres(typed, 'diameter'));

const perInch =
  /^(\d+(?:\.\d+)?|\d+-\d+\/\d+)\s*(?:tpi|threads?(?:\s*per\s*(?:inch|in))?|per\s*(?:inch|in)|\/\s*in(?:ch)?)\.?$/i;

const bare = /^\d+(?:\.\d+)?$/;
/** The coarsest listed thread has 6 mm (M64); no thread here is coarser than this. */
const coarsestMm = 7;
/** Threads per inch that are listed lie between these. */
const threadsPerInch = [4, 80] as const;

/** Threads per inch that a bare number could mean as well, null where its unit is said or it can't be. */
export function perInchOf(text: string | undefined): number | null {
  const typed = (text ?? '').trim();
  if (!bare.test(typed)) return null;
  const count = Number(typed);
  return count >= threadsPerInch[0] && count <= threadsPerInch[1] ? count : null;
}

/** Whether a bare number is read as threads per inch: as a pitch in mm it would be coarser than any. */
export const readsPerInch = (text: string | undefined): boolean => (perInchOf(text) ?? 0) > coarsestMm;

/** Pitch in mm, from a length or from threads per inch (`18 tpi`, or `18` alone, which is no pitch in mm). */
export const pitchOf = (text: string | undefined): Reading =>
  readMeasure(text, (typed) => {
    const count = readsPerInch(typed) ? Number(typed.trim()) : Number(perInch.exec(typed.trim())?.[1] ?? Number.NaN);
    return count > 0 ? 25.4 / count : millimetres(typed, 'pitch');
  });
