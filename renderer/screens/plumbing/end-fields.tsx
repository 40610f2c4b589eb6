import { endStyles } from '../../../core/plumbing/line.ts';
import { DraftChoice, DraftFlag, DraftText, MoreFields, useDraft } from './draft-fields.tsx';
import { PortReading } from './port-reading.tsx';

const styleWords: Readonly<Record<(typeof endStyles)[number], string>> = {
  reusable: 'Reusable, screwed on',
  crimp: 'Crimped',
  'push-on': 'Pushed on',
  barb: 'Barb with clamp',
};
const angles = [0, 30, 45, 60, 90, 120, 150, 180];

/** One end of the hose: its make, its angle, and how much of the way it takes. */
export function EndFields({ which }: { readonly which: 1 | 2 }) {
  const { draft } = useDraft();
  const end = `end${which}`;
  const seen = draft.texts[`${end}.way`] === 'seen';
  return (
    <fieldset className="plumbing-set">
      <legend>{which === 1 ? 'End at the start' : 'End at the far side'}</legend>
      <div className="plumbing-fields">
        <DraftText name={`${end}.port`} label="Joins with" hint="Such as JIC -10 female." />
        <PortReading text={draft.texts[`${end}.port`] ?? ''} />
        <DraftChoice
          name={`${end}.style`}
          label="Kind of end"
          options={endStyles.map((value) => ({ value, label: styleWords[value] }))}
        />
        <DraftChoice
          name={`${end}.angle`}
          label="Angle"
          options={angles.map((value) => ({ value: String(value), label: value === 0 ? 'Straight' : `${value}°` }))}
        />
        <DraftChoice
          name={`${end}.way`}
          label="Length of the end, given as"
          required
          options={[
            { value: 'cut', label: 'Cut-off dimension, from its maker' },
            { value: 'seen', label: 'What is seen of it, and how far hose goes in' },
          ]}
        />
        {seen ? (
          <>
            <DraftText name={`${end}.visible_mm`} label="Seen from seat to hose stop, mm" />
            <DraftText name={`${end}.insert_mm`} label="Hose goes in by, mm" />
          </>
        ) : (
          <DraftText
            name={`${end}.cutoff_mm`}
            label="Cut-off dimension, mm"
            hint="From the seat to where the cut hose stops."
          />
        )}
        <DraftFlag name={`${end}.swivel`} label="Its nut turns freely (swivel)" />
      </div>
      <MoreFields
        title="Drop, bore and rating of this end"
        names={['drop_mm', 'bore_mm', 'max_bar'].map((name) => `${end}.${name}`)}
      >
        <DraftText
          name={`${end}.drop_mm`}
          label="Drop of a bent end, mm"
          hint="How far its seat stands off the hose."
        />
        <DraftText name={`${end}.bore_mm`} label="Bore of the end, mm" />
        <DraftText name={`${end}.max_bar`} label="Rated for, bar" />
      </MoreFields>
    </fieldset>
  );
}
