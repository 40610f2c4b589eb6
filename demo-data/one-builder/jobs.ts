import type { DemoJob } from '../types.ts';
import { assemblyJobs } from './jobs/assembly.ts';
import { engineInJobs } from './jobs/engine-in.ts';
import { lineJobs } from './jobs/lines.ts';
import { stripJobs } from './jobs/strip.ts';
import { trialJobs } from './jobs/trial.ts';

/** Sixty jobs in order, by phase. Hours are the builder's guess on the first day. */
export const jobsByPhase: Readonly<Record<string, readonly DemoJob[]>> = {
  strip: stripJobs,
  trial: trialJobs,
  assembly: assemblyJobs,
  lines: lineJobs,
  'engine-in': engineInJobs,
};
