import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fit as judge } from '../../../core/fit/fit.ts';
import { formatPort } from '../../../core/fit/format.ts';
import { parsePort } from '../../../core/fit/parse.ts';
import { portRoles } from '../../../core/fit/port.ts';
import { anyPort } from './arbitrary-port.ts';
import { checkCases } from './check-cases.ts';
import { portOf } from './port-of.ts';

const mate = (one: Parameters<typeof judge>[0], other: Parameters<typeof judge>[0]): string =>
  judge(one, other).verdict;

/** Fluid ends that an engine has, so that many pairs have an adapter. */
const usualPort = fc.constantFrom(
  ...checkCases.filter(([, , , role]) => role === 'fluid').flatMap(([, one, other]) => [portOf(one), portOf(other)]),
);

describe('ports in general', () => {
  it('are read back from their canonical text as they were', () => {
    fc.assert(
      fc.property(anyPort, (port) => {
        const text = formatPort(port);
        const read = parsePort(text);
        expect(read).toMatchObject({ ok: true, canonical: text });
        if (read.ok) expect(read.port).toEqual(port);
      }),
      { numRuns: 2000 },
    );
  });

  it('are judged alike either way round', () => {
    fc.assert(
      fc.property(anyPort, anyPort, fc.constantFrom(...portRoles), (one, other, role) => {
        const there = judge(one, other, { role, medium: 'fuel' });
        const back = judge(other, one, { role, medium: 'fuel' });
        expect(back.verdict).toBe(there.verdict);
        expect(back.severity).toBe(there.severity);
        expect(back.lookalike).toBe(there.lookalike);
        expect(back.source).toBe(there.source);
        expect(back.needs).toEqual(there.needs);
        expect(back.consequence).toBe(there.consequence);
        expect(back.adapters.map(({ pieces }) => pieces.length)).toEqual(
          there.adapters.map(({ pieces }) => pieces.length),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('are joined by the adapters found, each joint of which mates', () => {
    let found = 0;
    fc.assert(
      fc.property(usualPort, usualPort, (one, other) => {
        for (const { pieces, text } of judge(one, other).adapters) {
          if (pieces.some(({ availability }) => availability === 'made to order')) continue;
          found += 1;
          expect(pieces.length).toBeLessThanOrEqual(2);
          const chain = [one, ...pieces.flatMap(({ ends }) => ends), other];
          for (let at = 0; at + 1 < chain.length; at += 2) {
            const [left, right] = [chain[at], chain[at + 1]];
            if (left === undefined || right === undefined) throw new Error('A chain has an even number of ends.');
            expect([text, mate(left, right)]).toEqual([text, 'mates']);
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(found).toBeGreaterThan(100);
  });

  it('never throw, whatever is typed', () => {
    const pieces = fc.constantFrom(
      'M',
      '14',
      'x',
      '1.5',
      '-6',
      '1/8',
      ' ',
      'NPT',
      'AN',
      'hose',
      '#',
      '(',
      ')',
      'male',
      '°',
      '37',
      'flange',
      't3',
      ',',
      '½',
      '0',
      '/',
      'JIC',
      'qc',
      'vb',
      'slip',
      'pattern',
      '4xM8',
      'pcd',
      'elec',
      'in',
      'R',
      'banjo',
    );
    const typed = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 7 }).map((parts) => parts.join('')),
      fc.array(pieces, { maxLength: 6 }).map((parts) => parts.join(' ')),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const read = parsePort(text);
        if (read.ok) expect(parsePort(read.canonical)).toMatchObject({ ok: true, port: read.port });
        else expect(read.write.length).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });
});
