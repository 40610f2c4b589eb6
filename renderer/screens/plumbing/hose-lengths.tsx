import { Button } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { HoseLengthForm } from './hose-length-form.tsx';
import { lengthText } from './lengths-text.ts';

/** The hose at hand, length by length; the cut list uses it before anything is bought. */
export function HoseLengths() {
  const locale = useLocale();
  const canAct = useCanAct();
  const [open, setOpen] = useState<RecordRow | 'new' | null>(null);
  const read = useRead(['records', null, null, 'hoseLength'], () => api.records.list({ kind: 'hoseLength' }));
  return (
    <section aria-label="Hose at hand" className="plumbing-block plumbing-at-hand not-printed">
      <h2>Hose at hand</h2>
      <ReadView read={read} label="Looking for hose at hand">
        {(rows) =>
          rows.length === 0 ? (
            <p>No length is written down. What lies on the shelf is cut first, so measure it and write it here.</p>
          ) : (
            <SimpleTable
              caption="Hose at hand"
              captionHidden
              rows={rows}
              rowKey={({ id }) => String(id)}
              {...(canAct ? { onRowOpen: (row: RecordRow) => setOpen(row) } : {})}
              columns={[
                { id: 'hose', title: 'Hose', rowHeader: true, cell: ({ values }) => String(values['hose']) },
                {
                  id: 'bore',
                  title: 'Bore',
                  figures: true,
                  cell: ({ values }) =>
                    values['boreMm'] === null ? '–' : lengthText(Number(values['boreMm']), locale),
                },
                {
                  id: 'length',
                  title: 'Length',
                  figures: true,
                  cell: ({ values }) => lengthText(Number(values['lengthMm']), locale),
                },
                { id: 'count', title: 'Pieces', figures: true, cell: ({ values }) => Number(values['count']) },
                { id: 'note', title: 'Note', cell: ({ values }) => String(values['note'] ?? '') },
              ]}
            />
          )
        }
      </ReadView>
      {canAct && (
        <div className="plumbing-buttons">
          <Button leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={() => setOpen('new')}>
            Write down a length…
          </Button>
        </div>
      )}
      {open !== null && <HoseLengthForm kept={open === 'new' ? null : open} onClose={() => setOpen(null)} />}
    </section>
  );
}
