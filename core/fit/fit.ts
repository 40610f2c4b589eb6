import { type Adapter, findAdapters } from './adapters.ts';
import { classOf, join } from './direct.ts';
import type { Port, PortRole } from './port.ts';
import type { Severity } from './tables/lookalikes.ts';

export type Verdict = 'mates' | 'adapter' | 'lookalike' | 'no' | 'unknown';

export interface FitOptions {
  /** What the joint is for; fluid when left out, the strictest. */
  readonly role?: PortRole;
  /** What flows through it: `fuel`, `brake fluid`, `coolant`, … as the builder calls it. */
  readonly medium?: string;
  /** Gauge pressure in bar, for gases. */
  readonly pressureBar?: number;
}

/** Whether two ports join, and what that takes. Computed, never stored. */
export interface Fit {
  readonly verdict: Verdict;
  readonly reason: string;
  readonly needs: readonly string[];
  readonly adapters: readonly Adapter[];
  readonly severity: Severity;
  /** What happens if they are assembled all the same. */
  readonly consequence: string | undefined;
  readonly howToTell: string | undefined;
  /** What must be known first, of an unknown fit. */
  readonly missing: readonly string[];
  readonly notes: readonly string[];
  /** One line on harm to people. */
  readonly caution: string;
  readonly source: string;
  /** Row of the look-alike catalogue. */
  readonly lookalike: string | undefined;
}

/** Media whose leak burns, blinds, or takes the brakes away. */
const harmful =
  /fuel|petrol|gasoline|diesel|methanol|ethanol|\be\d{2}\b|nitrous|brake|clutch|power.?steer|hydraulic|oil/i;
const unpressurised = /drain|breather|vent/i;
const gasLimitBar = 10;

function isHarmful({ role, medium = '', pressureBar = 0 }: FitOptions): boolean {
  if (harmful.test(medium) && !(/oil/i.test(medium) && unpressurised.test(medium))) return true;
  return (role === 'gas' || /gas|air|boost/i.test(medium)) && pressureBar > gasLimitBar;
}

const raised: Readonly<Record<Severity, Severity>> = {
  info: 'info',
  caution: 'danger',
  danger: 'stop',
  stop: 'stop',
};

const cautions = {
  fluid:
    'A leaking joint can spray fuel, hot oil or brake fluid and burn or injure: follow the maker’s manual and local rules, and have brake work checked by a licensed workshop.',
  fastener:
    'A thread that is loose or forced lets go under load: follow the maker’s manual for size, class and torque.',
  exhaust:
    'Exhaust joints get red hot and leak gas that kills in closed rooms: follow the maker’s manual and local rules.',
  electrical:
    'A wrong or forced connector can power the wrong pin: disconnect the battery and follow the maker’s diagram.',
} as const;

function cautionFor(one: Port, role: PortRole): string {
  const of = classOf(one);
  if (of === 'exhaust') return cautions.exhaust;
  if (of === 'electrical' || role === 'electrical') return cautions.electrical;
  return of === 'pattern' || role === 'fastener' ? cautions.fastener : cautions.fluid;
}

/**
 * Whether two ports join: directly, by an adapter, not at all, or so nearly that it does harm. Symmetric: swapping them
 * changes no more than the order of words. Missing attributes give `unknown`, never `mates`.
 * Source: rules of this program over the standards named in `source`.
 */
export function fit(one: Port, other: Port, options: FitOptions = {}): Fit {
  const { role = 'fluid' } = options;
  const joint = join(one, other, role);
  const bolted = role === 'fastener' || role === 'electrical';
  const worthAdapting = joint.verdict === 'apart' || joint.verdict === 'lookalike';
  const avoidTaper = /fuel|petrol|gasoline|diesel|methanol|ethanol|brake/i.test(options.medium ?? '');
  const adapters = worthAdapting && !(bolted && classOf(one) === 'fluid') ? findAdapters(one, other, avoidTaper) : [];
  const verdict = joint.verdict === 'apart' ? (adapters.length > 0 ? 'adapter' : 'no') : joint.verdict;
  const base = verdict === 'no' ? 'caution' : joint.severity;
  return {
    verdict,
    reason: joint.reason,
    needs: joint.needs,
    adapters,
    severity: verdict === 'lookalike' && isHarmful(options) ? raised[base] : base,
    consequence: joint.consequence,
    howToTell: joint.howToTell,
    missing: joint.missing,
    notes: joint.notes,
    caution: cautionFor(one, role),
    source: joint.source,
    lookalike: joint.lookalike,
  };
}
