import { Button } from '@mantine/core';
import type { TorqueStage } from '../../../core/contract/records.ts';
import { TorqueField } from '../../parts/torque-field.tsx';
import { NumberField } from './number-field.tsx';

interface StagesFieldProps {
  readonly stages: readonly TorqueStage[];
  readonly onChange: (stages: TorqueStage[]) => void;
}

/** The stages of a group, one after the other: to a torque, or on by an angle. */
export function StagesField({ stages, onChange }: StagesFieldProps) {
  const set = (index: number, stage: TorqueStage) => onChange(stages.map((one, at) => (at === index ? stage : one)));
  return (
    <fieldset className="bench-stages">
      <legend>Stages, in the order of the manual</legend>
      {stages.length === 0 && <p>None yet: the sheet then names no figure, and each bolt is done in one go.</p>}
      {stages.map((stage, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a stage is known by its place
        <div className="bench-stage" key={index}>
          {stage.angleDeg === null ? (
            <TorqueField
              name={`stages.${index}.torqueMilliNm`}
              label={`Stage ${index + 1}, to`}
              value={stage.torqueMilliNm}
              onChange={(torqueMilliNm) => set(index, { torqueMilliNm, angleDeg: null })}
              required
            />
          ) : (
            <NumberField
              name={`stages.${index}.angleDeg`}
              label={`Stage ${index + 1}, on by`}
              value={stage.angleDeg}
              onChange={(angle) => set(index, { torqueMilliNm: null, angleDeg: angle ?? Number.NaN })}
              suffix="°"
              wholeTo={720}
              required
            />
          )}
          <Button
            aria-label={`Take out stage ${index + 1}`}
            onClick={() => onChange(stages.filter((_, at) => at !== index))}
          >
            Take out
          </Button>
        </div>
      ))}
      <div className="bench-buttons">
        <Button
          disabled={stages.length >= 12}
          onClick={() => onChange([...stages, { torqueMilliNm: stages.at(-1)?.torqueMilliNm ?? null, angleDeg: null }])}
        >
          Add a torque
        </Button>
        <Button
          disabled={stages.length >= 12}
          onClick={() => onChange([...stages, { torqueMilliNm: null, angleDeg: 90 }])}
        >
          Add an angle
        </Button>
      </div>
    </fieldset>
  );
}
