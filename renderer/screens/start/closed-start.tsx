import { Button } from '@mantine/core';
import { useState } from 'react';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { desktopBridge } from '../../app/desktop-bridge.ts';
import { Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { FoundWorkbooks } from './found-workbooks.tsx';
import { NewWorkbook } from './new-workbook.tsx';
import { useWorkbook } from './use-workbook.ts';

/** The page while no workbook is open: the ones there are, and three plain ways to begin. */
export function ClosedStart() {
  const status = useRead(['workbook.status'], () => api.workbook.status());
  const [making, setMaking] = useState<'new' | 'bring in' | null>(null);
  const { busy, refusal, run } = useWorkbook();
  if (status.state === 'loading') return <Loading label="Looking for workbooks" />;
  if (status.state === 'refused') {
    return (
      <Page title="Start">
        <RefusalNote refusal={status.refusal} onRetry={status.retry} />
      </Page>
    );
  }
  const { found, folder } = status.value;
  const open = (path: string) => void run(path, () => api.workbook.open({ path }));
  const bridge = desktopBridge();
  const choose = async () => {
    const path = await bridge?.chooseWorkbookToOpen();
    if (typeof path === 'string') open(path);
  };
  const answer =
    found.length === 0
      ? 'Hoistday keeps one build’s parts, orders, money and jobs in one file, and says what still stands before the engine goes in. Begin in one of three ways.'
      : 'Open a workbook, or begin another.';
  return (
    <Page title="Start" answer={<Answer>{answer}</Answer>}>
      {refusal !== null && <RefusalNote refusal={refusal} />}
      {found.length > 0 && <FoundWorkbooks found={found} busy={busy} onOpen={open} />}
      {bridge !== null && (
        <Button onClick={() => void choose()} disabled={busy !== null}>
          Choose another file…
        </Button>
      )}
      <section className="start-ways" aria-label="Ways to begin">
        <Way title="Look around in the demo" action="Open the demo" busy={busy === 'demo'} main={found.length === 0}>
          {{
            words:
              'An invented pickup nine months into its engine: orders, a long back-order, trial-fit parts. Nothing in it can be spoilt.',
            onClick: () => void run('demo', () => api.workbook.demo()),
          }}
        </Way>
        <Way title="Start a new workbook" action="New workbook">
          {{ words: 'An empty workbook with your first build in it.', onClick: () => setMaking('new') }}
        </Way>
        <Way title="Bring in a list" action="Bring in a list">
          {{
            words:
              'A spreadsheet that you have already becomes the parts list of a new workbook; the file itself is only read.',
            onClick: () => setMaking('bring in'),
          }}
        </Way>
      </section>
      <p className="soft">New workbooks are kept in {folder}</p>
      {making !== null && <NewWorkbook then={making} onClose={() => setMaking(null)} />}
    </Page>
  );
}

interface WayProps {
  readonly title: string;
  readonly action: string;
  readonly busy?: boolean;
  readonly main?: boolean;
  readonly children: { readonly words: string; readonly onClick: () => void };
}

function Way({ title, action, busy = false, main = false, children }: WayProps) {
  return (
    <div>
      <h2>{title}</h2>
      <p>{children.words}</p>
      <Button loading={busy} variant={main ? 'filled' : 'default'} onClick={children.onClick}>
        {action}
      </Button>
    </div>
  );
}
