import { IconFlag } from '@tabler/icons-react';
import type { BuyingView, PlanLine, PlanWeek } from '../../../core/contract/buying.ts';
import { Link, navigate } from '../../app/route.tsx';
import { DateText, Money, Quantity } from '../../parts/figures.tsx';
import { counted } from '../../parts/formats.ts';
import { Empty } from '../../parts/notes.tsx';
import { useCanAct } from '../../parts/past-day.tsx';
import { SimpleTable } from '../../parts/simple-table.tsx';

/** The plan by week, how it compares, what it leaves out and what it stands on. */
export function PlanSection({ plan }: { readonly plan: BuyingView }) {
  const lineOf = new Map(plan.lines.map((line) => [line.part, line]));
  const left = plan.lines.filter(({ week }) => week === null);
  return (
    <>
      {plan.status === 'no-count' && (
        <Empty action={{ label: 'To the money ahead', onClick: () => navigate('/buying', { view: 'cash' }) }}>
          A plan begins with what is in hand: count the cash, and write down what comes in.
        </Empty>
      )}
      {plan.status === 'none' && (
        <Empty action={{ label: 'To the money ahead', onClick: () => navigate('/buying', { view: 'cash' }) }}>
          More income, a lower floor, a cheaper offer or fewer must-haves would make a plan.
        </Empty>
      )}
      {plan.status === 'nothing' && plan.lacking.length === 0 && (
        <Empty action={{ label: 'To the parts', onClick: () => navigate('/parts') }}>
          What to order in which week stands here. Nothing on the list waits for an order now; the next part that does
          is planned here.
        </Empty>
      )}
      {plan.status === 'plan' && <Compared plan={plan} />}
      {plan.weeks.map((week) => (
        <Week key={week.week} week={week} lineOf={lineOf} />
      ))}
      {left.length > 0 && (
        <section className="buying-section" aria-labelledby="buying-left">
          <h2 id="buying-left">Can wait beyond these weeks</h2>
          <ul className="buying-said">
            {left.map(({ part, sentence }) => (
              <li key={part}>
                {sentence} <PartLink part={part} words="Its line" />
              </li>
            ))}
          </ul>
        </section>
      )}
      {plan.lacking.length > 0 && <LackingTable lacking={plan.lacking} />}
      <details className="buying-assumes">
        <summary>What the plan goes by</summary>
        <ul>
          {plan.assumes.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Compared({ plan }: { readonly plan: BuyingView }) {
  return (
    <div className="buying-compared">
      {plan.shippingSavedMinor !== null && plan.shippingSavedMinor > 0 && (
        <p>
          Orders put together save <Money amountMinor={plan.shippingSavedMinor} /> of shipping against each part by
          itself.
        </p>
      )}
      <p className="quiet">
        {plan.method === 'exact'
          ? 'No plan reaches the gate earlier or, on that day, for less. '
          : 'Found by moving one order at a time and not proven best: the list is long, or the search gave up. '}
        A proposal: nothing is ordered by it.
      </p>
    </div>
  );
}

function PartLink({ part, words }: { readonly part: number; readonly words: string }) {
  return (
    <Link to="/parts" params={{ part }}>
      {words}
    </Link>
  );
}

const priceWords = { offer: 'an offer', quote: 'a quote', estimate: 'estimate' } as const;

interface WeekProps {
  readonly week: PlanWeek;
  readonly lineOf: ReadonlyMap<number, PlanLine>;
}

/** One week's orders, each with the way to the order form. */
function Week({ week, lineOf }: WeekProps) {
  const id = `buying-week-${week.week}`;
  return (
    <section className="buying-section" aria-labelledby={id}>
      <h2 id={id}>
        Week of <DateText date={week.on} />
      </h2>
      <p className="quiet">
        <Money amountMinor={week.spendMinor} /> go out, <Money amountMinor={week.cashAfterMinor} /> are left.
      </p>
      {week.orders.map((order) => (
        <VendorOrder key={order.vendor} order={order} lineOf={lineOf} />
      ))}
    </section>
  );
}

interface VendorOrderProps {
  readonly order: PlanWeek['orders'][number];
  readonly lineOf: WeekProps['lineOf'];
}

function VendorOrder({ order, lineOf }: VendorOrderProps) {
  const canAct = useCanAct();
  const rows = order.parts.flatMap((part) => lineOf.get(part) ?? []);
  return (
    <div className="buying-order">
      <div className="buying-order-head">
        <h3>{order.vendorName}</h3>
        <span>
          {counted(rows.length, 'part', 'parts')}, <Money amountMinor={order.goodsMinor} />
          {order.shippingMinor > 0 ? (
            <>
              {' '}
              and <Money amountMinor={order.shippingMinor} /> shipping
            </>
          ) : (
            ', no shipping charged'
          )}
        </span>
        {canAct && (
          <Link
            className="buying-order-link not-printed"
            to="/orders"
            params={{ order: 'new', vendor: order.vendor, parts: order.parts.join(',') }}
          >
            Fill in this order <span className="only-heard">to {order.vendorName}</span>
          </Link>
        )}
      </div>
      <ul className="buying-lines">
        {rows.map((line) => (
          <Line key={line.part} line={line} />
        ))}
      </ul>
    </div>
  );
}

function Line({ line }: { readonly line: PlanLine }) {
  const canAct = useCanAct();
  const { part, description, orderMilli, unit, priceMinor, priceFrom, priceSays, reason, sentence, leadSays } = line;
  return (
    <li>
      <div className="buying-line-head">
        <PartLink part={part} words={description} />
        <Quantity quantityMilli={orderMilli} unit={unit} />
        {priceMinor !== null && (
          <span>
            <Money amountMinor={priceMinor} /> by {priceWords[priceFrom]}
          </span>
        )}
        {canAct && (
          <Link className="not-printed" to="/what-if" params={{ part }}>
            What if… <span className="only-heard">{description}</span>
          </Link>
        )}
      </div>
      <p>
        {reason === 'holds-gate' && <IconFlag aria-hidden size="1em" className="buying-holds" />} {sentence}
      </p>
      <p className="row-note">
        {leadSays} {priceSays}.
      </p>
    </li>
  );
}

function LackingTable({ lacking }: { readonly lacking: BuyingView['lacking'] }) {
  return (
    <section className="buying-section" aria-labelledby="buying-lacking">
      <h2 id="buying-lacking">
        Not in the plan: {counted(lacking.length, 'need lacks', 'needs lack')} a price, a vendor or a rate
      </h2>
      <SimpleTable
        caption="Needs that are not in the plan"
        captionHidden
        columns={[
          {
            id: 'part',
            title: 'Part',
            rowHeader: true,
            cell: ({ part, description }) => <PartLink part={part} words={description} />,
          },
          { id: 'why', title: 'What it lacks', cell: ({ why }) => why },
          { id: 'must', title: 'Holds the gate', cell: ({ must }) => (must ? 'yes' : 'no') },
        ]}
        rows={lacking}
        rowKey={({ part }) => String(part)}
      />
    </section>
  );
}
