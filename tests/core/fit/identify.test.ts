import { describe, expect, it } from 'vitest';
import { identifyThread } from '../../../core/fit/identify.ts';
import { everyThread } from '../../../core/fit/thread.ts';
import { Refusal } from '../../../core/refusal.ts';

const names = (...measured: Parameters<typeof identifyThread>) =>
  identifyThread(...measured).candidates.map(({ name }) => name);

describe('a measured thread', () => {
  it('is M14x1.5 or 9/16-18 at 13.9 mm and 1.5, with the way to tell them apart', () => {
    // M14x1.5-6g reads 13.732 to 13.968 mm (ISO 965-1, ISO 262); 9/16-18 is 14.29 mm with 1.411 (ASME B1.1).
    const found = identifyThread({ diameter: 13.9, pitch: 1.5 });
    expect(found.candidates[0]).toMatchObject({
      name: 'M14x1.5',
      likely: true,
      reads: [expect.closeTo(13.732, 1), expect.closeTo(13.968, 1)],
    });
    expect(found.candidates.map(({ name }) => name)).toContain('9/16-18 UNF');
    expect(found.text).toMatch(/^measured 13\.9 mm and 1\.5 pitch: M14x1\.5.* or .*tell them apart by: /);
    const way = found.tellApart.find(({ other }) => other === '9/16-18 UNF');
    expect(way?.how).toContain('10 threads are 15.0 mm long on M14x1.5, 14.1 mm on 9/16-18 UNF');
    expect(found.candidates.find(({ name }) => name === '9/16-18 UNF')?.usedOn).toEqual([
      'JIC -6',
      'ORB -6',
      'ORFS -4',
    ]);
  });

  it('is told by its pitch where diameters are equal', () => {
    expect(names({ diameter: 9.9, pitch: 1 })[0]).toBe('M10x1');
    expect(names({ diameter: 9.9, pitch: 1.25 })[0]).toBe('M10x1.25');
    expect(names({ diameter: 9.9, pitch: 1 })).toContain('1/8-27 NPT');
    expect(names({ diameter: 9.9 })).toEqual(expect.arrayContaining(['M10x1', 'M10x1.25', 'M10x1.5']));
  });

  it('is read in the bore as well', () => {
    // M8x1.25 inside: minor diameter 6.647 mm (ISO 724), up to 6.912 (6H, ISO 965-1).
    expect(names({ diameter: 6.7, pitch: 1.25, where: 'inside' })[0]).toBe('M8x1.25');
  });

  it('is found again, whichever listed one it is', () => {
    for (const thread of everyThread()) {
      const taper = thread.system === 'npt' || thread.system === 'bsp';
      const diameter = taper ? thread.diameter - 0.1 : thread.diameter - 0.015 - 0.011 * thread.pitch - 0.03;
      const found = identifyThread({ diameter, pitch: thread.pitch });
      const mine = found.candidates.find((candidate) => candidate.thread.name === thread.name);
      expect([thread.name, mine?.likely]).toEqual([thread.name, true]);
    }
  });

  it('is not made up when nothing is near', () => {
    const found = identifyThread({ diameter: 61, pitch: 1 });
    expect(found.candidates).toEqual([]);
    expect(found.text).toContain('measure again');
  });

  it.each([
    [{ diameter: 0 }, 'diameter'],
    [{ diameter: Number.NaN }, 'diameter'],
    [{ diameter: 14, pitch: 18 }, 'pitch'],
  ])('is refused when it can’t be one: %j', (measured, field) => {
    expect(() => identifyThread(measured)).toThrow(Refusal);
    try {
      identifyThread(measured);
    } catch (error) {
      expect(error).toMatchObject({
        code: 'bad-input',
        field,
        message: expect.stringContaining('Nothing was changed.'),
      });
    }
  });
});
