import { Checkbox, NativeSelect } from '@mantine/core';
import { type ImportKind, importFields } from '../../../core/exchange/import-types.ts';
import { encodings, type Table } from '../../../core/exchange/table-types.ts';
import { currencyCodes } from '../../../core/money/currency.ts';
import { Link } from '../../app/route.tsx';
import { counted, dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import type { RefusalWords } from '../../parts/refusal-note.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type ChangeDraft, type Draft, mappingOf, tableOf } from './draft.ts';
import { encodingWords, separatorWords } from './words.ts';

/** The first row below the headings that says something, to see whether its letters are right. */
function sampleLine(table: Table): string {
  const lines = table.rows.filter(({ row }) => row > table.headerRow).map(({ cells }) => cells.filter(Boolean));
  const odd = lines.find((cells) => cells.some((cell) => /[^\p{ASCII}]/u.test(cell)));
  return (odd ?? lines.find((cells) => cells.length > 1) ?? []).join(' · ').slice(0, 160);
}

const kinds: readonly { readonly value: ImportKind; readonly label: string }[] = [
  { value: 'parts', label: 'A parts list: what the engine needs' },
  { value: 'orders', label: 'An order list: what was ordered where' },
];

export interface FoundProps {
  readonly draft: Draft;
  readonly change: ChangeDraft;
  readonly onEncoding: (encoding: string) => void;
  readonly refusal: RefusalWords | null;
}

/** What the file turned out to be, with everything that may have been guessed wrong. */
export function Found({ draft, change, onEncoding, refusal }: FoundProps) {
  const locale = useLocale();
  const table = tableOf(draft);
  const mapping = mappingOf(draft);
  const { read, known } = draft;
  if (table === undefined || mapping === undefined) return <p>The file holds no sheet with anything in it.</p>;
  const setKind = (kind: ImportKind) =>
    change({ mappings: { ...draft.mappings, [draft.sheet]: { ...mapping, kind } }, matches: {} });
  return (
    <>
      {known !== null && (
        <div className="note note-warn">
          <div className="import-known">
            <p>
              <strong>These very bytes are known.</strong> They were brought in on {dateText(known.on, locale)}:{' '}
              <Link to="/bring-in" params={{ act: known.act }}>
                {known.label}
              </Link>
              .
            </p>
            <Checkbox
              label="Bring the file in again; rows that are in the workbook already are left out"
              checked={draft.again}
              onChange={(event) => change({ again: event.currentTarget.checked })}
            />
          </div>
        </div>
      )}
      <p>
        {counted(table.rows.length, 'row', 'rows')} and {counted(table.columns.length, 'column', 'columns')}
        {read.separator === null ? '' : ` parted by ${separatorWords[read.separator]}`}.{' '}
        {table.headerRow === 0
          ? 'No row of headings was found, so the columns go by their letters.'
          : `Row ${table.headerRow} holds the headings.`}
      </p>
      <div className="import-fields">
        {read.tables.length > 1 && (
          <NativeSelect
            label="Sheet"
            value={String(draft.sheet)}
            onChange={(event) => change({ sheet: Number(event.currentTarget.value), answers: {}, matches: {} })}
            data={read.tables.map(({ name, rows }, index) => ({
              value: String(index),
              label: `${name} (${counted(rows.length, 'row', 'rows')})`,
            }))}
          />
        )}
        <NativeSelect
          label="What the list is"
          value={mapping.kind}
          onChange={(event) => setKind(event.currentTarget.value === 'orders' ? 'orders' : 'parts')}
          data={kinds.map(({ value, label }) => ({ value, label }))}
        />
        <NativeSelect
          label="Currency of prices that name none"
          value={draft.currency}
          onChange={(event) => change({ currency: event.currentTarget.value })}
          data={[...currencyCodes]}
        />
        {read.encoding !== null && (
          <NativeSelect
            label="Letters of the file"
            description={read.encoding.certain ? 'Found with certainty' : 'A guess: look at the line below'}
            value={draft.encoding ?? read.encoding.used}
            onChange={(event) => onEncoding(event.currentTarget.value)}
            data={encodings.map((value) => ({ value, label: encodingWords[value] }))}
          />
        )}
      </div>
      {refusal !== null && <RefusalNote refusal={refusal} />}
      <p className="import-sample">
        <span className="import-soft">A line as it reads now:</span> {sampleLine(table)}
      </p>
      {mapping.columns.every(({ field }) => field === null) && (
        <p>
          None of {importFields.length} kinds of column was recognised; give each column its meaning in the next step.
        </p>
      )}
    </>
  );
}
