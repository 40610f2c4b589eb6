import { formatMeasure, fromSI } from '../../units/measure.ts';
import { calculator, type ListInput, type Warning, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { exceeds } from '../limits.ts';
import { limitInputs, toleranceWidth } from './limits-of-size.ts';
import { deviationOf, meanOf, rangeOf, strayReading } from './statistics.ts';

const readingsOf = (label: string) =>
  ({ kind: 'list', label, dimension: 'length', unit: 'mm', fewest: 2, most: 100 }) as const satisfies ListInput;

interface Limits {
  readonly limit_min: number | undefined;
  readonly limit_max: number | undefined;
}

/** What holds of readings whether or not they lie in planes. */
function together(readings: readonly number[], limits: Limits) {
  const range = rangeOf(readings);
  const width = toleranceWidth(limits);
  const stray = strayReading(readings);
  const warnings: Warning[] = [];
  if (width !== undefined && exceeds(range, width / 2)) {
    warnings.push(warning('The readings differ by more than half of the tolerance: measure again before judging.'));
  }
  if (stray !== undefined) {
    const shown = formatMeasure({ value: fromSI(stray, 'mm', 'length'), unit: 'mm' }, 'length', 7);
    warnings.push(
      warning(
        `The reading of ${shown} is more than three standard deviations from the mean of the others: take it again.`,
      ),
    );
  }
  return { outputs: { mean: meanOf(readings), range, stdev: deviationOf(readings) }, warnings };
}

export const severalReadings = calculator({
  id: 'G6',
  slug: 'several-readings',
  title: 'Several readings',
  about: 'Mean and spread of repeated readings, or roundness and taper of a bore or journal.',
  inputs: {
    readings: readingsOf('Readings'),
    top: readingsOf('Readings, top plane'),
    middle: { ...readingsOf('Readings, middle plane'), optional: true },
    bottom: readingsOf('Readings, bottom plane'),
    ...limitInputs,
  },
  outputs: {
    mean: { label: 'Mean', dimension: 'length', unit: 'mm' },
    range: { label: 'Range', hint: 'largest less smallest', dimension: 'length', unit: 'um' },
    stdev: { label: 'Standard deviation', hint: 'n − 1', dimension: 'length', unit: 'um' },
    out_of_round: {
      label: 'Out of round',
      hint: 'largest difference in one plane',
      dimension: 'length',
      unit: 'um',
    },
    taper: { label: 'Taper', hint: 'largest difference of plane means', dimension: 'length', unit: 'um' },
  },
  formula:
    'mean = Σ/n; range = largest − smallest; stdev = √(Σ(reading − mean)²/(n − 1)); out_of_round = largest range of one ' +
    'plane; taper = range of the means of the planes',
  source: 'Definitions; derived by hand.',
  notes: ['Out of round and taper are differences on the diameter, as the readings are.'],
  caution: makersValueGoverns,
  example: { readings: { value: [59.992, 59.994, 59.991, 59.995], unit: 'mm' } },
  modes: [
    {
      name: 'readings',
      title: 'Readings of one size',
      needs: ['readings'],
      may: ['limit_min', 'limit_max'],
      compute: ({ readings, limit_min, limit_max }) => together(readings, { limit_min, limit_max }),
    },
    {
      name: 'planes',
      title: 'Readings in planes along an axis',
      needs: ['top', 'bottom'],
      may: ['middle', 'limit_min', 'limit_max'],
      compute: ({ top, middle, bottom, limit_min, limit_max }) => {
        const planes = [top, ...(middle === undefined ? [] : [middle]), bottom];
        const { outputs, warnings } = together(planes.flat(), { limit_min, limit_max });
        return {
          outputs: {
            ...outputs,
            out_of_round: Math.max(...planes.map(rangeOf)),
            taper: rangeOf(planes.map(meanOf)),
          },
          warnings,
        };
      },
    },
  ],
});
