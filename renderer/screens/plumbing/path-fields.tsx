import { routes } from '../../../core/plumbing/line.ts';
import { routeFields } from './draft.ts';
import { DraftChoice, DraftText, useDraft } from './draft-fields.tsx';

const routeWords: Readonly<Record<(typeof routes)[number], string>> = {
  measured: 'Measured along the hose, with string or rod',
  straight: 'Straight',
  u: 'A U between parallel ports',
  corner: 'One right-angled corner',
  offset: 'Sideways, by two bends',
};

const given: Readonly<Record<string, { readonly label: string; readonly hint?: string }>> = {
  length: { label: 'Length from seat to seat, mm' },
  spacing: { label: 'Distance of the two ports, mm' },
  a: { label: 'First leg, mm', hint: 'To where the axes cross.' },
  b: { label: 'Second leg, mm', hint: 'To where the axes cross.' },
  x: { label: 'Along the axis, mm' },
  y: { label: 'Sideways, mm' },
  r: { label: 'Bend radius of the centre line, mm', hint: 'Of the tightest bend.' },
  turn_deg: { label: 'All turns added up, °', hint: 'If you know it.' },
};

/** Where the hose runs: the kind of route, and what that kind is given by. */
export function PathFields() {
  const { draft } = useDraft();
  const route = draft.texts['route'] ?? '';
  return (
    <fieldset className="plumbing-set">
      <legend>Path</legend>
      <div className="plumbing-fields">
        <DraftChoice
          name="route"
          label="How it runs"
          options={routes.map((value) => ({ value, label: routeWords[value] }))}
        />
        <DraftChoice
          name="length_basis"
          label="These lengths are"
          required
          options={[
            { value: 'estimated', label: 'Estimated: to be measured before cutting' },
            { value: 'measured', label: 'Measured on the car' },
          ]}
        />
        {(routeFields[route] ?? []).map((name) => {
          const { label, hint } = given[name] ?? { label: name };
          return <DraftText key={name} name={name} label={label} {...(hint === undefined ? {} : { hint })} />;
        })}
      </div>
    </fieldset>
  );
}
