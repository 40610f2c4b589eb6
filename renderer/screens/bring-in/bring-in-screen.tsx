import { navigate, useRoute } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { counted } from '../../parts/formats.ts';
import { Empty } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { BringInSteps } from './bring-in-steps.tsx';
import { tableOf, useDraft } from './draft.ts';
import { EarlierImports, EarlierReport } from './earlier.tsx';
import { Report } from './report.tsx';
import { ReportState } from './report-state.tsx';
import './bring-in.css';

/** A list of the builder's own, brought in once and understood row by row. */
export default function BringInScreen() {
  const { isOpen, buildId, workbookName } = useWorkspace();
  const { params } = useRoute();
  const { draft, start, change } = useDraft(`${workbookName}/${buildId ?? 0}`);
  if (!isOpen || buildId === null) {
    return (
      <Page title="Bring in a list">
        <Empty action={{ label: isOpen ? 'Start a build' : 'Open or make a workbook', onClick: () => navigate('/') }}>
          {isOpen
            ? 'A parts list or an order list of your own belongs to a build, and this workbook has none yet.'
            : 'A parts list or an order list of your own is brought into a workbook. None is open yet.'}
        </Empty>
      </Page>
    );
  }
  const act = Number(params['act']);
  if (Number.isSafeInteger(act) && act > 0) return <EarlierReport build={buildId} act={act} />;
  if (draft !== null && draft.report !== null) {
    const { report } = draft;
    return (
      <Page title={`Report of ${draft.file.name}`}>
        <ReportState build={buildId} act={report.act}>
          {(undone) => <Report report={report} undone={undone} onAnother={() => start(null)} />}
        </ReportState>
      </Page>
    );
  }
  const answer =
    draft === null
      ? 'A list you keep elsewhere becomes lines here, in six steps.'
      : `${draft.file.name} holds ${counted(tableOf(draft)?.rows.length ?? 0, 'row', 'rows')}; nothing of it is written yet.`;
  return (
    <Page title="Bring in a list" answer={<Answer>{answer}</Answer>}>
      <BringInSteps build={buildId} draft={draft} start={start} change={change} />
      <EarlierImports build={buildId} />
    </Page>
  );
}
