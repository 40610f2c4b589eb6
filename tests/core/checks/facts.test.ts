import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { partKindNamed, partKinds } from '../../../core/checks/part-kinds.ts';
import { proposeFacts, proposeKind } from '../../../core/checks/proposals.ts';
import { checkFacts, checkKind } from '../../../core/checks/read-fact.ts';
import { pumpFlowAt, readThread } from '../../../core/checks/rules.ts';
import { checkTarget, targetTerms } from '../../../core/checks/target-terms.ts';
import { Refusal } from '../../../core/refusal.ts';

const refusal = (work: () => void): Refusal => {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('Nothing was refused.');
};

describe('typed facts', () => {
  test('take a value in an accepted unit, beside the number or behind it', () => {
    checkFacts([
      { key: 'injector flow', value: '1050', unit: 'cc/min' },
      { key: 'Bore', value: '86,5 mm', unit: '' },
      { key: 'gasket thickness', value: '51 thou', unit: '' },
      { key: 'deck clearance', value: '-0.1', unit: 'mm' },
      { key: 'colour of the box', value: 'whatever', unit: 'foo' },
    ]);
  });

  test.each([
    ['injector flow', '1050', 'mm'],
    ['injector flow', '1050', ''],
    ['injector flow', 'a lot', 'cc/min'],
    ['injector flow', '0', 'cc/min'],
    ['cylinders', '4.5', ''],
    ['full scale', '3', 'bar gauge'],
    ['bore', '1e400', 'mm'],
    ['bore', '-86', 'mm'],
    ['effectiveness', '70', ''],
    ['opening temperature', '-300', 'degC'],
  ])('%s of “%s” in “%s” is refused with the key and what is accepted', (key, value, unit) => {
    const { field, accepted, message } = refusal(() => checkFacts([{ key, value, unit }]));
    expect(field).toBe(key);
    expect(accepted).not.toBe('');
    expect(message).toMatch(/Nothing was changed\.$/);
  });

  test('stand once each', () => {
    const twice = [
      { key: 'bore', value: '86', unit: 'mm' },
      { key: ' Bore ', value: '87', unit: 'mm' },
    ];
    expect(refusal(() => checkFacts(twice)).message).toContain('twice');
  });

  test('have kinds that the vocabulary knows', () => {
    expect(checkKind(' Injector ')).toBe('injector');
    expect(checkKind('')).toBe('');
    expect(refusal(() => checkKind('flux pump')).field).toBe('kind');
    expect(new Set(partKinds.map(({ kind }) => kind)).size).toBe(partKinds.length);
  });

  test('never throw anything but a refusal', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (value, unit) => {
        try {
          checkFacts([{ key: 'injector flow', value, unit }]);
        } catch (error) {
          expect(error).toBeInstanceOf(Refusal);
        }
      }),
    );
  });
});

describe('targets', () => {
  test.each([
    ['power', '300', 'mm'],
    ['boost', '1.4', 'bar absolute'],
    ['cylinders', '5.5', ''],
    ['most ethanol', '120', '%'],
    ['rev limit', '-1', 'rpm'],
    ['duty limit', '85', ''],
    ['volumetric efficiency', '95', ''],
    ['ambient temperature', '-300', 'degC'],
  ])('%s of “%s %s” is refused by name', (name, value, unit) => {
    expect(refusal(() => checkTarget(name, value, unit)).field).toBe(name);
  });

  test('take shares with and without a sign', () => {
    for (const [value, unit] of [
      ['85', '%'],
      ['0.85', ''],
      ['85 percent', ''],
    ] as const)
      checkTarget('duty limit', value, unit);
    checkTarget('volumetric efficiency', '105', '%');
  });

  test('assume only what can be read', () => {
    for (const { name, unit, assumed } of targetTerms)
      if (assumed !== undefined) checkTarget(name, assumed.value, unit);
  });
});

const proposed = (description: string): Record<string, string> => {
  const { kind } = proposeKind(description);
  return {
    kind,
    ...Object.fromEntries(
      proposeFacts(description, partKindNamed(kind), []).map(({ key, value, unit }) => [
        key,
        `${value} ${unit}`.trim(),
      ]),
    ),
  };
};

