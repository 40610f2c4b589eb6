// biome-ignore-all lint/a11y/useSemanticElements: table elements can't hold lines that are placed by hand
// biome-ignore-all lint/a11y/useFocusableInteractive: focus stays on the grid, which names its active cell
import { memo } from 'react';
import type { GroupHead } from './index-rows.ts';
import { alignOf, type SheetLayout } from './sheet-layout.ts';
import { cellId } from './sheet-row.tsx';

interface GroupRowProps<Row> {
  readonly group: GroupHead;
  readonly title: string;
  readonly line: number;
  readonly top: number;
  readonly layout: SheetLayout<Row>;
  readonly activeColumn: number;
  readonly idPrefix: string;
  /** The group's rows, for subtotals; asked for only while the head is in sight. */
  readonly members: (group: GroupHead) => readonly Row[];
}

function GroupRowPlain<Row>(props: GroupRowProps<Row>) {
  const { group, line, layout, activeColumn } = props;
  const columns = layout.cards ? [] : layout.columns;
  const found = columns.findIndex((column, index) => index > 0 && column.subtotal !== undefined);
  const span = found === -1 ? columns.length : found;
  const figures = columns.slice(span);
  const members = figures.length > 0 ? props.members(group) : [];
  const count = group.end - group.start;
  const headActive = activeColumn !== -1 && (activeColumn < span || layout.cards);
  return (
    <div
      role="row"
      className="sheet-row sheet-group"
      data-line={line}
      aria-rowindex={line + 2}
      aria-expanded={!group.collapsed}
      aria-level={1}
      style={{ transform: `translateY(${props.top}px)` }}
    >
      <div
        role="gridcell"
        id={headActive ? cellId(props.idPrefix, line, activeColumn) : undefined}
        className={headActive ? 'sheet-cell sheet-group-head sheet-active' : 'sheet-cell sheet-group-head'}
        data-column={0}
        aria-colindex={1}
        aria-colspan={span + 1}
        style={{ gridColumn: layout.cards ? '1 / -1' : `1 / span ${span + 1}` }}
      >
        <span className="sheet-group-words">
          <span className="sheet-fold" data-folded={group.collapsed} aria-hidden="true" />
          <span className="sheet-text">{group.text || `No ${props.title.toLowerCase()}`}</span>
          <span className="sheet-group-count">{count.toLocaleString()}</span>
        </span>
      </div>
      {figures.map((column, index) => {
        const active = activeColumn === span + index;
        return (
          <div
            role="gridcell"
            key={column.key}
            id={active ? cellId(props.idPrefix, line, span + index) : undefined}
            className={`sheet-cell sheet-${alignOf(column)}${active ? ' sheet-active' : ''}`}
            data-column={span + index}
            aria-colindex={span + index + 2}
          >
            <span className="sheet-text">{column.subtotal?.(members)}</span>
          </div>
        );
      })}
    </div>
  );
}

export const GroupRow = memo(GroupRowPlain) as typeof GroupRowPlain;
