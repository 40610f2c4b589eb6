import { calculator, type Warning, warning } from '../calculator.ts';

const inch = 0.0254;

/** Pitches of metric threads [mm], ISO 261; from memory. */
const metricPitches = [
  0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6,
];

/** Threads per inch of unified threads, ASME B1.1; from memory. */
const unifiedCounts = [
  80, 72, 64, 56, 48, 44, 40, 36, 32, 28, 24, 20, 18, 16, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4.5, 4,
];

/** A standard value so near that the threads start and then jam: within 3 %, yet not the same. */
function nearMiss(value: number, standard: readonly number[]): number | undefined {
  const apart = (one: number): number => Math.abs(value - one) / one;
  const [nearest] = [...standard].sort((a, b) => apart(a) - apart(b));
  return nearest !== undefined && apart(nearest) > 1e-9 && apart(nearest) <= 0.03 * (1 + 1e-9) ? nearest : undefined;
}

function jams(near: string | undefined): readonly Warning[] {
  return near === undefined ? [] : [warning(`Close to ${near}, but not the same: the threads start and then jam.`)];
}

export const threadPitch = calculator({
  id: 'A10',
  slug: 'thread-pitch',
  title: 'Thread pitch',
  about: 'Threads per inch as a pitch in millimetres, and back.',
  inputs: {
    tpi: {
      label: 'Threads per inch',
      dimension: 'threadDensity',
      unit: 'TPI',
      must: { above: 0 },
      usual: { from: 4, to: 80 },
    },
    pitch: { label: 'Pitch', dimension: 'length', unit: 'mm', must: { above: 0 }, usual: { from: 0.2, to: 6 } },
  },
  outputs: {
    pitch: { label: 'Pitch', dimension: 'length', unit: 'mm' },
    tpi: { label: 'Threads per inch', dimension: 'threadDensity', unit: 'TPI' },
  },
  formula: 'pitch = 25.4 mm/TPI',
  source: 'Exact definition of the inch. Standard pitches of ISO 261 and ASME B1.1 from memory.',
  notes: [
    'Near matches jam: M14 × 1.5 does not screw into M14 × 1.25, and 1/2-13 is not M12 × 2. Compare with a thread gauge.',
  ],
  example: { tpi: { value: 20, unit: 'TPI' } },
  modes: [
    {
      name: 'pitch',
      title: 'pitch from threads per inch',
      needs: ['tpi'],
      compute: ({ tpi }) => {
        const near = nearMiss(1000 / tpi, metricPitches);
        return {
          outputs: { pitch: 1 / tpi },
          warnings: jams(near === undefined ? near : `a metric pitch of ${near} mm`),
        };
      },
    },
    {
      name: 'threads',
      title: 'threads per inch from pitch',
      needs: ['pitch'],
      compute: ({ pitch }) => {
        const near = nearMiss(inch / pitch, unifiedCounts);
        return { outputs: { tpi: 1 / pitch }, warnings: jams(near === undefined ? near : `${near} threads per inch`) };
      },
    },
  ],
});
