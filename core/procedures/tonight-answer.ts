import type { PlanJob } from '../contract/plan.ts';
import type { TonightView } from '../contract/tonight.ts';
import type { Tonight } from '../schedule/tonight.ts';
import { showMinutes } from '../schedule/working-time.ts';
import { counted } from './context.ts';

/** The view with its first sentence, and how to begin where there is nothing to do. */
export function answerOf(
  jobs: readonly PlanJob[],
  plan: Tonight,
  view: Omit<TonightView, 'answer' | 'begin'>,
): TonightView {
  const open = jobs.filter(({ done }) => !done);
  const [first] = view.jobs;
  if (jobs.length === 0) {
    return {
      ...view,
      answer: 'No jobs are written down yet, so nothing can be picked for tonight.',
      begin: 'Write the first job down on the Plan, with a guess of its hours and the parts and tools that it needs.',
    };
  }
  if (open.length === 0) return { ...view, answer: `All ${jobs.length} jobs are done.`, begin: '' };
  if (first?.running != null) {
    const others = view.jobs.filter(({ running }) => running !== null).length - 1;
    const more = others === 0 ? '' : ` ${counted(others, 'other job is', 'other jobs are')} going too.`;
    return { ...view, answer: `At work: “${first.job.title}”. ${first.says}${more}`, begin: '' };
  }
  if (first === undefined) {
    const best = view.unlocks[0];
    const begin =
      best === undefined ? 'The open jobs wait for each other; see the Plan for what each waits for.' : best.says;
    const [other] = view.others;
    if (best === undefined && other !== undefined) {
      const answer = `No job can begin ${view.place === '' ? 'now' : `at the place “${view.place}”`}: each waits.`;
      return { ...view, answer, begin: `“${other.title}”: ${other.says}.` };
    }
    return { ...view, answer: 'No job can begin now: each waits for a part, a tool or another job.', begin };
  }
  const { turns } = plan;
  const planned = turns.reduce((sum, { minutes }) => sum + minutes, 0);
  const answer =
    turns.length === 0
      ? `${counted(plan.ready.length, 'job')} can begin now, none with a guess of its hours: begin with “${first.job.title}”.`
      : `First “${first.job.title}”: ${counted(turns.length, 'job')} for ${showMinutes(planned)} of ${showMinutes(view.minutes)}.`;
  return { ...view, answer, begin: '' };
}
