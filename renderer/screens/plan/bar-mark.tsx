import { type BarState, barStates } from '../../../core/contract/plan.ts';

/** How each state looks: ink, and a pattern that tells it without colour. */
const looks: Readonly<
  Record<BarState, { readonly ink: string; readonly pattern: 'full' | 'none' | 'slant' | 'dots' | 'upright' }>
> = {
  done: { ink: 'var(--ink-soft)', pattern: 'full' },
  'in hand': { ink: 'var(--link)', pattern: 'full' },
  'waiting for parts': { ink: 'var(--blocks)', pattern: 'slant' },
  'waiting for a tool': { ink: 'var(--warn)', pattern: 'dots' },
  'waiting for another job': { ink: 'var(--line-strong)', pattern: 'upright' },
  free: { ink: 'var(--good)', pattern: 'none' },
};

const patternId = (base: string, state: BarState): string => `${base}-${barStates.indexOf(state)}`;

/** The patterns of the bars, once for a drawing. */
export function BarPatterns({ base }: { readonly base: string }) {
  return (
    <defs>
      {barStates.map((state) => {
        const { ink, pattern } = looks[state];
        return (
          <pattern
            key={state}
            id={patternId(base, state)}
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            {...(pattern === 'slant' ? { patternTransform: 'rotate(45)' } : {})}
          >
            <rect width="6" height="6" fill={pattern === 'full' ? ink : 'var(--paper-raised)'} />
            {(pattern === 'slant' || pattern === 'upright') && <rect width="2" height="6" fill={ink} />}
            {pattern === 'dots' && <circle cx="3" cy="3" r="1.4" fill={ink} />}
          </pattern>
        );
      })}
      <marker
        id={`${base}-head`}
        viewBox="0 0 8 8"
        refX="7"
        refY="4"
        markerWidth="6"
        markerHeight="6"
        orient="auto-start-reverse"
      >
        <path d="M0 0 8 4 0 8z" fill="context-stroke" />
      </marker>
    </defs>
  );
}

export interface BarMarkProps {
  readonly base: string;
  readonly state: BarState;
  readonly critical: boolean;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A bar: pattern by state, ends cut square for work and round for what is done, a heavy foot when it holds the gate. */
export function BarMark({ base, state, critical, x, y, width, height }: BarMarkProps) {
  const { ink } = looks[state];
  return (
    <>
      <rect
        x={x + 0.5}
        y={y}
        width={Math.max(3, width - 1)}
        height={state === 'done' ? height / 2 : height}
        rx={state === 'done' ? height / 4 : 1.5}
        fill={`url(#${patternId(base, state)})`}
        stroke={ink}
        strokeWidth="1.25"
        {...(state === 'done' ? { transform: `translate(0 ${height / 4})` } : {})}
      />
      {critical && <rect x={x} y={y + height + 1.5} width={Math.max(4, width)} height="2.5" fill="var(--ink)" />}
    </>
  );
}

/** What the patterns mean, in the drawing's own marks. */
export function BarsKey({
  base,
  words,
}: {
  readonly base: string;
  readonly words: Readonly<Record<BarState, string>>;
}) {
  return (
    <ul className="bars-key">
      {barStates.map((state) => (
        <li key={state}>
          <svg width="26" height="14" aria-hidden="true">
            <BarMark base={base} state={state} critical={false} x={1} y={1} width={24} height={11} />
          </svg>
          {words[state]}
        </li>
      ))}
      <li>
        <svg width="26" height="14" aria-hidden="true">
          <rect x="1" y="6" width="24" height="2.5" fill="var(--ink)" />
        </svg>
        no time to spare
      </li>
      <li>
        <svg width="26" height="14" aria-hidden="true">
          <path d="M1 7h24M25 3v8" stroke="var(--line-strong)" strokeWidth="1.5" fill="none" />
        </svg>
        time to spare
      </li>
    </ul>
  );
}
