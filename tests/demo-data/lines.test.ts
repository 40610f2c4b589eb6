import { describe, expect, test } from 'vitest';
import { checkKept, planLine } from '../../core/plumbing/kept-line.ts';
import { linePorts, lines } from '../../demo-data/one-builder/lines.ts';
import { ports } from '../../demo-data/one-builder/ports.ts';

const designation = (slug: string): string => {
  const port = [...ports, ...linePorts].find((one) => one.slug === slug);
  if (port === undefined) throw new Error(`No port ${slug}`);
  return port.port;
};

/** What the demo was written to show; figures of our own, no figures of the trade. */
describe('the lines of the demo', () => {
  const worked = lines.map(({ slug, name, is, from, to }) => {
    const kept = { name, definition: is, from: designation(from), to: designation(to) };
    checkKept(kept);
    return { slug, planned: planLine(kept) };
  });

  test('are 25 between ports of their own', () => {
    expect(lines).toHaveLength(25);
    const ends = lines.flatMap(({ from, to }) => [from, to]);
    expect(new Set(ends).size).toBe(50);
    expect(new Set([...ports, ...linePorts].map(({ slug }) => slug)).size).toBe(ports.length + linePorts.length);
  });

  test('are all worked out; two fail a check, one by its bend and one by the ethanol in the fuel', () => {
    const failing = worked.flatMap(({ slug, planned }) => {
      if (!planned.ready) return [[slug, planned.problem.message]];
      const failed = planned.takeOff.checks.filter(({ verdict }) => verdict === 'fail');
      return failed.map(({ id }) => [slug, id]);
    });
    expect(failing).toEqual([
      ['regulator-feed', 'bend'],
      ['pot-overflow', 'fluid'],
    ]);
  });
});
