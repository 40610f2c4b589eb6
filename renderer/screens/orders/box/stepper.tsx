import { ActionIcon } from '@mantine/core';
import { IconMinus, IconPlus } from '@tabler/icons-react';
import { QuantityField } from '../../../parts/fields.tsx';

export interface StepperProps {
  readonly name: string;
  /** The words beside it. */
  readonly label: string;
  /** What it counts, for those who hear it: "head stud kit". */
  readonly of: string;
  readonly unit: string;
  readonly value: number;
  readonly onChange: (quantityMilli: number) => void;
  /** Most that it steps up to; more can be typed, and the workbook says why not. */
  readonly most?: number;
}

const one = 1000;

/** Counts by one with two large buttons, or by typing; made to be hit with gloves on. */
export function Stepper({ name, label, of, unit, value, onChange, most }: StepperProps) {
  const words = `${label}, ${of}`;
  const upTo = most ?? Number.MAX_SAFE_INTEGER;
  return (
    <div className="stepper">
      <span aria-hidden className="stepper-label">
        {label}
      </span>
      <ActionIcon
        variant="default"
        aria-label={`One less: ${words}`}
        disabled={value <= 0}
        onClick={() => onChange(Math.max(0, value - one))}
      >
        <IconMinus aria-hidden />
      </ActionIcon>
      <QuantityField
        name={name}
        label={words}
        unit={unit}
        value={value}
        onChange={(typed) => onChange(typed ?? 0)}
        zero
      />
      <ActionIcon
        variant="default"
        aria-label={`One more: ${words}`}
        disabled={value >= upTo}
        onClick={() => onChange(Math.min(upTo, value + one))}
      >
        <IconPlus aria-hidden />
      </ActionIcon>
    </div>
  );
}
