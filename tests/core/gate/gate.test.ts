import { expect, test } from 'vitest';
import { answerSentence } from '../../../core/gate/answer.ts';
import {
  type BoltGroupFact,
  type GateFacts,
  type GateOptions,
  type JobFact,
  nothingAssumed,
  type PartFact,
} from '../../../core/gate/facts.ts';
import { type GateReview, gateCaution, reviewGate } from '../../../core/gate/gate.ts';
import { checkWaiver } from '../../../core/gate/waivers.ts';
import { formatQuantity } from '../../../core/units/quantity.ts';
import { evenings } from './evenings.ts';

const options: GateOptions = {
  now: '2026-03-02T08:00',
  workingTime: evenings,
  assume: nothingAssumed,
  words: { day: (date) => date, quantity: formatQuantity },
};

function facts(some: Partial<GateFacts>): GateFacts {
  return { gateName: 'engine-in', parts: [], jobs: [], tools: [], decisions: [], boltGroups: [], waivers: [], ...some };
}

function part(id: number, some: Partial<PartFact>): PartFact {
  return {
    id,
    description: `part ${id}`,
    unit: 'each',
    needMilli: 1000,
    fittedMilli: 0,
    snugMilli: 0,
    verifiedMilli: 0,
    trialFittedMilli: 0,
    borrowedOnMilli: 0,
    lentMilli: 0,
    rejectedUnsettledMilli: 0,
    inHandMilli: 0,
    onOrderMilli: 0,
    backOrderedMilli: 0,
    needsVerification: false,
    optional: false,
    costToComeMinor: 0,
    estimateKnown: true,
    fittingMinutes: 60,
    ...some,
  };
}

function job(id: number, some: Partial<JobFact> = {}): JobFact {
  return {
    id,
    title: `job ${id}`,
    done: false,
    minutesGuess: 60,
    beforeGate: true,
    earlier: [],
    parts: [],
    tools: [],
    ...some,
  };
}

const bolts: BoltGroupFact = {
  id: 1,
  name: 'rod bolts',
  count: 10,
  snugCount: 10,
  finalCount: 9,
  methodKnown: true,
  minutes: 15,
};

function kinds(review: GateReview): string[] {
  return review.blockers.map((blocker) => blocker.kind);
}

test('D71: lists what holds the date first, with totals, and says so in words', () => {
  // Source: derived by hand, recomputed independently; the crane counts from noon here, which moves nothing else.
  const review = reviewGate(
    facts({
      parts: [
        part(1, {
          description: 'oil pump pickup',
          onOrderMilli: 1000,
          expectedOn: '2026-03-14',
          costToComeMinor: 4800,
        }),
        part(2, { description: 'trial gasket', trialFittedMilli: 1000, fittingMinutes: 90 }),
        part(3, {
          description: 'flywheel',
          backOrderedMilli: 1000,
          backOrderedOn: '2026-01-27',
          promisedOn: '2026-04-11',
          costToComeMinor: 45000,
          fittingMinutes: 120,
        }),
      ],
      boltGroups: [{ ...bolts, minutes: 150 }],
      jobs: [job(1, { title: 'measure crank end play', minutesGuess: 30, tools: [9] })],
      tools: [{ id: 9, name: 'engine crane', atHand: true }],
    }),
    options,
  );
  expect(review.gateOn).toBe('2026-04-11');
  expect(review.blockers.map((blocker) => [blocker.title, blocker.clearOn, blocker.daysGained])).toEqual([
    ['flywheel', '2026-04-11', 28],
    ['oil pump pickup', '2026-03-14', 0],
    ['trial gasket', '2026-03-05', 0],
    ['rod bolts', '2026-03-05', 0],
    ['measure crank end play', '2026-03-03', 0],
  ]);
  expect([review.costMinor, review.costUnknown, review.minutes]).toEqual([49800, 0, 450]);
  expect(review.noDate).toBe('');
  expect(review.caution).toBe(gateCaution);
  expect(answerSentence(review, options.words)).toBe(
    '5 things stand before engine-in; the flywheel, back-ordered 34 days, holds the date.',
  );
});

