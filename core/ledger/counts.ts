/** Entries about things other than part lines: jobs, tools, decisions, bolts, budgets, waivers, the gate. */
import type { CountAccount, Posting } from './accounts.ts';
import { postBoltsDropped, postBoltsListed, postBoltsTurned } from './bolts.ts';
import { postBudgeted, postContingencyDrawn } from './budget-postings.ts';
import type { EntryDraft, EntryKind } from './entry.ts';
import { notFromHere } from './limits.ts';
import { requireReason } from './payloads.ts';
import { countOn, type SubjectBalances, subjectPosting } from './subject-posting.ts';

type Poster = (draft: EntryDraft, current: SubjectBalances) => Posting[];

const one = 1000;

/** Switches `account` on, once; `needs` must be on already. */
function on(account: CountAccount, words: string, needs?: readonly [CountAccount, string]): Poster {
  return (draft, current) => {
    if (needs !== undefined && countOn(current, needs[0]) <= 0) throw refused(`This ${needs[1]}.`, words);
    if (countOn(current, account) > 0) throw refused(`This is ${words} already.`, words);
    return [subjectPosting(draft, account, { quantityMilli: one })];
  };
}

/** Switches `account` off; every account in `clear` must be off. */
function off(account: CountAccount, words: string, clear: readonly [CountAccount, string][] = []): Poster {
  return (draft, current) => {
    if (countOn(current, account) <= 0) throw refused(`This is not ${words}.`, words);
    for (const [other, why] of clear) if (countOn(current, other) > 0) throw refused(`This ${why}.`, words);
    return [subjectPosting(draft, account, { quantityMilli: -one })];
  };
}

function refused(message: string, words: string): Error {
  return notFromHere(message, 'subject', `one that is not yet, or no longer, ${words}`);
}

const silent: Poster = () => [];

const posters: Partial<Record<EntryKind, Poster>> = {
  'job-planned': on('job-planned', 'planned'),
  'job-done': on('job-done', 'done', ['job-planned', 'job is not planned']),
  'job-reopened': off('job-done', 'done'),
  'job-dropped': off('job-planned', 'planned', [['job-done', 'job is done; reopen it first']]),
  'tool-listed': on('tool-listed', 'listed'),
  'tool-at-hand': on('tool-at-hand', 'at hand', ['tool-listed', 'tool is not listed']),
  'tool-away': off('tool-at-hand', 'at hand'),
  'tool-dropped': dropWith('tool-listed', 'tool-at-hand', 'listed'),
  'decision-listed': on('decision-listed', 'listed'),
  'decision-made': on('decision-made', 'made', ['decision-listed', 'decision is not listed']),
  'decision-reopened': off('decision-made', 'made'),
  'decision-dropped': dropWith('decision-listed', 'decision-made', 'listed'),
  'bolts-listed': postBoltsListed,
  'bolts-snugged': (draft, current) => postBoltsTurned(draft, current, 'bolts-snugged'),
  'bolts-final': (draft, current) => postBoltsTurned(draft, current, 'bolts-final'),
  'bolts-loosened': (draft, current) => postBoltsTurned(draft, current, 'bolts-loosened'),
  'bolts-dropped': postBoltsDropped,
  budgeted: postBudgeted,
  'contingency-drawn': postContingencyDrawn,
  // One thing can stand in the way for several reasons, each waived by itself.
  waived: (draft) => {
    requireReason(draft);
    return [subjectPosting(draft, 'waived', { quantityMilli: one })];
  },
  'waiver-ended': off('waived', 'waived'),
  'gate-passed': on('gate-passed', 'passed'),
  hours: silent,
  measured: silent,
  'line-step': silent,
  'job-started': silent,
  'job-stopped': silent,
  'forecast-kept': silent,
  'bolt-turned': silent,
  'bolts-rechecked': silent,
  imported: silent,
  record: silent,
};

/** Drops a thing from its list together with what is said about it. */
function dropWith(listed: CountAccount, state: CountAccount, words: string): Poster {
  return (draft, current) => {
    const postings = off(listed, words)(draft, current);
    const held = countOn(current, state);
    return held > 0 ? [...postings, subjectPosting(draft, state, { quantityMilli: -held })] : postings;
  };
}

/** Whether a kind is about something other than a part line, so that `postCount` takes it. */
export function isCountKind(kind: EntryKind): boolean {
  return posters[kind] !== undefined;
}

/**
 * What an entry about a job, tool, decision, bolt group, budget, waiver or gate moves.
 * @param current the balances of its subject, before the entry; for contingency also the build's contingency.
 * @throws Refusal `not-allowed-from-here`, `needs-reason` or `bad-input`.
 * @throws Error for a kind that isn't one of these: a mistake of the program.
 */
export function postCount(draft: EntryDraft, current: SubjectBalances): Posting[] {
  const poster = posters[draft.kind];
  if (poster === undefined) throw new Error(`postCount: “${draft.kind}” is not about a count`);
  return poster(draft, current);
}
