import { calculator, graveWarning, refuseInput, type Warning, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { sprocketInputs } from './teeth.ts';

export const beltMarks = calculator({
  id: 'H1',
  slug: 'belt-marks',
  title: 'Belt and mark consistency',
  about: 'Whether sprockets, belt and the counts between timing marks can belong together.',
  inputs: {
    ...sprocketInputs,
    belt_teeth: {
      kind: 'integer',
      label: 'Belt teeth',
      hint: 'counted or printed on the belt',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      optional: true,
    },
    counts: {
      kind: 'list',
      label: 'Counts between successive marks',
      hint: 'once round the belt; half teeth allowed',
      dimension: 'number',
      unit: '-',
      must: { above: 0 },
      most: 50,
      optional: true,
    },
  },
  outputs: {
    ratio: { label: 'Cam to crank teeth', dimension: 'number', unit: '-' },
    ratio_ok: { kind: 'yes-no', label: 'Cam turns at half crank speed' },
    count_sum: { label: 'Sum of the counts', dimension: 'number', unit: '-' },
    sum_ok: { kind: 'yes-no', label: 'Counts add up to the belt' },
  },
  formula: 'ratio = cam_teeth/crank_teeth, which must be 2; count_sum = Σ counts, which must be belt_teeth',
  source: 'A four-stroke cam turns once for two turns of the crank; derived by hand.',
  notes: [
    'The belt count is needed only where the maker marks the belt.',
    'Turn the crank two full turns by hand, then check the marks again.',
  ],
  caution: makersValueGoverns,
  example: {
    crank_teeth: { value: 24 },
    cam_teeth: { value: 48 },
    belt_teeth: { value: 129 },
    counts: { value: [40, 25, 64], unit: '-' },
  },
  compute: ({ crank_teeth: crank, cam_teeth: cam, belt_teeth: belt, counts }) => {
    if (counts !== undefined && belt === undefined) {
      refuseInput(
        'belt_teeth',
        'Counts between marks are checked against the belt, whose teeth are missing.',
        'a whole number above 0',
      );
    }
    const ratioOk = cam === 2 * crank;
    const sum = counts?.reduce((total, one) => total + one, 0);
    const sumOk = sum === undefined ? undefined : sum === belt;
    const warnings: Warning[] = [];
    if (!ratioOk) {
      warnings.push(
        graveWarning('The cam sprocket has not twice the teeth of the crank sprocket: one of them is wrong.'),
      );
    }
    if (counts?.some((one) => !Number.isInteger(2 * one))) {
      warnings.push(warning('A count is neither whole nor a half: count again.'));
    }
    if (sumOk === false) {
      warnings.push(graveWarning('The counts do not add up to the belt: count again before the engine is turned.'));
    }
    return { outputs: { ratio: cam / crank, ratio_ok: ratioOk, count_sum: sum, sum_ok: sumOk }, warnings };
  },
});
