import { Button } from '@mantine/core';
import { useMemo, useState } from 'react';
import { quantityText, unitPriceText } from '../../parts/formats.ts';
import { type LocaleSettings, useLocale } from '../../parts/locale.tsx';
import { Sheet } from '../../parts/sheet/sheet.tsx';
import type { RowId, SheetColumn } from '../../parts/sheet/sheet-types.ts';
import { plainView } from '../../parts/sheet/sheet-view.ts';
import type { ShownRow } from './shown-rows.ts';
import { fateWords, stateWords } from './words.ts';

function columnsFor(locale: LocaleSettings): readonly SheetColumn<ShownRow>[] {
  const text = (
    key: 'text' | 'vendor' | 'system' | 'findings',
    title: string,
    width: number,
  ): SheetColumn<ShownRow> => ({
    key,
    title,
    kind: 'text',
    width,
    value: (row) => row[key],
    text: (row) => row[key],
  });
  const fate = (row: ShownRow): string =>
    row.overruled === 'import' ? `${fateWords[row.fate]}, as you chose` : fateWords[row.fate];
  const state = (row: ShownRow): string => (row.state === null ? '' : stateWords[row.state]);
  return [
    {
      key: 'row',
      title: 'Row',
      kind: 'number',
      align: 'start',
      width: 80,
      value: ({ row }) => row,
      text: ({ row }) => String(row),
    },
    { key: 'fate', title: 'What it becomes', kind: 'choice', width: 150, value: fate, text: fate, groupable: true },
    { ...text('text', 'What it says', 280), card: 'primary' },
    {
      key: 'quantity',
      title: 'Quantity',
      kind: 'quantity',
      width: 110,
      value: ({ quantityMilli }) => quantityMilli,
      text: ({ quantityMilli, unit }) => (quantityMilli === null ? '' : quantityText(quantityMilli, locale, unit)),
    },
    {
      key: 'price',
      title: 'Price each',
      kind: 'money',
      width: 110,
      value: ({ priceE4 }) => priceE4,
      text: ({ priceE4, currency }) =>
        priceE4 === null ? '' : unitPriceText(priceE4, locale, currency === '' ? locale.currency : currency),
    },
    { key: 'state', title: 'Where it stands', kind: 'choice', width: 160, value: state, text: state, groupable: true },
    { ...text('system', 'System', 130), groupable: true },
    { ...text('vendor', 'Vendor', 130), groupable: true },
    text('findings', 'Remarks', 420),
  ];
}

export interface RowSheetProps {
  readonly rows: readonly ShownRow[];
  /** Overrules the fate of rows; null gives it back to the file. */
  readonly onOverrule: (rows: readonly number[], fate: 'skip' | 'import' | null) => void;
}

/** Every row of the file and its fate; rows that are ticked can be skipped or brought in together. */
export function RowSheet({ rows, onOverrule }: RowSheetProps) {
  const locale = useLocale();
  const columns = useMemo(() => columnsFor(locale), [locale]);
  const [view, setView] = useState(plainView);
  const [selection, setSelection] = useState<ReadonlySet<RowId>>(new Set<RowId>());
  const overrule = (fate: 'skip' | 'import' | null) => {
    onOverrule([...selection].map(Number), fate);
    setSelection(new Set<RowId>());
  };
  return (
    <div className="import-sheet">
      <Sheet
        label="Every row of the file"
        noun={['row', 'rows']}
        columns={columns}
        rows={rows}
        rowId={({ row }) => row}
        view={view}
        onViewChange={setView}
        selection={selection}
        onSelectionChange={setSelection}
        pinned={1}
        bulk={() => (
          <>
            <Button onClick={() => overrule('skip')}>Skip them</Button>
            <Button onClick={() => overrule('import')}>Bring them in as lines</Button>
            <Button variant="subtle" onClick={() => overrule(null)}>
              As the file has it
            </Button>
          </>
        )}
      />
    </div>
  );
}
