import { Button } from '@mantine/core';
import { IconClockPause, IconPhone } from '@tabler/icons-react';
import { useState } from 'react';
import type { StartView } from '../../../core/contract/plan.ts';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { ChaseWindow } from './chase-window.tsx';

/** Vendors to ask about what is late, the oldest first, with the act to note that they were asked. */
export function ChaseList({ chase }: Pick<StartView, 'chase'>) {
  const { asOf } = useWorkspace();
  const [asked, setAsked] = useState<StartView['chase'][number] | null>(null);
  return (
    <section aria-labelledby="start-chase">
      <h2 id="start-chase">Whom to chase</h2>
      {chase.length === 0 ? (
        <p className="soft">Nobody: no promise has passed without an answer, and no back-order has grown old.</p>
      ) : (
        <ul className="start-list">
          {chase.map((item) => (
            <li key={item.order} className="start-chase">
              <IconClockPause aria-hidden className="start-mark" />
              <Link to="/orders" params={{ order: item.order }}>
                {item.text}
              </Link>
              {asOf === null && (
                <Button
                  leftSection={<IconPhone aria-hidden size="1.1em" />}
                  aria-label={`Chased: ${item.text}`}
                  onClick={() => setAsked(item)}
                >
                  Chased
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
      {chase.length > 0 && (
        <p className="start-more">
          <Link to="/orders" params={{ view: 'chase' }}>
            All vendors to ask, with texts to copy
          </Link>
        </p>
      )}
      {asOf !== null && chase.length > 0 && (
        <p className="soft">A past day is shown: go back to today to note that a vendor was asked.</p>
      )}
      {asked !== null && <ChaseWindow item={asked} onClose={() => setAsked(null)} />}
    </section>
  );
}
