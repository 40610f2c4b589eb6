import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { dateText } from '../../parts/formats.ts';
import { Toolbar } from '../../parts/furniture.tsx';
import { type LocaleSettings, useLocale } from '../../parts/locale.tsx';
import { Caution, Empty } from '../../parts/notes.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { type FieldSpec, kindSpecs, type ListKind } from './kinds.ts';
import { type Names, nameOf, useNames } from './names.ts';
import { ReorderForm } from './reorder-form.tsx';
import { Standing } from './standing.tsx';
import { standingText, valueText } from './value-text.ts';

const numeric: readonly FieldSpec['type'][] = ['money', 'whole', 'torque', 'rate'];
const withUses: readonly ListKind[] = ['vendor', 'bin', 'system', 'phase', 'tool'];
const withStanding: readonly ListKind[] = ['tool', 'decision', 'boltGroup'];

function columnsOf(kind: ListKind, names: Names, locale: LocaleSettings): readonly Column<RecordRow>[] {
  const { nameField, fields } = kindSpecs[kind];
  const title = fields.find(({ name }) => name === nameField)?.label ?? 'Name';
  const text = (field: FieldSpec, { values }: RecordRow) => valueText(field, values[field.name], names, locale);
  const ofField = (field: FieldSpec): Column<RecordRow> => ({
    id: field.name,
    title: field.label,
    figures: numeric.includes(field.type),
    cell: (record) => text(field, record),
    sortBy: ({ values }) => {
      const value = values[field.name];
      return typeof value === 'number' && numeric.includes(field.type) ? value : String(value ?? '');
    },
  });
  return [
    {
      id: nameField,
      title,
      rowHeader: true,
      cell: (record) => nameOf(record, kind),
      sortBy: (record) => nameOf(record, kind),
    },
    ...(withStanding.includes(kind)
      ? [
          {
            id: 'standing',
            title: 'Where it stands',
            cell: (record: RecordRow) => <Standing kind={kind} record={record} />,
            sortBy: (record: RecordRow) => standingText(kind, record),
          },
        ]
      : []),
    ...fields.filter(({ inTable }) => inTable === true).map(ofField),
    ...(withUses.includes(kind)
      ? [
          {
            id: 'uses',
            title: 'Uses',
            figures: true,
            cell: ({ uses }: RecordRow) => uses,
            sortBy: ({ uses }: RecordRow) => uses,
          },
        ]
      : []),
  ];
}

export interface RecordListProps {
  readonly kind: ListKind;
  readonly build: number;
  readonly records: readonly RecordRow[];
  readonly onOpen: (id: number) => void;
  readonly onAdd: () => void;
}

/** The table of one kind, with what can be done to the list as a whole. */
export function RecordList({ kind, build, records, onOpen, onAdd }: RecordListProps) {
  const locale = useLocale();
  const { asOf } = useWorkspace();
  const names = useNames(kind, build);
  const [showRetired, setShowRetired] = useState(false);
  const [reorders, setReorders] = useState(false);
  const { title, one, purpose } = kindSpecs[kind];
  const inUse = records.filter(({ retiredOn }) => retiredOn === null);
  const retired = records.length - inUse.length;
  const rows = showRetired ? records : inUse;
  const retiredColumn: Column<RecordRow> = {
    id: 'retired',
    title: 'Retired',
    cell: ({ retiredOn }) => (retiredOn === null ? '' : dateText(retiredOn, locale)),
    sortBy: ({ retiredOn }) => retiredOn ?? '',
  };
  if (records.length === 0) {
    return (
      <Empty {...(asOf === null ? { action: { label: `Add the first ${one}`, onClick: onAdd } } : {})}>{purpose}</Empty>
    );
  }
  return (
    <div className="record-window">
      <Toolbar label={title}>
        <Button variant="filled" onClick={onAdd} disabled={asOf !== null}>
          Add a {one}
        </Button>
        {(kind === 'system' || kind === 'phase') && inUse.length > 1 && (
          <Button onClick={() => setReorders(true)} disabled={asOf !== null}>
            Change the order
          </Button>
        )}
        {retired > 0 && (
          <Checkbox
            label={`Show ${retired} retired`}
            checked={showRetired}
            onChange={(event) => setShowRetired(event.currentTarget.checked)}
          />
        )}
      </Toolbar>
      {asOf !== null && <p>Lists are shown as they are today; go back to today to change anything.</p>}
      {kind === 'boltGroup' && (
        <Caution>
          Torque figures are copies: the maker’s manual gives figure, steps and sequence, and it governs.
        </Caution>
      )}
      <SimpleTable
        key={kind}
        caption={title}
        captionHidden
        columns={showRetired ? [...columnsOf(kind, names, locale), retiredColumn] : columnsOf(kind, names, locale)}
        rows={rows}
        rowKey={({ id }) => String(id)}
        onRowOpen={({ id }) => onOpen(id)}
      />
      {reorders && (kind === 'system' || kind === 'phase') && (
        <ReorderForm kind={kind} records={inUse} onClose={() => setReorders(false)} />
      )}
    </div>
  );
}
