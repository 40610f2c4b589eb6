import { endStepsOf } from '../plumbing/made.ts';
import { Refusal } from '../refusal.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { act, type Context, needBuild, procedures } from './context.ts';
import { addPart, changePart, needPart } from './part-writing.ts';
import { type WorkedLine, workedLines } from './plumbing-lines.ts';
import { type NeedOfLines, needsOfLines } from './plumbing-needs.ts';
import { createRecord } from './records.ts';

const { plumbing } = procedures;

/** What all lines have in common; null where they differ. */
function shared(lines: readonly WorkedLine[], of: 'system' | 'job'): number | null {
  const [first, ...others] = new Set(lines.map(({ values }) => values[of]));
  return others.length === 0 ? (first ?? null) : null;
}

/** Longest thing that a record of a bill's thing takes. */
const longestItem = 300;

/** Raises the needs of the part lines that are the thing, or puts a new part line on the list. */
function addNeed(writer: ActWriter, build: number, on: string, need: NeedOfLines): void {
  const { text, unit, toAddMilli, raises, lines } = need;
  for (const { part, byMilli } of raises) {
    const record = needPart(writer, part, build);
    changePart(writer, record, on, { needMilli: writer.state(part).needMilli + byMilli });
  }
  if (raises.length > 0) return;
  const description = text.slice(0, longestItem);
  const part = addPart(writer, build, on, {
    description,
    needMilli: toAddMilli,
    unit: unit === 'm' ? 'm' : 'each',
    system: shared(lines, 'system'),
    job: shared(lines, 'job'),
    note: `For the lines ${lines.map(({ values }) => values.name).join(', ')}`.slice(0, 2000),
  });
  // The part line may be given another description: it stays this thing.
  createRecord(writer, 'billPart', build, on, { item: description, part });
  writer.made.pop();
  writer.made.push(part);
}

function needKnown(needs: readonly NeedOfLines[], keys: readonly string[]): void {
  const other = keys.find((key) => !needs.some((need) => need.key === key));
  if (other === undefined) return;
  throw new Refusal('not-found', `No line needs “${other}”. Nothing was changed.`, {
    field: 'keys',
    accepted: 'keys of things that the lines need; none for all of them',
  });
}

/** The line with its steps. @throws Refusal where it can't be made yet. */
function needMakeable(context: Context, id: number): { readonly build: number; readonly line: WorkedLine } {
  const { connection } = context.book();
  const record = needRecord(connection, 'hoseLines', id, 'line');
  if (record.retiredOn !== null) {
    throw new Refusal('retired', `The line was retired on ${record.retiredOn}. Nothing was changed.`, {
      field: 'line',
      accepted: 'a line that is in use; bring this one back first',
    });
  }
  const build = Number(record.build);
  const line = workedLines(connection, build, undefined).find((one) => one.id === id);
  if (line === undefined) throw new Error(`Line ${id} is in use and was not worked out.`);
  return { build, line };
}

/**
 * Keys of things that go into a hose and stand on no parts list: with the cut its hose, with the last step the rest.
 * They were there already, and nobody needs to put them on the list afterwards.
 */
function outsideTheList(
  connection: Connection,
  build: number,
  line: WorkedLine,
  cut: boolean,
  last: boolean,
): string[] {
  if (!line.planned.ready || !(cut || last)) return [];
  const { needs, atHand } = needsOfLines(connection, build, workedLines(connection, build, undefined), undefined);
  const onList = new Set(needs.filter(({ onListMilli }) => onListMilli > 0).map(({ key }) => key));
  return line.planned.takeOff.bill
    .filter(({ kind }) => (kind === 'hose' ? cut : last))
    .filter(({ key, kind }) => !onList.has(key) || (kind === 'hose' && atHand.has(line.id)))
    .map(({ key }) => key);
}

const notNow = (message: string, field: string, accepted: string): Refusal =>
  new Refusal('not-allowed-from-here', `${message} Nothing was changed.`, { field, accepted });

