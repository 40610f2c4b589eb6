import type { FieldProps } from './field-frame.tsx';
import { useLocale } from './locale.tsx';
import { ReadField } from './read-field.tsx';
import { parseTorque, plainTorque, torqueUnit } from './torque.ts';

export interface TorqueFieldProps extends FieldProps {
  /** Thousandths of a newton metre; null while nothing can be read. */
  readonly value: number | null;
  readonly onChange: (torqueMilliNm: number | null) => void;
}

/** A torque, typed in the unit of the workbook's settings and kept in newton metres. */
export function TorqueField(props: TorqueFieldProps) {
  const { units } = useLocale();
  return (
    <ReadField
      {...props}
      read={(text) => parseTorque(text, units, props.name)}
      write={(torque) => plainTorque(torque, units)}
      suffix={torqueUnit(units)}
      numeric
    />
  );
}
