import { measuringSheets } from '../one-builder/measuring-sheets.ts';
import type { BringInStep, MoveStep, StoryStep } from '../story-types.ts';
import { eachOf, milliOf, minorOf, minutesOf } from './amounts.ts';
import { keepFits, keepPorts } from './fits.ts';
import { keepLines, makeLine } from './lines.ts';
import type { Stage } from './names.ts';
import { onOrder, place, receive } from './order-steps.ts';
import { listParts, toolStanding } from './records.ts';

async function actOnParts(stage: Stage, on: string, step: MoveStep | BringInStep): Promise<void> {
  const items = step.parts.map((some) =>
    typeof some === 'string'
      ? { part: stage.id('part', some) }
      : { part: stage.id('part', some[0]), quantityMilli: milliOf(some[1]) },
  );
  const bin = 'into' in step ? step.into : 'bin' in step ? step.bin : undefined;
  const result = await stage.client.parts.act({
    ...stage.act(on),
    build: stage.build,
    act: step.do,
    items,
    ...(bin === undefined ? {} : { bin: stage.id('bin', bin) }),
    ...(step.owner === undefined ? {} : { owner: step.owner }),
    ...(step.dueOn === undefined ? {} : { dueOn: step.dueOn }),
    ...(step.note === undefined ? {} : { note: step.note }),
    ...('value' in step && step.value !== undefined ? { valueMinor: minorOf(step.value) } : {}),
    ...('reason' in step && step.reason !== undefined ? { reason: step.reason } : {}),
    ...('rejectReason' in step && step.rejectReason !== undefined ? { rejectReason: step.rejectReason } : {}),
    ...('by' in step && step.by !== undefined ? { by: step.by } : {}),
  });
  if ('label' in step && step.label !== undefined) stage.name('act', step.label, result.act);
}

/** Plays one step of the story by the act that a person would do. */
export async function playStep(stage: Stage, step: StoryStep): Promise<void> {
  if (step.do === 'receive') return receive(stage, step.on, step);
  if ('order' in step) return onOrder(stage, step);
  const { client, build, by } = stage;
  switch (step.do) {
    case 'order':
      return place(stage, step.on, step);
    case 'list': {
      const wanted = new Set(step.parts);
      return listParts(stage, step.on, ({ slug }) => wanted.has(slug));
    }
    case 'ports':
      return keepPorts(stage, step.on);
    case 'fits':
      return keepFits(stage, step.on);
    case 'lines':
      return keepLines(stage, step.on);
    case 'make-line':
      return makeLine(stage, step.on, step.line, step.first ?? 100, step.note ?? '');
    case 'forecast':
      // On a day that is still ahead by this machine's clock there is nothing to keep; the story goes on without.
      if (step.on > (await client.workbook.status()).today) return;
      await client.forecast.keep({ ...stage.act(step.on), build, runs: 500, seed: 1 });
      return;
    case 'baseline':
      await client.money.setBaseline({ ...stage.act(step.on), build, name: step.name });
      return;
    case 'measure': {
      const sheet = measuringSheets.find(({ slug }) => slug === step.sheet);
      await client.bench.read({
        ...stage.act(step.on),
        sheet: stage.id('measuring-sheet', step.sheet),
        readings: step.readings.flatMap((texts, place) =>
          (texts ?? []).map((typed, index) => ({
            place: sheet?.places[place] ?? '',
            name: sheet?.readings[index] ?? '',
            typed,
            temperatureC: step.temperatureC ?? null,
          })),
        ),
        by,
        instrument: '',
      });
      return;
    }
    case 'facts': {
      const part = stage.id('part', step.part);
      const { row, facts } = await client.parts.detail({ build, part });
      const more = step.more.map(([key, value, unit]) => ({ key, value, unit: unit ?? '' }));
      await client.checks.setFacts({ ...stage.act(step.on), part, kind: row.kind, facts: [...facts, ...more] });
      return;
    }
    case 'quote': {
      await client.parts.quote({
        ...stage.act(step.on),
        part: stage.id('part', step.part),
        vendor: stage.id('vendor', step.vendor),
        eachE4: eachOf(step.each),
        currency: step.currency ?? 'USD',
        validUntil: step.validUntil ?? null,
        asEstimate: step.asEstimate ?? false,
        note: step.note ?? '',
      });
      return;
    }
    case 'drop': {
      const parts = step.parts.map((slug) => stage.id('part', slug));
      await client.parts.drop({ ...stage.act(step.on), parts, reason: step.reason });
      return;
    }
    case 'budget': {
      await client.money.changeBudget({
        ...stage.act(step.on),
        build,
        kind: step.kind,
        line: step.line === null ? null : stage.id('budget-line', step.line),
        amountMinor: minorOf(step.amount),
        reason: step.reason,
        by,
      });
      return;
    }
    case 'tool':
      return toolStanding(stage, step.on, step.tool, step.atHand, step.where ?? '', step.dueOn ?? null);
    case 'decide': {
      await client.records.decide({
        ...stage.act(step.on),
        decision: stage.id('decision', step.decision),
        choice: step.choice,
        by,
        reason: step.reason,
      });
      return;
    }
    case 'bolts': {
      await client.records.bolts({
        ...stage.act(step.on),
        boltGroup: stage.id('bolt-group', step.group),
        to: step.to,
        count: step.count,
        by,
        wrench: step.wrench ?? '',
        torqueMilliNm: null,
        reason: step.reason ?? '',
      });
      return;
    }
    case 'job': {
      await client.plan.finishJob({
        ...stage.act(step.on),
        jobs: [stage.id('job', step.job)],
        by,
        minutesSpent: minutesOf(step.hours),
        note: step.note ?? '',
      });
      return;
    }
    case 'hours': {
      const minutes = minutesOf(step.hours);
      const job = stage.id('job', step.job);
      await client.plan.addHours({ ...stage.act(step.on), job, minutes, note: step.note ?? '' });
      return;
    }
    case 'reopen': {
      await client.plan.reopenJob({ ...stage.act(step.on), job: stage.id('job', step.job), reason: step.reason });
      return;
    }
    case 'waive': {
      const [kind, slug] = step.subject;
      await client.gate.waive({
        ...stage.act(step.on),
        build,
        kind: step.kind,
        subject: { kind, id: stage.id(kind, slug) },
        reason: step.reason,
        by,
        until: step.until,
      });
      return;
    }
    case 'correct': {
      await client.journal.reverse({
        ...stage.act(step.on),
        wholeAct: stage.id('act', step.of),
        reason: step.reason,
      });
      return;
    }
    default:
      return actOnParts(stage, step.on, step);
  }
}
