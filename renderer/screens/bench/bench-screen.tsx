import { Button } from '@mantine/core';
import { IconArrowLeft, IconPlus, IconPrinter } from '@tabler/icons-react';
import { useState } from 'react';
import type { BenchView } from '../../../core/contract/bench.ts';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link, navigate, useRoute } from '../../app/route.tsx';
import { useReading, useWorkspace } from '../../app/workspace.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { State } from '../../parts/state.tsx';
import { LineList } from './line-list.tsx';
import { LineMaking } from './line-making.tsx';
import { SheetForm } from './sheet-form.tsx';
import { MeasuringSheet } from './sheet-view.tsx';
import { Tonight } from './tonight.tsx';
import { GroupForm } from './torque-form.tsx';
import { TorqueSheet } from './torque-sheet.tsx';
import './bench.css';

type Editing = { readonly what: 'sheet' | 'group'; readonly id: number | null };

/** What is done with the tools in hand: measuring sheets, torque sheets and lines to make. */
export default function BenchScreen() {
  const reading = useReading();
  const { asOf } = useWorkspace();
  const { params } = useRoute();
  const [editing, setEditing] = useState<Editing | null>(null);
  const view = useRead(
    ['bench', reading?.build ?? null, reading?.asOf ?? null],
    reading === null ? null : () => api.bench.view(reading),
  );
  if (reading === null) {
    return (
      <Page title="Bench">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Here are the measuring sheets, torque sheets and lines of a build. It needs a workbook with a build.
        </Empty>
      </Page>
    );
  }
  const sheet = Number(params['sheet'] ?? 0);
  const group = Number(params['torque'] ?? 0);
  const line = Number(params['line'] ?? 0);
  const open = sheet > 0 || group > 0 || line > 0;
  const past = asOf !== null;
  return (
    <Page title="Bench" answer={!open && view.state === 'ready' ? <Answer>{view.value.answer}</Answer> : undefined}>
      {open ? (
        <>
          <Toolbar
            label="This sheet"
            end={
              <>
                {!past && line === 0 && (
                  <Button
                    onClick={() => setEditing(sheet > 0 ? { what: 'sheet', id: sheet } : { what: 'group', id: group })}
                  >
                    Change the sheet…
                  </Button>
                )}
                <Button leftSection={<IconPrinter aria-hidden size="1.1em" />} onClick={() => window.print()}>
                  Print
                </Button>
              </>
            }
          >
            <Button leftSection={<IconArrowLeft aria-hidden size="1.1em" />} onClick={() => navigate('/bench')}>
              {line > 0 ? 'All work' : 'All sheets'}
            </Button>
          </Toolbar>
          {line > 0 ? (
            <LineMaking key={line} id={line} reading={reading} />
          ) : sheet > 0 ? (
            <MeasuringSheet key={sheet} id={sheet} />
          ) : (
            <TorqueSheet key={group} id={group} reading={reading} />
          )}
        </>
      ) : (
        <>
          {!past && <Tonight build={reading.build} />}
          <ReadView read={view} label="Looking for sheets">
            {(value) => <Lists view={value} {...(past ? {} : { onNew: (what) => setEditing({ what, id: null }) })} />}
          </ReadView>
          <LineList reading={reading} />
        </>
      )}
      {editing?.what === 'sheet' && <SheetForm id={editing.id} onClose={() => setEditing(null)} />}
      {editing?.what === 'group' && (
        <GroupForm id={editing.id} build={reading.build} onClose={() => setEditing(null)} />
      )}
    </Page>
  );
}

const urgency: Readonly<Record<string, number>> = {
  out: 0,
  missing: 1,
  'under way': 0,
  snug: 1,
  'not begun': 2,
  final: 3,
  'in limits': 3,
  rechecked: 4,
};

const byUrgency = <Row extends { readonly standing: string }>(rows: readonly Row[]): Row[] =>
  rows.toSorted((one, other) => (urgency[one.standing] ?? 2) - (urgency[other.standing] ?? 2));

function Lists({ view, onNew }: { readonly view: BenchView; readonly onNew?: (what: Editing['what']) => void }) {
  return (
    <div className="bench-lists">
      <section className="bench-list">
        {view.groups.length === 0 ? (
          <p>Bolts that are tightened together stand here, with their stages and the way round.</p>
        ) : (
          <SimpleTable
            caption="Torque sheets"
            rows={byUrgency(view.groups)}
            rowKey={({ id }) => String(id)}
            columns={[
              {
                id: 'name',
                title: 'Bolts',
                rowHeader: true,
                cell: ({ id, name }) => (
                  <Link className="bench-open" to="/bench" params={{ torque: id }}>
                    {name}
                  </Link>
                ),
              },
              { id: 'standing', title: 'Standing', cell: ({ standing }) => <State state={standing} /> },
              { id: 'says', title: 'How far', cell: ({ says }) => says },
            ]}
          />
        )}
        {onNew !== undefined && (
          <Button leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={() => onNew('group')}>
            New torque sheet…
          </Button>
        )}
      </section>
      <section className="bench-list">
        {view.sheets.length === 0 ? (
          <p>Journals, bores, gaps and lash stand here, place by place, against the limits that you write down.</p>
        ) : (
          <SimpleTable
            caption="Measuring sheets"
            rows={byUrgency(view.sheets)}
            rowKey={({ id }) => String(id)}
            columns={[
              {
                id: 'title',
                title: 'What is measured',
                rowHeader: true,
                cell: ({ id, title }) => (
                  <Link className="bench-open" to="/bench" params={{ sheet: id }}>
                    {title}
                  </Link>
                ),
              },
              { id: 'standing', title: 'Standing', cell: ({ standing }) => <State state={standing} /> },
              { id: 'says', title: 'What it says', cell: ({ says }) => says },
            ]}
          />
        )}
        {onNew !== undefined && (
          <Button leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={() => onNew('sheet')}>
            New measuring sheet…
          </Button>
        )}
      </section>
    </div>
  );
}
