import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { LineNeedRow } from '../../../core/contract/plumbing.ts';
import { api } from '../../app/client.ts';
import { useAct } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { Quantity } from '../../parts/figures.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { BillPartForm } from './bill-part-form.tsx';
import { unitOf } from './take-off.tsx';

interface NeedsProps {
  readonly needs: readonly LineNeedRow[];
  readonly build: number;
  readonly hasLines: boolean;
}

/** The first lines that need a thing, and how many more. */
function linesText(lines: readonly string[]): string {
  const most = 4;
  return lines.length <= most + 1
    ? lines.join('; ')
    : `${lines.slice(0, most).join('; ')} and ${lines.length - most} more`;
}

/** What all lines together need, less what is on the list and on the shelf, and the way onto the parts list. */
export function Needs({ needs, build, hasLines }: NeedsProps) {
  const { today } = useWorkspace();
  const canAct = useCanAct();
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [naming, setNaming] = useState<LineNeedRow | null>(null);
  const act = useAct((key, keys: string[]) => api.plumbing.addNeeds({ key, on: today, build, keys }));
  const lacking = needs.filter(({ toAddMilli }) => toAddMilli > 0);
  const chosen = lacking.filter(({ key }) => ticked.has(key));
  if (needs.length === 0) {
    return (
      <Empty>
        {hasLines
          ? 'No line can be taken off yet: fill in what its row says is lacking, and what it needs stands here.'
          : 'Ends, hose, clamps, seals and sleeves of all lines stand here together, once there are lines.'}
      </Empty>
    );
  }
  const put = async (rows: readonly LineNeedRow[]) => {
    if ((await act.run(rows.map(({ key }) => key))) !== null) setTicked(new Set());
  };
  const tick = (key: string, on: boolean) =>
    setTicked((now) => new Set(on ? [...now, key] : [...now].filter((one) => one !== key)));
  const amount = (id: string, title: string, of: (row: LineNeedRow) => number): Column<LineNeedRow> => ({
    id,
    title,
    figures: true,
    sortBy: of,
    cell: (row) => (of(row) === 0 ? '–' : <Quantity quantityMilli={of(row)} unit={unitOf(row.unit)} />),
  });
  const columns: readonly Column<LineNeedRow>[] = [
    ...(canAct
      ? [
          {
            id: 'tick',
            title: 'Tick',
            cell: (row: LineNeedRow) =>
              row.toAddMilli > 0 ? (
                <Checkbox
                  className="plumbing-tick"
                  aria-label={`Tick ${row.text}`}
                  checked={ticked.has(row.key)}
                  onChange={(event) => tick(row.key, event.currentTarget.checked)}
                />
              ) : null,
          },
        ]
      : []),
    {
      id: 'text',
      title: 'Thing',
      rowHeader: true,
      sortBy: ({ text }) => text,
      cell: (row) => (
        <span className="plumbing-name">
          {row.part === null ? (
            row.text
          ) : (
            <Link to="/parts" params={{ part: row.part }}>
              {row.text}
            </Link>
          )}
          <span className="plumbing-says">For {linesText(row.lines)}</span>
        </span>
      ),
    },
    amount('needed', 'Needed', (row) => row.neededMilli),
    amount('listed', 'On the list', (row) => row.onListMilli),
    amount('shelf', 'On the shelf', (row) => row.inStockMilli),
    amount('add', 'To add', (row) => row.toAddMilli),
    amount('order', 'To order', (row) => row.toOrderMilli),
    ...(canAct
      ? [
          {
            id: 'part',
            title: 'Part line',
            cell: (row: LineNeedRow) => (
              <Button className="not-printed" size="compact" variant="subtle" onClick={() => setNaming(row)}>
                {row.part === null ? 'This is that part…' : 'Another part…'}{' '}
                <span className="only-heard">{row.text}</span>
              </Button>
            ),
          },
        ]
      : []),
  ];
  return (
    <div className="plumbing-block">
      <p>
        {lacking.length === 0
          ? 'Everything that the lines need is on the parts list.'
          : `${lacking.length} of ${needs.length} ${needs.length === 1 ? 'thing' : 'things'} ${lacking.length === 1 ? 'is' : 'are'} still to be put on the parts list. What is on the list or lies on the shelf isn’t asked for twice.`}
      </p>
      {canAct && lacking.length > 0 && (
        <Toolbar label="Put on the parts list">
          <Button variant="filled" loading={act.busy} onClick={() => void put(chosen.length > 0 ? chosen : lacking)}>
            {chosen.length > 0
              ? `Put ${chosen.length} ticked on the parts list`
              : lacking.length === 1
                ? 'Put it on the parts list'
                : `Put all ${lacking.length} on the parts list`}
          </Button>
        </Toolbar>
      )}
      {act.refusal !== null && <RefusalNote refusal={act.refusal} />}
      <SimpleTable
        caption="What the lines need"
        captionHidden
        columns={columns}
        rows={needs}
        rowKey={({ key }) => key}
      />
      {naming !== null && <BillPartForm need={naming} build={build} onClose={() => setNaming(null)} />}
    </div>
  );
}
