/** What the line needs to know of a joint between an end of the hose and the port it goes to. */
import { fit as judge } from '../fit/fit.ts';
import { parsePort } from '../fit/parse.ts';

/** One way to join what doesn't join directly. */
export interface JointAdapter {
  readonly pieces: readonly string[];
  readonly needs: readonly string[];
}

export interface Joint {
  readonly verdict: 'mates' | 'adapter' | 'lookalike' | 'no' | 'unknown';
  readonly reason: string;
  /** Loose items of the direct joint: washers, O-rings, sealant, one entry each. */
  readonly needs: readonly string[];
  /** The best first. */
  readonly adapters: readonly JointAdapter[];
  readonly source: string;
}

export interface LineJoint extends Joint {
  readonly end: 1 | 2;
  readonly from: string;
  readonly to: string;
}

/**
 * Judges two ports by their designations, by the rules of fit. A designation that can't be read gives `unknown` with the
 * reason.
 * @param medium what flows through, as written, with what the line does.
 */
export function judgeJoint(end: string, port: string, medium: string): Joint {
  const one = parsePort(end, { role: 'fluid' });
  const other = parsePort(port, { role: 'fluid' });
  const unread = one.ok ? (other.ok ? undefined : other) : one;
  if (unread !== undefined || !one.ok || !other.ok) {
    const reason = `“${unread?.typed ?? ''}” can't be read: ${unread?.message ?? ''}.`;
    return { verdict: 'unknown', reason, needs: [], adapters: [], source: 'fit of the two ports' };
  }
  const { verdict, reason, consequence, howToTell, needs, adapters, source } = judge(one.port, other.port, {
    role: 'fluid',
    medium,
  });
  return {
    verdict,
    reason: [reason, consequence, howToTell].filter((text) => text !== undefined).join(' '),
    needs,
    adapters: adapters.map((adapter) => ({ pieces: adapter.pieces.map(({ text }) => text), needs: adapter.needs })),
    source,
  };
}
