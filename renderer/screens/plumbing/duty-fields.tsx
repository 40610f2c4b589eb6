import { fieldLabels } from '../../../core/plumbing/field-labels.ts';
import { services, sleeves } from '../../../core/plumbing/line.ts';
import { fluidRows } from '../../../core/plumbing/tables/fluid-compatibility.ts';
import { isFuel } from './draft.ts';
import { DraftChoice, DraftFlag, DraftSuggest, DraftText, MoreFields, useDraft } from './draft-fields.tsx';

const fluids = fluidRows.map(({ fluid }) => fluid);
const serviceWords: Readonly<Record<(typeof services)[number], string>> = {
  pressure: 'Pressure',
  return: 'Return',
  suction: 'Suction',
  drain: 'Drain, by its own weight',
  vent: 'Vent',
  boost: 'Boost',
  'brake-servo': 'Brake servo',
};

/** What flows, and what the line is for. */
export function FluidFields() {
  const { draft } = useDraft();
  return (
    <>
      <DraftSuggest name="fluid" label="Fluid" options={fluids} hint="Such as engine oil, E85 or coolant." />
      {isFuel(draft.texts['fluid'] ?? '') && (
        <DraftText
          name="ethanol_percent"
          label={fieldLabels.ethanol_percent}
          hint="As on the pump; it decides the hose."
        />
      )}
      <DraftChoice
        name="service"
        label={fieldLabels.service}
        options={services.map((value) => ({ value, label: serviceWords[value] }))}
      />
    </>
  );
}

/** What a drain is judged by; only there for a drain. */
export function DrainFields() {
  const { draft } = useDraft();
  if (draft.texts['service'] !== 'drain') return null;
  return (
    <fieldset className="plumbing-set">
      <legend>Drain</legend>
      <div className="plumbing-fields">
        <DraftText name="drain.housing_hole_mm" label={fieldLabels['drain.housing_hole_mm']} />
        <DraftText
          name="drain.outlet_angle_deg"
          label={fieldLabels['drain.outlet_angle_deg']}
          hint="0 where it points straight down."
        />
        <DraftText
          name="drain.min_slope_deg"
          label={fieldLabels['drain.min_slope_deg']}
          hint="0 is level; below 0 where it rises."
        />
        <DraftText
          name="drain.entry_above_oil_mm"
          label={fieldLabels['drain.entry_above_oil_mm']}
          hint="Below 0 where it enters under the oil."
        />
        <DraftFlag name="drain.large_frame" label="Large turbocharger" />
      </div>
    </fieldset>
  );
}

/** Pressure, temperature and what else the hose has to bear. */
export function DutyFields() {
  return (
    <fieldset className="plumbing-set">
      <legend>What it has to bear</legend>
      <div className="plumbing-fields">
        <DraftText name="pressure_bar" label={fieldLabels.pressure_bar} hint="Gauge; 60 psi can be typed." />
        <DraftText name="temp_max_C" label={fieldLabels.temp_max_C} />
      </div>
      <MoreFields
        title="Vacuum, cold, heat around it, flow"
        names={[
          ...['vacuum_bar', 'temp_min_C', 'ambient_max_C', 'flow_l_min'],
          ...['near_exhaust', 'in_tank', 'add_on_cooler'],
        ]}
      >
        <DraftText name="vacuum_bar" label={fieldLabels.vacuum_bar} />
        <DraftText name="temp_min_C" label="Coldest, °C" />
        <DraftText name="ambient_max_C" label={fieldLabels.ambient_max_C} />
        <DraftText name="flow_l_min" label={fieldLabels.flow_l_min} />
        <DraftFlag name="near_exhaust" label="Near the exhaust" />
        <DraftFlag name="in_tank" label={fieldLabels.in_tank} />
        <DraftFlag name="add_on_cooler" label={fieldLabels.add_on_cooler} />
      </MoreFields>
    </fieldset>
  );
}

/** What is seldom asked for: sleeve, clips, clocking, movement. */
export function FinishFields() {
  return (
    <MoreFields
      title="Sleeve, clips, clocking, movement"
      names={['sleeve', 'clip_spacing_mm', 'clock_deg', 'move', 'k', 't1', 't2']}
    >
      <DraftChoice
        name="sleeve"
        label="Sleeve over the hose"
        options={sleeves.map((value) => ({ value, label: value === 'heat' ? 'Against heat' : 'Against rubbing' }))}
      />
      <DraftText name="clip_spacing_mm" label="Farthest between two clips, mm" />
      <DraftText
        name="clock_deg"
        label={fieldLabels.clock_deg}
        hint="Clockwise from 12 o’clock, near end toward you."
      />
      <DraftText name="move" label="Spare for movement, mm" hint="Of an engine on its mounts." />
      <DraftText name="k" label="Hose shortens under pressure by" hint="A share, such as 0.04." />
      <DraftText name="t1" label="Straight hose behind the first end, mm" />
      <DraftText name="t2" label="Straight hose behind the second end, mm" />
    </MoreFields>
  );
}
