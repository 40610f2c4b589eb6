import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Choice } from '../../parts/fields.tsx';
import { useDraft } from './draft-fields.tsx';

/** The system and the job that the line belongs to. */
export function BelongsFields({ build }: { readonly build: number }) {
  const { draft, change } = useDraft();
  const systems = useRead(['records', build, null, 'system'], () => api.records.list({ kind: 'system', build }));
  const jobs = useRead(['records', build, null, 'job'], () => api.records.list({ kind: 'job', build }));
  return (
    <div className="plumbing-fields">
      <Choice
        name="system"
        label="System"
        value={draft.system === null ? null : String(draft.system)}
        options={(systems.state === 'ready' ? systems.value : []).map(({ id, values }) => ({
          value: String(id),
          label: String(values['name']),
        }))}
        onChange={(chosen) => change({ system: chosen === null ? null : Number(chosen) })}
      />
      <Choice
        name="job"
        label="Job"
        value={draft.job === null ? null : String(draft.job)}
        options={(jobs.state === 'ready' ? jobs.value : []).map(({ id, values }) => ({
          value: String(id),
          label: String(values['title']),
        }))}
        onChange={(chosen) => change({ job: chosen === null ? null : Number(chosen) })}
      />
    </div>
  );
}
