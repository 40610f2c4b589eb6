import { findCalculator } from '../calculators/index.ts';
import { type Asked, runCalculator } from '../calculators/run.ts';
import type { TorqueView } from '../contract/bench.ts';
import type { TorqueStage } from '../contract/records.ts';
import { parsePort } from '../fit/parse.ts';
import { Refusal } from '../refusal.ts';
import { type BoltMark, boltMarks, groupStanding, nextTurn } from '../torque/marks.ts';
import { type BoltEvent, boltEvents } from '../workbook/store/bench.ts';
import { listRecords, needRecord, type RecordValuesRow } from '../workbook/store/record-tables.ts';
import { boltSequence, boltSpots } from './bench-bolts.ts';
import { act, type Context, counted, needBuild, procedures } from './context.ts';

const { bench } = procedures;

const torqueCaution =
  'The maker’s manual governs torque, sequence and whether a bolt may be used again. A figure holds only for the ' +
  'lubricant it was given for, and for a wrench that was checked.';

/** Newton metres as written: 88, 12.5. */
const newtonMetres = (milli: number): string => String(milli / 1000);

/** The stages of a group: those written down, else its final figure in one go. Never none. */
function stagesOf(group: RecordValuesRow): (TorqueStage & { text: string })[] {
  const written = group['stages'] as unknown as readonly TorqueStage[];
  const torque = group['torqueMilliNm'] as number | null;
  const angle = group['angleDeg'] as number | null;
  const one: TorqueStage[] = [
    ...(torque === null ? [] : [{ torqueMilliNm: torque, angleDeg: null }]),
    ...(angle === null || angle === 0 || group['method'] !== 'torque and angle'
      ? []
      : [{ torqueMilliNm: null, angleDeg: angle }]),
  ];
  const stages = written.length > 0 ? written : one;
  if (stages.length === 0) {
    const text =
      group['method'] === 'stretch' ? 'to the maker’s stretch' : 'by the maker’s method; no figure is written down';
    return [{ torqueMilliNm: null, angleDeg: null, text }];
  }
  return stages.map((stage) => ({
    ...stage,
    text: [
      stage.torqueMilliNm === null ? '' : `to ${newtonMetres(stage.torqueMilliNm)} N·m`,
      stage.angleDeg === null ? '' : `${stage.torqueMilliNm === null ? 'on by' : 'and on by'} ${stage.angleDeg}°`,
    ]
      .filter((text) => text !== '')
      .join(' '),
  }));
}

interface Walk {
  readonly stages: readonly (TorqueStage & { text: string })[];
  readonly sequence: readonly number[];
  readonly marks: readonly BoltMark[];
  readonly next: { readonly bolt: number; readonly stage: number } | null;
  readonly standing: TorqueView['standing'];
  readonly says: string;
}

function walkOf(group: RecordValuesRow, events: readonly BoltEvent[]): Walk {
  const stages = stagesOf(group);
  const sequence = boltSequence(group);
  const marks = boltMarks(sequence, stages.length, events);
  const next = nextTurn(sequence, stages.length, marks);
  const standing = groupStanding(stages.length, marks);
  const final = marks.filter((mark) => mark.stages >= stages.length).length;
  const says =
    next === null
      ? `${marks.length === 1 ? 'The bolt is' : `All ${marks.length} are`} at final torque${standing === 'rechecked' ? ' and gone over again' : '; not yet gone over again'}.`
      : standing === 'not begun'
        ? `Not begun: ${counted(marks.length, 'bolt')}, ${counted(stages.length, 'stage')}.`
        : `Stage ${next.stage} of ${stages.length}: bolt ${next.bolt} is next; ${final} of ${marks.length} at final torque.`;
  return { stages, sequence, marks, next, standing, says };
}

/** Where every bolt group of a build stands, in the order in which they were listed. */
export function groupsOf(
  context: Context,
  build: number,
  asOf: string | undefined,
): { id: number; name: string; count: number; standing: TorqueView['standing']; says: string }[] {
  const { connection } = context.book();
  const events = boltEvents(connection, build, asOf);
  return listRecords(connection, 'boltGroups', 'build = ? AND retired_on IS NULL', build).map((group) => {
    const { standing, says } = walkOf(group, events.get(group.id) ?? []);
    return { id: group.id, name: String(group['name']), count: Number(group['count']), standing, says };
  });
}