describe('descriptions', () => {
  test.each([
    ['Injectors 1050 cc set of 6', { kind: 'injector', 'injector flow': '1050 cc/min' }],
    [
      'injector, 1300 cc/min, high impedance 12.3 ohm',
      { kind: 'injector', 'injector flow': '1300 cc/min', resistance: '12.3 ohm' },
    ],
    ['Thermostat 82', { kind: 'thermostat', 'opening temperature': '82 degC' }],
    ['Thermostat, 82 C', { kind: 'thermostat', 'opening temperature': '82 degC' }],
    ['Forged piston set, 86.5 mm', { kind: 'piston', bore: '86.5 mm' }],
    ['Fuel hose -8', { kind: 'fuel hose', 'dash size': '8' }],
    ['Hose, braided, dash 10', { kind: 'hose', 'dash size': '10' }],
    ['Connecting rod bolt, M9x1.0', { kind: 'bolt', thread: 'M9x1.0' }],
    ['Flange bolt M14x1.25x40, 10.9', { kind: 'bolt', thread: 'M14x1.25', 'strength class': '10.9' }],
    ['Flange bolt M6x8', { kind: 'bolt' }],
    ['Bolt M8x1x25', { kind: 'bolt', thread: 'M8x1' }],
    ['Bolt 3/8-24', { kind: 'bolt', thread: '3/8-24' }],
    ['Injector 1,050 cc', { kind: 'injector' }],
    ['Flange bolt M14 x 1.25, 10.9', { kind: 'bolt', thread: 'M14x1.25', 'strength class': '10.9' }],
    ['Turbo water adapter, M14x1.5', { kind: '', thread: 'M14x1.5' }],
    ['Radiator cap, 1.1 bar', { kind: 'pressure cap', 'opening pressure': '1.1 bar' }],
  ])('%s', (description, expected) => {
    expect(proposed(description)).toEqual(expected);
  });

  test.each([
    // Two numbers that it could be, a size of something else, or a part that only goes with it.
    ['Injectors 550 cc or 1050 cc', { kind: 'injector' }],
    ['Injector seal kit', { kind: '' }],
    ['Thermostat housing, 82 mm', { kind: '' }],
    ['Thermostat 180F', { kind: 'thermostat' }],
    ['Crankshaft, 60 mm main journals', { kind: 'crankshaft' }],
    ['Box of 82', { kind: '' }],
    ['Fuel pump 255', { kind: 'fuel pump' }],
    ['Charge-air cooler, 550 x 230 x 65 mm', { kind: 'intercooler' }],
  ])('%s isn’t guessed at', (description, expected) => {
    expect(proposed(description)).toEqual(expected);
  });

  test('propose only what the vocabulary would take', () => {
    fc.assert(
      fc.property(fc.constantFrom(...partKinds), fc.stringMatching(/^[\w .,x-]{0,40}$/), (kind, text) => {
        const facts = proposeFacts(text, kind, []);
        for (const { key } of facts) expect(kind.facts.some((term) => term.key === key)).toBe(true);
      }),
    );
  });
});

describe('rules between calculators', () => {
  test('a pump is read between its points, below a single one on the safe side, and never beyond', () => {
    const points = [
      { at: 4e5, flow: 360 },
      { at: 5e5, flow: 320 },
    ];
    // 360 − 0.7 · 40
    expect(pumpFlowAt(4.7e5, points).flow).toBeCloseTo(332, 9);
    expect(pumpFlowAt(3e5, points).flow).toBe(360);
    expect(pumpFlowAt(4e5, points).flow).toBe(360);
    expect(refusal(() => pumpFlowAt(5.1e5, points)).message).toContain('5 bar gauge');
  });

  test('threads are read as they are written', () => {
    expect(readThread('M10x1.25')).toEqual({ diameter: 0.01, pitch: 0.00125 });
    // Coarse pitch of M8, ISO 261 (from memory).
    expect(readThread('M8').pitch).toBeCloseTo(0.00125, 12);
    // 3/8-16: 9.525 mm and 25.4/16 mm.
    expect(readThread('3/8-16 UNC').diameter).toBeCloseTo(0.009525, 12);
    expect(readThread('3/8-16 UNC').pitch).toBeCloseTo(0.0015875, 12);
    expect(() => readThread('big')).toThrow(Refusal);
  });
});
