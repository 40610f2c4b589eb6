import type { RecordValues } from '../contract/records.ts';
import { readPort } from '../fit/kept/joined.ts';
import { acceptanceOf } from '../fit/kept/records.ts';
import type { Check } from '../plumbing/check.ts';
import type { TakeOff } from '../plumbing/take-off.ts';
import type { StoredPlumbing } from '../workbook/store/plumbing.ts';

type Connected = StoredPlumbing['connections'][number];
type Side = Connected['one'];

/** What an acceptance is good for: the two designations in their one spelling. */
function pairOf(one: string, other: string): string {
  const spelling = (designation: string): string => {
    const read = readPort(designation, 'fluid');
    return read.ok ? read.canonical : designation;
  };
  return acceptanceOf([spelling(one), spelling(other)]);
}

/**
 * The checks of a line, with a joint that doesn't fit let pass where somebody accepted those very two ports, with the
 * reason; it stays a caution.
 */
export function acceptJoints(
  { connections, ports }: Pick<StoredPlumbing, 'connections' | 'ports'>,
  { from, to }: Pick<RecordValues['hoseLine'], 'from' | 'to'>,
  { joints, checks }: TakeOff,
): readonly Check[] {
  const accepted = connections.filter((one) => one.accepted !== null);
  if (accepted.length === 0) return checks;
  const written = (side: Side): string =>
    side.port === null ? side.typed : (ports.get(side.port)?.designation ?? side.typed);
  return checks.map((check) => {
    const joint = joints.find(({ end }) => check.id === `joint-${end}`);
    if (joint === undefined || check.verdict !== 'fail') return check;
    const port = joint.end === 1 ? from : to;
    const pair = pairOf(joint.from, joint.to);
    const found = accepted.find(
      ({ one, other, accepted: said }) =>
        // An acceptance of other ports that look the same is no acceptance of these.
        [one.port, other.port].includes(port) && said?.for === pair && pairOf(written(one), written(other)) === pair,
    );
    if (found?.accepted == null) return check;
    const { reason, by } = found.accepted;
    const text = `${check.text} Accepted${by === '' ? '' : ` by ${by}`}: ${reason}`;
    return { ...check, verdict: 'caution', text };
  });
}
