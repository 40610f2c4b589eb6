import { navigate } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Page } from '../../parts/page.tsx';
import { PlanOfBuild } from './plan-of-build.tsx';
import './plan.css';

/** The work in order: phases, jobs, what each waits for. */
export default function PlanScreen() {
  const reading = useReading();
  if (reading !== null) return <PlanOfBuild reading={reading} />;
  return (
    <Page title="Plan">
      <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
        The jobs of a build stand here once the workbook has a build; one is made at the start.
      </Empty>
    </Page>
  );
}
