import { z } from 'zod';
import { actBase, actResult, id, line, milli, ofBuild, optionalLine, procedure } from './common.ts';
import { recordValues } from './records.ts';

const checkVerdict = z.enum(['pass', 'caution', 'fail', 'unknown']);

const lineCheck = z.object({
  id: z.string(),
  title: z.string(),
  verdict: checkVerdict,
  text: z.string(),
  /** Whether the question arises for this line at all. */
  applies: z.boolean(),
  source: z.string(),
});

const billRow = z.object({
  key: z.string(),
  kind: z.string(),
  text: z.string(),
  quantityMilli: milli,
  unit: z.enum(['piece', 'm']),
});

const madeStep = z.object({
  id: z.string(),
  title: z.string(),
  text: z.string(),
  caution: z.string(),
  /** For each copy of the line, in order: when and by whom it was ticked off; null = open. */
  done: z.array(z.object({ on: z.string(), by: z.string(), note: z.string() }).nullable()),
});

/** A line with everything that follows from it. */
export const lineRow = z.object({
  id,
  revision: z.int(),
  name: z.string(),
  fluid: z.string(),
  service: z.string(),
  /** "Turbocharger, oil drain" and the port as read; empty when nobody has said. */
  from: z.object({ port: id.nullable(), part: id.nullable(), whose: z.string(), text: z.string() }),
  to: z.object({ port: id.nullable(), part: id.nullable(), whose: z.string(), text: z.string() }),
  hose: z.string(),
  /** Null where the take-off can't be made; `problem` then says which field is lacking. */
  cutMm: z.number().nullable(),
  toleranceMm: z.number().nullable(),
  problem: z.object({ message: z.string(), field: z.string(), accepted: z.string() }).nullable(),
  quantity: z.int(),
  verdict: checkVerdict,
  /** One sentence: what is wrong first, else the cut. */
  says: z.string(),
  stepsDone: z.int(),
  stepsTotal: z.int(),
  standing: z.enum(['made', 'unfit', 'not made']),
  system: id.nullable(),
  job: id.nullable(),
  beforeGate: z.boolean(),
});
export type LineRow = z.infer<typeof lineRow>;

export const lineDetail = z.object({
  row: lineRow,
  values: z.custom<z.infer<typeof recordValues.hoseLine>>(),
  lengths: z.array(z.object({ label: z.string(), value: z.string(), how: z.string() })),
  checks: z.array(lineCheck),
  bill: z.array(billRow),
  making: z.array(madeStep),
  notes: z.array(z.string()),
  caution: z.string(),
});
export type LineDetail = z.infer<typeof lineDetail>;

export const lineNeedRow = z.object({
  key: z.string(),
  kind: z.string(),
  text: z.string(),
  unit: z.enum(['piece', 'm']),
  neededMilli: milli,
  /** The part line that it is on already; null = none yet. */
  part: id.nullable(),
  onListMilli: milli,
  /** Free on the shelf for it. */
  inStockMilli: milli,
  /** What adding now would put on the list, and what of that would have to be bought. */
  toAddMilli: milli,
  toOrderMilli: milli,
  lines: z.array(z.string()),
});
export type LineNeedRow = z.infer<typeof lineNeedRow>;

const cutRow = z.object({
  hose: z.string(),
  answer: z.string(),
  lengths: z.array(
    z.object({
      /** "1,200 mm at hand" or "bought, 2.4 m". */
      from: z.string(),
      lengthMm: z.number(),
      bought: z.boolean(),
      cuts: z.array(z.object({ line: z.string(), mm: z.number() })),
      restMm: z.number(),
    }),
  ),
  boughtMm: z.number(),
  wasteMm: z.number(),
  proven: z.boolean(),
});

export const plumbingView = z.object({
  /** "25 lines: 3 fail a check, 18 aren't made yet; 4 things are still to be put on the list." */
  answer: z.string(),
  lines: z.array(lineRow),
  needs: z.array(lineNeedRow),
  cutList: z.array(cutRow),
  caution: z.string(),
});
export type PlumbingView = z.infer<typeof plumbingView>;

/** What is missing or wrong: a few words for the drawing, and the sentence. */
const lacks = z.array(z.object({ kind: z.enum(['missing', 'wrong']), short: z.string(), text: z.string() }));

/** Components and lines as a drawing shows them. */
export const schematicView = z.object({
  answer: z.string(),
  nodes: z.array(
    z.object({
      /** "part 12", "place sump", "end 3 from" for an end that nobody has named. */
      id: z.string(),
      title: z.string(),
      part: id.nullable(),
      standing: z.string(),
      ports: z.array(
        z.object({
          id: z.string(),
          port: id.nullable(),
          name: z.string(),
          text: z.string(),
          /** Nothing joins it. */
          open: z.boolean(),
        }),
      ),
      wrong: lacks,
    }),
  ),
  edges: z.array(
    z.object({
      line: id,
      name: z.string(),
      fluid: z.string(),
      from: z.object({ node: z.string(), port: z.string() }),
      to: z.object({ node: z.string(), port: z.string() }),
      hose: z.string(),
      standing: z.enum(['made', 'unfit', 'not made']),
      wrong: lacks,
    }),
  ),
  /** Where somebody put a node; the others are laid out by themselves. */
  places: z.record(z.string(), z.object({ x: z.number(), y: z.number() })),
});
export type SchematicView = z.infer<typeof schematicView>;

export const plumbingContract = {
  view: procedure.input(ofBuild).output(plumbingView),
  line: procedure.input(ofBuild.extend({ line: id })).output(lineDetail),
  /** What a line would come to before it is kept. Refuses as saving would. Writes nothing. */
  tryOut: procedure
    .input(z.object({ build: id, values: recordValues.hoseLine.partial().required({ name: true, definition: true }) }))
    .output(
      // Number 0: the line isn't kept yet.
      lineDetail.omit({ values: true, row: true }).extend({ row: lineRow.extend({ id: z.int().min(0) }) }),
    ),
  /** Puts what the lines still need on the parts list: those named, or all. Asking twice adds nothing. */
  addNeeds: procedure.input(actBase.extend({ build: id, keys: z.array(line(400)).max(1000) })).output(actResult),
  /** One step of making one copy (from 1) ticked off at the bench, or opened again with a reason. */
  step: procedure
    .input(
      actBase.extend({
        line: id,
        copy: z.int().min(1).max(1000),
        step: line(60),
        done: z.boolean(),
        by: optionalLine(80),
        note: optionalLine(400),
      }),
    )
    .output(actResult),
};

/** The drawing of the lines; beside `plumbingContract` under the same name. */
export const schematicContract = {
  schematic: procedure.input(ofBuild).output(schematicView),
  /** Keeps where components were moved to; an empty record lets the drawing lay itself out again. */
  keepPlaces: procedure
    .input(
      actBase.extend({
        build: id,
        places: z.record(line(120), z.object({ x: z.number(), y: z.number() })),
      }),
    )
    .output(actResult),
};
