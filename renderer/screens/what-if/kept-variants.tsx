import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow, VariantChange } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { changeText, type Names } from './change-words.ts';
import { useRecords } from './use-names.ts';

interface Variant {
  readonly name: string;
  readonly changes: readonly VariantChange[];
}

/** As many stand beside the build as it is now. */
const mostCompared = 4;

const variantOf = ({ values }: RecordRow): Variant => ({
  name: String(values['name']),
  changes: values['changes'] as readonly VariantChange[],
});

export interface KeptVariantsProps {
  readonly build: number;
  readonly names: Names;
  readonly busy: boolean;
  readonly onOpen: (variant: Variant) => void;
  readonly onCompare: (variants: readonly Variant[]) => void;
}

/** Variants kept by name: opened again, compared side by side, renamed or retired. */
export function KeptVariants({ build, names, busy, onOpen, onCompare }: KeptVariantsProps) {
  const locale = useLocale();
  const { today } = useWorkspace();
  const rows = useRecords(build, 'variant');
  const [ticked, setTicked] = useState<ReadonlySet<number>>(new Set());
  const [renaming, setRenaming] = useState<RecordRow | null>(null);
  const retire = useAct((key, id: number) => api.records.retire({ key, on: today, kind: 'variant', id, reason: '' }));
  if (rows.length === 0) return null;
  const chosen = rows.filter(({ id }) => ticked.has(id));
  const tick = (id: number, on: boolean) =>
    setTicked(on ? new Set([...ticked, id]) : new Set([...ticked].filter((other) => other !== id)));
  return (
    <section className="what-if-section" aria-labelledby="what-if-kept">
      <h2 id="what-if-kept">Kept variants</h2>
      <Toolbar label="Kept variants">
        <Button
          disabled={chosen.length === 0 || chosen.length > mostCompared || busy}
          onClick={() => onCompare(chosen.map(variantOf))}
        >
          Compare those ticked
        </Button>
        {chosen.length > mostCompared && <span>At most {mostCompared} side by side.</span>}
      </Toolbar>
      {retire.refusal !== null && <RefusalNote refusal={retire.refusal} />}
      <SimpleTable
        caption="Kept variants"
        captionHidden
        rows={rows}
        rowKey={({ id }) => String(id)}
        columns={[
          {
            id: 'name',
            title: 'Variant',
            rowHeader: true,
            cell: (row) => (
              <Checkbox
                label={String(row.values['name'])}
                checked={ticked.has(row.id)}
                onChange={(event) => tick(row.id, event.currentTarget.checked)}
              />
            ),
          },
          {
            id: 'acts',
            title: 'Do',
            cell: (row) => {
              const heard = <span className="only-heard">{String(row.values['name'])}</span>;
              return (
                <span className="row-acts not-printed">
                  <Button size="compact" variant="subtle" onClick={() => onOpen(variantOf(row))}>
                    Open {heard}
                  </Button>
                  <Button size="compact" variant="subtle" onClick={() => setRenaming(row)}>
                    Rename {heard}
                  </Button>
                  <Button size="compact" variant="subtle" onClick={() => void retire.run(row.id)}>
                    Retire {heard}
                  </Button>
                </span>
              );
            },
          },
          {
            id: 'changes',
            title: 'What would be otherwise',
            cell: (row) =>
              variantOf(row)
                .changes.map((one) => changeText(one, names, locale))
                .join('; '),
          },
        ]}
      />
      {renaming !== null && <RenameForm row={renaming} build={build} onClose={() => setRenaming(null)} />}
    </section>
  );
}

function RenameForm({ row, build, onClose }: { row: RecordRow; build: number; onClose: () => void }) {
  const { today } = useWorkspace();
  const [name, setName] = useState(String(row.values['name']));
  const { busy, refusal, run } = useAct((key, values: Record<string, unknown>) =>
    api.records.save({ key, on: today, kind: 'variant', build, id: row.id, revision: row.revision, values }),
  );
  const send = async () => {
    if ((await run({ name: name.trim() })) !== null) onClose();
  };
  return (
    <FormWindow
      opened
      title="Rename the variant"
      submitLabel="Rename"
      onSubmit={() => void send()}
      onCancel={onClose}
      busy={busy}
      refusal={refusal}
    >
      <TextField name="name" label="Name" value={name} onChange={setName} longest={80} required autoFocus />
    </FormWindow>
  );
}