function eventText(event: BoltEvent, stages: Walk['stages']): string {
  const setting = event.settingMilliNm === null ? '' : `, wrench at ${newtonMetres(event.settingMilliNm)} N·m`;
  const wrench = event.wrench === '' ? '' : `, ${event.wrench}`;
  switch (event.kind) {
    case 'bolt-turned':
      return `Bolt ${event.bolt}: stage ${event.stage}, ${stages[(event.stage ?? 1) - 1]?.text ?? 'no longer a stage'}${setting}${wrench}`;
    case 'bolts-snugged':
      return `${counted(event.count, 'bolt')} snug${wrench}`;
    case 'bolts-final':
      return `${counted(event.count, 'bolt')} at final torque${wrench}`;
    case 'bolts-loosened':
      return `${counted(event.count, 'bolt')} loosened${event.reason === '' ? '' : `: ${event.reason}`}`;
    case 'bolts-rechecked':
      return `${event.bolts.length === 0 ? 'All bolts' : counted(event.bolts.length, 'bolt')} gone over again${wrench}`;
  }
}

function needGroup(context: Context, id: number): RecordValuesRow {
  return needRecord(context.book().connection, 'boltGroups', id, 'boltGroup');
}

function needInUse(group: RecordValuesRow): void {
  if (group.retiredOn === null) return;
  throw new Refusal('retired', `The bolt group was retired on ${group.retiredOn}. Nothing was changed.`, {
    field: 'boltGroup',
    accepted: 'a bolt group that is in use; bring this one back first',
  });
}

const walkNow = (context: Context, group: RecordValuesRow): Walk =>
  walkOf(group, boltEvents(context.book().connection, Number(group.build), undefined, group.id).get(group.id) ?? []);

/** Runs a calculator of the house for a torque. A refusal's field is the calculator's; its message says what is wrong. */
function torqueBy(calculator: string, asked: Asked, output: string) {
  const found = findCalculator(calculator);
  if (found === undefined) throw new Error(`There is no calculator ${calculator}.`);
  const answer = runCalculator(found, asked);
  const value = answer.outputs[output]?.value;
  if (typeof value !== 'number') throw new Error(`${calculator} gave no ${output}.`);
  return { value, answer };
}

/** A torque as whole thousandths. @throws Refusal where it is beyond what the workbook keeps. */
function milliOf(value: number): number {
  const milli = Math.round(value * 1000);
  if (milli >= 1 && milli <= 5_000_000) return milli;
  throw new Refusal('bad-input', 'The torque comes out beyond what a wrench can do. Nothing was changed.', {
    accepted: 'inputs that give 0.001 to 5000 N·m',
  });
}

/** The strength class as calculator F1 names it. */
function classNamed(text: string): string {
  const found = /^(?:class|grade)?\s*(8\.8|10\.9|12\.9|5|8)$/i.exec(text.trim());
  if (found?.[1] === undefined) {
    throw new Refusal('bad-input', `No strength is known for “${text}”. Nothing was changed.`, {
      field: 'boltClass',
      accepted: '8.8, 10.9, 12.9, grade 5 or grade 8; for any other bolt its maker’s figure',
    });
  }
  return found[1].includes('.') ? `class ${found[1]}` : `grade ${found[1]}`;
}

/** The surface as calculator F2 names it, from what was written about the lubricant. */
function surfaceNamed(lubricant: string): string {
  const text = lubricant.toLowerCase();
  const wet = /oil|grease|lube|lubric|moly|wax|anti.?seize|copper/.test(text);
  // “Dry, oil wiped off” could mean either, and the two differ by more than half the torque.
  if (wet && /\b(dry|no|not|none|without|non)\b|\bun(oil|greas|lub)/.test(text)) return refuseSurface();
  // Moly paste is about as slippery as anti-seize; taken for oil it would stretch the bolt too far.
  if (/anti.?seize|copper|moly/.test(text)) return 'anti-seize';
  if (wet) return 'lubricated';
  if (/cadmium/.test(text)) return 'cadmium';
  if (/zinc|plated/.test(text)) return 'zinc plated';
  if (/dry|black|none/.test(text)) return 'black';
  return refuseSurface();
}

