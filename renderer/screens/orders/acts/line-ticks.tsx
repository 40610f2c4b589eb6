import { Checkbox } from '@mantine/core';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { QuantityField } from '../../../parts/fields.tsx';
import { quantityText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';

type Line = OrderDetail['lines'][number];

export interface TickedLine {
  readonly line: number;
  readonly on: boolean;
  /** Null while the typed quantity can't be read. */
  readonly quantityMilli: number | null;
}

export interface LineTicksProps {
  readonly legend: string;
  readonly lines: readonly Line[];
  /** Most units of the line that can be meant. */
  readonly most: (line: Line) => number;
  readonly ticked: readonly TickedLine[];
  readonly onChange: (ticked: readonly TickedLine[]) => void;
  readonly withQuantity: boolean;
}

/** Lines of an order to tick, each with how many of it are meant. */
export function LineTicks({ legend, lines, most, ticked, onChange, withQuantity }: LineTicksProps) {
  const locale = useLocale();
  const change = (line: number, part: Partial<TickedLine>) =>
    onChange(ticked.map((item) => (item.line === line ? { ...item, ...part } : item)));
  let sent = -1;
  return (
    <fieldset className="ticks">
      <legend>{legend}</legend>
      {lines.map((line) => {
        const now = ticked.find((item) => item.line === line.id);
        if (now?.on === true) sent += 1;
        return (
          <div key={line.id} className="tick">
            <Checkbox
              label={line.description}
              description={`${quantityText(most(line), locale, line.unit)} open`}
              checked={now?.on === true}
              onChange={(event) => change(line.id, { on: event.currentTarget.checked })}
            />
            {withQuantity && now?.on === true && (
              <div className="tick-quantity">
                <QuantityField
                  name={`lines.${sent}.quantityMilli`}
                  label={`How many of ${line.description}`}
                  unit={line.unit}
                  value={now.quantityMilli}
                  onChange={(quantityMilli) => change(line.id, { quantityMilli })}
                  required
                />
              </div>
            )}
          </div>
        );
      })}
    </fieldset>
  );
}
