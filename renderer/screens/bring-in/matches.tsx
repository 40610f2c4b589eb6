import { Button } from '@mantine/core';
import { useState } from 'react';
import type { ImportMatch } from '../../../core/contract/exchange.ts';
import { type Column, SimpleTable } from '../../parts/simple-table.tsx';
import { ChooseMatch } from './choose-match.tsx';
import type { ChangeDraft, Draft } from './draft.ts';
import type { ShownRow } from './shown-rows.ts';

const atATime = 50;

const howWords: Readonly<Record<ImportMatch['how'], string>> = {
  'part number': 'same part number',
  likeness: 'alike in words',
  none: 'nothing alike',
  'by hand': 'as you chose',
};

/** "alike in words, 82 of 100" */
const howText = ({ how, score }: ImportMatch): string =>
  how === 'likeness' ? `${howWords.likeness}, ${Math.round(score * 100)} of 100` : howWords[how];

export interface MatchesProps {
  readonly build: number;
  readonly matches: readonly ImportMatch[];
  readonly rows: readonly ShownRow[];
  readonly draft: Draft;
  readonly change: ChangeDraft;
}

/** Which part line each order line is for: found by number or likeness, changed by hand. */
export function Matches({ build, matches, rows, draft, change }: MatchesProps) {
  const [most, setMost] = useState(atATime);
  const [choosing, setChoosing] = useState<ImportMatch | null>(null);
  if (matches.length === 0) return null;
  const texts = new Map(rows.map(({ row, text }) => [row, text]));
  const columns: readonly Column<ImportMatch>[] = [
    { id: 'row', title: 'Row', figures: true, cell: ({ row }) => row, sortBy: ({ row }) => row },
    { id: 'line', title: 'Order line', rowHeader: true, cell: ({ row }) => texts.get(row) ?? '' },
    {
      id: 'part',
      title: 'Part line of the build',
      cell: ({ part, description }) => (part === null ? 'a part line of its own' : description),
    },
    { id: 'how', title: 'How it was found', cell: howText, sortBy: ({ score }) => score },
    {
      id: 'change',
      title: 'By hand',
      cell: (match) => (
        <Button size="compact" onClick={() => setChoosing(match)}>
          Choose <span className="only-heard">the part line for row {match.row}</span>
        </Button>
      ),
    },
  ];
  return (
    <>
      <SimpleTable
        caption="Order lines and the part lines they are for"
        columns={columns}
        rows={matches.slice(0, most)}
        rowKey={({ row }) => String(row)}
      />
      {matches.length > most && (
        <div>
          <Button onClick={() => setMost(most + atATime)}>Show {Math.min(atATime, matches.length - most)} more</Button>
        </div>
      )}
      {choosing !== null && (
        <ChooseMatch
          build={build}
          match={choosing}
          line={texts.get(choosing.row) ?? ''}
          onCancel={() => setChoosing(null)}
          onChoose={(part) => {
            change({ matches: { ...draft.matches, [choosing.row]: part } });
            setChoosing(null);
          }}
        />
      )}
    </>
  );
}
