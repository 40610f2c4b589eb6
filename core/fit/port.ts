import type { Thread } from './thread.ts';

export type Gender = 'male' | 'female';

/** What the joint is for: fluid and gas must seal, a fastener must hold. */
export const portRoles = ['fluid', 'gas', 'fastener', 'electrical'] as const;
export type PortRole = (typeof portRoles)[number];

export const threadedKinds = [
  'thread',
  'mport_oring',
  'flare37',
  'flare45',
  'flareinv',
  'orb',
  'orfs',
  'npt',
  'nptf',
  'r',
  'rp',
  'g',
  'banjo',
] as const;
export type ThreadedKind = (typeof threadedKinds)[number];

/** Families that are sized by dash, a number of sixteenths of an inch. */
export const dashKinds = ['flare37', 'flare45', 'flareinv', 'orb', 'orfs'] as const;
export type DashKind = (typeof dashKinds)[number];

interface Common {
  /** Missing where the kind has none, or where it was not said. */
  readonly gender?: Gender;
  /** How the builder says that it seals. */
  readonly seal?: 'washer' | 'sealant';
  readonly swivel?: true;
}

export interface ThreadedPort extends Common {
  readonly kind: ThreadedKind;
  readonly thread: Thread;
  /** Of the kinds sized by dash. */
  readonly dash?: number;
  /** AN: to the aerospace drawing, JIC: industrial; of 37° flares. */
  readonly grade?: 'AN' | 'JIC';
}

/** Ends that are compared by one diameter, mm. */
export interface BorePort extends Common {
  readonly kind: 'barb' | 'hose' | 'tube' | 'quick';
  readonly mm: number;
}

export interface VbandPort extends Common {
  readonly kind: 'vband';
  /** Outside diameter of the tube that names it, mm. */
  readonly mm: number;
  /** The builder's name for the flange profile: outside diameter, angle, register, thickness. */
  readonly profile?: string;
}

export interface SlipPort extends Common {
  readonly kind: 'slip';
  readonly mm: number;
  readonly of: 'od' | 'id';
}

export interface SplitFlangePort extends Common {
  readonly kind: 'splitflange';
  readonly code: 61 | 62;
  readonly dash: number;
}

export interface TradeFlangePort extends Common {
  readonly kind: 'tradeflange';
  readonly name: string;
}

export interface PatternPort extends Common {
  readonly kind: 'pattern';
  readonly count: number;
  readonly screw: Thread;
  /** Either the diameter of the hole circle, or the two sides of the rectangle, mm. */
  readonly spacing: readonly [number] | readonly [number, number];
}

export interface ElectricalPort extends Common {
  readonly kind: 'elec';
  readonly cavities: number;
  readonly key?: string;
  readonly family?: string;
}

/** One interface of a part: what joins there and its deciding sizes. */
export type Port =
  | ThreadedPort
  | BorePort
  | VbandPort
  | SlipPort
  | SplitFlangePort
  | TradeFlangePort
  | PatternPort
  | ElectricalPort;

export type PortKind = Port['kind'];

export const isThreaded = (port: Port): port is ThreadedPort =>
  (threadedKinds as readonly string[]).includes(port.kind);

/** Whether both a male and a female end of the kind exist, so that it must be said which. */
export const isGendered = ({ kind }: Port): boolean =>
  !['barb', 'hose', 'tube', 'vband', 'slip', 'splitflange', 'tradeflange', 'pattern'].includes(kind);
