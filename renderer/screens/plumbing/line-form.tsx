import { Button, Checkbox } from '@mantine/core';
import { useEffect, useMemo, useState } from 'react';
import type { RecordRow } from '../../../core/contract/records.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { useActDay } from '../../parts/act-day.tsx';
import { TextField } from '../../parts/fields.tsx';
import { Form } from '../../parts/form.tsx';
import { Page } from '../../parts/page.tsx';
import { BelongsFields } from './belongs-fields.tsx';
import { draftOf, emptyDraft, fieldName, type LineDraft, valuesOf } from './draft.ts';
import { DraftContext, DraftText } from './draft-fields.tsx';
import { DrainFields, DutyFields, FinishFields, FluidFields } from './duty-fields.tsx';
import { EndFields } from './end-fields.tsx';
import { HoseFields } from './hose-fields.tsx';
import { forgetDraft, leaveDraft, leftDraft } from './left-draft.ts';
import { PathFields } from './path-fields.tsx';
import { PortFields } from './port-fields.tsx';
import { TriedOut, useTryOut } from './tried-out.tsx';

interface LineFormProps {
  readonly build: number;
  /** The line that is changed; a new one when null. */
  readonly kept: RecordRow | null;
}

/** Plans a line, or changes one; the take-off stands beside it and is worked out anew with every change. */
export function LineForm({ build, kept }: LineFormProps) {
  const { workbookName } = useWorkspace();
  const place = `${workbookName} ${build} ${kept?.id ?? 'new'}`;
  const [found, setFound] = useState(() => leftDraft(place));
  const [start] = useState<LineDraft>(() => (kept === null ? emptyDraft : draftOf(kept)));
  const [draft, setDraft] = useState<LineDraft>(found?.draft ?? start);
  const [revision] = useState(found?.revision ?? kept?.revision ?? 0);
  // Looking at another page is no reason to lose what was typed.
  useEffect(() => {
    if (draft !== start) leaveDraft(place, { draft, revision });
  }, [draft, start, place, revision]);
  const beginAnew = () => {
    forgetDraft(place);
    setFound(undefined);
    setDraft(start);
  };
  const tried = useTryOut(draft, build);
  const day = useActDay();
  const save = useAct((key, values: ReturnType<typeof valuesOf>) =>
    api.records.save({
      key,
      on: day.on,
      kind: 'hoseLine',
      build,
      values: { ...values },
      ...(kept === null ? {} : { id: kept.id, revision: kept.revision }),
    }),
  );
  const form = useMemo(() => {
    const wrong = tried.problem;
    return {
      draft,
      change: (part: Partial<LineDraft>) => setDraft((now) => ({ ...now, ...part })),
      set: (name: string, text: string) => setDraft((now) => ({ ...now, texts: { ...now.texts, [name]: text } })),
      problem: (name: string) =>
        wrong !== null && wrong.field === name && (draft.texts[name] ?? '').trim() !== '' ? wrong.words : null,
    };
  }, [draft, tried.problem]);
  const back = (line?: number) => {
    forgetDraft(place);
    navigate('/plumbing', line === undefined ? {} : { line });
  };
  const submit = async () => {
    const done = await save.run(valuesOf(draft));
    if (done !== null) back(kept?.id ?? done.made[0]);
  };
  const refusal =
    save.refusal?.field === undefined ? save.refusal : { ...save.refusal, field: fieldName(save.refusal.field) };
  return (
    <Page title={kept === null ? 'New line' : `Change: ${String(kept.values['name'])}`} answer={tried.answer}>
      <DraftContext value={form}>
        <div className="plumbing-work">
          <Form
            submitLabel={kept === null ? 'Keep the line' : 'Store the changes'}
            busy={save.busy}
            refusal={refusal}
            onCancel={() => back(kept?.id)}
            onSubmit={submit}
          >
            <p className="plumbing-says">
              Figures may carry their own unit, such as 24 in or 60 psi. A line that isn’t finished can be kept.
            </p>
            {found !== undefined && (
              <p className="plumbing-says" role="status">
                What you had typed is here again; it is not kept yet.
                {kept !== null && kept.revision !== revision && ' The line was changed since: storing replaces that.'}{' '}
                <Button size="compact" onClick={beginAnew}>
                  Begin anew
                </Button>
              </p>
            )}
            <fieldset className="plumbing-set">
              <legend>Line</legend>
              <div className="plumbing-fields">
                <TextField
                  name="name"
                  label="Name"
                  required
                  longest={120}
                  value={draft.name}
                  onChange={(name) => form.change({ name })}
                />
                <DraftText name="quantity" label="How many alike" />
                <FluidFields />
              </div>
            </fieldset>
            <PortFields side="from" build={build} />
            <PortFields side="to" build={build} />
            <PathFields />
            <EndFields which={1} />
            <EndFields which={2} />
            <HoseFields />
            <DutyFields />
            <DrainFields />
            <FinishFields />
            <BelongsFields build={build} />
            <Checkbox
              label="Stands in the hoist check until it is made"
              checked={draft.beforeGate}
              onChange={(event) => form.change({ beforeGate: event.currentTarget.checked })}
            />
            <TextField
              name="note"
              label="Note"
              long
              longest={2000}
              value={draft.note}
              onChange={(note) => form.change({ note })}
            />
            {day.field}
          </Form>
          <TriedOut tried={tried} />
        </div>
      </DraftContext>
    </Page>
  );
}
