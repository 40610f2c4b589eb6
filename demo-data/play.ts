import { builder, build as demoBuild } from './one-builder/build.ts';
import { story } from './one-builder/story.ts';
import { moneyOverTime } from './player/money-over-time.ts';
import { type Client, newStage } from './player/names.ts';
import { firstDay } from './player/records.ts';
import { playStep } from './player/steps.ts';

export interface PlayOptions {
  /** Told after every act. */
  readonly progress?: (done: number, total: number) => void;
}

/**
 * Makes the demo build by the same acts that a person would do, one after the other, in an open workbook whose
 * currency is USD. Every act has a fixed idempotency key and the day on which it happened.
 * @throws the refusal of the first act that the workbook doesn't take, with the step's day and kind in front.
 */
export async function playDemo(client: Client, options: PlayOptions): Promise<{ readonly build: number }> {
  const stage = newStage(client, builder);
  const first = demoBuild.startedOn;
  const before = [...firstDay(stage), ...moneyOverTime(stage, (on) => on === first, first)];
  const acts = [
    ...before,
    ...story.map((step) => () => playStep(stage, step)),
    ...moneyOverTime(stage, (on) => on !== first, first),
  ];
  const told = before.length;
  for (const [index, act] of acts.entries()) {
    try {
      await act();
    } catch (error) {
      const step = story[index - told];
      const where = step === undefined ? (index < told ? 'first day' : 'last day') : `${step.on}, ${step.do}`;
      throw new Error(`Demo, step ${index + 1} (${where}): ${error instanceof Error ? error.message : String(error)}`, {
        cause: error,
      });
    }
    options.progress?.(index + 1, acts.length);
  }
  return { build: stage.build };
}
