import type { WhyFigure } from '../../../../core/contract/journal.ts';
import type { VendorCard } from '../../../../core/contract/orders.ts';
import { href } from '../../../app/route.tsx';
import { useWhy } from '../../../app/why.tsx';
import { Money } from '../../../parts/figures.tsx';
import { counted } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { Window } from '../../../parts/window.tsx';
import { Fact, Facts } from '../facts.tsx';
import type { Reading } from '../reading.ts';
import { leadText, onTimeText, wrongText } from './vendor-cards.tsx';

export interface VendorWindowProps {
  readonly card: VendorCard;
  readonly reading: Reading;
  readonly onClose: () => void;
}

/** One vendor's record; every sum of money can be asked why. */
export function VendorWindow({ card, reading, onClose }: VendorWindowProps) {
  const locale = useLocale();
  const why = useWhy();
  const ask = (figure: WhyFigure) => () => why({ figure, vendor: card.vendor, ...reading });
  return (
    <Window opened onClose={onClose} title={card.name} as="drawer">
      <div className="vendor-record">
        <Facts>
          <Fact title="Orders">{counted(card.orders, 'order', 'orders')}</Fact>
          <Fact title="Lines to come">{card.openLines}</Fact>
          <Fact title="On time">{onTimeText(card, locale)}</Fact>
          <Fact title="Wrong units">{wrongText(card, locale)}</Fact>
          <Fact title="Usual days to arrive">{leadText(card, locale)}</Fact>
          <Fact title="Cost of what came" onWhy={ask('cost')}>
            <Money amountMinor={card.costMinor} />
          </Fact>
          <Fact title="Value on order" onWhy={ask('commitment')}>
            <Money amountMinor={card.committedMinor} />
          </Fact>
          <Fact title="Paid" onWhy={ask('paid')}>
            <Money amountMinor={card.paidMinor} />
          </Fact>
          <Fact title="Still to pay" onWhy={ask('still-to-pay')}>
            <Money amountMinor={card.stillToPayMinor} />
          </Fact>
        </Facts>
        <p>
          <a href={href('/lists', { vendor: card.vendor })}>Address and terms</a>
        </p>
        <p>
          <a href={href('/orders', { order: 'new', vendor: card.vendor })}>New order here</a>
        </p>
      </div>
    </Window>
  );
}
