import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Blocker } from '../../../core/contract/gate.ts';
import { href, Link } from '../../app/route.tsx';
import { useWhy } from '../../app/why.tsx';
import { DateText, Money } from '../../parts/figures.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { WhyButton } from '../../parts/page.tsx';
import { useStacked } from '../../parts/stacked.ts';
import { blockerDerivation, blockerKey, placeOf } from './blocker-words.ts';
import { actWords, type Doing } from './doing.ts';

const columnNames = ['what', 'ready', 'cleared', 'gained', 'costs', 'buttons'] as const;

export interface BlockerTableProps<Row extends Blocker> {
  readonly caption: string;
  readonly captionHidden?: boolean;
  readonly rows: readonly Row[];
  /** Starts what clears or waives a row; left out while nothing may be done. */
  readonly onDo?: (doing: Doing) => void;
  /** More about a row, below what clears it. */
  readonly also?: (row: Row) => ReactNode;
  readonly buttons?: (row: Row) => ReactNode;
}

/** What stands in the way, one row each: why, what clears it, from when, by when, and what that gains and costs. */
export function BlockerTable<Row extends Blocker>(props: BlockerTableProps<Row>) {
  const { caption, captionHidden = false, rows, also, buttons, onDo } = props;
  return (
    <table className="blocker-table" data-stacked={useStacked() || undefined}>
      <caption className={captionHidden ? 'only-heard' : undefined}>
        {caption} <span className="blocker-count">{rows.length}</span>
      </caption>
      <colgroup>
        {columnNames.map((name) => (
          <col key={name} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th scope="col">What blocks, and what clears it</th>
          <th scope="col" data-figures>
            Ready
          </th>
          <th scope="col" data-figures>
            Cleared at best
          </th>
          <th scope="col" data-figures>
            Days gained
          </th>
          <th scope="col" data-figures>
            Still costs
          </th>
          <th scope="col" className="not-printed">
            <span className="only-heard">What can be done</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <BlockerLine
            key={blockerKey(row)}
            blocker={row}
            also={also?.(row)}
            buttons={buttons?.(row) ?? (onDo === undefined ? undefined : <RowButtons blocker={row} onDo={onDo} />)}
          />
        ))}
      </tbody>
    </table>
  );
}

function RowButtons({ blocker, onDo }: { readonly blocker: Blocker; readonly onDo: (doing: Doing) => void }) {
  const words = actWords[blocker.kind];
  return (
    <>
      {words !== null && (
        <Button size="compact" onClick={() => onDo({ what: 'clear', blocker })}>
          {words} <span className="only-heard">{blocker.title}</span>
        </Button>
      )}
      {blocker.kind === 'line not made' && (
        <Button size="compact" component="a" href={href('/bench', { line: blocker.subject.id })}>
          Make it <span className="only-heard">{blocker.title}</span>
        </Button>
      )}
      <Button size="compact" variant="subtle" onClick={() => onDo({ what: 'waive', blocker })}>
        Waive… <span className="only-heard">{blocker.title}</span>
      </Button>
    </>
  );
}

interface BlockerLineProps {
  readonly blocker: Blocker;
  readonly also: ReactNode;
  readonly buttons: ReactNode;
}

function BlockerLine({ blocker, also, buttons }: BlockerLineProps) {
  const why = useWhy();
  const locale = useLocale();
  return (
    <tr>
      <th scope="row">
        <span className="tick-box" aria-hidden />
        <span className="blocker-head">
          <Link {...placeOf(blocker.subject)} className="blocker-title">
            {blocker.title}
          </Link>
          <WhyButton onClick={() => why({ derivation: blockerDerivation(blocker, locale) })} of={blocker.title} />
        </span>
        <span className="blocker-why">{blocker.why}</span>
        <span className="blocker-clears">{blocker.clears}</span>
        {blocker.readySays !== '' && <span className="blocker-clears">{blocker.readySays}</span>}
        {blocker.clearOn === null && <span className="blocker-clears">{blocker.noDate}</span>}
        {also}
      </th>
      <td data-figures data-label="Ready">
        {blocker.readyOn === null ? 'not known' : <DateText date={blocker.readyOn} />}
        {blocker.readyLateOn !== null && blocker.readyLateOn !== blocker.readyOn && (
          <span className="blocker-late">
            4 of 5: <DateText date={blocker.readyLateOn} />
          </span>
        )}
      </td>
      <td data-figures data-label="Cleared at best">
        {blocker.clearOn === null ? 'no date' : <DateText date={blocker.clearOn} />}
      </td>
      <td data-figures data-label="Days gained">
        {blocker.daysGained}
      </td>
      <td data-figures data-label="Still costs">
        {blocker.costMinor === null ? 'not known' : <Money amountMinor={blocker.costMinor} />}
      </td>
      <td className="blocker-buttons not-printed">{buttons}</td>
    </tr>
  );
}
