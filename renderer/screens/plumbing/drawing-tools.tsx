import { Button } from '@mantine/core';
import {
  IconArrowsMaximize,
  IconDeviceFloppy,
  IconPrinter,
  IconRoute,
  IconTable,
  IconZoomIn,
  IconZoomOut,
} from '@tabler/icons-react';
import { useReactFlow } from '@xyflow/react';
import { Toolbar } from '../../parts/furniture.tsx';
import type { Drawing } from './drawing-elk.ts';
import { useShowAll } from './use-show-all.ts';

export interface DrawingToolsProps {
  readonly drawing: Drawing;
  readonly busy: boolean;
  /** Keep, put back and lay out again, each where there is something to do. */
  readonly onKeep: (() => void) | null;
  readonly onPutBack: (() => void) | null;
  readonly onLayOut: (() => void) | null;
  readonly onTables: () => void;
}

const icon = { 'aria-hidden': true, size: '1.1em' } as const;

/** What can be done with the drawing, as buttons. */
export function DrawingTools({ drawing, busy, onKeep, onPutBack, onLayOut, onTables }: DrawingToolsProps) {
  const flow = useReactFlow();
  const showAll = useShowAll(drawing);
  return (
    <Toolbar label="Drawing">
      <Button leftSection={<IconZoomIn {...icon} />} onClick={() => void flow.zoomIn()}>
        Larger
      </Button>
      <Button leftSection={<IconZoomOut {...icon} />} onClick={() => void flow.zoomOut()}>
        Smaller
      </Button>
      <Button leftSection={<IconArrowsMaximize {...icon} />} onClick={() => showAll()}>
        Show all of it
      </Button>
      {onKeep !== null && (
        <Button variant="filled" leftSection={<IconDeviceFloppy {...icon} />} onClick={onKeep} loading={busy}>
          Keep these places
        </Button>
      )}
      {onPutBack !== null && (
        <Button variant="subtle" onClick={onPutBack}>
          Put back
        </Button>
      )}
      {onLayOut !== null && (
        <Button variant="subtle" leftSection={<IconRoute {...icon} />} onClick={onLayOut} loading={busy}>
          Lay out again
        </Button>
      )}
      <Button variant="subtle" leftSection={<IconPrinter {...icon} />} onClick={() => window.print()}>
        Print
      </Button>
      <Button variant="subtle" leftSection={<IconTable {...icon} />} onClick={onTables}>
        As tables
      </Button>
    </Toolbar>
  );
}
