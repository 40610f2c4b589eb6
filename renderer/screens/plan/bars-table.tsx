import type { PlanBar } from '../../../core/contract/plan.ts';
import { useLocale } from '../../parts/locale.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';
import { stateWords } from './bars-rows.ts';
import { floatText, whenText } from './bars-words.ts';

export interface BarsTableProps {
  readonly bars: readonly PlanBar[];
  readonly onOpen?: (bar: PlanBar) => void;
}

/** The same as the drawing, in words and figures. */
export function BarsTable({ bars, onOpen }: BarsTableProps) {
  const locale = useLocale();
  return (
    <SimpleTable
      caption="The plan over the calendar"
      rows={bars}
      rowKey={({ id }) => String(id)}
      {...(onOpen === undefined ? {} : { onRowOpen: onOpen })}
      columns={[
        { id: 'job', title: 'Job', cell: ({ title }) => title, rowHeader: true, sortBy: ({ title }) => title },
        { id: 'state', title: 'State', cell: ({ state }) => stateWords[state], sortBy: ({ state }) => state },
        {
          id: 'start',
          title: 'Start',
          cell: ({ startOn, startAt }) => whenText(startOn, startAt, locale),
          sortBy: ({ startOn, startAt }) => `${startOn ?? '9999'} ${startAt ?? ''}`,
        },
        {
          id: 'finish',
          title: 'Finish',
          cell: ({ finishOn, finishAt }) => whenText(finishOn, finishAt, locale),
          sortBy: ({ finishOn, finishAt }) => `${finishOn ?? '9999'} ${finishAt ?? ''}`,
        },
        {
          id: 'float',
          title: 'To spare',
          cell: floatText,
          figures: true,
          sortBy: ({ floatMinutes }) => floatMinutes ?? -1,
        },
        {
          id: 'critical',
          title: 'Critical',
          cell: ({ critical }) => (critical ? 'yes' : ''),
          sortBy: ({ critical }) => (critical ? 0 : 1),
        },
        {
          id: 'late',
          title: 'At the latest',
          cell: ({ lateFinishOn }) => whenText(lateFinishOn, null, locale),
          sortBy: ({ lateFinishOn }) => lateFinishOn ?? '',
        },
        { id: 'who', title: 'Who', cell: ({ who }) => who, sortBy: ({ who }) => who },
        { id: 'held', title: 'Waits for', sentences: true, cell: ({ heldBy }) => heldBy },
      ]}
    />
  );
}
