import { Checkbox } from '@mantine/core';
import { IconArrowsExchange } from '@tabler/icons-react';
import { useState } from 'react';
import type { SwapView } from '../../../core/contract/checks.ts';
import { Link } from '../../app/route.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { VerdictMark } from './verdict.tsx';

/** As it stands and each candidate, side by side: what fails, what it costs, the day, then every check. */
export function SwapTable({ view }: { readonly view: SwapView }) {
  const { columns, rows } = view;
  const [all, setAll] = useState(false);
  const changed = rows.filter((row) => row.changed);
  const shown = all || changed.length === 0 ? rows : changed;
  const across = (title: string, cell: (column: (typeof columns)[number]) => React.ReactNode) => (
    <tr>
      <th scope="row">{title}</th>
      {columns.map((column, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two candidates may have the same name, and their order stays
        <td key={at}>{cell(column)}</td>
      ))}
    </tr>
  );
  return (
    <section className="checks-block" aria-label="Comparison">
      <p className="checks-swap-answer" role="status">
        {view.answer}
      </p>
      <Checkbox label="Show checks that stay the same too" checked={all} onChange={() => setAll(!all)} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard */}
      <section className="table-scroll" aria-label="Comparison, table" tabIndex={0}>
        <table className="checks-swap">
          <caption className="only-heard">As it stands, and with each candidate</caption>
          <thead>
            <tr>
              <td />
              {columns.map(({ label }, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two candidates may have the same name, and their order stays
                <th key={at} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {across('Checks that fail', ({ fails }) => fails)}
            {across('Checks that lack a figure', ({ lacks }) => lacks)}
            {across('Forecast cost', ({ forecastMinor }) => (
              <Money amountMinor={forecastMinor} />
            ))}
            {across('Engine in, at best', ({ gateOn, atLeastOn }) =>
              gateOn === null ? (
                <>
                  no date; not before <DateText date={atLeastOn} />
                </>
              ) : (
                <DateText date={gateOn} />
              ),
            )}
            {shown.map(({ check, title, changed: differs, cells }) => (
              <tr key={check} data-changed={differs || undefined}>
                <th scope="row">
                  <Link to="/checks" params={{ check }}>
                    {title}
                  </Link>
                  {differs && (
                    <span className="checks-changed">
                      <IconArrowsExchange aria-hidden size="1.1em" /> changes
                    </span>
                  )}
                </th>
                {cells.map(({ verdict, says, figure }, at) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the columns keep their order
                  <td key={at}>
                    <VerdictMark verdict={verdict} />
                    {figure !== '' && <span className="figure"> {figure}</span>}
                    {(verdict === 'fails' || verdict === 'lacks data') && <span className="checks-says">{says}</span>}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}
