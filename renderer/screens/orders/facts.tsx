import type { ReactNode } from 'react';
import { WhyButton } from '../../parts/page.tsx';

/** Facts in pairs: what, and how it stands. */
export function Facts({ children }: { readonly children: ReactNode }) {
  return <dl className="facts">{children}</dl>;
}

export interface FactProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Opens the derivation of the figure. */
  readonly onWhy?: () => void;
}

export function Fact({ title, children, onWhy }: FactProps) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        {children} {onWhy !== undefined && <WhyButton of={title} onClick={onWhy} />}
      </dd>
    </div>
  );
}
