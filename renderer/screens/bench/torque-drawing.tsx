import { useEffect, useRef } from 'react';
import type { TorqueView } from '../../../core/contract/bench.ts';

type Bolts = Pick<TorqueView, 'bolts' | 'sequence' | 'next' | 'pattern'> & { readonly stages: number };

export interface TorqueDrawingProps {
  readonly drawn: Bolts;
  /** Left out while nothing can be tightened. */
  readonly onBolt?: (bolt: number) => void;
  /** Bolts that are chosen, where tapping chooses instead of tightening. */
  readonly chosen?: readonly number[];
}

/** Width in rem that keeps the bolts apart: the columns of rows, or the round of a circle (its radius is 0.42 of the width). */
function widthOf(bolts: Bolts['bolts'], circle: boolean): number {
  if (circle) return (bolts.length * 3.5) / (2 * Math.PI * 0.42);
  return new Set(bolts.map(({ x }) => x.toFixed(4))).size * 2.4;
}

/** How far a bolt is, in words that the drawing and the spoken name share. */
function standing(bolt: Bolts['bolts'][number], stages: number): string {
  if (bolt.rechecked) return 'rechecked';
  if (bolt.stages >= stages) return 'final';
  return bolt.stages === 0 ? 'loose' : `${bolt.stages} of ${stages}`;
}

const marks: Readonly<Record<string, string>> = { final: '✓', rechecked: '✓✓', loose: '–' };

/**
 * The bolts where they lie, numbered, with the way round drawn between them. What a bolt has been through stands under
 * its number; the next one has a thick ring and an arrow, so that nothing hangs on a colour.
 */
export function TorqueDrawing({ drawn, onBolt, chosen }: TorqueDrawingProps) {
  const { bolts, sequence, next, stages, pattern } = drawn;
  const spots = new Map(bolts.map(({ bolt, x, y }) => [bolt, `${x * 100},${y * 100}`]));
  const rows = new Set(bolts.map(({ y }) => y.toFixed(4))).size;
  const circle = pattern === 'star';
  const frame = useRef<HTMLElement>(null);
  const at = bolts.find(({ bolt }) => bolt === next?.bolt)?.x ?? null;
  useEffect(() => {
    const { current } = frame;
    if (current !== null && at !== null) current.scrollLeft = at * current.scrollWidth - current.clientWidth / 2;
  }, [at]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a long row of bolts is scrolled by keyboard too
    <section className="torque-frame" aria-label="The bolts, and the way round" tabIndex={0} ref={frame}>
      <div
        className="torque-drawing"
        data-pattern={circle ? 'circle' : 'rows'}
        data-rows={rows}
        style={{ minWidth: `${widthOf(bolts, circle)}rem` }}
      >
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          <polyline
            points={sequence.map((bolt) => spots.get(bolt) ?? '').join(' ')}
            vectorEffect="non-scaling-stroke"
          />
        </svg>
        {bolts.map((bolt) => {
          const far = standing(bolt, stages);
          const isNext = next?.bolt === bolt.bolt;
          return (
            <button
              key={bolt.bolt}
              type="button"
              className="torque-bolt"
              style={{ left: `${bolt.x * 100}%`, top: `${bolt.y * 100}%` }}
              data-far={bolt.stages >= stages ? 'final' : bolt.stages > 0 ? 'part' : 'loose'}
              data-next={isNext || undefined}
              aria-label={`Bolt ${bolt.bolt}, ${far}${isNext ? ', next' : ''}`}
              disabled={onBolt === undefined || (chosen === undefined && (next === null || bolt.stages >= next.stage))}
              {...(chosen === undefined ? {} : { 'aria-pressed': chosen.includes(bolt.bolt) })}
              onClick={() => onBolt?.(bolt.bolt)}
            >
              <span className="torque-number">
                {isNext && <span aria-hidden>▸</span>}
                {bolt.bolt}
              </span>
              <span className="torque-far" aria-hidden>
                {marks[far] ?? far.replace(' of ', '/')}
              </span>
            </button>
          );
        })}
      </div>
    </section>
  );
}