test('D72: which states block', () => {
  // Source: a rule of this product.
  const kindsOf = (some: Partial<GateFacts>): string[] => kinds(reviewGate(facts(some), options));
  expect(kindsOf({ parts: [part(1, { fittedMilli: 1000, needsVerification: true })] })).toEqual(['part not verified']);
  expect(kindsOf({ parts: [part(1, { trialFittedMilli: 1000 })] })).toEqual(['trial part on']);
  expect(kindsOf({ parts: [part(1, { lentMilli: 1000 })] })).toEqual(['part not in hand']);
  expect(kindsOf({ parts: [part(1, { optional: true })] })).toEqual([]);
  expect(kindsOf({ jobs: [job(1, { because: '0.0027 in is outside 0.0018–0.0026 in' })] })).toEqual(['job open']);
  expect(kindsOf({ jobs: [job(1, { done: true })] })).toEqual([]);
  expect(kindsOf({ boltGroups: [bolts] })).toEqual(['bolts not final']);
  expect(reviewGate(facts({ boltGroups: [bolts] }), options).blockers[0]?.why).toBe('1 of 10 not at final torque.');
  expect(kindsOf({ decisions: [{ id: 1, title: 'cam choice', open: true }] })).toEqual(['decision open']);

  const waiver = {
    kind: 'part not in hand',
    subject: { kind: 'part', id: 1 },
    on: '2026-03-01',
    until: null,
    seq: 5,
  } as const;
  const answered = { ...waiver, reason: 'runs without it', by: 'Ada Quill' };
  const waived = reviewGate(facts({ parts: [part(1, {})], waivers: [answered] }), options);
  expect([waived.blockers.length, waived.waived.map((item) => item.waiver.reason)]).toEqual([0, ['runs without it']]);
  expect(() => checkWaiver({ ...waiver, reason: ' ', by: 'Ada Quill' })).toThrow(
    'A waiver needs a reason. Nothing was changed.',
  );
  expect(() => checkWaiver({ ...waiver, reason: 'runs without it', by: '' })).toThrow('A waiver needs a name.');
});

test('gives no date while an item has none, only the earliest day, and never counts an unknown cost as nothing', () => {
  const review = reviewGate(
    facts({
      parts: [
        part(1, {
          description: 'clutch kit',
          backOrderedMilli: 1000,
          backOrderedOn: '2026-01-27',
          estimateKnown: false,
        }),
        part(2, { description: 'flywheel', onOrderMilli: 1000, promisedOn: '2026-03-14' }),
      ],
    }),
    options,
  );
  expect([review.gateOn, review.atLeastOn, review.costUnknown]).toEqual([null, '2026-03-14', 1]);
  expect(review.noDate).toBe('No date, at least 2026-03-14: 1 item has no date, such as “clutch kit”.');
  expect(review.blockers[0]).toMatchObject({
    title: 'clutch kit',
    readyOn: null,
    clearOn: null,
    costMinor: null,
    noDate: 'No date: the vendor has given no date.',
  });
  expect(answerSentence(review, options.words)).toBe(
    "2 things stand before engine-in; the clutch kit, back-ordered 34 days, holds the date and has none itself. It can't be before 2026-03-14.",
  );
});

test('tells why a day is missing', () => {
  const reasonOf = (some: Partial<GateFacts>, more: Partial<GateOptions> = {}): string | undefined =>
    reviewGate(facts(some), { ...options, ...more }).blockers[0]?.noDate;
  expect(reasonOf({ parts: [part(1, { onOrderMilli: 1000, promisedOn: '2026-02-20' })] })).toBe(
    'No date: the promised day has passed (2026-02-20).',
  );
  expect(
    reasonOf({ parts: [part(1, { onOrderMilli: 1000, expectedOn: '2026-02-20', promisedOn: '2026-04-01' })] }),
  ).toBe('No date: the day it was expected has passed (2026-02-20).');
  expect(reasonOf({ parts: [part(1, {})] })).toBe('No date: it is not ordered yet.');
  expect(reasonOf({ parts: [part(1, { rejectedUnsettledMilli: 1000 })] })).toBe(
    'No date: no replacement has been agreed or ordered.',
  );
  expect(reasonOf({ parts: [part(1, { inHandMilli: 1000, fittingMinutes: null })] })).toBe(
    'No date: nobody has guessed how long it takes.',
  );
  expect(reasonOf({ jobs: [job(1)] }, { workingTime: null })).toBe('No date: no working hours are set.');
  const waiting = facts({ jobs: [job(1, { tools: [9] })], tools: [{ id: 9, name: 'crane', atHand: false }] });
  expect(reviewGate(waiting, options).blockers.map((blocker) => blocker.noDate)).toEqual([
    'No date: nobody has said when it comes.',
    'No date: it waits for “crane”, which has no date.',
  ]);
});

test('counts assumed minutes only when told to, and says how many items they are for', () => {
  const some = facts({
    parts: [part(1, { inHandMilli: 1000, fittingMinutes: null })],
    jobs: [job(1, { minutesGuess: null })],
  });
  expect(reviewGate(some, options)).toMatchObject({ gateOn: null, assumed: 0 });
  const assume = { fitting: 30, verifying: 15, perBolt: 3, job: 120 };
  // By hand: 150 minutes fill Tuesday evening.
  expect(reviewGate(some, { ...options, assume })).toMatchObject({ gateOn: '2026-03-03', assumed: 2, minutes: 150 });
});

