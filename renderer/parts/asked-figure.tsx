import type { ReactNode } from 'react';
import { useWhy, type Why } from '../app/why.tsx';
import './asked-figure.css';

export interface AskedFigureProps {
  /** What the figure is of, for those who hear it: "paid, Fuel". */
  readonly of: string;
  /** The question that the figure answers; null where nobody can be asked, and then it is plain text. */
  readonly why: Why | null;
  readonly children: ReactNode;
}

/** A figure that is itself the way to ask where it comes from, for tables where a button beside each would be noise. */
export function AskedFigure({ of, why, children }: AskedFigureProps) {
  const ask = useWhy();
  if (why === null) return <span className="figure">{children}</span>;
  return (
    <button type="button" className="asked-figure figure" onClick={() => ask(why)}>
      {children}
      <span className="only-heard">, {of}: why?</span>
    </button>
  );
}

export interface NamedFigure {
  readonly label: string;
  readonly why: Why | null;
  readonly figure: ReactNode;
  /** A few words under the figure. */
  readonly note?: ReactNode;
}

/** Figures with their names above them, side by side as far as the page is wide. Each can be asked why. */
export function FigureList({ figures }: { readonly figures: readonly NamedFigure[] }) {
  return (
    <dl className="figure-list">
      {figures.map(({ label, why, figure, note }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <AskedFigure of={label} why={why}>
              {figure}
            </AskedFigure>
            {note !== undefined && <span className="figure-note">{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
