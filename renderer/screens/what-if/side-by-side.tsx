import type { ReactNode } from 'react';
import type { WhatIfView } from '../../../core/contract/what-if.ts';
import { daysBetween } from '../../../core/dates/calendar-date.ts';
import { Link } from '../../app/route.tsx';
import { counted, dateText, moneyText } from '../../parts/formats.ts';
import { type LocaleSettings, useLocale } from '../../parts/locale.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';

type Column = WhatIfView['columns'][number];

interface Row {
  readonly label: string;
  readonly cells: readonly ReactNode[];
}

const none = '–';

function dayRow(
  label: string,
  columns: readonly Column[],
  of: (column: Column) => string | null,
  locale: LocaleSettings,
): Row {
  const [now] = columns;
  const first = now === undefined ? null : of(now);
  return {
    label,
    cells: columns.map((column, index) => {
      const day = of(column);
      if (day === null) return none;
      const days = index === 0 || first === null ? 0 : daysBetween(day, first);
      const moved = days === 0 ? '' : `, ${counted(Math.abs(days), 'day', 'days')} ${days > 0 ? 'earlier' : 'later'}`;
      return `${dateText(day, locale)}${moved}`;
    }),
  };
}

function moneyRow(
  label: string,
  columns: readonly Column[],
  of: (column: Column) => number | null,
  locale: LocaleSettings,
): Row {
  const [now] = columns;
  const first = now === undefined ? null : of(now);
  return {
    label,
    cells: columns.map((column, index) => {
      const minor = of(column);
      if (minor === null) return none;
      const more = index === 0 || first === null ? 0 : minor - first;
      const moved = more === 0 ? '' : `, ${moneyText(Math.abs(more), locale)} ${more > 0 ? 'more' : 'less'}`;
      return `${moneyText(minor, locale)}${moved}`;
    }),
  };
}

/** The build as it stands beside each way of going on: days, money, and what is ordered when. */
export function SideBySide({ view }: { readonly view: WhatIfView }) {
  const locale = useLocale();
  const { columns, lines, gateName } = view;
  const rows: readonly Row[] = [
    {
      label: 'What would be otherwise',
      cells: columns.map(({ changes }) => (changes.length === 0 ? 'nothing' : changes.join('; '))),
    },
    dayRow(`${gateName}, as likely as not`, columns, ({ p50On }) => p50On, locale),
    dayRow(`${gateName}, four times of five`, columns, ({ p80On }) => p80On, locale),
    ...(columns.some(({ noForecast }) => noForecast !== '')
      ? [{ label: 'Why there is no day', cells: columns.map(({ noForecast }) => noForecast || none) }]
      : []),
    moneyRow('Estimate at completion', columns, ({ costMinor }) => costMinor, locale),
    moneyRow('Still to pay and to buy', columns, ({ toComeMinor }) => toComeMinor, locale),
    dayRow('Week of the gate by the buying plan', columns, ({ planOn }) => planOn, locale),
    moneyRow('Least cash on the way', columns, ({ leastCashMinor }) => leastCashMinor, locale),
    { label: 'What the buying plan says', cells: columns.map(({ planSays }) => planSays) },
  ];
  return (
    <section className="what-if-section what-if-beside" aria-labelledby="what-if-beside">
      <h2 id="what-if-beside">Side by side</h2>
      <SimpleTable
        caption="Before and after"
        captionHidden
        rows={rows}
        rowKey={({ label }) => label}
        columns={[
          { id: 'label', title: 'Figure', rowHeader: true, cell: ({ label }) => label },
          ...columns.map(({ name }, index) => ({
            id: `column-${index}`,
            title: name,
            cell: ({ cells }: Row) => cells[index],
          })),
        ]}
      />
      {lines.length > 0 && (
        <SimpleTable
          caption="Orders that change"
          rows={lines}
          rowKey={({ part }) => String(part)}
          columns={[
            {
              id: 'part',
              title: 'Part',
              rowHeader: true,
              cell: ({ part, description }) => (
                <Link to="/parts" params={{ part }}>
                  {description}
                </Link>
              ),
            },
            ...columns.map(({ name }, index) => ({
              id: `order-${index}`,
              title: name,
              cell: ({ cells }: WhatIfView['lines'][number]) => {
                const cell = cells[index];
                return cell === undefined ? none : cell.says;
              },
            })),
          ]}
        />
      )}
    </section>
  );
}