test('a job waits for its parts, tools, decisions and earlier jobs, and clears the parts it fits', () => {
  // By hand: the pan arrives on Saturday 14 March at noon, job 2 takes an hour after it, job 1 one more.
  const review = reviewGate(
    facts({
      parts: [part(1, { description: 'pan', onOrderMilli: 1000, expectedOn: '2026-03-14', fittingMinutes: null })],
      jobs: [job(1, { earlier: [2] }), job(2, { beforeGate: false, parts: [1] }), job(3, { beforeGate: false })],
    }),
    options,
  );
  expect(review.blockers.map((blocker) => [blocker.title, blocker.clearOn, blocker.minutes])).toEqual([
    ['pan', '2026-03-14', 0],
    ['job 1', '2026-03-14', 60],
    ['job 2', '2026-03-14', 60],
  ]);
  expect(review.blockers.map((blocker) => blocker.daysGained)).toEqual([11, 0, 0]);
  expect(answerSentence(review, options.words)).toBe(
    '3 things stand before engine-in; the pan, on order, holds the date.',
  );
});

test('a part fitted by a job without a date has none either, whichever is listed first', () => {
  const some = facts({
    parts: [part(1, { inHandMilli: 1000 })],
    jobs: [job(1, { parts: [1], tools: [9] })],
    tools: [{ id: 9, name: 'crane', atHand: false, hireMinor: 0 }],
  });
  expect(reviewGate(some, options).blockers.map((blocker) => [blocker.title, blocker.clearOn])).toEqual([
    ['crane', null],
    ['job 1', null],
    ['part 1', null],
  ]);
});

test('a part counts once: what it lacks is one item, and its cost is not added twice', () => {
  const review = reviewGate(
    facts({
      parts: [
        part(1, {
          needMilli: 8000,
          trialFittedMilli: 2000,
          inHandMilli: 2000,
          backOrderedMilli: 4000,
          borrowedOnMilli: 1000,
          fittedMilli: 1000,
          promisedOn: '2026-03-20',
          costToComeMinor: 9000,
        }),
      ],
    }),
    options,
  );
  expect(kinds(review).sort()).toEqual(['borrowed part on', 'part not in hand', 'trial part on']);
  expect([review.costMinor, review.minutes]).toEqual([9000, 60]);
});

test('covers what is fitted, optional or only waits for a refund', () => {
  const done = [
    part(1, { verifiedMilli: 1000, needsVerification: true }),
    part(2, { snugMilli: 1000, rejectedUnsettledMilli: 1000 }),
    part(3, { fittedMilli: 2000 }),
    part(4, { needMilli: 0 }),
  ];
  expect(kinds(reviewGate(facts({ parts: done }), options))).toEqual([]);
  const optional = part(5, { optional: true, trialFittedMilli: 1000 });
  expect(kinds(reviewGate(facts({ parts: [optional] }), options))).toEqual(['trial part on']);
});

test('tools count only where an open job needs them, and bolts also while their method is not recorded', () => {
  const crane = { id: 9, name: 'crane', atHand: false, dueOn: '2026-03-21', hireMinor: 3000 };
  expect(kinds(reviewGate(facts({ tools: [crane] }), options))).toEqual([]);
  expect(kinds(reviewGate(facts({ tools: [crane], jobs: [job(1, { tools: [9], done: true })] }), options))).toEqual([]);
  const needed = reviewGate(facts({ tools: [crane], jobs: [job(1, { tools: [9], minutesGuess: 0 })] }), options);
  expect(needed.blockers.map((blocker) => [blocker.kind, blocker.clearOn, blocker.daysGained])).toEqual([
    ['tool missing', '2026-03-21', 19],
    ['job open', '2026-03-21', 0],
  ]);
  const unrecorded = reviewGate(facts({ boltGroups: [{ ...bolts, finalCount: 10, methodKnown: false }] }), options);
  expect(unrecorded.blockers[0]?.why).toBe('The method and its value are not recorded.');
});

test('a decision without a day counts as made in a week, and says so', () => {
  const review = reviewGate(
    facts({ decisions: [{ id: 1, title: 'cam choice', open: true, costSpreadMinor: 4000 }] }),
    options,
  );
  expect(review).toMatchObject({ gateOn: '2026-03-09', assumed: 1, costMinor: 4000 });
  expect(review.blockers[0]?.why).toBe('Still open, and nobody has said by when; 7 days are assumed.');
});

