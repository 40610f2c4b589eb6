import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow } from '../../../../core/contract/records.ts';
import { api } from '../../../app/client.ts';
import { useAct, useRead } from '../../../app/data.tsx';
import { useWorkspace } from '../../../app/workspace.tsx';
import { TextField } from '../../../parts/fields.tsx';
import { FormWindow } from '../../../parts/form.tsx';
import type { SheetView } from '../../../parts/sheet/sheet-types.ts';
import type { PartColumn } from '../columns/column-tools.ts';
import { builtInViews } from './built-in-views.ts';
import { readView } from './read-view.ts';

export interface ViewPickerProps {
  readonly columns: readonly PartColumn[];
  readonly view: SheetView;
  readonly onView: (view: SheetView) => void;
}

const sendSave = (key: string, input: Omit<Parameters<typeof api.records.save>[0], 'key' | 'kind'>) =>
  api.records.save({ key, kind: 'savedView', ...input });
const sendRetire = (key: string, input: Omit<Parameters<typeof api.records.retire>[0], 'key' | 'kind'>) =>
  api.records.retire({ key, kind: 'savedView', ...input });

const nameOf = ({ values }: RecordRow): string => String(values['name'] ?? '');
const textOf = ({ values }: RecordRow): string => String(values['view'] ?? '');
/** Two views that show the same, whatever their objects are. */
const same = (a: SheetView, b: SheetView): boolean => JSON.stringify(a) === JSON.stringify(b);
const own = 'as arranged';

/** Chooses among the views that are built in and those that were saved; saves, renames and retires the latter. */
export function ViewPicker({ columns, view, onView }: ViewPickerProps) {
  const { today, asOf } = useWorkspace();
  const [naming, setNaming] = useState<'new' | 'rename' | null>(null);
  const [name, setName] = useState('');
  const read = useRead(['records.list', 'savedView'], () => api.records.list({ kind: 'savedView' }));
  const saved = (read.state === 'ready' ? read.value : []).filter(({ values }) => values['screen'] === 'parts');
  const saving = useAct(sendSave);
  const retiring = useAct(sendRetire);

  const shownBuiltIn = builtInViews.find((each) => same(each.view, view));
  const shownSaved = saved.find((record) => {
    const stored = readView(textOf(record), columns);
    return stored !== null && same(stored, view);
  });
  const shown = shownSaved ? `saved-${shownSaved.id}` : (shownBuiltIn?.id ?? own);
  const choose = (value: string) => {
    const builtIn = builtInViews.find(({ id }) => id === value);
    const record = saved.find(({ id }) => `saved-${id}` === value);
    const next = builtIn?.view ?? (record === undefined ? null : readView(textOf(record), columns));
    if (next !== null) onView(next);
  };
  const ask = (what: 'new' | 'rename') => {
    setName(what === 'rename' && shownSaved !== undefined ? nameOf(shownSaved) : '');
    saving.forget();
    setNaming(what);
  };
  const save = async () => {
    const done =
      naming === 'rename' && shownSaved !== undefined
        ? await saving.run({ on: today, id: shownSaved.id, revision: shownSaved.revision, values: { name } })
        : await saving.run({ on: today, values: { name, screen: 'parts', view: JSON.stringify(view) } });
    if (done !== null) setNaming(null);
  };
  const closed = asOf !== null;
  return (
    <div className="parts-views">
      <NativeSelect
        aria-label="View"
        value={shown}
        data={[
          ...(shown === own ? [{ value: own, label: 'As arranged here' }] : []),
          { group: 'Views', items: builtInViews.map(({ id, name: label }) => ({ value: id, label })) },
          ...(saved.length === 0
            ? []
            : [{ group: 'Saved', items: saved.map((each) => ({ value: `saved-${each.id}`, label: nameOf(each) })) }]),
        ]}
        onChange={(event) => choose(event.currentTarget.value)}
      />
      {shown === own && !closed && <Button onClick={() => ask('new')}>Save view…</Button>}
      {shownSaved !== undefined && !closed && (
        <>
          <Button variant="subtle" onClick={() => ask('rename')}>
            Rename…
          </Button>
          <Button
            variant="subtle"
            loading={retiring.busy}
            onClick={() => void retiring.run({ on: today, id: shownSaved.id, reason: '' })}
          >
            Retire view
          </Button>
        </>
      )}
      <FormWindow
        opened={naming !== null}
        title={naming === 'rename' ? 'Rename the view' : 'Save the view'}
        submitLabel={naming === 'rename' ? 'Rename view' : 'Save view'}
        onSubmit={save}
        onCancel={() => setNaming(null)}
        busy={saving.busy}
        refusal={saving.refusal}
      >
        <TextField
          name="name"
          label="Name of the view"
          description="Columns, order, filters and groups are kept with it."
          value={name}
          onChange={setName}
          longest={80}
          required
          autoFocus
        />
      </FormWindow>
    </div>
  );
}
