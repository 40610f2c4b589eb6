/** Torque over preload of a bolted joint, ISO 16047 (equation from memory; seen in JIS B 1083 and DIN 946). All in SI. */
export interface FrictionJoint {
  readonly pitch: number;
  readonly pitchDiameter: number;
  readonly threadFriction: number;
  readonly headFriction: number;
  readonly headOutside: number;
  readonly hole: number;
}

/** 1/(2 · cos 30°), rounded as the standard prints it: the flank of a 60° thread presses harder than the axis. */
const flank = 0.577_35;

/**
 * The three terms of torque over preload, in m, and their sum: P/(2π) stretches the bolt, 0.57735 · μ · d2 is lost in the
 * thread and μ · (head + hole)/4 under the head.
 */
export function torqueParts(joint: FrictionJoint) {
  const stretch = joint.pitch / (2 * Math.PI);
  const thread = flank * joint.threadFriction * joint.pitchDiameter;
  const head = (joint.headFriction * (joint.headOutside + joint.hole)) / 4;
  return { stretch, thread, head, sum: stretch + thread + head };
}