test('a waiver ends on its last day, needs an answerer, and never holds for kinds that may not be waived', () => {
  const waiver = {
    kind: 'job open',
    subject: { kind: 'job', id: 1 },
    reason: 'after the first start',
    by: 'Ada Quill',
    on: '2026-02-01',
    until: '2026-03-02',
    seq: 7,
  } as const;
  const review = (waivers: GateFacts['waivers'], more: Partial<GateOptions> = {}): number =>
    reviewGate(facts({ jobs: [job(1)], waivers }), { ...options, ...more }).blockers.length;
  expect(review([waiver])).toBe(0);
  expect(review([waiver], { now: '2026-03-03T08:00' })).toBe(1);
  expect(review([{ ...waiver, by: '' }])).toBe(1);
  expect(review([waiver], { noWaiver: ['job open'] })).toBe(1);
  expect(() => checkWaiver(waiver, ['job open'])).toThrow(/can't be waived/);
  expect(() => checkWaiver({ ...waiver, until: '2026-01-31' })).toThrow(/end before it begins/);
  const { waived } = reviewGate(facts({ jobs: [job(1)], waivers: [waiver] }), options);
  expect(waived[0]).toMatchObject({ title: 'job 1', waiver: { by: 'Ada Quill' } });
});

test('says when nothing stands before the gate, and counts one thing as one', () => {
  const clear = reviewGate(facts({ jobs: [job(1, { done: true })] }), options);
  expect(clear).toMatchObject({ gateOn: '2026-03-02', costMinor: 0, minutes: 0, counts: [] });
  expect(answerSentence(clear, options.words)).toBe('Nothing stands before engine-in.');
  expect(answerSentence(reviewGate(facts({ jobs: [job(1)] }), options), options.words)).toBe(
    '1 thing stands before engine-in; the job “job 1”, not done, holds the date.',
  );
});

test('does not call a build ready of which nothing is written down', () => {
  const empty = reviewGate(facts({}), options);
  expect(empty).toMatchObject({ listed: 0, gateOn: null, noDate: 'Nothing is written down yet.', blockers: [] });
  expect(answerSentence(empty, options.words)).toMatch(/^Nothing is written down yet/);
});

test('sums up by kind', () => {
  const review = reviewGate(facts({ jobs: [job(1), job(2)], parts: [part(1, { costToComeMinor: 500 })] }), options);
  expect(review.counts).toEqual([
    { kind: 'part not in hand', count: 1, costMinor: 500 },
    { kind: 'job open', count: 2, costMinor: 0 },
  ]);
});

test('reviews a big build', () => {
  const parts = Array.from({ length: 300 }, (_, id) =>
    part(id + 1, { onOrderMilli: 1000, expectedOn: `2026-0${3 + (id % 6)}-15`, fittingMinutes: 45 }),
  );
  const jobs = Array.from({ length: 100 }, (_, id) => job(id + 1, { earlier: id === 0 ? [] : [id] }));
  expect(reviewGate(facts({ parts, jobs }), options).blockers.length).toBe(400);
});

test('a forecast arrival dates what is on order, what is not ordered and what came wrong, with the day of four in five', () => {
  // Source: a rule of this product.
  const expected = { expectedOn: '2026-03-10', expectedLateOn: '2026-03-20', expectedSays: 'From 9 arrivals.' };
  const parts = [
    part(1, { backOrderedMilli: 1000, promisedOn: '2026-02-20', ...expected }),
    part(2, { ...expected }),
    part(3, { rejectedUnsettledMilli: 1000, ...expected }),
    part(4, { inHandMilli: 1000, ...expected }),
  ];
  const review = reviewGate(facts({ parts }), options);
  const said = review.blockers
    .toSorted((a, b) => a.subject.id - b.subject.id)
    .map(({ readyOn, readyLateOn, readySays }) => [readyOn, readyLateOn, readySays]);
  const forecast = ['2026-03-10', '2026-03-20', 'From 9 arrivals.'];
  // What is in hand waits for no delivery.
  expect(said).toEqual([forecast, forecast, forecast, ['2026-03-02', null, '']]);
  expect(review.gateOn).not.toBeNull();
});

test('among what has a date, what gains most days comes first', () => {
  // Source: a rule of this product. By hand: job 2 waits for the part that comes on 10 March, and takes an hour after it;
  // without the part both would be done on the 3rd, without the job the part still comes.
  const review = reviewGate(
    facts({
      parts: [part(1, { onOrderMilli: 1000, expectedOn: '2026-03-10' })],
      jobs: [job(2, { parts: [1], minutesGuess: 60 }), job(3, { title: 'a last look', earlier: [2], minutesGuess: 1 })],
    }),
    options,
  );
  expect(review.blockers.map(({ title, daysGained }) => [title, daysGained > 0])).toEqual([
    ['part 1', true],
    ['a last look', false],
    ['job 2', false],
  ]);
});
