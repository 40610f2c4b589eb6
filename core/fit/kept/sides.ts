/** One side of a connection as people read it: what it is, whose it is, and whether it can be judged. */
import type { Port, PortRole } from '../port.ts';
import { readPort } from './joined.ts';
import type { FitContext, KeptPort, KeptSide } from './records.ts';

/** A side as shown beside its verdict. */
export interface SideShown {
  port: number | null;
  part: number | null;
  text: string;
  whose: string;
  standing: string;
}

interface ReadSide {
  readonly shown: SideShown;
  readonly port: Port | undefined;
  /** Why it can't be judged; empty when it can. */
  readonly lacks: string;
}

/** Whose a port is: its part line, or the place on the engine. */
export const ownerOf = ({ part, place }: KeptPort, { parts }: FitContext): string =>
  part === null ? place || 'the engine' : (parts.get(part)?.description ?? `part line ${part}`);

/** A port that can be chosen: in use, and of the engine or of a part line on the list. */
export const isStanding = ({ retired, part }: KeptPort, { parts }: FitContext): boolean =>
  !retired && (part === null || parts.get(part)?.listed === true);

function lacksOfPort(port: KeptPort, context: FitContext): string {
  if (port.retired) return `another port in place of “${port.name}”, which was retired`;
  if (!isStanding(port, context)) return `another part in place of “${ownerOf(port, context)}”, which was dropped`;
  return '';
}

/** Reads one side for what the joint is for. A port that was retired, or whose part was dropped, can't be judged. */
export function readSide(side: KeptSide, role: PortRole, context: FitContext): ReadSide {
  const kept = side.port === null ? undefined : context.ports.get(side.port);
  const designation = kept?.designation ?? side.typed;
  const read = readPort(designation, role);
  const part = kept?.part ?? null;
  const shown: SideShown = {
    port: side.port,
    part,
    text: read.ok ? read.canonical : designation,
    whose: kept === undefined ? '' : `${kept.name} of ${ownerOf(kept, context)}`,
    standing: part === null ? '' : (context.parts.get(part)?.standing ?? ''),
  };
  const lacks =
    side.port !== null && kept === undefined
      ? `which port stands in place of number ${side.port}`
      : (kept === undefined ? '' : lacksOfPort(kept, context)) ||
        (read.ok ? '' : `how “${designation}” is meant (${read.message})`);
  return { shown, port: read.ok ? read.port : undefined, lacks };
}
