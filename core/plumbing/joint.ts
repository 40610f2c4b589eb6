/** What the line needs to know of a joint between an end of the hose and the port it goes to. */
export interface Joint {
  readonly verdict: 'mates' | 'adapter' | 'lookalike' | 'no' | 'unknown';
  readonly reason: string;
  /** Loose items: washers, O-rings, sealant, one entry each piece. */
  readonly needs: readonly string[];
  /** Ways to join what doesn't join directly, the best first; each a list of pieces. */
  readonly adapters: readonly (readonly string[])[];
}

/** Judges two ports by their designations. */
export type JointFinder = (end: string, port: string, medium: string | undefined) => Joint;

export interface LineJoint extends Joint {
  readonly end: 1 | 2;
  readonly from: string;
  readonly to: string;
}
