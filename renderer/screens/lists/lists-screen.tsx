import type { RecordRow } from '../../../core/contract/records.ts';
import { navigate, useRoute } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Tabs } from '../../parts/furniture.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { isListKind, kindSpecs, type ListKind, listKinds } from './kinds.ts';
import { useRecords } from './names.ts';
import { RecordList } from './record-list.tsx';
import { RecordWindow } from './record-window.tsx';
import { listSentence } from './value-text.ts';
import './lists.css';

type Place = { readonly kind: ListKind; readonly open: number | 'new' | null };

/** `/lists?vendor=12` opens a vendor, `/lists?vendor=new` a new one's form, `/lists?kind=bin` the bins. */
function placeOf(params: Readonly<Record<string, string>>): Place {
  for (const kind of listKinds) {
    const value = params[kind];
    if (value === 'new') return { kind, open: 'new' };
    const id = Number(value);
    if (value !== undefined && Number.isSafeInteger(id) && id > 0) return { kind, open: id };
  }
  const kind = params['kind'];
  return { kind: isListKind(kind) ? kind : 'vendor', open: null };
}

/** The records that everything else is about, one kind a tab. */
export default function ListsScreen() {
  const { isOpen, buildId } = useWorkspace();
  const { params } = useRoute();
  if (!isOpen || buildId === null) {
    return (
      <Page title="Lists">
        <Empty action={{ label: isOpen ? 'Start a build' : 'Open or make a workbook', onClick: () => navigate('/') }}>
          Vendors, bins, systems, phases, tools, decisions and bolt groups stand here once there is a build.
        </Empty>
      </Page>
    );
  }
  return <KindPage key={buildId} build={buildId} place={placeOf(params)} />;
}

function KindPage({ build, place }: { readonly build: number; readonly place: Place }) {
  const { kind } = place;
  const { one, many } = kindSpecs[kind];
  const records = useRecords(kind, build);
  // Until this kind's rows are there, the former kind's are no answer for it.
  const known = records.state === 'ready' && !records.stale ? records.value : null;
  const answer =
    known === null || known.length === 0 ? undefined : <Answer>{listSentence(kind, one, many, known)}</Answer>;
  return (
    <Page title="Lists" answer={answer}>
      <Tabs
        label="Kinds of record"
        tabs={listKinds.map((id) => ({ id, title: kindSpecs[id].title }))}
        shown={kind}
        onShow={(next) => navigate('/lists', { kind: next }, { replace: true })}
      >
        {records.state === 'refused' ? (
          <RefusalNote refusal={records.refusal} onRetry={records.retry} />
        ) : known === null ? (
          <Loading label={`Reading the ${many}`} />
        ) : (
          <Records key={kind} build={build} place={place} records={known} />
        )}
      </Tabs>
    </Page>
  );
}

interface RecordsProps {
  readonly build: number;
  readonly place: Place;
  readonly records: readonly RecordRow[];
}

function Records({ build, place, records }: RecordsProps) {
  const { kind, open } = place;
  const record = typeof open === 'number' ? records.find(({ id }) => id === open) : undefined;
  const close = () => navigate('/lists', { kind }, { replace: true });
  return (
    <>
      {typeof open === 'number' && record === undefined && (
        <p role="status">The {kindSpecs[kind].one} that was asked for isn’t in this build.</p>
      )}
      <RecordList
        kind={kind}
        build={build}
        records={records}
        onOpen={(id) => navigate('/lists', { [kind]: id }, { replace: true })}
        onAdd={() => navigate('/lists', { [kind]: 'new' }, { replace: true })}
      />
      {(open === 'new' || record !== undefined) && (
        <RecordWindow
          key={record?.id ?? 'new'}
          kind={kind}
          build={build}
          record={record ?? null}
          onClose={close}
          onMade={close}
        />
      )}
    </>
  );
}
