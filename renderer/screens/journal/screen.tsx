import { Button } from '@mantine/core';
import { IconFileExport, IconHistory } from '@tabler/icons-react';
import { useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import type { JournalRow } from '../../../core/contract/journal.ts';
import { api } from '../../app/client.ts';
import { navigate, useRoute } from '../../app/route.tsx';
import { saveFile } from '../../app/save-file.ts';
import { useTask } from '../../app/task.ts';
import { useWorkspace } from '../../app/workspace.tsx';
import { dateText, numberText } from '../../parts/formats.ts';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { FilterLine } from './filter-line.tsx';
import { type Asked, askedIn, filterOf, isNarrowed, paramsOf } from './journal-filter.ts';
import { JournalTable } from './journal-table.tsx';
import { OneEntry } from './one-entry.tsx';
import { TakeBack } from './take-back.tsx';
import { type Entries, useEntries } from './use-entries.ts';
import './journal.css';

/** Every entry ever made, newest first; what was wrong is taken back here, never erased. */
export default function Journal() {
  const { isOpen, buildId, asOf } = useWorkspace();
  const { params } = useRoute();
  const locale = useLocale();
  const [takingBack, setTakingBack] = useState<JournalRow | null>(null);
  const asked = useMemo(() => askedIn(params), [params]);
  const filter = useMemo(() => filterOf(asked, buildId, asOf), [asked, buildId, asOf]);
  const entries = useEntries(buildId, asOf, filter);
  if (!isOpen) {
    return (
      <Page title="Journal">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here stands every entry of a workbook, newest first. Open a workbook to read its journal.
        </Empty>
      </Page>
    );
  }
  const seq = Number(params['entry']);
  const change = (next: Asked) => navigate('/journal', paramsOf(next), { replace: true });
  const takeBack = asOf === null ? { onTakeBack: setTakingBack } : {};
  const newest = entries.rows[0];
  return (
    <Page
      title="Journal"
      answer={
        <Answer>
          {answerOf(
            entries,
            isNarrowed(asked),
            (on) => dateText(on, locale),
            (count) => numberText(count, locale),
          )}
        </Answer>
      }
    >
      {Number.isSafeInteger(seq) && seq > 0 && <OneEntry seq={seq} {...takeBack} />}
      <FilterLine
        asked={asked}
        onChange={change}
        names={{
          part: asked.part === newest?.part ? (newest?.description ?? '') : '',
          order: asked.order === newest?.order ? (newest?.orderNumber ?? '') : '',
        }}
      />
      <ExportTool build={buildId} asOf={asOf} />
      {asOf !== null && (
        <p className="note">
          <IconHistory aria-hidden className="note-icon" />
          <span>A past day is shown, so nothing can be taken back from here. Go back to today first.</span>
        </p>
      )}
      {entries.state === 'loading' && <Loading label="Reading the journal" />}
      {entries.refusal !== null && <RefusalNote refusal={entries.refusal} onRetry={entries.retry} />}
      {entries.state === 'ready' &&
        (entries.rows.length === 0 ? (
          <Nothing narrowed={isNarrowed(asked)} />
        ) : (
          <>
            <JournalTable caption="Entries, newest first" rows={entries.rows} {...takeBack} />
            <Older entries={entries} />
          </>
        ))}
      {takingBack !== null && <TakeBack row={takingBack} onClose={() => setTakingBack(null)} />}
    </Page>
  );
}

function answerOf(entries: Entries, narrowed: boolean, day: (on: string) => string, figure: (count: number) => string) {
  if (entries.state !== 'ready') return 'Every entry is kept; what was wrong is taken back, never erased.';
  const { total, rows } = entries;
  const noun = total === 1 ? 'entry' : 'entries';
  if (total === 0) return narrowed ? 'No entry is of that kind.' : 'No entry has been made yet.';
  const latest = rows[0] === undefined ? '' : `; the latest is of ${day(rows[0].on)}`;
  return `${figure(total)} ${noun}${narrowed ? ` ${total === 1 ? 'fits' : 'fit'} what is asked` : ''}${latest}.`;
}

function Nothing({ narrowed }: { readonly narrowed: boolean }) {
  if (narrowed) {
    return (
      <Empty action={{ label: 'Show all entries', onClick: () => navigate('/journal') }}>
        No entry fits all that is asked above.
      </Empty>
    );
  }
  return (
    <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
      Every order, arrival, payment and fitting is written here by itself as it is recorded.
    </Empty>
  );
}

function ExportTool({ build, asOf }: { readonly build: number | null; readonly asOf: string | null }) {
  const { busy, refusal, run } = useTask(async (of: number) => {
    const past = asOf === null ? {} : { asOf };
    const file = await api.exchange.exportTable({ build: of, table: 'journal', format: 'csv', ...past });
    saveFile(file, file.name);
  });
  if (build === null) return null;
  return (
    <>
      <Toolbar label="The journal">
        <Button
          leftSection={<IconFileExport aria-hidden size="1.1em" />}
          loading={busy}
          onClick={() => void run(build)}
        >
          Export the build's journal (CSV)
        </Button>
      </Toolbar>
      {refusal !== null && <RefusalNote refusal={refusal} />}
    </>
  );
}

/** Reads on when the foot of the list comes into sight; the button does the same for whoever doesn't scroll. */
function Older({ entries }: { readonly entries: Entries }) {
  const foot = useRef<HTMLDivElement>(null);
  const { older, busy } = entries;
  const more = useEffectEvent(() => {
    if (!busy) older?.();
  });
  const watching = older !== null;
  useEffect(() => {
    const element = foot.current;
    if (element === null || !watching || typeof IntersectionObserver === 'undefined') return;
    const watcher = new IntersectionObserver((seen) => {
      if (seen.some(({ isIntersecting }) => isIntersecting)) more();
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [watching]);
  return (
    <div ref={foot} className="journal-foot not-printed">
      <span role="status">
        {entries.rows.length} of {entries.total} shown
      </span>
      {older !== null && (
        <Button loading={busy} onClick={older}>
          Show older entries
        </Button>
      )}
    </div>
  );
}
