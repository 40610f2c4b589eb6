import type { StartView } from '../contract/plan.ts';
import { addDays } from '../dates/calendar-date.ts';
import { waitedDays } from '../purchasing/chasing.ts';
import { all } from '../workbook/store/connection.ts';
import { dayWords, entryText, quantityWords } from '../workbook/store/entry-text.ts';
import { dueRows } from '../workbook/store/order-due.ts';
import { progressMeasures } from '../workbook/store/plan.ts';
import { needBuild, procedures } from './context.ts';
import { reviewOf } from './gate.ts';
import { chaseLines } from './order-chasing.ts';

/** How far back "what came" looks, and how far ahead "what is due". */
const cameDays = 21;
const dueDays = 30;
const mostHolds = 3;
const mostLines = 12;

interface CameRow {
  readonly on_day: string;
  readonly kind: string;
  readonly part: number;
  readonly description: string;
  readonly unit: string;
  readonly order_id: number | null;
  readonly quantity_milli: number;
  readonly payload: string | null;
}

export const startProcedures = {
  view: procedures.start.view.handler(({ context, input }): StartView => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const today = context.today();
    const past = input.asOf !== undefined && input.asOf < today ? input.asOf : undefined;
    const day = past ?? today;
    const { review, answer } = reviewOf(context, input.build, input.asOf);
    const came = all<CameRow>(
      connection,
      `SELECT e.on_day, e.kind, e.part, p.description, p.unit, e.order_id, e.quantity_milli, e.payload FROM entries e
       JOIN parts p ON p.id = e.part WHERE e.build = ? AND e.kind IN ('received', 'over-delivered', 'came-in') AND e.on_day > ? AND e.on_day <= ?
       AND NOT EXISTS (SELECT 1 FROM taken_back t WHERE t.seq = e.seq) ORDER BY e.on_day DESC, e.seq DESC LIMIT ?`,
      input.build,
      addDays(day, -cameDays),
      day,
      mostLines,
    );
    const open = dueRows(connection, input.build, today, past);
    const due = open
      .filter(({ promisedOn }) => promisedOn !== null && promisedOn <= addDays(day, dueDays))
      .slice(0, mostLines);
    const chase = chaseLines(open, day).map(({ row, why }) => ({
      order: row.order,
      text: `${row.vendorName}: ${row.description}, ${why}, ${row.chasedOn === null ? 'never asked' : `last asked ${dayWords(row.chasedOn)}`}`,
      ageDays: waitedDays(row),
    }));
    // One line an order, the one that waits longest.
    const byOrder = new Map(chase.toReversed().map((row) => [row.order, row]));
    return {
      answer,
      holds: review.blockers.slice(0, mostHolds).map((blocker) => ({
        title: blocker.title,
        why: blocker.why,
        clears: blocker.clears,
        clearOn: blocker.clearOn,
        part: blocker.subject.kind === 'part' ? blocker.subject.id : null,
      })),
      came: came.map((row) => ({
        on: row.on_day,
        text: entryText({
          kind: row.kind,
          quantityMilli: row.quantity_milli,
          unit: row.unit,
          description: row.description,
          payload: row.payload === null ? {} : (JSON.parse(row.payload) as Record<string, unknown>),
          subjectName: '',
          note: '',
        }),
        part: row.part,
        order: row.order_id,
      })),
      due: due.map((row) => ({
        on: row.promisedOn,
        text: `${quantityWords(row.outstandingMilli, row.unit)} ${row.description} from ${row.vendorName}`,
        part: row.part,
        order: row.order,
      })),
      chase: [...byOrder.values()].sort((a, b) => b.ageDays - a.ageDays).slice(0, mostLines),
      measures: progressMeasures(connection, input.build, past),
    };
  }),
};
