import { IconHistory } from '@tabler/icons-react';
import type { WorkbookStatus } from '../../../core/contract/workbook.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate, useRoute } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Tabs } from '../../parts/furniture.tsx';
import { Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { AboutSection } from './about-section.tsx';
import { ExportSection } from './export-section.tsx';
import { FiguresSection } from './figures-section.tsx';
import { FromExportSection } from './from-export-section.tsx';
import { HoursSection } from './hours-section.tsx';
import { LookSection } from './look-section.tsx';
import { RatesSection } from './rates-section.tsx';
import { SafetySection } from './safety-section.tsx';
import { useSettings } from './use-settings.ts';
import { WorkbookSection } from './workbook-section.tsx';
import './settings.css';

const sections = [
  { id: 'workbook', title: 'This workbook', open: false },
  { id: 'safety', title: 'Backups and checks', open: true },
  { id: 'figures', title: 'Figures, dates, tax', open: true },
  { id: 'hours', title: 'Free hours', open: true },
  { id: 'rates', title: 'Exchange rates', open: true },
  { id: 'export', title: 'Export', open: false },
  { id: 'look', title: 'Look', open: false },
  { id: 'about', title: 'About', open: false },
] as const;
type Section = (typeof sections)[number]['id'];

/** What is set up once: the workbook's file and its safety, how figures are written, the free hours, the look. */
export default function SettingsScreen() {
  const status = useRead(['workbook.status'], () => api.workbook.status());
  if (status.state === 'ready') return <Shown status={status.value} />;
  return (
    <Page title="Settings">
      {status.state === 'loading' && <Loading label="Reading the settings" />}
      {status.state === 'refused' && <RefusalNote refusal={status.refusal} onRetry={status.retry} />}
    </Page>
  );
}

function answerOf({ open }: WorkbookStatus): string {
  if (open === null) return 'No workbook is open; the look and what this program is are found here all the same.';
  if (open.readOnly) return `${open.name} is open for reading only: its settings can be read and not changed.`;
  return `${open.name} keeps its totals in ${open.baseCurrency}; every change here holds at once for the whole workbook.`;
}

function Shown({ status }: { readonly status: WorkbookStatus }) {
  const { params } = useRoute();
  const { asOf } = useWorkspace();
  const tabs = sections.filter(({ open }) => !open || status.open !== null);
  const shown = tabs.find(({ id }) => id === params['section'])?.id ?? 'workbook';
  return (
    <Page title="Settings" answer={<Answer>{answerOf(status)}</Answer>}>
      {asOf !== null && (
        <p className="note">
          <IconHistory aria-hidden className="note-icon" />
          <span>A past day is shown. Settings have no past: they are shown as they are today.</span>
        </p>
      )}
      <Tabs
        label="Settings"
        tabs={tabs}
        shown={shown}
        onShow={(section) => navigate('/settings', { section }, { replace: true })}
      >
        <SectionShown section={shown} status={status} past={asOf !== null} />
      </Tabs>
    </Page>
  );
}

interface SectionShownProps {
  readonly section: Section;
  readonly status: WorkbookStatus;
  readonly past: boolean;
}

function SectionShown({ section, status, past }: SectionShownProps) {
  const readOnly = status.open?.readOnly ?? true;
  switch (section) {
    case 'workbook':
      return <WorkbookSection status={status} />;
    case 'safety':
      return <SafetySection readOnly={readOnly} />;
    case 'figures':
    case 'hours':
      return <KeptSettings key={status.open?.path} section={section} readOnly={readOnly} />;
    case 'rates':
      return <RatesSection base={status.open?.baseCurrency ?? ''} acts={!readOnly && !past} />;
    case 'export':
      return (
        <>
          {status.open !== null && <ExportSection />}
          <FromExportSection />
        </>
      );
    case 'look':
      return <LookSection />;
    case 'about':
      return <AboutSection version={status.appVersion} />;
  }
}

/** The settings that the workbook keeps; the form stands once they are read. */
function KeptSettings({ section, readOnly }: { readonly section: 'figures' | 'hours'; readonly readOnly: boolean }) {
  const settings = useSettings();
  if (settings.state === 'loading') return <Loading label="Reading the settings" />;
  if (settings.state === 'refused') return <RefusalNote refusal={settings.refusal} onRetry={settings.retry} />;
  return section === 'figures' ? (
    <FiguresSection settings={settings.value} readOnly={readOnly} />
  ) : (
    <HoursSection settings={settings.value} readOnly={readOnly} />
  );
}
