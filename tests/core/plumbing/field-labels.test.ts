import { expect, it } from 'vitest';
import { planLine } from '../../../core/plumbing/kept-line.ts';

it('names what a check lacks as the form does, never by a field of data', () => {
  const ends = { c1: 30, c2: 30 };
  const lines = [
    { fluid: 'engine oil', service: 'drain', drain: {}, hose_type: '100R5', ...ends },
    { fluid: 'fuel', service: 'suction', hose_type: '30R7', ...ends },
    { fluid: 'boost', service: 'boost', near_exhaust: true, ...ends },
    { fluid: 'coolant', hose_type: '20R3/20R4', end1: { angle: 45 }, end2: { angle: 90 }, ...ends },
    { fluid: 'ATF', hose_type: 'J1532B', ...ends },
    { fluid: 'E85', hose_type: '30R9', vacuum_bar: 0.5, ...ends },
  ];
  for (const line of lines) {
    const definition = { route: 'measured', length: 600, ...line };
    const planned = planLine({ name: 'a line', definition, from: undefined, to: undefined });
    if (!planned.ready) throw new Error(planned.problem.message);
    const { checks, notes } = planned.takeOff;
    const texts = [...checks.map(({ text }) => text), ...notes];
    expect(texts.filter((text) => /[a-z]_[a-z]/i.test(text))).toEqual([]);
    expect(texts.join(' ')).toContain('“');
  }
});
