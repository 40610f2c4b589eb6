import { Button, Menu } from '@mantine/core';
import { IconChevronDown } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import type { PartRow } from '../../../../core/contract/parts.ts';
import { navigate } from '../../../app/route.tsx';
import { type ActSpec, actGroups, specOf } from './act-specs.ts';
import { changeable, changeWords } from './change-window.tsx';
import type { OpenAct } from './open-act.tsx';

export interface BulkBarProps {
  readonly rows: readonly PartRow[];
  /** Why nothing can be done now; null while acts are open. */
  readonly closed: string | null;
  readonly onOpen: (open: OpenAct) => void;
}

/** A choice that says in its own line why it is out of reach; it can still be reached and read by keyboard. */
function Item(props: {
  readonly label: string;
  readonly count: string;
  readonly reason: string | null;
  readonly onPick: () => void;
}) {
  const { label, count, reason, onPick } = props;
  return (
    <Menu.Item
      aria-disabled={reason !== null}
      {...(reason === null ? {} : { 'data-disabled': true })}
      closeMenuOnClick={reason === null}
      onClick={() => reason === null && onPick()}
    >
      {label}
      {reason === null && count !== '' && <span className="parts-count"> {count}</span>}
      {reason !== null && <span className="parts-reason">{reason}</span>}
    </Menu.Item>
  );
}

function Choices({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <Menu position="top-start" width={300} withinPortal>
      <Menu.Target>
        <Button size="compact" rightSection={<IconChevronDown aria-hidden size="1em" />}>
          {label}
        </Button>
      </Menu.Target>
      <Menu.Dropdown className="parts-menu">{children}</Menu.Dropdown>
    </Menu>
  );
}

/** What can be done with the selected lines. An act leaves out the lines that it doesn't fit, and says how many. */
export function BulkBar({ rows, closed, onOpen }: BulkBarProps) {
  const alone = rows.length === 1;
  const fitting = (spec: ActSpec) => rows.filter((row) => spec.applies(row, alone));
  const outstanding = rows.filter(({ onOrderMilli }) => onOrderMilli > 0);
  const toOrder = rows.filter(({ uncoveredMilli }) => uncoveredMilli > 0);
  const share = (some: readonly PartRow[]) => (some.length === rows.length ? '' : `${some.length} of ${rows.length}`);
  const unitItem = (spec: ActSpec) => {
    const some = fitting(spec);
    const reason = closed ?? (some.length === 0 ? spec.unless : null);
    return (
      <Item
        key={spec.act}
        label={`${spec.label}…`}
        count={share(some)}
        reason={reason}
        onPick={() => onOpen({ kind: 'units', spec, target: { rows: some } })}
      />
    );
  };
  const orderReason = closed ?? (toOrder.length === 0 ? 'Everything needed is in hand or on the way.' : null);
  const receiveReason = closed ?? (outstanding.length === 0 ? 'Nothing of it is on order.' : null);
  return (
    <div className="parts-bulk">
      <Choices label="Order and receive">
        <Item
          label="Order these…"
          count={share(toOrder)}
          reason={orderReason}
          onPick={() => navigate('/orders', { order: 'new', parts: toOrder.map(({ id }) => id).join(',') })}
        />
        <Item
          label="Receive all outstanding…"
          count={share(outstanding)}
          reason={receiveReason}
          onPick={() => onOpen({ kind: 'receive', target: { rows: outstanding } })}
        />
        {actGroups
          .filter(([group]) => group === 'Arriving')
          .flatMap(([, specs]) => specs.filter(({ act }) => act !== 'settle by exchange').map(unitItem))}
      </Choices>
      {actGroups
        .filter(([group]) => group !== 'Arriving')
        .map(([group, specs]) => (
          <Choices key={group} label={group}>
            {specs.map(unitItem)}
          </Choices>
        ))}
      <Choices label="Change">
        {changeable.map((what) => (
          <Item
            key={what}
            label={`${changeWords[what]}…`}
            count=""
            reason={closed}
            onPick={() => onOpen({ kind: 'change', what, target: { rows } })}
          />
        ))}
        <Menu.Divider />
        <Item
          label="Drop from the list…"
          count=""
          reason={closed}
          onPick={() => onOpen({ kind: 'drop', target: { rows } })}
        />
      </Choices>
      <Button
        size="compact"
        aria-disabled={closed !== null}
        onClick={() => closed === null && onOpen({ kind: 'units', spec: specOf('bin'), target: { rows } })}
      >
        Put in bin…
      </Button>
    </div>
  );
}
