import type { WhyFigure } from '../../../../core/contract/journal.ts';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { Link } from '../../../app/route.tsx';
import { useWhy } from '../../../app/why.tsx';
import { DateText, Money } from '../../../parts/figures.tsx';
import { counted } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { State } from '../../../parts/state.tsx';
import { Fact, Facts } from '../facts.tsx';
import type { Reading } from '../reading.ts';

export interface OrderFactsProps {
  readonly detail: OrderDetail;
  readonly reading: Reading;
}

/** How the order stands, with its money; every sum can be asked why. */
export function OrderFacts({ detail, reading }: OrderFactsProps) {
  const { row, lines, rate, chases } = detail;
  const why = useWhy();
  const base = useLocale().currency;
  const { asOf } = reading;
  const ask = (figure: WhyFigure) => () =>
    why({ build: row.build, figure, order: row.id, ...(asOf === undefined ? {} : { asOf }) });
  const sum = (key: 'costMinor' | 'commitmentMinor' | 'depositsMinor') =>
    lines.reduce((total, line) => total + line[key], 0);
  const deposits = sum('depositsMinor');
  const lastChase = chases.at(-1);
  const age = row.backOrderAgeDays;
  return (
    <section aria-label="How it stands">
      <Facts>
        <Fact title="Standing">
          <State
            state={row.standing}
            {...(row.standing === 'back-ordered' && age !== null
              ? { words: `back-ordered ${counted(age, 'day', 'days')}` }
              : {})}
          />
        </Fact>
        <Fact title="Vendor">
          <Link to="/lists" params={{ vendor: row.vendor }}>
            {row.vendorName}
          </Link>
        </Fact>
        <Fact title="Ordered on">
          <DateText date={row.orderedOn} />
        </Fact>
        <Fact title="Asked on">
          {lastChase === undefined ? (
            'not yet'
          ) : (
            <>
              <DateText date={lastChase.on} />
              {chases.length > 1 && `, ${chases.length} times in all`}
              {lastChase.note !== '' && <span className="quiet"> {lastChase.note}</span>}
            </>
          )}
        </Fact>
        <Fact title="Total">
          <Money amountMinor={row.totalMinor} currency={row.currency} />
          {row.currency !== base && (
            <span className="quiet">
              {' = '}
              <Money amountMinor={row.totalBaseMinor} /> at {rate}
            </span>
          )}
        </Fact>
        <Fact title="Cost of what came" onWhy={ask('cost')}>
          <Money amountMinor={sum('costMinor')} />
        </Fact>
        <Fact title="Value on order" onWhy={ask('commitment')}>
          <Money amountMinor={sum('commitmentMinor')} />
        </Fact>
        <Fact title="Paid" onWhy={ask('paid')}>
          <Money amountMinor={row.paidBaseMinor} />
        </Fact>
        <Fact title="Still to pay" onWhy={ask('still-to-pay')}>
          <Money amountMinor={row.stillToPayMinor} />
        </Fact>
        {row.claimsMinor !== 0 && (
          <Fact title="They owe" onWhy={ask('claims')}>
            <Money amountMinor={row.claimsMinor} />
          </Fact>
        )}
        {deposits !== 0 && (
          <Fact title="Core deposits out" onWhy={ask('deposits')}>
            <Money amountMinor={deposits} />
          </Fact>
        )}
      </Facts>
      {detail.note !== '' && <p className="order-note">{detail.note}</p>}
    </section>
  );
}
