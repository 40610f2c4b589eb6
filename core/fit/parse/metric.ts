import { oRingPorts } from '../tables/metric-ports.ts';
import { coarsePitch, metricDiameters, metricPitches, metricThread, plain, type Thread } from '../thread.ts';
import {
  commonSides,
  decimal,
  type ParseContext,
  type Reader,
  type Rejected,
  rejected,
  understood,
} from './outcome.ts';

const metric = new RegExp(
  String.raw`^(iso ?6149(?:-\d)? )?m ?(${decimal})(?:(?: ?[x-] ?| )(${decimal}))?(?:(?: ?- ?| )(?:\d[a-h]){1,2})?$`,
);

/** A pitch above a third of the diameter leaves no core worth the name: it is a slip, mostly of the decimal point. */
const largestShare = 1 / 3;
const largestDiameter = 100;
const smallestPitch = 0.2;

export interface ReadThread {
  readonly ok: true;
  readonly thread: Thread;
  readonly warnings: readonly string[];
}

function impossible(diameter: number, pitch: number): Rejected {
  const listed = metricPitches(diameter);
  const meant = listed.find((one) => Math.abs(one * 10 - pitch) < 0.001 || Math.abs(one * 100 - pitch) < 0.001);
  const suggestion = meant ?? listed[0];
  return rejected(
    `pitch ${plain(pitch)} is not possible on M${plain(diameter)}${meant === undefined ? '' : `: did you mean ${plain(meant)}?`}${meant === undefined && listed.length > 0 ? `; listed: ${listed.map((one) => plain(one)).join(', ')}` : ''}`,
    ...(suggestion === undefined ? [] : [`M${plain(diameter)}x${plain(suggestion)}`]),
  );
}

function withoutPitch(diameter: number, oRing: boolean, { role }: ParseContext): ReadThread | Rejected {
  const name = `M${plain(diameter)}`;
  if (oRing) {
    const only = oRingPorts.find((one) => one.startsWith(`${name}x`));
    if (only === undefined) return rejected(`${name} is not a listed ISO 6149 port; listed: ${oRingPorts.join(', ')}`);
    const pitch = Number(only.slice(name.length + 1));
    return {
      ok: true,
      thread: metricThread(diameter, pitch),
      warnings: [`pitch not given: ISO 6149 ${name} is x${plain(pitch)}`],
    };
  }
  const pitch = coarsePitch(diameter);
  if (pitch === undefined) {
    const listed = metricPitches(diameter);
    return listed.length === 0
      ? rejected(
          `${name} is not a listed metric size; listed: ${metricDiameters()
            .map((one) => `M${plain(one)}`)
            .join(', ')}`,
          `${name}x1`,
        )
      : rejected(
          `pitch not given, and ${name} has no listed coarse pitch; listed: ${listed.map((one) => plain(one)).join(', ')}`,
          ...listed.map((one) => `${name}x${plain(one)}`),
        );
  }
  const often = role === 'fastener' ? '' : '; fluid ports are often finer';
  return {
    ok: true,
    thread: metricThread(diameter, pitch),
    warnings: [`pitch not given: ${name} alone means x${plain(pitch)} (ISO 261 coarse)${often}`],
  };
}

/** The metric thread in this text (`m14x1.5`), undefined when it isn't one. ISO 261 coarse where the pitch is left out. */
export function readMetric(
  core: string,
  context: ParseContext,
): (ReadThread & { readonly oRing: boolean }) | Rejected | undefined {
  const found = metric.exec(core);
  if (found === null) return undefined;
  const [, oRingText, diameterText, pitchText] = found;
  const oRing = oRingText !== undefined;
  const diameter = Number(diameterText);
  if (diameter <= 0 || diameter > largestDiameter) {
    return rejected(
      `M${plain(diameter)} is not a metric thread: the diameter is in mm, to ${largestDiameter}`,
      'M14x1.5',
    );
  }
  if (pitchText === undefined) {
    const read = withoutPitch(diameter, oRing, context);
    return read.ok ? { ...read, oRing } : read;
  }
  const pitch = Number(pitchText);
  if (pitch > diameter * largestShare + 1e-9 || pitch < smallestPitch) return impossible(diameter, pitch);
  const listed = metricPitches(diameter);
  const thread = metricThread(diameter, pitch);
  const warnings: string[] = [];
  if (listed.length === 0) warnings.push(`M${plain(diameter)} is not a listed metric size: measure it again`);
  else if (!listed.includes(pitch)) {
    warnings.push(
      `pitch ${plain(pitch)} not listed for M${plain(diameter)}: ${listed.map((one) => plain(one)).join(', ')}`,
    );
  }
  if (oRing && !oRingPorts.includes(thread.name)) {
    warnings.push(`${thread.name} is not a listed ISO 6149 port; listed: ${oRingPorts.join(', ')}`);
  }
  return { ok: true, thread, warnings, oRing };
}

export const metricReader: Reader = (core, sides, context) => {
  const read = readMetric(core, context);
  if (read === undefined || !read.ok) return read;
  return understood(
    { kind: read.oRing ? 'mport_oring' : 'thread', thread: read.thread, ...commonSides(sides) },
    read.warnings,
  );
};