function refuseSurface(): never {
  throw new Refusal(
    'bad-input',
    'A torque depends on the lubricant, and none that is known is written down. Nothing was changed.',
    { field: 'lubricant', accepted: 'dry, oil, grease, anti-seize, zinc plated or cadmium' },
  );
}

/** What a person does at a torque sheet. */
export const torqueProcedures = {
  torque: bench.torque.handler(({ context, input }): TorqueView => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const group = needGroup(context, input.boltGroup);
    const events = boltEvents(connection, input.build, input.asOf, group.id).get(group.id) ?? [];
    const walk = walkOf(group, events);
    const spots = boltSpots(group);
    const { next, stages } = walk;
    return {
      id: group.id,
      revision: group.revision,
      name: String(group['name']),
      count: Number(group['count']),
      thread: String(group['thread']),
      boltClass: String(group['boltClass']),
      lubricant: String(group['lubricant']),
      method: String(group['method']),
      source: String(group['source']),
      sourceKind: group['sourceKind'] as TorqueView['sourceKind'],
      pattern: group['pattern'] as TorqueView['pattern'],
      sequence: [...walk.sequence],
      stages: [...stages],
      bolts: walk.marks.map((mark) => ({ ...mark, ...(spots[mark.bolt - 1] ?? { x: 0.5, y: 0.5 }) })),
      next: next === null ? null : { ...next, text: `Bolt ${next.bolt} ${stages[next.stage - 1]?.text ?? ''}`.trim() },
      standing: walk.standing,
      says: walk.says,
      beforeGate: group['beforeGate'] === true,
      part: group['part'] as number | null,
      job: group['job'] as number | null,
      log: events
        .filter(({ withTurn }) => !withTurn)
        .slice(-200)
        .reverse()
        .map((event) => ({
          entry: event.entry,
          on: event.on,
          at: event.at,
          text: eventText(event, stages),
          by: event.by,
        })),
      caution: torqueCaution,
      note: String(group['note']),
    };
  }),

  turn: bench.turn.handler(({ context, input }) => {
    const group = needGroup(context, input.boltGroup);
    needInUse(group);
    const { stages, marks, next } = walkNow(context, group);
    const mark = marks.find(({ bolt }) => bolt === input.bolt);
    if (mark === undefined) {
      throw new Refusal('bad-input', `The group has no bolt ${input.bolt}. Nothing was changed.`, {
        field: 'bolt',
        accepted: `1 to ${marks.length}`,
      });
    }
    if (next === null) {
      throw new Refusal('not-allowed-from-here', 'All bolts are at final torque. Nothing was changed.', {
        field: 'bolt',
        accepted: 'a group with bolts still to tighten; loosen it first to begin again',
      });
    }
    if (input.stage !== next.stage || mark.stages >= input.stage) {
      throw new Refusal(
        'not-allowed-from-here',
        mark.stages >= input.stage
          ? `Bolt ${input.bolt} is through stage ${input.stage} already. Nothing was changed.`
          : `Stage ${next.stage} isn't done on every bolt, so stage ${input.stage} can't begin. Nothing was changed.`,
        {
          field: 'stage',
          accepted: `stage ${next.stage} on bolt ${next.bolt}`,
          detail: { bolt: next.bolt, stage: next.stage },
        },
      );
    }
    const name = String(group['name']);
    const last = input.stage === stages.length;
    const about = { on: input.on, build: Number(group.build), subjectKind: 'bolt-group', subject: group.id } as const;
    return act(context, input, `Bolt ${input.bolt} of ${name}, stage ${input.stage}`, (writer) => {
      writer.post({
        kind: 'bolt-turned',
        ...about,
        payload: {
          name,
          bolt: input.bolt,
          stage: input.stage,
          by: input.by,
          wrench: input.wrench,
          reason: `bolt ${input.bolt} ${stages[input.stage - 1]?.text ?? ''}`.trim(),
          ...(input.settingMilliNm === null ? {} : { settingMilliNm: input.settingMilliNm }),
        },
      });
      if (last || input.stage === 1) {
        writer.post({
          kind: last ? 'bolts-final' : 'bolts-snugged',
          ...about,
          quantityMilli: 1000,
          payload: { name, bolt: input.bolt, withTurn: true, by: input.by },
        });
      }
      if (input.bolt !== next.bolt) {
        writer.notices.push(`Out of sequence: bolt ${next.bolt} was next.`);
      }
      return undefined;
    });
  }),

  recheck: bench.recheck.handler(({ context, input }) => {
    const group = needGroup(context, input.boltGroup);
    needInUse(group);
    const { stages, marks } = walkNow(context, group);
    const asked = input.bolts.length === 0 ? marks.map(({ bolt }) => bolt) : [...new Set(input.bolts)];
    const open = asked.filter((bolt) => (marks.find((mark) => mark.bolt === bolt)?.stages ?? 0) < stages.length);
    if (open.length > 0) {
      throw new Refusal(
        'not-allowed-from-here',
        `Bolts ${open.slice(0, 12).join(', ')} are not at final torque, so they can't be rechecked. Nothing was changed.`,
        { field: 'bolts', accepted: 'bolts at final torque', detail: { open: open.slice(0, 100) } },
      );
    }
    const name = String(group['name']);
    return act(context, input, `Recheck of ${counted(asked.length, 'bolt')} of ${name}`, (writer) => {
      writer.post({
        kind: 'bolts-rechecked',
        on: input.on,
        build: Number(group.build),
        subjectKind: 'bolt-group',
        subject: group.id,
        quantityMilli: asked.length * 1000,
        payload: { name, bolts: asked, by: input.by, wrench: input.wrench },
      });
      return undefined;
    });
  }),

  loosen: bench.loosen.handler(({ context, input }) => {
    const group = needGroup(context, input.boltGroup);
    needInUse(group);
    const { marks } = walkNow(context, group);
    const touched = marks.filter((mark) => mark.stages > 0);
    if (touched.length === 0) {
      throw new Refusal('not-allowed-from-here', 'No bolt of the group is tightened. Nothing was changed.', {
        field: 'boltGroup',
        accepted: 'a group with tightened bolts',
      });
    }
    const name = String(group['name']);
    return act(context, input, `Loosening of ${name}`, (writer) => {
      writer.post({
        kind: 'bolts-loosened',
        on: input.on,
        build: Number(group.build),
        subjectKind: 'bolt-group',
        subject: group.id,
        quantityMilli: touched.length * 1000,
        payload: { name, by: input.by, reason: input.reason },
      });
      return undefined;
    });
  }),

  setting: bench.setting.handler(({ input }) => {
    const { value, answer } = torqueBy(
      'F5',
      {
        inputs: {
          target_torque: { value: input.torqueMilliNm / 1000, unit: 'N*m' },
          wrench_length: { value: input.wrenchMm, unit: 'mm' },
          adapter_length: { value: input.adapterMm, unit: 'mm' },
          angle: { value: input.angleDeg, unit: 'deg' },
        },
      },
      'wrench_setting',
    );
    return {
      settingMilliNm: milliOf(value),
      formula: answer.formula,
      source: answer.source,
      caution: answer.caution ?? torqueCaution,
    };
  }),

  suggest: bench.suggest.handler(({ input }) => {
    const read = parsePort(input.thread, { role: 'fastener' });
    if (!('port' in read) || !('thread' in read.port)) {
      throw new Refusal('bad-input', `The thread “${input.thread}” can't be read. Nothing was changed.`, {
        field: 'thread',
        accepted: 'a thread such as M10x1.5 or 3/8-24 UNF',
      });
    }
    const { thread } = read.port;
    const strength = classNamed(input.boltClass);
    const surface = surfaceNamed(input.lubricant);
    const size = { diameter: { value: thread.diameter, unit: 'mm' } };
    const proof = torqueBy(
      'F1',
      {
        inputs: {
          ...size,
          ...(thread.tpi === undefined
            ? { pitch: { value: thread.pitch, unit: 'mm' } }
            : { tpi: { value: thread.tpi, unit: 'TPI' } }),
          strength_class: { value: strength },
        },
      },
      'proof_load',
    );
    const { value, answer } = torqueBy(
      'F2',
      { inputs: { ...size, surface: { value: surface }, proof_load: { value: proof.value, unit: 'kN' } } },
      'torque',
    );
    return {
      torqueMilliNm: milliOf(value),
      formula: answer.formula,
      source: `${answer.source} Proof load: ${proof.answer.source}`,
      caution: answer.caution ?? torqueCaution,
      says: `${thread.name}, ${strength}, ${surface}: ${String(answer.outputs['basis']?.value ?? '')}.`,
    };
  }),
};
