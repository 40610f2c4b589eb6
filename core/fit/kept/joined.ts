/** Whether two written ports join, as plain data, remembered by what went in. */
import { type Fit, fit as judge } from '../fit.ts';
import { parsePort } from '../parse.ts';
import type { Port, PortRole } from '../port.ts';
import type { Severity } from '../tables/lookalikes.ts';

/** A fit as every shell is told of it. */
export interface JudgedFit {
  verdict: Fit['verdict'];
  reason: string;
  needs: string[];
  adapters: { pieces: string[]; needs: string[]; source: string }[];
  severity: Severity;
  consequence: string;
  howToTell: string;
  missing: string[];
  notes: string[];
  caution: string;
  source: string;
}

interface JoinedAs {
  readonly role: PortRole;
  readonly medium: string;
  readonly pressureBar: number | null;
}

/** A written port as read for its role, or the reader's message. */
type ReadPort =
  | { readonly ok: true; readonly port: Port; readonly canonical: string; readonly warnings: readonly string[] }
  | { readonly ok: false; readonly message: string; readonly write: readonly string[] };

/** Reads a designation for what the joint is for: AN6 is a fitting in a fuel line and a bolt in a bracket. */
export function readPort(designation: string, role: PortRole): ReadPort {
  const read = parsePort(designation, { role });
  return read.ok
    ? { ok: true, port: read.port, canonical: read.canonical, warnings: [...read.warnings, ...read.notes] }
    : { ok: false, message: read.message, write: read.write };
}

function asData(found: Fit): JudgedFit {
  return {
    verdict: found.verdict,
    reason: found.reason,
    needs: [...new Set(found.needs)],
    adapters: found.adapters.map(({ pieces, needs }) => ({
      pieces: pieces.map(({ text }) => text),
      needs: [...needs],
      source: [...new Set(pieces.map(({ source }) => source))].join('; '),
    })),
    severity: found.severity,
    consequence: found.consequence ?? '',
    howToTell: found.howToTell ?? '',
    missing: [...found.missing],
    notes: [...found.notes],
    caution: found.caution,
    source: found.source,
  };
}

/** At most so many answers are kept: the hoist check's past weeks ask the same again and again. */
const mostKept = 2000;
const kept = new Map<string, JudgedFit>();

/** Whether two ports join. The answer is shared: callers leave it as it is. */
export function joinedFit(one: Port, other: Port, { role, medium, pressureBar }: JoinedAs): JudgedFit {
  const key = JSON.stringify([one, other, role, medium, pressureBar]);
  const before = kept.get(key);
  if (before !== undefined) return before;
  const made = asData(judge(one, other, { role, medium, ...(pressureBar === null ? {} : { pressureBar }) }));
  if (kept.size >= mostKept) kept.delete(kept.keys().next().value as string);
  kept.set(key, made);
  return made;
}

/** A fit that can't be judged before something is known. */
export const unjudged = (missing: readonly string[], caution: string): JudgedFit => ({
  verdict: 'unknown',
  reason: `It can't be judged before this is known: ${missing.join('; ')}`,
  needs: [],
  adapters: [],
  severity: 'caution',
  consequence: '',
  howToTell: '',
  missing: [...missing],
  notes: [],
  caution,
  source: 'Definition of the kinds',
});
