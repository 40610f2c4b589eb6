import { ActionIcon, Button } from '@mantine/core';
import { IconPlus, IconX } from '@tabler/icons-react';
import type { FitStop } from '../../../../core/contract/fits.ts';
import { MoneyField, QuantityField, TextField, UnitPriceField } from '../../../parts/fields.tsx';
import { FitMark } from '../../../parts/fit-mark.tsx';
import { Landed } from './landed.tsx';
import type { LineDraft } from './new-draft.ts';
import type { LandedLine } from './preview.tsx';

export interface LineFieldsProps {
  readonly lines: readonly LineDraft[];
  readonly currency: string;
  readonly base: string;
  /** What each line would cost with its share of the charges; empty while it isn't known. */
  readonly landed: readonly LandedLine[];
  readonly onChange: (lines: readonly LineDraft[]) => void;
  readonly onSpare: () => void;
  /** Fits that stop parts of the order. */
  readonly stops: readonly FitStop[];
}

/** The lines of the order: quantity and price each, and what each comes to with the charges in. */
export function LineFields({ lines, currency, base, landed, onChange, onSpare, stops }: LineFieldsProps) {
  const put = (key: number, part: Partial<LineDraft>) =>
    onChange(lines.map((line) => (line.key === key ? { ...line, ...part } : line)));
  return (
    <section aria-label="Lines of the order">
      <h2>Lines</h2>
      {lines.length === 0 && <p className="quiet">Tick what goes on the order above, or add a spare.</p>}
      <ol className="draft-lines">
        {lines.map((line, index) => {
          const name = line.part === null ? `line ${index + 1}` : line.description;
          const shares = landed[index];
          const stop = stops.find(({ part }) => part === line.part);
          return (
            <li key={line.key} className="draft-line">
              <div className="draft-what">
                {line.part === null ? (
                  <TextField
                    name={`lines.${index}.description`}
                    label="Spare: what it is"
                    value={line.description}
                    onChange={(description) => put(line.key, { description })}
                    longest={300}
                    required
                  />
                ) : (
                  <span>
                    <strong>{line.description}</strong>
                    {stop !== undefined && <FitMark look={stop.verdict} />}
                  </span>
                )}
                <ActionIcon
                  aria-label={`Leave out ${name}`}
                  onClick={() => onChange(lines.filter(({ key }) => key !== line.key))}
                >
                  <IconX aria-hidden size="1.2em" />
                </ActionIcon>
              </div>
              <div className="draft-fields">
                <QuantityField
                  name={`lines.${index}.quantityMilli`}
                  label="Quantity"
                  unit={line.unit}
                  value={line.quantityMilli}
                  onChange={(quantityMilli) => put(line.key, { quantityMilli })}
                  required
                />
                <UnitPriceField
                  name={`lines.${index}.eachE4`}
                  label="Price each"
                  currency={currency}
                  value={line.eachE4}
                  onChange={(eachE4) => put(line.key, { eachE4 })}
                  required
                />
                <MoneyField
                  name={`lines.${index}.coreDepositMinor`}
                  label="Core deposit"
                  currency={base}
                  value={line.coreDepositMinor}
                  onChange={(coreDepositMinor) => put(line.key, { coreDepositMinor })}
                />
                <Landed shares={shares} quantityMilli={line.quantityMilli} unit={line.unit} currency={currency} />
              </div>
            </li>
          );
        })}
      </ol>
      <Button leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={onSpare}>
        Add a spare that no part line needs
      </Button>
    </section>
  );
}
