import { buy } from './buy.ts';
import { calc } from './calc.ts';
import { checks } from './checks-verb.ts';
import { fit, parse } from './fit.ts';
import { forecast } from './forecast.ts';
import { bringIn } from './import-verb.ts';
import { money, positions, review, verify } from './reading-verbs.ts';
import { schedule } from './schedule.ts';
import { serve } from './serve.ts';
import { takeoff } from './takeoff.ts';
import { tonight } from './tonight.ts';
import type { Verb } from './verb.ts';
import { backup, create, demo, exportOut, restore } from './writing-verbs.ts';

/** Every verb, in the order in which help lists them. */
export const verbs: readonly Verb[] = [
  create,
  demo,
  bringIn,
  review,
  checks,
  tonight,
  forecast,
  buy,
  positions,
  money,
  exportOut,
  backup,
  restore,
  verify,
  calc,
  takeoff,
  fit,
  parse,
  schedule,
  serve,
];
