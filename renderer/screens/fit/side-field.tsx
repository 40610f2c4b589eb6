import type { ConnectionRow, PortRow } from '../../../core/contract/fits.ts';
import type { ConnectionSide } from '../../../core/contract/records.ts';
import type { PortRole } from '../../../core/fit/port.ts';
import { Choice } from '../../parts/fields.tsx';
import { portOf } from './fit-address.ts';
import { PortField } from './port-field.tsx';

export const emptySide: ConnectionSide = { port: null, typed: '' };

/** A port as it is called where one is chosen: "oil drain of the turbocharger: M14x1.5 male". */
export const portName = ({ name, owner, designation, canonical }: PortRow): string =>
  `${name}, ${owner}: ${canonical || designation}`;

/** The side as a kept connection has it. */
export const sideOf = ({ port, text }: ConnectionRow['one']): ConnectionSide =>
  port === null ? { port: null, typed: text } : { port, typed: '' };

/** Whether the side says enough to be judged. */
export const isSide = ({ port, typed }: ConnectionSide, role: PortRole): boolean =>
  port !== null || portOf(typed, role)?.ok === true;

export interface SideFieldProps {
  readonly name: string;
  readonly label: string;
  readonly value: ConnectionSide;
  readonly role: PortRole;
  readonly ports: readonly PortRow[];
  readonly onChange: (side: ConnectionSide) => void;
}

/** One side of a joint: a port kept with the build, or one typed for what isn't bought yet. */
export function SideField({ name, label, value, role, ports, onChange }: SideFieldProps) {
  return (
    <fieldset className="fit-side">
      <legend>{label}</legend>
      <Choice
        name={`${name}.port`}
        label={`${label}: a port of the build`}
        none="None of them: type it below"
        value={value.port === null ? null : String(value.port)}
        options={ports.map((port) => ({ value: String(port.id), label: portName(port) }))}
        onChange={(port) => onChange(port === null ? emptySide : { port: Number(port), typed: '' })}
      />
      {value.port === null && (
        <PortField
          name={`${name}.typed`}
          label={`${label}: thread or end`}
          placeholder="M14x1.5 female"
          value={value.typed}
          reading={portOf(value.typed, role)}
          onChange={(typed) => onChange({ port: null, typed })}
          asks={`${label}: is it outside or inside?`}
          required
        />
      )}
    </fieldset>
  );
}
