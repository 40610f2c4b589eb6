import { bins } from '../one-builder/bins.ts';
import { boltGroups } from '../one-builder/bolt-groups.ts';
import { budgetLines, contingency } from '../one-builder/budget.ts';
import { build } from '../one-builder/build.ts';
import { decisions } from '../one-builder/decisions.ts';
import { jobsByPhase } from '../one-builder/jobs.ts';
import { measuringSheets } from '../one-builder/measuring-sheets.ts';
import { shipping } from '../one-builder/money-over-time.ts';
import { partsBySystem } from '../one-builder/parts.ts';
import { phases } from '../one-builder/phases.ts';
import { story } from '../one-builder/story.ts';
import { systems } from '../one-builder/systems.ts';
import { shippedChecks, targets } from '../one-builder/targets.ts';
import { tools } from '../one-builder/tools.ts';
import { vendors } from '../one-builder/vendors.ts';
import type { DemoBoltGroup, DemoPart, DemoSheet } from '../types.ts';
import { eachOf, milliOf, minorOf, minutesOf } from './amounts.ts';
import { type NamedKind, onlyMade, type Stage } from './names.ts';

type SavedKind = 'system' | 'phase' | 'vendor' | 'bin' | 'job' | 'tool' | 'decision' | 'boltGroup' | 'measuringSheet';
const namedAs: Record<SavedKind, NamedKind> = {
  system: 'system',
  phase: 'phase',
  vendor: 'vendor',
  bin: 'bin',
  job: 'job',
  tool: 'tool',
  decision: 'decision',
  boltGroup: 'bolt-group',
  measuringSheet: 'measuring-sheet',
};
const shared: readonly SavedKind[] = ['vendor', 'bin'];
const first = build.startedOn;

async function save(stage: Stage, kind: SavedKind, slug: string, values: Record<string, unknown>): Promise<void> {
  const result = await stage.client.records.save({
    ...stage.act(first),
    kind,
    ...(shared.includes(kind) ? {} : { build: stage.build }),
    values,
  });
  stage.name(namedAs[kind], slug, onlyMade(result));
}

/** A group's steps to its final torque, and the angle after it. */
function stagesOf({ steps, newtonMetres, angleDeg }: DemoBoltGroup) {
  if (newtonMetres === null) return [];
  const torques = (steps ?? [Number(newtonMetres)]).map((step) => ({ torqueMilliNm: milliOf(step), angleDeg: null }));
  return angleDeg === undefined ? torques : [...torques, { torqueMilliNm: null, angleDeg }];
}

function sheetValues(stage: Stage, sheet: DemoSheet) {
  const bounds = ([least, most, source]: readonly [number | null, number | null, string]) => ({ least, most, source });
  return {
    title: sheet.title,
    quantity: sheet.quantity,
    part: sheet.part === null ? null : stage.id('part', sheet.part),
    job: stage.id('job', sheet.job),
    system: stage.id('system', sheet.system),
    places: [...sheet.places],
    readings: [...sheet.readings],
    unit: sheet.unit,
    instrument: sheet.instrument,
    resolution: sheet.resolution,
    uncertainty: sheet.uncertainty,
    expansionPpm: sheet.expansionPpm ?? null,
    ...(sheet.limits === undefined ? {} : { limits: bounds(sheet.limits) }),
    less: sheet.less === undefined ? null : stage.id('measuring-sheet', sheet.less),
    ...(sheet.clearance === undefined ? {} : { clearance: bounds(sheet.clearance) }),
    fit:
      sheet.fit === undefined
        ? null
        : {
            ...sheet.fit,
            sizes: sheet.fit.sizes.map(([name, size, count]) => ({ name, size, count })),
            now: [...sheet.fit.now],
          },
    note: sheet.note ?? '',
  };
}

/** Parts that the story lists later. */
const listedLater = new Set(story.flatMap((step) => (step.do === 'list' ? step.parts : [])));

const phaseOfJob = new Map(
  Object.entries(jobsByPhase).flatMap(([phase, jobs]) => jobs.map(({ slug }) => [slug, phase] as const)),
);

function partValues(stage: Stage, system: string, part: DemoPart) {
  return {
    description: part.what,
    needMilli: milliOf(part.need),
    unit: part.unit ?? 'each',
    estimateEachE4: part.guess === null ? null : eachOf(part.guess),
    system: stage.id('system', system),
    phase: stage.id('phase', phaseOfJob.get(part.job) ?? ''),
    job: stage.id('job', part.job),
    vendor: part.from === null ? null : stage.id('vendor', part.from),
    partNumber: part.number ?? '',
    maker: part.maker ?? '',
    priority: part.priority ?? 3,
    neededBy: part.neededBy ?? null,
    optional: part.optional ?? false,
    needsVerification: part.verify ?? false,
    stretchOnce: part.stretch ?? false,
    attention: part.attention ?? '',
    note: part.note ?? '',
    kind: part.kind ?? '',
    facts: (part.facts ?? []).map(([key, value, unit]) => ({ key, value, unit: unit ?? '' })),
  };
}

/** Puts part lines on the list, in one act. */
export async function listParts(stage: Stage, on: string, wanted: (part: DemoPart) => boolean): Promise<void> {
  const chosen = partsBySystem.flatMap(({ system, parts }) =>
    parts.filter(wanted).map((part) => ({ slug: part.slug, values: partValues(stage, system, part) })),
  );
  const result = await stage.client.parts.add({
    ...stage.act(on),
    build: stage.build,
    parts: chosen.map(({ values }) => values),
  });
  chosen.forEach(({ slug }, index) => {
    const id = result.made[index];
    if (id === undefined) throw new Error(`The part “${slug}” was not made`);
    stage.name('part', slug, id);
  });
}

