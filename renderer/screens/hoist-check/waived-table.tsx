import { Button } from '@mantine/core';
import { Link } from '../../app/route.tsx';
import { dateText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { BlockerTable } from './blocker-table.tsx';
import type { Doing, Waived } from './doing.ts';

/** What was let stand, by whom and why; it stays in sight. */
export function WaivedTable({
  rows,
  onDo,
}: {
  readonly rows: readonly Waived[];
  readonly onDo?: (doing: Doing) => void;
}) {
  const locale = useLocale();
  return (
    <BlockerTable
      caption="Waived: these stand although they would block"
      rows={rows}
      also={({ reason, by, waivedOn, until, seq }) => (
        <span className="blocker-waiver">
          <Link to="/journal" params={{ entry: seq }}>
            Waived
          </Link>{' '}
          by {by} on {dateText(waivedOn, locale)}
          {until === null ? '' : `, until ${dateText(until, locale)}`}: {reason}
        </span>
      )}
      buttons={(waived) =>
        onDo !== undefined && (
          <Button size="compact" onClick={() => onDo({ what: 'end waiver', waived })}>
            End waiver… <span className="only-heard">{waived.title}</span>
          </Button>
        )
      }
    />
  );
}
