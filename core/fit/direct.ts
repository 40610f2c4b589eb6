import { formatPort } from './format.ts';
import { apart, type Joint, no, unknown } from './joint.ts';
import { type Gender, isGendered, isThreaded, type Port, type PortRole } from './port.ts';
import { joinThreads, sourcesOf } from './threaded.ts';
import {
  joinConnectors,
  joinHose,
  joinPatterns,
  joinQuick,
  joinSlip,
  joinSplitFlanges,
  joinTradeFlanges,
  joinVbands,
} from './unthreaded.ts';

/** What can be joined with what at all, be it through an adapter. */
type PortClass = 'fluid' | 'exhaust' | 'pattern' | 'electrical';

export function classOf({ kind }: Port): PortClass {
  if (kind === 'vband' || kind === 'slip' || kind === 'tradeflange') return 'exhaust';
  if (kind === 'pattern') return 'pattern';
  return kind === 'elec' ? 'electrical' : 'fluid';
}

/** Male or female, as the end counts: a banjo bolt, barb or tube is male, a hose female. */
export function genderOf(port: Port): Gender | undefined {
  if (port.kind === 'banjo' || port.kind === 'barb' || port.kind === 'tube') return 'male';
  return port.kind === 'hose' ? 'female' : port.gender;
}

const classNames: Readonly<Record<PortClass, string>> = {
  fluid: 'a fluid end',
  exhaust: 'an exhaust joint',
  pattern: 'a hole pattern',
  electrical: 'an electrical connector',
};

/** What becomes of two ends put together as they are. Symmetric: swapping them changes no more than the order of words. */
export function join(one: Port, other: Port, role: PortRole): Joint {
  const classes = [classOf(one), classOf(other)] as const;
  const ours = 'Definition of the kinds';
  if (classes[0] !== classes[1]) {
    return no(`${classNames[classes[0]]} against ${classNames[classes[1]]}`, ours);
  }
  const unsaid = [one, other].filter((port) => isGendered(port) && genderOf(port) === undefined);
  if (unsaid.length > 0) {
    return unknown([...new Set(unsaid.map((port) => `whether ${formatPort(port)} is male or female`))], ours);
  }
  if (one.kind === 'vband' && other.kind === 'vband') return joinVbands(one, other);
  if (one.kind === 'slip' && other.kind === 'slip') return joinSlip(one, other);
  if (one.kind === 'splitflange' && other.kind === 'splitflange') return joinSplitFlanges(one, other);
  if (one.kind === 'tradeflange' && other.kind === 'tradeflange') return joinTradeFlanges(one, other);
  if (one.kind === 'pattern' && other.kind === 'pattern') return joinPatterns(one, other);
  const [male, female] = genderOf(one) === 'male' ? [one, other] : [other, one];
  const sameGender = genderOf(one) !== undefined && genderOf(one) === genderOf(other);
  if (sameGender) {
    const reason = `Both are ${genderOf(one)}: ${formatPort(one)} and ${formatPort(other)}`;
    const threads = isThreaded(one) && isThreaded(other);
    const bolted = threads && (role === 'fastener' || role === 'electrical');
    const source = threads ? sourcesOf(one, other, role) : ours;
    return classes[0] === 'electrical' || bolted ? no(reason, source) : apart(reason, source);
  }
  if (male.kind === 'elec' && female.kind === 'elec') return joinConnectors(male, female);
  if (isThreaded(male) && isThreaded(female)) return joinThreads(male, female, role);
  if (male.kind === 'quick' && female.kind === 'quick') return joinQuick(male, female);
  if ((male.kind === 'barb' || male.kind === 'tube') && female.kind === 'hose') return joinHose(male, female);
  return apart(`${formatPort(one)} and ${formatPort(other)} are different kinds of end`, ours);
}
