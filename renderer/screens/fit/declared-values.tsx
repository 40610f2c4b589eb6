import type { DeclaredRow } from '../../../core/contract/fits.ts';
import type { RecordValues } from '../../../core/contract/records.ts';
import type { AskedPath } from '../../../core/fit/kept/paths.ts';
import { waysToWrite } from '../../../core/fit/kept/read-value.ts';
import { Choice, TextField } from '../../parts/fields.tsx';
import { portOf } from './fit-address.ts';
import { usePartChoices } from './part-lines.ts';
import { PortField } from './port-field.tsx';

type Values = RecordValues['declaredFit']['values'];
type Bound = RecordValues['declaredFit']['things'];

export interface DeclaredValuesProps {
  readonly asked: readonly AskedPath[];
  /** The things that the rule is about. */
  readonly things: readonly string[];
  readonly bound: Bound;
  readonly values: Values;
  /** The values as they are sent, whose places a refusal names. */
  readonly sent: Values;
  /** What is known without typing, and from where. */
  readonly found: DeclaredRow['asks'];
  readonly onBound: (bound: Bound) => void;
  readonly onValues: (values: Values) => void;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const spoken = (name: string): string => name.replaceAll('_', ' ');

/** Units that are meant where only a number is typed. */
const meant: Readonly<Partial<Record<AskedPath['sort'], string>>> = { length: 'mm', temperature: 'degC' };
const unitFor = ({ sort }: AskedPath, text: string): string =>
  /^\s*\d+(?:[.,]\d+)?\s*$/.test(text) ? (meant[sort] ?? '') : '';

/** Which part lines the things are, and every value that the rule asks for. */
export function DeclaredValues(props: DeclaredValuesProps) {
  const { asked, things, bound, values, sent, found, onBound, onValues } = props;
  const parts = usePartChoices();
  if (asked.length === 0) return null;
  const put = (one: AskedPath, text: string) => {
    const others = values.filter(({ path }) => path !== one.path);
    onValues(text === '' ? others : [...others, { path: one.path, value: text, unit: unitFor(one, text) }]);
  };
  const bind = (name: string, part: string | null) => {
    const { [name]: _former, ...others } = bound;
    onBound(part === null ? others : { ...others, [name]: Number(part) });
  };
  return (
    <>
      {things.length > 0 && (
        <fieldset className="fit-side">
          <legend>Which parts they are</legend>
          {things.map((name) => (
            <Choice
              key={name}
              name={`things.${name}`}
              label={capital(spoken(name))}
              none="The engine’s own"
              value={bound[name] === undefined ? null : String(bound[name])}
              options={parts}
              onChange={(part) => bind(name, part)}
            />
          ))}
        </fieldset>
      )}
      <fieldset className="fit-side">
        <legend>What it asks for</legend>
        {asked.map((one) => {
          const typed = values.find(({ path }) => path === one.path);
          const at = sent.findIndex(({ path }) => path === one.path);
          const known = found.find(({ path }) => path === one.path);
          return (
            <ValueField
              key={one.path}
              one={one}
              name={at < 0 ? one.path : `values.${at}.value`}
              value={typed === undefined ? '' : written(typed)}
              known={typed === undefined && known !== undefined && known.value !== '' ? known : undefined}
              onChange={(text) => put(one, text)}
            />
          );
        })}
      </fieldset>
    </>
  );
}

/** A kept value with its unit, unless the unit is the one that is meant anyway. */
const written = ({ value, unit }: Values[number]): string =>
  unit === '' || Object.values(meant).includes(unit) ? value : `${value} ${unit}`;

interface ValueFieldProps {
  readonly one: AskedPath;
  readonly name: string;
  readonly value: string;
  readonly known: DeclaredRow['asks'][number] | undefined;
  readonly onChange: (text: string) => void;
}

function ValueField({ one, name, value, known, onChange }: ValueFieldProps) {
  const label = capital(one.label);
  const from = known === undefined ? null : `${known.value} (${known.from}). What is typed here counts instead.`;
  if (one.sort === 'port' && from === null) {
    return (
      <PortField
        name={name}
        label={label}
        placeholder="M14x1.5 female"
        value={value}
        reading={portOf(value, one.role)}
        onChange={onChange}
        asks="Is it outside or inside?"
      />
    );
  }
  return (
    <TextField
      name={name}
      label={label}
      description={from ?? capital(`${waysToWrite[one.sort]}.`)}
      value={value}
      onChange={onChange}
      longest={400}
    />
  );
}
