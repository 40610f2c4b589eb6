import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { Link } from '../../../app/route.tsx';
import { DateText, Money, Quantity, UnitPrice } from '../../../parts/figures.tsx';
import { quantityText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import { State } from '../../../parts/state.tsx';
import { lineQuantities, toldPromises } from '../order-words.ts';

type Line = OrderDetail['lines'][number];

/** The lines of an order: what was ordered, where its units are, every promise, and what each really costs. */
export function OrderLines({ detail }: { readonly detail: OrderDetail }) {
  const { currency } = detail.row;
  const columns: readonly Column<Line>[] = [
    {
      id: 'part',
      title: 'Part',
      rowHeader: true,
      cell: ({ part, description, partNumber }) => (
        <>
          <Link to="/parts" params={{ part }}>
            {description}
          </Link>
          {partNumber !== '' && <span className="quiet under">{partNumber}</span>}
        </>
      ),
      sortBy: ({ description }) => description,
    },
    {
      id: 'ordered',
      title: 'Ordered',
      figures: true,
      cell: ({ quantityMilli, unit }) => <Quantity quantityMilli={quantityMilli} unit={unit} />,
      sortBy: ({ quantityMilli }) => quantityMilli,
    },
    { id: 'where', title: 'Where it is', cell: (line) => <Where line={line} /> },
    { id: 'promises', title: 'Promises', cell: (line) => <Promises line={line} /> },
    {
      id: 'each',
      title: 'Each',
      figures: true,
      cell: ({ eachE4 }) => <UnitPrice priceE4={eachE4} currency={currency} />,
      sortBy: ({ eachE4 }) => eachE4,
    },
    {
      id: 'landed',
      title: 'With charges',
      figures: true,
      cell: ({ landed }) => <Money amountMinor={landed.landedMinor} currency={currency} />,
      sortBy: ({ landed }) => landed.landedMinor,
      foot: (
        <Money
          amountMinor={detail.lines.reduce((sum, { landed }) => sum + landed.landedMinor, 0)}
          currency={currency}
        />
      ),
    },
  ];
  return (
    <SimpleTable
      caption={`Lines of the order (${detail.lines.length})`}
      columns={columns}
      rows={detail.lines}
      rowKey={({ id }) => `${id}`}
    />
  );
}

function Where({ line }: { readonly line: Line }) {
  const locale = useLocale();
  return (
    <ul className="places">
      {lineQuantities(line).map(({ state, quantityMilli }) => (
        <li key={state}>
          <State state={state} words={`${quantityText(quantityMilli, locale, line.unit)} ${state}`} />
          {state === 'back-ordered' && line.backOrderedOn !== null && (
            <span className="quiet">
              {' since '}
              <DateText date={line.backOrderedOn} />
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The promise that holds, then the earlier ones: a date that moves is told by the days it was given on. */
function Promises({ line }: { readonly line: Line }) {
  const [latest, ...earlier] = toldPromises(line);
  if (latest === undefined) return <span className="quiet">none</span>;
  return (
    <>
      {latest.promisedOn === null ? 'no date' : <DateText date={latest.promisedOn} />}
      {earlier.map(({ givenOn, promisedOn }) => (
        <span key={`${givenOn} ${promisedOn}`} className="quiet under">
          before: {promisedOn === null ? 'no date' : <DateText date={promisedOn} />}, said <DateText date={givenOn} />
        </span>
      ))}
    </>
  );
}
