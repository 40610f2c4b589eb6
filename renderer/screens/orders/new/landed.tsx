import { valueOfFirst } from '../../../../core/money/line-value.ts';
import { isUnit, unitFamily } from '../../../../core/units/quantity.ts';
import { Money } from '../../../parts/figures.tsx';
import type { LandedLine } from './preview.tsx';

export interface LandedProps {
  readonly shares: LandedLine | undefined;
  readonly quantityMilli: number | null;
  readonly unit: string;
  readonly currency: string;
}

/** What a line comes to with its share of the charges, and what one of it does. */
export function Landed({ shares, quantityMilli, unit, currency }: LandedProps) {
  const several = quantityMilli !== null && quantityMilli > 1000;
  const counts = isUnit(unit) && unitFamily(unit) === 'count';
  return (
    <div className="landed">
      <span className="quiet">With charges</span>
      {shares === undefined ? (
        <span className="quiet">–</span>
      ) : (
        <span>
          <Money amountMinor={shares.landedMinor} currency={currency} />
          {several && (
            <span className="quiet under">
              <Money amountMinor={valueOfFirst(shares.landedMinor, quantityMilli, 1000)} currency={currency} />{' '}
              {counts ? 'each' : `a ${unit}`}
            </span>
          )}
        </span>
      )}
    </div>
  );
}
