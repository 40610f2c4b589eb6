import { navigate, useRoute } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Tabs } from '../../parts/furniture.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { isListKind, kindSpecs, type ListKind, listKinds } from './kinds.ts';
import { useRecords } from './names.ts';
import { RecordList } from './record-list.tsx';
import { RecordWindow } from './record-window.tsx';
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
  const place = placeOf(params);
  return (
    <Page title="Lists">
      <Tabs
        label="Kinds of record"
        tabs={listKinds.map((id) => ({ id, title: kindSpecs[id].title }))}
        shown={place.kind}
        onShow={(kind) => navigate('/lists', { kind }, { replace: true })}
      >
        <Kind key={place.kind} build={buildId} place={place} />
      </Tabs>
    </Page>
  );
}

function Kind({ build, place }: { readonly build: number; readonly place: Place }) {
  const { kind, open } = place;
  const records = useRecords(kind, build);
  if (records.state === 'loading') return <Loading label={`Reading the ${kindSpecs[kind].many}`} />;
  if (records.state === 'refused') return <RefusalNote refusal={records.refusal} onRetry={records.retry} />;
  const record = typeof open === 'number' ? records.value.find(({ id }) => id === open) : undefined;
  const close = () => navigate('/lists', { kind }, { replace: true });
  return (
    <>
      {typeof open === 'number' && record === undefined && !records.stale && (
        <p role="status">The {kindSpecs[kind].one} that was asked for isn’t in this build.</p>
      )}
      <RecordList
        kind={kind}
        build={build}
        records={records.value}
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