/** The acts of the first day, in an order in which every record finds those that it stands on. */
export function firstDay(stage: Stage): (() => Promise<void>)[] {
  const jobs = Object.entries(jobsByPhase).flatMap(([phase, list]) => list.map((job) => ({ phase, job })));
  return [
    async () => {
      const { name, car, engine, startedOn, targetOn, note } = build;
      const values = { name, car, engine, gateName: 'engine-in', startedOn, targetOn, note };
      stage.build = onlyMade(await stage.client.builds.create({ ...stage.act(first), values }));
    },
    ...systems.map(
      (system, index) => () => save(stage, 'system', system.slug, { name: system.name, sort: index * 10 }),
    ),
    ...phases.map(
      ({ slug, ...phase }, index) =>
        () =>
          save(stage, 'phase', slug, { ...phase, sort: index * 10 }),
    ),
    ...vendors.map(
      ({ slug, currency, account, contact, ...vendor }) =>
        () =>
          save(stage, 'vendor', slug, {
            ...vendor,
            currency: currency ?? null,
            account: account ?? '',
            contact: contact ?? '',
            shippingMinor: shipping[slug] === undefined ? null : minorOf(shipping[slug][0]),
            freeFromMinor: shipping[slug]?.[1] == null ? null : minorOf(shipping[slug][1]),
          }),
    ),
    ...bins.map(
      ({ slug, ...bin }) =>
        () =>
          save(stage, 'bin', slug, bin),
    ),
    ...tools.flatMap((tool) => [
      () =>
        save(stage, 'tool', tool.slug, {
          name: tool.name,
          whereabouts: tool.away ?? '',
          dueOn: tool.dueOn ?? null,
          hireMinor: tool.hire === undefined ? null : minorOf(tool.hire),
          note: tool.note ?? '',
        }),
      ...(tool.away === undefined ? [() => toolStanding(stage, first, tool.slug, true)] : []),
    ]),
    ...jobs.map(
      ({ phase, job }, index) =>
        () =>
          save(stage, 'job', job.slug, {
            title: job.title,
            phase: stage.id('phase', phase),
            system: stage.id('system', job.system),
            sort: index * 10,
            minutesGuess: job.hours === null ? null : minutesOf(job.hours),
            tools: (job.tools ?? []).map((slug) => stage.id('tool', slug)),
            earlier: (job.after ?? []).map((slug) => stage.id('job', slug)),
            beforeGate: job.afterHoist !== true,
            needsSignOff: job.signOff ?? false,
            place: job.place ?? '',
            consumables: job.usesUp ?? '',
            note: job.note ?? '',
          }),
    ),
    ...decisions.map(
      (decision) => () =>
        save(stage, 'decision', decision.slug, {
          title: decision.title,
          options: decision.options.map(([text, cost]) => ({ text, costMinor: cost === null ? null : minorOf(cost) })),
          owner: decision.owner,
          neededBy: decision.neededBy,
          beforeGate: true,
          note: decision.note ?? '',
        }),
    ),
    () => listParts(stage, first, ({ slug }) => !listedLater.has(slug)),
    async () => {
      await stage.client.checks.setTargets({
        ...stage.act(first),
        build: stage.build,
        targets: targets.map(({ name, value, unit, source }) => ({
          name,
          value,
          unit: unit ?? '',
          source: source ?? '',
        })),
      });
    },
    async () => {
      await stage.client.checks.addShipped({ ...stage.act(first), build: stage.build, shipped: [...shippedChecks] });
    },
    ...boltGroups.map(
      (group) => () =>
        save(stage, 'boltGroup', group.slug, {
          name: group.name,
          part: group.part === null ? null : stage.id('part', group.part),
          job: stage.id('job', group.job),
          system: stage.id('system', group.system),
          count: group.count,
          method: group.method,
          torqueMilliNm: group.newtonMetres === null ? null : milliOf(Number(group.newtonMetres)),
          angleDeg: group.angleDeg ?? null,
          source: group.source,
          sequence: group.sequence,
          lubricant: group.lubricant,
          thread: group.thread,
          boltClass: group.boltClass,
          stages: stagesOf(group),
          pattern: group.pattern,
          rows: group.rows ?? 2,
          order: [...(group.order ?? [])],
          sourceKind: 'maker',
          note: group.note ?? '',
        }),
    ),
    ...measuringSheets.map((sheet) => () => save(stage, 'measuringSheet', sheet.slug, sheetValues(stage, sheet))),
    ...budgetLines.map(({ system, name, original }) => async () => {
      const result = await stage.client.money.changeBudget({
        ...stage.act(first),
        build: stage.build,
        kind: 'change',
        line: null,
        newLine: { name, system: stage.id('system', system), phase: null },
        amountMinor: minorOf(original),
        reason: 'First budget',
        by: stage.by,
      });
      stage.name('budget-line', system, onlyMade(result));
    }),
    async () => {
      await stage.client.money.changeBudget({
        ...stage.act(first),
        build: stage.build,
        kind: 'contingency',
        line: null,
        amountMinor: minorOf(contingency),
        reason: 'Kept back for what nobody has thought of',
        by: stage.by,
      });
    },
  ];
}

/** A tool at hand, or away with where it is and when it is due back. */
export async function toolStanding(
  stage: Stage,
  on: string,
  tool: string,
  atHand: boolean,
  whereabouts = '',
  dueOn: string | null = null,
): Promise<void> {
  await stage.client.records.toolStanding({
    ...stage.act(on),
    tool: stage.id('tool', tool),
    atHand,
    whereabouts,
    dueOn,
  });
}
