import { useEffect } from 'react';
import { findCalculator } from '../../../core/calculators/index.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Loading } from '../../parts/notes.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { caseOf, typedOfCase } from './saved-case.ts';
import { paramsOf } from './typed.ts';

/** An address with a saved case alone, as the search gives it: goes on to its calculator with what was typed. */
export function OpenCase({ id }: { readonly id: string }) {
  const { buildId: build } = useWorkspace();
  const read = useRead(
    ['records', build, null, 'savedCase', 'retired too'],
    build === null ? null : () => api.records.list({ kind: 'savedCase', build, retired: true }),
  );
  const row = read.state === 'ready' ? read.value.find((one) => String(one.id) === id) : undefined;
  const calculator = row === undefined ? undefined : findCalculator(caseOf(row).calculator);
  useEffect(() => {
    if (row === undefined || calculator === undefined) return;
    const typed = typedOfCase(calculator, caseOf(row));
    navigate('/calculators', { ...paramsOf(calculator, typed), case: row.id }, { replace: true });
  }, [row, calculator]);
  if (read.state === 'refused') return <RefusalNote refusal={read.refusal} />;
  if (read.state === 'loading' && build !== null) return <Loading label="Looking for the saved case" />;
  if (calculator !== undefined) return null;
  return <p className="calculators-prose">There is no such saved case in this build. Choose a calculator.</p>;
}
