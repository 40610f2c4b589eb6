import { useState } from 'react';
import type { ChecksView } from '../../../core/contract/checks.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate, useRoute } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Tabs } from '../../parts/furniture.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { CheckDetail } from './check-detail.tsx';
import { CheckForm } from './check-form.tsx';
import { CheckTable } from './check-table.tsx';
import { Offered } from './offered.tsx';
import { Swap } from './swap.tsx';
import { TargetSheet } from './target-sheet.tsx';
import './checks.css';

const tabIds = ['checks', 'targets', 'add', 'swap'] as const;
type TabId = (typeof tabIds)[number];

/** Which of the build's checks hold, which fail and what is lacking. */
export default function Checks() {
  const reading = useReading();
  const read = useRead(
    ['checks', reading?.build ?? null, reading?.asOf ?? null, 'view'],
    reading === null ? null : () => api.checks.view(reading),
  );
  if (reading !== null && read.state === 'ready') return <Checked view={read.value} build={reading.build} />;
  return (
    <Page title="Checks">
      {reading === null ? (
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here stands whether the parts suit each other and the target. It needs a workbook with a build.
        </Empty>
      ) : read.state === 'refused' ? (
        <RefusalNote refusal={read.refusal} onRetry={read.retry} />
      ) : (
        <Loading label="Working out the checks" />
      )}
    </Page>
  );
}

/** The tab that the address asks for: the list, unless a swap or another view is named. */
function tabOf({ view, swap }: Readonly<Record<string, string>>): TabId {
  if (swap !== undefined) return 'swap';
  return tabIds.find((id) => id === view) ?? 'checks';
}

function Checked({ view, build }: { readonly view: ChecksView; readonly build: number }) {
  const { params } = useRoute();
  const canAct = useCanAct();
  const [making, setMaking] = useState(false);
  const { checks, counts, targets, offered } = view;
  const asked = params['check'];
  const open = checks.find(({ id }) => String(id) === asked);
  const show = (id: TabId) => navigate('/checks', id === 'checks' ? {} : { view: id });
  const shown = tabOf(params);
  return (
    <Page title="Checks" answer={<Answer blocks={counts.fails + counts.lacks > 0}>{view.answer}</Answer>}>
      <PastDayNote />
      <Tabs
        label="Checks, targets and swaps"
        tabs={[
          { id: 'checks', title: 'Checks', count: checks.length },
          { id: 'targets', title: 'Target sheet' },
          { id: 'add', title: 'Add a check' },
          { id: 'swap', title: 'If a part were swapped' },
        ]}
        shown={shown}
        onShow={show}
      >
        {shown === 'checks' && asked !== undefined && open === undefined && (
          <p>The check asked for isn't on the list: it was retired, or belongs to another build.</p>
        )}
        {shown === 'checks' &&
          (checks.length === 0 ? (
            <Empty {...(canAct ? { action: { label: 'Choose the first checks', onClick: () => show('add') } } : {})}>
              A check holds what the parts say against what the engine is to do: injectors against the power target, the
              sensor's range against the boost. Fill in the target sheet, then add the checks that come with the
              program.
            </Empty>
          ) : (
            <CheckTable checks={checks} />
          ))}
        {shown === 'targets' && <TargetSheet build={build} targets={targets} />}
        {shown === 'add' && <Offered build={build} offered={offered} onOwn={() => setMaking(true)} />}
        {shown === 'swap' && <Swap key={params['swap'] ?? ''} part={Number(params['swap'] ?? 0)} build={build} />}
      </Tabs>
      {open !== undefined && <CheckDetail key={open.id} check={open} view={view} build={build} />}
      {making && canAct && <CheckForm view={view} build={build} onClose={() => setMaking(false)} />}
    </Page>
  );
}
