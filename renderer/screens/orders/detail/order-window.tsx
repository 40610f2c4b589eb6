import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { DepositWindow } from '../acts/deposit-window.tsx';
import { NoticeWindow } from '../acts/notice-window.tsx';
import { PayWindow } from '../acts/pay-window.tsx';
import { RepriceWindow } from '../acts/reprice-window.tsx';
import { SettleWindow } from '../acts/settle-window.tsx';
import { orderName } from '../order-words.ts';
import type { ActName } from './order-acts.tsx';

export interface OrderWindowProps {
  readonly act: ActName;
  readonly detail: OrderDetail;
  readonly onClose: () => void;
}

/** The form of the act that was chosen. */
export function OrderWindow({ act, detail, onClose }: OrderWindowProps) {
  switch (act) {
    case 'pay':
      return <PayWindow detail={detail} onClose={onClose} />;
    case 'settle':
      return <SettleWindow detail={detail} onClose={onClose} />;
    case 'deposit':
      return <DepositWindow detail={detail} onClose={onClose} />;
    case 'reprice':
      return <RepriceWindow detail={detail} onClose={onClose} />;
    default:
      return (
        <NoticeWindow
          notice={act}
          order={detail.row.id}
          name={`${orderName(detail.row)}, ${detail.row.vendorName}`}
          lines={detail.lines}
          onClose={onClose}
        />
      );
  }
}
