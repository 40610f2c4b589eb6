import { ActionIcon } from '@mantine/core';
import { IconArrowDown, IconArrowUp } from '@tabler/icons-react';
import { type KeyboardEvent, useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { KeyHints } from '../../parts/furniture.tsx';
import { useActDay } from './act-day.tsx';
import { kindSpecs } from './kinds.ts';
import { nameOf } from './names.ts';

/** Moves one place up or down; at the ends it stays. */
export function moved<Item>(items: readonly Item[], from: number, step: -1 | 1): readonly Item[] {
  const to = from + step;
  const [item, other] = [items[from], items[to]];
  if (item === undefined || other === undefined) return items;
  return items.with(from, other).with(to, item);
}

export interface ReorderFormProps {
  readonly kind: 'system' | 'phase';
  readonly records: readonly RecordRow[];
  readonly onClose: () => void;
}

/** Puts systems or phases in another order: moved here as often as needed, saved as one act. */
export function ReorderForm({ kind, records, onClose }: ReorderFormProps) {
  const [list, setList] = useState(records);
  const [said, setSaid] = useState('');
  const day = useActDay();
  const act = useAct((key, on: string) => api.records.reorder({ key, on, kind, ids: list.map(({ id }) => id) }));
  const move = (from: number, step: -1 | 1) => {
    const next = moved(list, from, step);
    const record = list[from];
    if (next === list || record === undefined) return;
    setList(next);
    setSaid(`${nameOf(record, kind)} is now ${from + step + 1} of ${list.length}`);
  };
  const pressed = (event: KeyboardEvent, from: number) => {
    const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : null;
    if (step === null || !event.altKey) return;
    event.preventDefault();
    move(from, step);
  };
  return (
    <FormWindow
      opened
      title={`Order of the ${kindSpecs[kind].many}`}
      submitLabel="Save this order"
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={async () => (await act.run(day.on)) !== null && onClose()}
    >
      <ol className="record-order">
        {list.map((record, index) => (
          <li key={record.id} onKeyDown={(event) => pressed(event, index)}>
            <span>{nameOf(record, kind)}</span>
            <ActionIcon
              aria-label={`Move ${nameOf(record, kind)} up`}
              aria-disabled={index === 0}
              onClick={() => move(index, -1)}
            >
              <IconArrowUp aria-hidden size="1.1em" />
            </ActionIcon>
            <ActionIcon
              aria-label={`Move ${nameOf(record, kind)} down`}
              aria-disabled={index === list.length - 1}
              onClick={() => move(index, 1)}
            >
              <IconArrowDown aria-hidden size="1.1em" />
            </ActionIcon>
          </li>
        ))}
      </ol>
      <KeyHints hints={[{ keys: 'Alt+↑ ↓', does: 'move the line you are on' }]} />
      <p className="only-heard" role="status">
        {said}
      </p>
      {day.field}
    </FormWindow>
  );
}
