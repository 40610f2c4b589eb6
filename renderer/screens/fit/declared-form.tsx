import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { RecordRow, RecordValues } from '../../../core/contract/records.ts';
import type { FitCheck } from '../../../core/fit/checks/check.ts';
import { readFitCheck } from '../../../core/fit/checks/read-check.ts';
import { shippedChecks } from '../../../core/fit/checks/shipped.ts';
import { askedPaths, thingsOf } from '../../../core/fit/kept/paths.ts';
import { Refusal } from '../../../core/refusal.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { TextField } from '../../parts/fields.tsx';
import { FormWindow } from '../../parts/form.tsx';
import { DeclaredTried, useTriedDeclared } from './declared-tried.tsx';
import { DeclaredValues } from './declared-values.tsx';
import { draftOfRule, emptyRule, type RuleDraft, ruleOrProblem } from './rule-draft.ts';
import { RuleFields } from './rule-fields.tsx';

type Kept = RecordValues['declaredFit'];
type Draft = Pick<Kept, 'title' | 'things' | 'values' | 'beforeGate' | 'note'>;
type Input = Omit<Parameters<typeof api.records.save>[0], 'key'>;

export interface DeclaredFormProps {
  readonly build: number;
  /** The fit that is changed; a new one with a rule of one's own when left out. */
  readonly kept?: RecordRow;
  readonly onClose: () => void;
}

const keptOf = (kept: RecordRow | undefined): Kept | undefined => kept?.values as Kept | undefined;

/** The rule as data can be read, else null. */
function checkOf(rule: Readonly<Record<string, unknown>> | null, shipped: string): FitCheck | null {
  if (rule === null) return shippedChecks.find(({ id }) => id === shipped) ?? null;
  try {
    return readFitCheck(rule);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** Binds a declared fit to part lines and fills in what it asks for; a rule of one's own is made here too. */
export function DeclaredForm({ build, kept, onClose }: DeclaredFormProps) {
  const { today } = useWorkspace();
  const before = keptOf(kept);
  const [draft, setDraft] = useState<Draft>(
    () => before ?? { title: '', things: {}, values: [], beforeGate: true, note: '' },
  );
  // A shipped rule stays as it is; a rule that has no fields here (a group, conditions) stays as it was kept.
  const [own, setOwn] = useState<RuleDraft | null>(() =>
    before === undefined ? emptyRule : before.rule === null ? null : draftOfRule(before.rule),
  );
  const set = (change: Partial<Draft>) => setDraft((now) => ({ ...now, ...change }));
  const act = useAct((key, input: Input) => api.records.save({ key, ...input }));
  const shipped = before?.shipped ?? '';
  const written = own === null ? { rule: before?.rule ?? null } : ruleOrProblem(own, draft.title);
  const rule = 'rule' in written ? written.rule : null;
  const check = 'rule' in written ? checkOf(written.rule, shipped) : null;
  const asked = check === null ? [] : askedPaths(check);
  const names = thingsOf(asked);
  const values = draft.values.filter(
    ({ path, value }) => value.trim() !== '' && asked.some((one) => one.path === path),
  );
  const things = Object.fromEntries(Object.entries(draft.things).filter(([name]) => names.includes(name)));
  const tried = useTriedDeclared(check === null ? null : { build, shipped, rule, things, values });
  const save = async () => {
    if (!('rule' in written)) return;
    const done = await act.run({
      on: today,
      kind: 'declaredFit',
      build,
      values: {
        title: draft.title.trim(),
        shipped,
        rule,
        things,
        values,
        beforeGate: draft.beforeGate,
        note: draft.note,
      },
      ...(kept === undefined ? {} : { id: kept.id, revision: kept.revision }),
    });
    if (done === null) return;
    onClose();
    const [made] = done.made;
    if (kept === undefined && made !== undefined) navigate('/fit', { declared: made });
  };
  return (
    <FormWindow
      opened
      as="drawer"
      title={kept === undefined ? 'Make a fit of your own' : `Change: ${before?.title ?? ''}`}
      submitLabel={kept === undefined ? 'Keep the fit' : 'Store the changes'}
      busy={act.busy}
      refusal={act.refusal}
      onCancel={onClose}
      onSubmit={save}
    >
      <TextField
        name="title"
        label="Name of the fit"
        required
        longest={120}
        value={draft.title}
        onChange={(title) => set({ title })}
      />
      {own !== null && <RuleFields draft={own} onChange={(change) => setOwn({ ...own, ...change })} />}
      <DeclaredValues
        asked={asked}
        things={names}
        bound={draft.things}
        values={draft.values}
        sent={values}
        found={tried.state === 'ready' ? tried.value.asks : []}
        onBound={(bound) => set({ things: bound })}
        onValues={(typed) => set({ values: typed })}
      />
      <DeclaredTried tried={tried} whole={check !== null} />
      <Checkbox
        label="Stands in the hoist check until it fits"
        checked={draft.beforeGate}
        onChange={(event) => set({ beforeGate: event.currentTarget.checked })}
      />
      <TextField name="note" label="Note" long longest={2000} value={draft.note} onChange={(note) => set({ note })} />
    </FormWindow>
  );
}
