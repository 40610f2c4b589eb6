import { Button } from '@mantine/core';
import type { RecordRow } from '../../../core/contract/records.ts';
import { useLocale } from '../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import type { FieldSpec } from './kinds.ts';
import type { Names } from './names.ts';
import { valueText } from './value-text.ts';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

/** The fields that someone else changed since the record was opened here. */
export const differing = (fields: readonly FieldSpec[], opened: RecordRow, now: RecordRow): readonly FieldSpec[] =>
  opened.revision === now.revision ? [] : fields.filter(({ name }) => !same(opened.values[name], now.values[name]));

export interface ConflictNoteProps {
  readonly fields: readonly FieldSpec[];
  readonly opened: RecordRow;
  readonly now: RecordRow;
  readonly typed: Readonly<Record<string, unknown>>;
  readonly names: Names;
  readonly onKeepTyped: () => void;
  readonly onTakeTheirs: () => void;
}

/** Both values of every field that was changed elsewhere in the meantime; the reader chooses, nothing is overwritten unseen. */
export function ConflictNote({ fields, opened, now, typed, names, onKeepTyped, onTakeTheirs }: ConflictNoteProps) {
  const locale = useLocale();
  const text = (field: FieldSpec, value: unknown) => valueText(field, value, names, locale) || 'nothing';
  const columns: readonly Column<FieldSpec>[] = [
    { id: 'field', title: 'Field', rowHeader: true, cell: ({ label }) => label },
    { id: 'opened', title: 'When you opened it', cell: (field) => text(field, opened.values[field.name]) },
    { id: 'now', title: 'In the workbook now', cell: (field) => text(field, now.values[field.name]) },
    { id: 'typed', title: 'Here', cell: (field) => text(field, typed[field.name]) },
  ];
  return (
    <div className="record-conflict" role="alert">
      <p>
        <strong>Changed elsewhere.</strong> This record was changed since you opened it. Nothing of yours is lost or
        saved yet.
      </p>
      <SimpleTable
        caption="Both values"
        captionHidden
        columns={columns}
        rows={differing(fields, opened, now)}
        rowKey={({ name }) => name}
      />
      <div className="form-buttons">
        <Button onClick={onKeepTyped}>Keep what I changed, take the rest</Button>
        <Button variant="subtle" onClick={onTakeTheirs}>
          Take it all as it is in the workbook
        </Button>
      </div>
    </div>
  );
}
