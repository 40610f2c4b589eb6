import { readFileSync } from 'node:fs';
import { Refusal } from '../../core/refusal.ts';
import { type LevelledJob, levelJobs } from '../../core/schedule/levelling.ts';
import { needExisting } from './open.ts';
import { exitCodes, type Given, type Room, UsageError, type Verb } from './verb.ts';

const wanted =
  'Give JSON such as {"resources":{"hands":1},"jobs":[{"id":"a","duration":3,"uses":{"hands":1}},{"id":"b","duration":2,"after":["a"]}]}.';

type Data = Readonly<Record<string, unknown>>;

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value);

function refused(field: string, reason: string, accepted: string): Refusal {
  return new Refusal('bad-input', `${reason} Nothing was changed.`, { field, accepted });
}

function needKnown(said: Data, known: readonly string[], of: string): void {
  const other = Object.keys(said).find((key) => !known.includes(key));
  if (other !== undefined) throw refused(other, `“${other}” is not a field of ${of}.`, `one of: ${known.join(', ')}`);
}

function needNumber(said: unknown, field: string, of: string): number {
  if (typeof said === 'number') return said;
  throw refused(
    field,
    `The ${field} of ${of} can't be ${JSON.stringify(said) ?? 'left out'}.`,
    'a whole number, 0 or more',
  );
}

/** Ids may be written as numbers. */
function needId(said: unknown, field: string, of: string): string {
  if (typeof said === 'string' && said !== '') return said;
  if (typeof said === 'number' && Number.isSafeInteger(said)) return String(said);
  throw refused(
    field,
    `The ${field} of ${of} can't be ${JSON.stringify(said) ?? 'left out'}.`,
    'a name or a whole number',
  );
}

function readAmounts(said: unknown, field: string, of: string): Record<string, number> {
  if (said === undefined || said === null) return {};
  if (!isData(said))
    throw refused(field, `The ${field} of ${of} can't be read.`, 'amounts by name, such as {"hands":1}');
  return Object.fromEntries(
    Object.entries(said).map(([name, amount]) => {
      if (typeof amount === 'number') return [name, amount];
      const reason = `The amount of “${name}” in the ${field} of ${of} can't be ${JSON.stringify(amount)}.`;
      throw refused(field, reason, 'a whole number, 0 or more');
    }),
  );
}

function readList(said: unknown, field: string, of: string): readonly unknown[] {
  if (said === undefined || said === null) return [];
  if (Array.isArray(said)) return said as readonly unknown[];
  throw refused(field, `The ${field} of ${of} can't be read.`, 'a list');
}

function readJob(said: unknown, index: number): LevelledJob {
  if (!isData(said))
    throw refused('jobs', `Job ${index + 1} of the list can't be read.`, 'a job such as {"id":"a","duration":3}');
  const id = needId(said['id'], 'id', `job ${index + 1} of the list`);
  const of = `job “${id}”`;
  needKnown(said, ['id', 'duration', 'uses', 'after', 'notBefore'], of);
  return {
    id,
    duration: needNumber(said['duration'], 'duration', of),
    uses: readAmounts(said['uses'], 'uses', of),
    after: readList(said['after'], 'after', of).map((link) => {
      if (!isData(link)) return needId(link, 'after', of);
      needKnown(link, ['id', 'lag'], `an earlier job of ${of}`);
      return { id: needId(link['id'], 'after', of), lag: needNumber(link['lag'] ?? 0, 'lag', of) };
    }),
    notBefore: needNumber(said['notBefore'] ?? 0, 'notBefore', of),
  };
}

/** @throws UsageError when the text isn't JSON of the right shape; Refusal naming the field that can't be read. */
function readNetwork(text: string): { jobs: LevelledJob[]; resources: Record<string, number> } {
  let said: unknown;
  try {
    // Some editors put a mark before the text that says how it is encoded.
    said = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new UsageError(`This is not JSON: ${error instanceof Error ? error.message : String(error)}. ${wanted}`);
  }
  if (!isData(said) || said['jobs'] === undefined || said['jobs'] === null)
    throw new UsageError(`There are no jobs. ${wanted}`);
  needKnown(said, ['resources', 'jobs'], 'the list of jobs');
  const jobs = readList(said['jobs'], 'jobs', 'the list').map(readJob);
  return {
    resources: readAmounts(said['resources'], 'resources', 'the list of jobs'),
    jobs: jobs.some(({ id }) => id === beginning) ? jobs : jobs.map(withoutBeginning),
  };
}

/** Lists of jobs are often numbered from the beginning, job 0, which takes no time and needn't be listed. */
const beginning = '0';

function withoutBeginning(job: LevelledJob): LevelledJob {
  const after = job.after ?? [];
  const kept = after.filter((link) => (typeof link === 'string' ? link : link.id) !== beginning);
  // A lag from the beginning is the day before which the job can't begin.
  const lags = after.flatMap((link) => (typeof link !== 'string' && link.id === beginning ? [link.lag ?? 0] : []));
  return { ...job, after: kept, notBefore: Math.max(job.notBefore ?? 0, ...lags) };
}

function textOf(given: Given, room: Room): string {
  const from = given.text('in');
  if (from === undefined) throw new UsageError(`schedule needs --in FILE, or --in - to read standard input. ${wanted}`);
  if (from === '-') return room.input === undefined ? readFileSync(0, 'utf8') : room.input();
  return readFileSync(needExisting(room, from, 'The list of jobs'), 'utf8');
}

function wholeOption(given: Given, name: string, least: number, most: number): number | undefined {
  const said = given.text(name);
  if (said === undefined) return undefined;
  const value = Number(said);
  if (/^\d+$/.test(said) && value >= least && value <= most) return value;
  throw new UsageError(`--${name} is a whole number from ${least} to ${most}, not “${said}”.`);
}

export const schedule: Verb = {
  name: 'schedule',
  summary: 'the shortest order of jobs that share hands and tools: JSON in, JSON out',
  usage: '',
  options: { in: { type: 'string' }, seed: { type: 'string' }, passes: { type: 'string' } },
  optionHelp: [
    ['--in FILE', 'resources and jobs as JSON; - reads standard input'],
    ['--seed N', 'another search; the same seed gives the same answer'],
    ['--passes N', 'how long to search; 1 is the priority rule alone'],
  ],
  examples: ['schedule --in jobs.json', 'schedule --in - --json < jobs.json'],
  takes: [0, 0],
  speaksJson: () => true,
  refusedExit: exitCodes.usage,
  async run(given, room) {
    const seed = wholeOption(given, 'seed', 0, 2 ** 31 - 1);
    const passes = wholeOption(given, 'passes', 1, 1_000_000);
    const { jobs, resources } = readNetwork(textOf(given, room));
    const found = levelJobs(jobs, resources, {
      ...(seed === undefined ? {} : { seed }),
      ...(passes === undefined ? {} : { passes }),
    });
    const placed = found.jobs.map(({ id, start, finish }) => ({ id, start, finish }));
    return { lines: [], data: { makespan: found.makespan, jobs: placed } };
  },
};
