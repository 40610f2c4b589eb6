import { Button } from '@mantine/core';
import { type RejectReason, rejectReasons } from '../../../../core/ledger/entry.ts';
import { Choice, TextField } from '../../../parts/fields.tsx';
import type { BadUnits } from './box-draft.ts';
import { badMilli } from './box-draft.ts';
import type { BoxLineFieldsProps } from './box-line-fields.tsx';
import { Stepper } from './stepper.tsx';

const none: BadUnits = { quantityMilli: 0, reason: 'wrong part', note: '' };
const words: Readonly<Record<RejectReason, string>> = {
  'wrong part': 'Wrong part',
  faulty: 'Faulty',
  'transit damage': 'Damaged on the way',
  'wrong quantity': 'Wrong quantity',
};

/** Units that came and can't be used, each lot with its reason; they count as rejected, to be sent back. */
export function BadFields({ line, count, onChange, field }: BoxLineFieldsProps) {
  const list = count.bad.length === 0 ? [none] : count.bad;
  const put = (index: number, part: Partial<BadUnits>) =>
    onChange({ ...count, bad: list.map((units, at) => (at === index ? { ...units, ...part } : units)) });
  const room = Math.max(0, line.outstandingMilli - count.goodMilli - badMilli(count));
  /** Units that turn out bad were counted as good, as often as not: they are taken from there. */
  const countBad = (index: number, quantityMilli: number) => {
    const bad = list.map((units, at) => (at === index ? { ...units, quantityMilli } : units));
    const over = count.goodMilli + bad.reduce((sum, units) => sum + units.quantityMilli, 0) - line.outstandingMilli;
    onChange({ ...count, bad, goodMilli: Math.max(0, count.goodMilli - Math.max(0, over)) });
  };
  return (
    <>
      {list.map((units, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows are only added at the end
        <div key={index} className="box-bad">
          <Stepper
            name={`${field}.bad.${index}.quantityMilli`}
            label="Not usable"
            of={line.description}
            unit={line.unit}
            value={units.quantityMilli}
            onChange={(quantityMilli) => countBad(index, quantityMilli)}
            most={units.quantityMilli + room + count.goodMilli}
          />
          <Choice<RejectReason>
            name={`${field}.bad.${index}.reason`}
            label="Reason"
            value={units.reason}
            onChange={(reason) => put(index, { reason: reason ?? 'wrong part' })}
            options={rejectReasons.map((reason) => ({ value: reason, label: words[reason] }))}
            required
          />
          <TextField
            name={`${field}.bad.${index}.note`}
            label="What is wrong"
            value={units.note}
            onChange={(note) => put(index, { note })}
            longest={400}
          />
        </div>
      ))}
      {list.at(-1)?.quantityMilli !== 0 && list.length < 20 && (
        <Button variant="subtle" onClick={() => onChange({ ...count, bad: [...list, none] })}>
          Another reason
        </Button>
      )}
    </>
  );
}