export const plumbingActs = {
  addNeeds: plumbing.addNeeds.handler(({ context, input }) => {
    needBuild(context, input.build);
    return act(context, input, 'Needs of the lines', (writer) => {
      const { connection } = writer;
      const lines = workedLines(connection, input.build, undefined);
      const { needs } = needsOfLines(connection, input.build, lines, undefined);
      needKnown(needs, input.keys);
      const wanted = needs.filter(
        ({ key, toAddMilli }) => toAddMilli > 0 && (input.keys.length === 0 || input.keys.includes(key)),
      );
      for (const need of wanted) addNeed(writer, input.build, input.on, need);
      const unfit = new Set(wanted.flatMap((need) => need.lines.filter(({ standing }) => standing === 'unfit')));
      for (const { values, says } of unfit) {
        writer.notices.push(`“${values.name}” fails a check: mend the line before its things are ordered. ${says}`);
      }
      if (wanted.length === 0) writer.notices.push('Everything that the lines need is on the list already.');
      return undefined;
    });
  }),

  step: plumbing.step.handler(({ context, input }) => {
    const { build, line } = needMakeable(context, input.line);
    const { made, planned, values } = line;
    if (!planned.ready || made === undefined) {
      const problem = planned.ready ? undefined : planned.problem;
      throw notNow(
        `The line can't be made yet: ${problem?.message ?? ''}`,
        'line',
        `a line that is worked out; give ${problem?.field ?? 'what is missing'} first`,
      );
    }
    const step = made.making.find(({ id }) => id === input.step);
    if (step === undefined) {
      throw new Refusal('bad-input', `The line has no step “${input.step}”. Nothing was changed.`, {
        field: 'step',
        accepted: `one of ${made.making.map(({ id }) => id).join(', ')}`,
      });
    }
    if (input.copy > step.done.length) {
      throw new Refusal('bad-input', `The line is made ${step.done.length} times. Nothing was changed.`, {
        field: 'copy',
        accepted: `a whole number from 1 to ${step.done.length}`,
      });
    }
    const isDone = (one: (typeof made.making)[number]): boolean => one.done[input.copy - 1] != null;
    if (input.done === isDone(step)) {
      throw notNow(`“${step.title}” is ${input.done ? 'ticked off' : 'open'} already.`, 'done', 'the other way round');
    }
    if (!input.done && input.note === '') {
      throw new Refusal('needs-reason', `Say why “${step.title}” is open again. Nothing was changed.`, {
        field: 'note',
        accepted: 'what happened, in a few words',
      });
    }
    const ends = new Set(endStepsOf(made.making));
    const missing = made.making.filter((one) => ends.has(one) && !isDone(one));
    if (input.done && step.id === 'pressure' && missing.length > 0) {
      throw notNow(
        `The pressure check comes when both ends are on: ${missing.map(({ title }) => `“${title}”`).join(' and ')} ${missing.length === 1 ? 'is' : 'are'} open.`,
        'step',
        missing.map(({ id }) => id).join(', '),
      );
    }
    const { takeOff } = planned;
    const title = step.title.charAt(0).toLowerCase() + step.title.slice(1);
    const copy = takeOff.line.quantity > 1 ? `, copy ${input.copy}` : '';
    const label = `${step.title} ${input.done ? 'ticked off' : 'open again'} on ${values.name}${copy}`;
    return act(context, input, label, (writer) => {
      const { connection } = writer;
      const isLast = made.making.every((one) => one === step || isDone(one));
      const offList = input.done ? outsideTheList(connection, build, line, step.id === 'cut', isLast) : [];
      const pressure = made.making.find(({ id }) => id === 'pressure');
      if (!input.done && pressure !== undefined && !['pressure', 'label'].includes(step.id) && isDone(pressure)) {
        writer.notices.push('The pressure check is open again, too: do it once more when the hose is together.');
      }
      writer.post({
        kind: 'line-step',
        on: input.on,
        build,
        subjectKind: 'hose-line',
        subject: line.id,
        payload: {
          step: step.id,
          title,
          copy: input.copy,
          copies: takeOff.line.quantity,
          done: input.done,
          by: input.by,
          note: input.note,
          name: values.name,
          cutMm: takeOff.lengths.cutMm,
          hose: takeOff.hose.label,
          ...(offList.length === 0 ? {} : { offList }),
        },
      });
      return undefined;
    });
  }),
};
