import type { LineFact } from '../gate/facts.ts';
import { isOpen } from '../plumbing/check.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { counted } from './context.ts';
import { type WorkedLine, workedLines } from './plumbing-lines.ts';

/** Minutes counted for a line that is still to be made, and for each open step. Our own rule, no published source. */
const minutesALine = 20;
const minutesAStep = 5;
/** Steps counted for a line whose steps aren't known yet. */
const usualSteps = 8;

const minutesLeft = ({ made }: WorkedLine): number =>
  made === undefined
    ? minutesALine + usualSteps * minutesAStep
    : made.copiesOpen * minutesALine + (made.stepsTotal - made.stepsDone) * minutesAStep;

function factSays({ standing, planned, made, says }: WorkedLine): string {
  if (standing === 'unfit' || !planned.ready || made === undefined) return says;
  if (standing === 'made') return 'Made.';
  const [outdated] = made.outdated;
  const open = made.stepsTotal - made.stepsDone;
  const steps = `${open} of ${counted(made.stepsTotal, 'step')} ${open === 1 ? 'is' : 'are'} open`;
  const next = made.next === undefined ? '' : `; next: ${made.next.title.toLowerCase()}`;
  return [...(outdated === undefined ? [] : [outdated]), `${steps}${next}.`].join(' ');
}

/** What the checks of a line that was worked out lack; one that can't be worked out says so as not made. */
function lacksOf({ standing, checks }: WorkedLine): { readonly lacks?: string } {
  if (standing === 'unfit') return {};
  const [first, ...more] = checks.filter(isOpen);
  if (first === undefined) return {};
  const others =
    more.length === 0 ? '' : ` Also not known: ${more.map(({ title }) => title.toLowerCase()).join(', ')}.`;
  return { lacks: `${first.title} isn't known: ${first.text}${others}` };
}

/** What the hoist check is told of the lines that stand before it, now or at the end of a past day. */
export const lineFacts = (connection: Connection, build: number, past: string | undefined): LineFact[] =>
  workedLines(connection, build, past)
    .filter(({ values }) => values.beforeGate)
    .map((worked) => ({
      id: worked.id,
      title: worked.values.name,
      standing: worked.standing,
      says: factSays(worked),
      ...lacksOf(worked),
      minutes: minutesLeft(worked),
    }));
