import { Button } from '@mantine/core';
import type { ImportPlan, Mapping, PlannedRow } from '../../../../core/exchange/import-types.ts';
import { counted, quantityText, unitPriceText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';

export interface PastePreviewProps {
  readonly plan: ImportPlan;
  readonly mapping: Mapping;
  readonly onSkip: (row: number) => void;
}

const most = 300;

/** "unitPrice" in words: "unit price". */
const fieldWords = (field: string): string => field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** The pasted columns as understood, and the lines that would be added. */
export function PastePreview({ plan, mapping, onSkip }: PastePreviewProps) {
  const locale = useLocale();
  const rows = plan.rows.filter(({ fate }) => fate !== 'blank' && fate !== 'header');
  const columns: Column<PlannedRow>[] = [
    {
      id: 'description',
      title: 'Description',
      rowHeader: true,
      cell: ({ part, fate, findings }) => (
        <>
          {part?.description ?? fate}
          {part?.partNumber !== undefined && <span className="parts-under">{part.partNumber}</span>}
          {findings
            .filter(({ severity }) => severity !== 'note')
            .map(({ column, message }) => (
              <span key={`${column} ${message}`} className="parts-finding">
                {message}
              </span>
            ))}
        </>
      ),
    },
    {
      id: 'quantity',
      title: 'Needed',
      figures: true,
      cell: ({ part }) =>
        part === undefined || part.quantityMilli === null ? '' : quantityText(part.quantityMilli, locale, part.unit),
    },
    {
      id: 'price',
      title: 'Price each',
      figures: true,
      cell: ({ part }) =>
        part?.unitPriceE4 === undefined ? '' : unitPriceText(part.unitPriceE4, locale, part.currency),
    },
    {
      id: 'where',
      title: 'System, vendor',
      cell: ({ part }) => [part?.system, part?.vendor].filter(Boolean).join(', '),
    },
    {
      id: 'fate',
      title: 'Added?',
      cell: ({ fate, row }) =>
        fate === 'attention' ? (
          <Button size="compact" onClick={() => onSkip(row)}>
            Leave out
          </Button>
        ) : fate === 'part' ? (
          'yes'
        ) : (
          fateWords[fate]
        ),
    },
  ];
  return (
    <>
      <p>
        <strong>{counted(plan.counts.part, 'line', 'lines')}</strong> will be added.{' '}
        {mapping.columns
          .map(({ title, field }) => `${title}: ${field === null ? 'kept in the note' : fieldWords(field)}`)
          .join(' · ')}
      </p>
      <SimpleTable
        caption={rows.length > most ? `The first ${most} of ${rows.length} lines` : 'Lines as understood'}
        columns={columns}
        rows={rows.slice(0, most)}
        rowKey={({ row }) => String(row)}
      />
    </>
  );
}

const fateWords: Readonly<Record<PlannedRow['fate'], string>> = {
  part: 'yes',
  'order-line': 'no, an order line',
  section: 'names the system below',
  total: 'no, a total',
  blank: 'no',
  header: 'no',
  duplicate: 'no, here already',
  attention: 'not yet',
  skipped: 'left out',
};
