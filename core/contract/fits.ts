import { z } from 'zod';
import { portRoles } from '../fit/port.ts';
import { actBase, actResult, id, line, ofBuild, optionalLine, procedure } from './common.ts';
import { connectionSide } from './records.ts';

export const fitVerdicts = ['mates', 'adapter', 'lookalike', 'no', 'unknown'] as const;
export const fitSeverities = ['info', 'caution', 'danger', 'stop'] as const;

/** Whether two ports join, as worked out now. */
const judged = z.object({
  verdict: z.enum(fitVerdicts),
  reason: z.string(),
  needs: z.array(z.string()),
  adapters: z.array(z.object({ pieces: z.array(z.string()), needs: z.array(z.string()), source: z.string() })),
  severity: z.enum(fitSeverities),
  consequence: z.string(),
  howToTell: z.string(),
  /** What must be known first, of an unknown fit. */
  missing: z.array(z.string()),
  notes: z.array(z.string()),
  caution: z.string(),
  source: z.string(),
});
export type JudgedFit = z.infer<typeof judged>;

export const portRow = z.object({
  id,
  revision: z.int(),
  name: z.string(),
  part: id.nullable(),
  /** The part line, or the place on the engine. */
  owner: z.string(),
  place: z.string(),
  role: z.enum(portRoles),
  medium: z.string(),
  designation: z.string(),
  /** As read now; empty when it can't be read, and `problem` says how to write it. */
  canonical: z.string(),
  problem: z.string(),
  /** Diameter, pitch and the like, in words. */
  measures: z.string(),
  connections: z.array(id),
  note: z.string(),
});
export type PortRow = z.infer<typeof portRow>;

const sideShown = z.object({
  port: id.nullable(),
  part: id.nullable(),
  /** "M14x1.5 male", and whose it is: "oil drain of the turbocharger". */
  text: z.string(),
  whose: z.string(),
  /** How the part line stands: "needed", "in hand"; empty for the engine and for what is typed. */
  standing: z.string(),
});

export const connectionRow = z.object({
  id,
  revision: z.int(),
  title: z.string(),
  one: sideShown,
  other: sideShown,
  role: z.enum(portRoles),
  medium: z.string(),
  fit: judged,
  /** One sentence: verdict, reason, and what it would do. */
  says: z.string(),
  /** What is still wrong after adapter and acceptance; the hoist check and orders go by this. */
  stands: z.enum(['fits', 'wrong', 'unknown']),
  adapter: z.object({ pieces: z.array(z.string()), parts: z.array(id), missing: z.boolean() }).nullable(),
  /** Part lines that the loose things of a connection that mates became; null while nobody put them on the list. */
  needsListed: z.object({ parts: z.array(id), missing: z.boolean() }).nullable(),
  /** The reason that was written down; `lapsed` when a port has changed since. */
  accepted: z.object({ reason: z.string(), by: z.string(), on: z.string(), lapsed: z.boolean() }).nullable(),
  beforeGate: z.boolean(),
  note: z.string(),
});
export type ConnectionRow = z.infer<typeof connectionRow>;

export const declaredRow = z.object({
  id,
  revision: z.int(),
  title: z.string(),
  shipped: z.string(),
  outcome: z.enum(['pass', 'fail', 'unknown', 'not asked']),
  severity: z.enum(fitSeverities),
  says: z.string(),
  left: z.string(),
  right: z.string(),
  /** Margin left with its unit, in words; empty when there is none. */
  margin: z.string(),
  missing: z.array(z.object({ path: z.string(), label: z.string() })),
  notes: z.array(z.string()),
  source: z.string(),
  caution: z.string(),
  /** Every path that the rule asks for, with what it was given and where from. */
  asks: z.array(
    z.object({ path: z.string(), label: z.string(), sort: z.string(), value: z.string(), from: z.string() }),
  ),
  things: z.array(z.object({ name: z.string(), part: id.nullable(), description: z.string() })),
  stands: z.enum(['fits', 'wrong', 'unknown']),
  accepted: z.object({ reason: z.string(), by: z.string(), on: z.string(), lapsed: z.boolean() }).nullable(),
  beforeGate: z.boolean(),
  note: z.string(),
});
export type DeclaredRow = z.infer<typeof declaredRow>;

export const fitsView = z.object({
  /** "2 of 14 fits are wrong and 1 lacks something." */
  answer: z.string(),
  counts: z.object({ fits: z.int(), wrong: z.int(), unknown: z.int() }),
  ports: z.array(portRow),
  /** The worst first. */
  connections: z.array(connectionRow),
  declared: z.array(declaredRow),
  /** Shipped fits that the build doesn't have yet. */
  offered: z.array(
    z.object({ shipped: z.string(), title: z.string(), things: z.array(z.string()), asks: z.array(z.string()) }),
  ),
  caution: z.string(),
});
export type FitsView = z.infer<typeof fitsView>;

/** A fit that stops a part line from being ordered. */
export const fitStop = z.object({
  part: id,
  description: z.string(),
  subject: z.object({ kind: z.enum(['connection', 'declared-fit']), id }),
  title: z.string(),
  verdict: z.string(),
  says: z.string(),
  consequence: z.string(),
  howToTell: z.string(),
  caution: z.string(),
});
export type FitStop = z.infer<typeof fitStop>;

const subject = z.object({ kind: z.enum(['connection', 'declared-fit']), id });

export const fitsContract = {
  view: procedure.input(ofBuild).output(fitsView),
  /** What two sides would come to, kept or typed. Writes nothing. */
  tryOut: procedure
    .input(
      z.object({
        build: id,
        one: connectionSide,
        other: connectionSide,
        role: z.enum(portRoles),
        medium: optionalLine(80),
        pressureBar: z.number().min(0).max(10_000).nullable(),
      }),
    )
    .output(z.object({ one: sideShown, other: sideShown, fit: judged })),
  /** What a declared fit would come to before it is kept. Refuses as saving would. Writes nothing. */
  tryDeclared: procedure
    .input(
      z.object({
        build: id,
        shipped: optionalLine(60),
        rule: z.record(z.string(), z.unknown()).nullable(),
        things: z.record(line(60), id),
        values: z.array(z.object({ path: line(120), value: line(400), unit: optionalLine(40) })).max(100),
      }),
    )
    .output(declaredRow.pick({ outcome: true, severity: true, says: true, missing: true, asks: true, margin: true })),
  /** Chooses an adapter and puts what it needs on the parts list, without doubling what is there. */
  useAdapter: procedure.input(actBase.extend({ connection: id, adapter: z.int().min(0).max(50) })).output(actResult),
  dropAdapter: procedure.input(actBase.extend({ connection: id })).output(actResult),
  /** Puts what a connection that mates needs (washer, sealant) on the parts list, without doubling what is there. */
  listNeeds: procedure.input(actBase.extend({ connection: id })).output(actResult),
  /** Takes them back from the list, as far as only this connection wanted them. */
  unlistNeeds: procedure.input(actBase.extend({ connection: id })).output(actResult),
  /** Accepts a wrong fit with a reason; it stays visible, and lapses when one of its sides changes. */
  accept: procedure.input(actBase.extend({ subject, reason: line(400), by: optionalLine(80) })).output(actResult),
  endAcceptance: procedure.input(actBase.extend({ subject })).output(actResult),
  addShipped: procedure
    .input(actBase.extend({ build: id, shipped: z.array(line(60)).min(1).max(100) }))
    .output(actResult),
  /** What stands against ordering these part lines. */
  stops: procedure.input(z.object({ build: id, parts: z.array(id).max(2000) })).output(z.array(fitStop)),
};
