import { Button, Checkbox } from '@mantine/core';
import { IconCheck } from '@tabler/icons-react';
import { useState } from 'react';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { useWorkspace } from '../../../app/workspace.tsx';
import { DateField } from '../../../parts/date-field.tsx';
import { quantityText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { BadFields } from './bad-fields.tsx';
import { allCame, badMilli, cameMilli, type LineCount, restMilli } from './box-draft.ts';
import { Stepper } from './stepper.tsx';

export interface BoxLineFieldsProps {
  readonly line: OrderDetail['lines'][number];
  readonly count: LineCount;
  readonly onChange: (count: LineCount) => void;
  /** Name of the line in what is sent, which a refusal uses. */
  readonly field: string;
}

/** One line of the box: how many are good, what is wrong with others, and what is said about the rest. */
export function BoxLineFields({ line, count, onChange, field }: BoxLineFieldsProps) {
  const locale = useLocale();
  const { today } = useWorkspace();
  const [wrong, setWrong] = useState(false);
  const { description, unit, outstandingMilli } = line;
  const say = (quantityMilli: number) => quantityText(quantityMilli, locale, unit);
  const rest = restMilli(count, line);
  const allWords = outstandingMilli === 1000 ? 'It came' : `All ${say(outstandingMilli)}`;
  const wrongWords = wrong ? 'Fold away' : 'Wrong, damaged, too many';
  const whole = cameMilli(count) >= outstandingMilli;
  return (
    <li className="box-line" data-counted={cameMilli(count) + count.extraMilli > 0 || undefined}>
      <div className="box-what">
        <strong>{description}</strong>
        <span className="quiet">
          {line.partNumber !== '' && `${line.partNumber} · `}
          {say(outstandingMilli)} to come of {say(line.quantityMilli)}
        </span>
      </div>
      <div className="box-counts">
        <Stepper
          name={`${field}.goodMilli`}
          label="Good"
          of={description}
          unit={unit}
          value={count.goodMilli}
          onChange={(goodMilli) => onChange({ ...count, goodMilli })}
          most={Math.max(0, outstandingMilli - badMilli(count))}
        />
        <Button
          leftSection={<IconCheck aria-hidden size="1.2em" />}
          aria-label={`${allWords}: ${description}`}
          disabled={whole}
          onClick={() => onChange(allCame(count, line))}
        >
          {allWords}
        </Button>
        <Button
          variant="subtle"
          aria-expanded={wrong}
          aria-label={`${wrongWords}: ${description}`}
          onClick={() => setWrong(!wrong)}
        >
          {wrongWords}
        </Button>
      </div>
      {wrong && (
        <div className="box-wrong">
          <BadFields line={line} count={count} onChange={onChange} field={field} />
          <Stepper
            name={`${field}.extraMilli`}
            label="More than ordered"
            of={description}
            unit={unit}
            value={count.extraMilli}
            onChange={(extraMilli) => onChange({ ...count, extraMilli })}
          />
        </div>
      )}
      {rest > 0 && (
        <div className="box-rest">
          <Checkbox
            label={
              rest === outstandingMilli
                ? 'Not in the box: said to be on back-order'
                : `The other ${say(rest)} said to be on back-order`
            }
            checked={count.restBackOrdered}
            onChange={(event) => onChange({ ...count, restBackOrdered: event.currentTarget.checked })}
          />
          {count.restBackOrdered && (
            <DateField
              name={`${field}.restPromisedOn`}
              label="Promised for"
              description="Empty: they gave no date."
              value={count.restPromisedOn}
              onChange={(restPromisedOn) => onChange({ ...count, restPromisedOn })}
              today={today}
            />
          )}
        </div>
      )}
    </li>
  );
}
