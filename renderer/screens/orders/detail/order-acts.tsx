import { Button, Menu } from '@mantine/core';
import { IconChevronDown, IconPackage, IconPhone } from '@tabler/icons-react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { navigate } from '../../../app/route.tsx';
import { Toolbar } from '../../../parts/furniture.tsx';
import type { NoticeName } from '../acts/notices.ts';
import { notices } from '../acts/notices.ts';
import { toSettle } from '../acts/settle-window.tsx';
import { openLines } from '../order-words.ts';

export type ActName = NoticeName | 'pay' | 'settle' | 'deposit' | 'reprice';

export interface OrderActsProps {
  readonly detail: OrderDetail;
  readonly onAct: (act: ActName) => void;
}

interface Item {
  readonly act: ActName;
  readonly label: string;
}

/** What can be done with the order as it stands; what can't be isn't offered. */
export function OrderActs({ detail, onAct }: OrderActsProps) {
  const { row } = detail;
  const open = openLines(detail);
  const about = (name: NoticeName): boolean => detail.lines.some((line) => (notices[name].most?.(line) ?? 0) > 0);
  const said: readonly Item[] = [
    ...(about('acknowledge') ? [{ act: 'acknowledge', label: 'Acknowledged' } as const] : []),
    ...(about('back-order') ? [{ act: 'back-order', label: 'On back-order' } as const] : []),
    ...(open.length > 0 ? [{ act: 'promise', label: 'New promise' } as const] : []),
    ...(about('ship') ? [{ act: 'ship', label: 'Sent' } as const] : []),
  ];
  const more: readonly Item[] = [
    ...(toSettle(detail).length > 0 ? [{ act: 'settle', label: 'Refund or replacement' } as const] : []),
    { act: 'deposit', label: 'Core deposit' },
    { act: 'reprice', label: 'Correct prices and charges' },
    ...(open.length > 0 ? [{ act: 'cancel', label: 'Cancel what is to come' } as const] : []),
  ];
  return (
    <Toolbar label="What to do with the order">
      {open.length > 0 && (
        <Button
          variant="filled"
          leftSection={<IconPackage aria-hidden size="1.2em" />}
          onClick={() => navigate('/orders', { order: row.id, do: 'receive' })}
        >
          Receive a box
        </Button>
      )}
      {row.stillToPayMinor + row.claimsMinor > 0 && <Button onClick={() => onAct('pay')}>Pay</Button>}
      {open.length > 0 && (
        <Button leftSection={<IconPhone aria-hidden size="1.1em" />} onClick={() => onAct('chase')}>
          Chased
        </Button>
      )}
      {said.length > 0 && <ActMenu label="The vendor said" items={said} onAct={onAct} />}
      <ActMenu label="More" items={more} onAct={onAct} />
    </Toolbar>
  );
}

function ActMenu({
  label,
  items,
  onAct,
}: {
  readonly label: string;
  readonly items: readonly Item[];
  readonly onAct: (act: ActName) => void;
}) {
  return (
    <Menu position="bottom-start">
      <Menu.Target>
        <Button rightSection={<IconChevronDown aria-hidden size="1.1em" />}>{label}</Button>
      </Menu.Target>
      <Menu.Dropdown>
        {items.map(({ act, label: words }) => (
          <Menu.Item key={act} className="act-item" onClick={() => onAct(act)}>
            {words}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  );
}
