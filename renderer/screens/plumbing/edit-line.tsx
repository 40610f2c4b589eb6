import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Page } from '../../parts/page.tsx';
import { PastDayNote, useCanAct } from '../../parts/past-day.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { LineForm } from './line-form.tsx';

/** The form of a line by its address: a new one, or one that is kept. */
export function EditLine({ build, line }: { readonly build: number; readonly line: number | null }) {
  const canAct = useCanAct();
  const read = useRead(
    ['records', build, null, 'hoseLine'],
    line === null ? null : () => api.records.list({ kind: 'hoseLine', build }),
  );
  if (canAct && line === null) return <LineForm build={build} kept={null} />;
  const kept = read.state === 'ready' ? read.value.find(({ id }) => id === line) : undefined;
  if (canAct && kept !== undefined) return <LineForm build={build} kept={kept} />;
  return (
    <Page title="Plumbing">
      <PastDayNote />
      {canAct && (
        <ReadView read={read} label="Reading the line">
          {() => (
            <Empty action={{ label: 'Show all lines', onClick: () => navigate('/plumbing') }}>
              The line asked for isn’t here: it was retired, or belongs to another build.
            </Empty>
          )}
        </ReadView>
      )}
    </Page>
  );
}
