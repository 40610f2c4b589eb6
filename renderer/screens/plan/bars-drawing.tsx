import { memo, useId } from 'react';
import type { BarsView, PlanBar } from '../../../core/contract/plan.ts';
import { hoursText } from '../../parts/minutes.ts';
import { BarMark, BarPatterns, BarsKey } from './bar-mark.tsx';
import { Arrows } from './bars-arrows.tsx';
import { type BarsRow, stateWords } from './bars-rows.ts';
import { marksOf, placeOf, type Scale, spanOf, widthOf, type Zoom } from './bars-scale.ts';
import { type BarDrag, type Drag, useBarDrag } from './use-bar-drag.ts';

export interface BarsDrawingProps {
  readonly view: BarsView;
  readonly rows: readonly BarsRow[];
  readonly scale: Scale;
  readonly zoom: Zoom;
  readonly rowHeight: number;
  readonly chosen: number | null;
  readonly canAct: boolean;
  readonly onDrop: (drag: Drag) => void;
  readonly onOpen: (bar: PlanBar) => void;
}

export const headHeight = 34;

/** The guess that a bar would have with its end dragged: in the same proportion, to a quarter of an hour. */
export function draggedMinutes(minutes: number, width: number, by: number): number {
  return Math.max(15, Math.round((minutes * Math.max(0, width + by)) / width / 15) * 15);
}

/** Bars over days. What it shows stands in words beside it and in the table, so it isn't heard. */
export function BarsDrawing(props: BarsDrawingProps) {
  const { view, rows, scale, zoom, rowHeight, chosen, canAct, onDrop, onOpen } = props;
  const base = useId();
  const moving = useBarDrag(onDrop, onOpen);
  const [width, height] = [widthOf(scale), headHeight + rows.length * rowHeight];
  const gate = view.gate.on === null ? null : placeOf(scale, view.gate.on) + scale.perDay;
  const today = placeOf(scale, view.today);
  return (
    <svg className="bars-drawing" width={width} height={height} aria-hidden="true">
      <BarPatterns base={base} />
      {marksOf(scale, zoom).map(({ at, label, strong }) => (
        <g key={at}>
          <path d={`M${at} ${headHeight - 12}V${height}`} className="bars-line" data-strong={strong || undefined} />
          <text x={at + 3} y={headHeight - 5}>
            {label}
          </text>
        </g>
      ))}
      <g transform={`translate(0 ${headHeight})`}>
        {rows.map((row, index) =>
          row.kind === 'phase' ? (
            <path key={row.key} d={`M0 ${(index + 1) * rowHeight - 1}H${width}`} className="bars-phase-line" />
          ) : null,
        )}
        <Arrows base={base} rows={rows} scale={scale} rowHeight={rowHeight} chosen={chosen} />
        {rows.map((row, index) =>
          row.kind === 'bar' ? (
            <OneBar
              key={row.key}
              base={base}
              bar={row.bar}
              top={index * rowHeight}
              rowHeight={rowHeight}
              scale={scale}
              chosen={chosen === row.bar.id}
              drag={moving.drag?.bar.id === row.bar.id ? moving.drag : null}
              handlers={canAct && row.bar.state !== 'done' ? moving.handlers : null}
            />
          ) : null,
        )}
      </g>
      <path d={`M${today} ${headHeight - 16}V${height}`} className="bars-today" />
      <text x={today + 3} y={11} className="bars-today-word">
        today
      </text>
      {gate !== null && (
        <>
          <path d={`M${gate} ${headHeight - 16}V${height}`} className="bars-gate" />
          <text x={gate - 3} y={11} textAnchor="end" className="bars-gate-word">
            {view.gate.name}
          </text>
        </>
      )}
    </svg>
  );
}

interface OneBarProps {
  readonly base: string;
  readonly bar: PlanBar;
  readonly top: number;
  readonly rowHeight: number;
  readonly scale: Scale;
  readonly chosen: boolean;
  readonly drag: Drag | null;
  readonly handlers: BarDrag['handlers'] | null;
}

const unmoved = (before: OneBarProps, now: OneBarProps): boolean =>
  before.bar === now.bar &&
  before.top === now.top &&
  before.rowHeight === now.rowHeight &&
  before.scale === now.scale &&
  before.chosen === now.chosen &&
  before.drag === null &&
  now.drag === null &&
  // While nothing is dragged an older handler does the same.
  (before.handlers === null) === (now.handlers === null);

const OneBar = memo(function OneBar({ base, bar, top, rowHeight, scale, chosen, drag, handlers }: OneBarProps) {
  const span = spanOf(scale, bar);
  if (span === null) return null;
  const height = Math.min(18, rowHeight * 0.55);
  const y = top + (rowHeight - height) / 2;
  const days = drag === null ? 0 : Math.round(drag.by / scale.perDay) * scale.perDay;
  const x = span.x + (drag?.part === 'bar' ? days : 0);
  const width = drag?.part === 'end' ? Math.max(scale.perDay / 2, span.width + drag.by) : span.width;
  const late = bar.lateFinishOn === null || bar.critical ? null : placeOf(scale, bar.lateFinishOn) + scale.perDay;
  const middle = y + height / 2;
  const ended = handlers?.(bar, 'end');
  const guessed =
    drag?.part === 'end' && bar.minutesGuess !== null
      ? hoursText(draggedMinutes(bar.minutesGuess, span.width, drag.by))
      : stateWords[bar.state];
  return (
    <g className="bars-bar" data-job={bar.id} data-chosen={chosen || undefined}>
      {late !== null && late > x + width && (
        <path d={`M${x + width} ${middle}H${late}M${late} ${middle - 4}v8`} className="bars-float" />
      )}
      <g {...(handlers === null ? {} : { ...handlers(bar, 'bar'), className: 'bars-grab' })}>
        {/* As tall as the row, so that a thumb finds it. */}
        <rect x={x - 4} y={top} width={width + 8} height={rowHeight} fill="transparent" />
        <BarMark base={base} state={bar.state} critical={bar.critical} x={x} y={y} width={width} height={height} />
      </g>
      {ended !== undefined && bar.minutesGuess !== null && (
        <rect
          x={x + width - (width < 20 ? 0 : 4)}
          y={top}
          width={9}
          height={rowHeight}
          fill="transparent"
          className="bars-pull"
          {...ended}
        />
      )}
      <text x={Math.max(x + width, late ?? 0) + 6} y={middle} dominantBaseline="central" className="bars-word">
        {guessed}
      </text>
    </g>
  );
}, unmoved);

/** What the marks mean; the patterns of the drawing are used again. */
export function DrawingKey() {
  const base = useId();
  return (
    <>
      <svg width="0" height="0" aria-hidden="true" className="bars-patterns">
        <BarPatterns base={base} />
      </svg>
      <BarsKey base={base} words={stateWords} />
    </>
  );
}
