import { fieldLabels } from '../../../core/plumbing/field-labels.ts';
import { findHoseType, splitHoseText } from '../../../core/plumbing/hose.ts';
import { tubeMaterials } from '../../../core/plumbing/tables/fluid-compatibility.ts';
import { hoseTypes } from '../../../core/plumbing/tables/hose-types.ts';
import { DraftFlag, DraftSuggest, DraftText, MoreFields, useDraft } from './draft-fields.tsx';

const typeNames = hoseTypes.map(({ id }) => id);
const ownFigures = [
  'od',
  'rmin',
  'hose_max_bar',
  'hose_vacuum_bar',
  'hose_min_C',
  'hose_max_C',
  'hose_class',
  'tube_material',
  'hot_factor',
  'metal_hose',
];

/** The hose: its type, and what is printed on the one at hand, which goes before the typical figures of the type. */
export function HoseFields() {
  const { draft } = useDraft();
  const typed = draft.texts['hose_type'] ?? '';
  const type = typed.trim() === '' ? undefined : findHoseType(splitHoseText(typed).type);
  const sizes = type?.sizes.map(({ dash }) => `-${dash}`) ?? [];
  return (
    <fieldset className="plumbing-set">
      <legend>Hose</legend>
      <div className="plumbing-fields">
        <DraftSuggest
          name="hose_type"
          label="Hose type"
          options={typeNames}
          hint="Such as 100R5, or your maker’s own."
        />
        <DraftText
          name="dash"
          label="Dash size"
          {...(sizes.length === 0 ? {} : { hint: `Listed for it: ${sizes.join(', ')}.` })}
        />
        <DraftText name="bore" label={fieldLabels.bore} hint="As measured; else that of the size." />
      </div>
      {type !== undefined && (
        <p className="plumbing-says">
          {type.id}: {type.construction}. {type.note ?? ''} Its usual figures are {type.source.replace(/\.$/, '')}.
          Those of the hose at hand go before them.
        </p>
      )}
      <MoreFields title="Own figures of the hose" names={ownFigures}>
        <DraftText name="od" label="Outside diameter, mm" />
        <DraftText name="rmin" label="Smallest bend radius, mm" hint="To the inside of the bend." />
        <DraftText name="hose_max_bar" label="Rated for, bar" />
        <DraftText name="hose_vacuum_bar" label={fieldLabels.hose_vacuum_bar} />
        <DraftText name="hose_min_C" label="Coldest, °C" />
        <DraftText name="hose_max_C" label={fieldLabels.hose_max_C} />
        <DraftText
          name="hose_class"
          label={fieldLabels.hose_class}
          {...(type?.classes === undefined
            ? {}
            : { hint: `Listed for it: ${type.classes.map(({ name }) => name).join(', ')}.` })}
        />
        <DraftSuggest name="tube_material" label={fieldLabels.tube_material} options={tubeMaterials} />
        <DraftText name="hot_factor" label={fieldLabels.hot_factor} hint="From its maker, such as 0.8." />
        <DraftFlag name="metal_hose" label="Metal hose" />
      </MoreFields>
    </fieldset>
  );
}
