import { Button } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { lazy, Suspense } from 'react';
import type { PlumbingView } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate, useRoute } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Tabs, Toolbar } from '../../parts/furniture.tsx';
import { Caution, Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { CutList } from './cut-list.tsx';
import { EditLine } from './edit-line.tsx';
import { LineDetail } from './line-detail.tsx';
import { LineTable } from './line-table.tsx';
import { Needs } from './needs.tsx';
import './plumbing.css';

/** With its two libraries it is the largest piece of the screen: fetched when it is opened. */
const Drawing = lazy(() => import('./drawing.tsx'));

const tabIds = ['lines', 'drawing', 'needs', 'cuts'] as const;
type TabId = (typeof tabIds)[number];

/** Every line from port to port: whether it will do, what it still needs, how it is cut, and how far it is made. */
export default function Plumbing() {
  const reading = useReading();
  const { params } = useRoute();
  const read = useRead(
    ['plumbing', reading?.build ?? null, reading?.asOf ?? null, 'view'],
    reading === null ? null : () => api.plumbing.view(reading),
  );
  const edit = params['edit'];
  if (reading !== null && edit !== undefined) {
    return <EditLine key={edit} build={reading.build} line={edit === 'new' ? null : Number(edit)} />;
  }
  if (reading !== null && read.state === 'ready') return <Lines view={read.value} reading={reading} />;
  return (
    <Page title="Plumbing">
      {reading === null ? (
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here stand the lines of a build, from port to port. It needs a workbook with a build.
        </Empty>
      ) : read.state === 'refused' ? (
        <RefusalNote refusal={read.refusal} onRetry={read.retry} />
      ) : (
        <Loading label="Taking off the lines" />
      )}
    </Page>
  );
}

interface LinesProps {
  readonly view: PlumbingView;
  readonly reading: { readonly build: number; readonly asOf?: string };
}

function Lines({ view, reading }: LinesProps) {
  const { params } = useRoute();
  const canAct = useCanAct();
  const { lines, needs, cutList } = view;
  const show = (id: TabId) => navigate('/plumbing', id === 'lines' ? {} : { view: id });
  const shown = tabIds.find((id) => id === params['view']) ?? 'lines';
  const asked = params['line'];
  const open = lines.find(({ id }) => String(id) === asked);
  const begin = () => navigate('/plumbing', { edit: 'new' });
  return (
    <Page
      title="Plumbing"
      answer={<Answer blocks={lines.some(({ verdict }) => verdict === 'fail')}>{view.answer}</Answer>}
    >
      <PastDayNote />
      <Tabs
        label="Lines, what they need, how they are cut"
        tabs={[
          { id: 'lines', title: 'Lines', count: lines.length },
          { id: 'drawing', title: 'Drawing' },
          { id: 'needs', title: 'What they need', count: needs.filter(({ toAddMilli }) => toAddMilli > 0).length },
          { id: 'cuts', title: 'Cut list' },
        ]}
        shown={shown}
        onShow={show}
      >
        {shown === 'lines' && (
          <div className="plumbing-block">
            {asked !== undefined && open === undefined && (
              <p>The line asked for isn’t here: it was retired, or belongs to another build.</p>
            )}
            {lines.length === 0 ? (
              <Empty {...(canAct ? { action: { label: 'Plan the first line', onClick: begin } } : {})}>
                A line goes from port to port: what flows through it, its path, its ends and its hose. Cut length,
                checks and the parts to order follow from that.
              </Empty>
            ) : (
              <>
                {canAct && (
                  <Toolbar label="Lines">
                    <Button variant="filled" leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={begin}>
                      New line
                    </Button>
                  </Toolbar>
                )}
                <LineTable lines={lines} />
                <Caution>{view.caution}</Caution>
              </>
            )}
          </div>
        )}
        {shown === 'drawing' && (
          <Suspense fallback={<Loading label="Fetching the drawing" />}>
            <Drawing />
          </Suspense>
        )}
        {shown === 'needs' && <Needs needs={needs} build={reading.build} hasLines={lines.length > 0} />}
        {shown === 'cuts' && <CutList rows={cutList} caution={view.caution} />}
      </Tabs>
      {open !== undefined && <LineDetail key={open.id} row={open} reading={reading} />}
    </Page>
  );
}
