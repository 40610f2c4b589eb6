import { NativeSelect } from '@mantine/core';
import type { Dimension } from '../../../core/units/dimensions.ts';
import { unitLabel, unitsOf } from '../../../core/units/measure.ts';

const labelOf = (unit: string, dimension: Dimension): string => unitLabel(unit, dimension) || 'as a ratio';

/** Whether there is more than one unit to choose from. */
export const hasUnits = (dimension: Dimension): boolean => unitsOf(dimension).length > 1;

export interface UnitChoiceProps {
  /** What is measured, for those who hear it: "Bore". */
  readonly of: string;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly onChange: (unit: string) => void;
}

/** The unit of one input or output. */
export function UnitChoice({ of, dimension, unit, onChange }: UnitChoiceProps) {
  return (
    <NativeSelect
      className="calculators-unit"
      aria-label={`${of}: unit`}
      value={unit}
      data={unitsOf(dimension).map((one) => ({ value: one, label: labelOf(one, dimension) }))}
      onChange={(event) => onChange(event.currentTarget.value)}
    />
  );
}
