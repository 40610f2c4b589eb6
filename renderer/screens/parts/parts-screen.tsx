import { Button } from '@mantine/core';
import { useCallback, useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import type { PartRow } from '../../../core/contract/parts.ts';
import { navigate, useRoute } from '../../app/route.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Page } from '../../parts/page.tsx';
import { RefusalNote, refusalWords } from '../../parts/refusal-note.tsx';
import { Sheet } from '../../parts/sheet/sheet.tsx';
import type { RowId, SheetPaste } from '../../parts/sheet/sheet-types.ts';
import { BulkBar } from './acts/bulk-bar.tsx';
import { ActForm, type OpenAct } from './acts/open-act.tsx';
import { PasteWindow } from './add/paste-window.tsx';
import { QuickAdd } from './add/quick-add.tsx';
import { PartsAnswer } from './answer.tsx';
import { type CellPlace, cellActs } from './columns/cell-acts.ts';
import { partColumns } from './columns/part-columns.tsx';
import { PartDrawer } from './detail/part-drawer.tsx';
import { FirstSteps } from './first-steps.tsx';
import { useNames } from './names.ts';
import { usePartRows } from './rows/use-part-rows.ts';
import { useKeptView } from './views/use-kept-view.ts';
import { ViewPicker } from './views/view-picker.tsx';
import './parts.css';

const rowId = (row: PartRow): RowId => row.id;
const noun = ['line', 'lines'] as const;
const pastDay = 'A past day is shown; go back to today to change anything.';

/** The list of all that the build needs, and everything that is done to it. */
export default function PartsScreen() {
  const { buildId, asOf, today } = useWorkspace();
  const reading = useReading();
  const locale = useLocale();
  const { params } = useRoute();
  const { rows, total, complete, error, store } = usePartRows(reading);
  const names = useNames(buildId);
  const place = useRef<CellPlace>({ build: buildId, asOf, today, store });
  useEffect(() => {
    place.current = { build: buildId, asOf, today, store };
  }, [buildId, asOf, today, store]);
  const acts = useMemo(() => cellActs(() => place.current), []);
  const columns = useMemo(() => partColumns(names, locale, acts), [names, locale, acts]);
  const [view, setView] = useKeptView(columns);
  const [selection, setSelection] = useState<ReadonlySet<RowId>>(new Set());
  const [open, setOpen] = useState<OpenAct | null>(null);
  const [pasting, setPasting] = useState<string | null>(null);
  const closed = asOf === null ? null : pastDay;

  // Lines that left the list can't be acted on.
  const keepStanding = useEffectEvent(() => {
    if (selection.size === 0) return;
    const here = new Set<RowId>(rows.map(rowId));
    const still = [...selection].filter((id) => here.has(id));
    if (still.length < selection.size) setSelection(new Set(still));
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a changed list can lose lines
  useEffect(() => {
    if (complete) keepStanding();
  }, [rows, complete]);

  const openPart = useCallback((row: PartRow) => navigate('/parts', { part: row.id }), []);
  const bulk = useCallback(
    (ids: ReadonlySet<RowId>) => (
      <BulkBar rows={rows.filter(({ id }) => ids.has(id))} closed={closed} onOpen={setOpen} />
    ),
    [rows, closed],
  );
  const onPaste = useCallback(
    (paste: SheetPaste<PartRow>) => {
      if (closed === null) setPasting(paste.tsv);
    },
    [closed],
  );

  if (reading === null) {
    return (
      <Page title="Parts">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          A parts list belongs to a build; there is none yet.
        </Empty>
      </Page>
    );
  }
  const part = Number(params['part']);
  return (
    <Page title="Parts" answer={<PartsAnswer rows={rows} total={total} complete={complete} />}>
      {error !== null && <RefusalNote refusal={refusalWords(error)} onRetry={() => store?.reload()} />}
      <QuickAdd closed={closed} onPasteLines={setPasting} />
      {total === null && error === null ? (
        <Loading label="Reading the parts list" />
      ) : (
        <div className="parts-sheet">
          <Sheet
            label="Parts"
            noun={noun}
            columns={columns}
            rows={rows}
            rowId={rowId}
            view={view}
            onViewChange={setView}
            selection={selection}
            onSelectionChange={setSelection}
            onOpenRow={openPart}
            bulk={bulk}
            onPaste={onPaste}
            emptyText={<FirstSteps closed={closed} onPaste={() => setPasting('')} />}
            footer={complete}
            tools={
              <>
                <ViewPicker columns={columns} view={view} onView={setView} />
                <Button onClick={() => setPasting('')} disabled={closed !== null}>
                  Paste lines…
                </Button>
              </>
            }
          />
        </div>
      )}
      {open !== null && <ActForm open={open} names={names} onClose={() => setOpen(null)} />}
      {pasting !== null && <PasteWindow text={pasting} onClose={() => setPasting(null)} />}
      {Number.isSafeInteger(part) && part > 0 && (
        <PartDrawer
          key={part}
          part={part}
          names={names}
          closed={closed}
          onAct={setOpen}
          onClose={() => navigate('/parts')}
        />
      )}
    </Page>
  );
}
