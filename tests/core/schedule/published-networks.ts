/**
 * One network with a known optimum, for measuring the levelled schedule. Source: PSPLIB, set j30, instance j3045_1
 * (Kolisch & Sprecher, "PSPLIB – a project scheduling problem library", European Journal of Operational Research 96,
 * 1997); its optimum is from the published list.
 * A test fixture only; it is no part of the program.
 */
import type { LevelledJob } from '../../../core/schedule/levelling.ts';

/** Capacities, then `job:duration:needs>later jobs`. */
const compact =
  'cap 15,14,15,14 | 1:0:0,0,0,0>2,3,4 | 2:2:3,9,1,9>5,8,14 | 3:4:8,8,3,10>8,22,31 | 4:4:3,4,3,1>6,10,11 | 5:1:1,7,6,4>6,7,12 | 6:10:1,2,5,4>19,27 | 7:10:7,5,7,10>15,16,23 | 8:7:6,3,1,3>9,25 | 9:2:1,8,7,6>16,17,24 | 10:7:2,9,3,4>12,13 | 11:2:8,5,3,3>17,20,27 | 12:3:1,6,8,2>18,19,21 | 13:4:1,9,10,7>15,18,20 | 14:3:5,8,2,5>15,16,23 | 15:3:3,10,4,9>17,19,21 | 16:5:8,9,10,7>30 | 17:6:9,8,8,5>29 | 18:1:8,2,6,8>23,26,31 | 19:9:8,1,7,9>22,25,31 | 20:7:6,8,5,4>21,22 | 21:4:5,3,4,10>24,25,29 | 22:5:4,5,10,6>24,26 | 23:5:8,5,5,7>27,28 | 24:8:4,4,4,2>28 | 25:4:4,10,7,8>26,28 | 26:3:4,10,3,1>30 | 27:8:10,10,7,1>29 | 28:7:7,3,6,6>30 | 29:9:5,1,10,7>32 | 30:6:3,2,4,5>32 | 31:2:7,3,2,8>32 | 32:0:0,0,0,0>';

const named = (amounts: string): Record<string, number> =>
  Object.fromEntries(amounts.split(',').map((amount, index) => [`R${index + 1}`, Number(amount)]));

function read(text: string): { jobs: LevelledJob[]; resources: Record<string, number> } {
  const [capacities = '', ...rows] = text.split(' | ');
  const after = new Map<string, string[]>();
  const jobs = rows.map((row) => {
    const [, id = '', duration = '', needs = '', later = ''] = /^(\d+):(\d+):([\d,]+)>(.*)$/.exec(row) ?? [];
    for (const one of later.split(',')) after.set(one, [...(after.get(one) ?? []), id]);
    return { id, duration: Number(duration), uses: named(needs) };
  });
  return {
    jobs: jobs.map((job) => ({ ...job, after: after.get(job.id) ?? [] })),
    resources: named(capacities.replace('cap ', '')),
  };
}

export const publishedNetwork = read(compact);
