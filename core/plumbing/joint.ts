/** What the line needs to know of a joint between an end of the hose and the port it goes to. */
import { fit as judge } from '../fit/fit.ts';
import { parsePort } from '../fit/parse.ts';
import type { Hose } from './hose.ts';

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
 * @param hose whose type settles the bore of a hose written by dash.
 */
export function judgeJoint(end: string, port: string, medium: string, hose: Hose): Joint {
  const hoseBore = (dash: number): number | undefined =>
    dash === hose.choice.dash ? hose.bore?.value : hose.type?.sizes.find((size) => size.dash === dash)?.boreMm;
  const context = { role: 'fluid', hoseBore } as const;
  const one = parsePort(end, context);
  const other = parsePort(port, context);
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
