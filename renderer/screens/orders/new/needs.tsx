import { Button, Checkbox } from '@mantine/core';
import { useState } from 'react';
import { TextField } from '../../../parts/fields.tsx';
import { counted, quantityText, unitPriceText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import type { Need } from './new-draft.ts';

export interface NeedsProps {
  readonly needs: readonly Need[];
  readonly vendor: number | null;
  /** Part lines that are on the order already. */
  readonly chosen: ReadonlySet<number | null>;
  readonly onAdd: (needs: readonly Need[]) => void;
  readonly onDrop: (part: number) => void;
}

const mostShown = 60;

/** What the build still needs and nobody has ordered, to tick: that vendor's first, the others on request. */
export function Needs({ needs, vendor, chosen, onAdd, onDrop }: NeedsProps) {
  const locale = useLocale();
  const own = needs.filter((need) => vendor !== null && need.vendor === vendor);
  const [others, setOthers] = useState(false);
  const [words, setWords] = useState('');
  if (needs.length === 0) return <p className="quiet">Everything that the build needs is in hand or on order.</p>;
  const wide = others || own.length === 0;
  const folded = words.trim().toLowerCase();
  const found = (wide ? needs : own).filter(({ description, partNumber }) =>
    `${description} ${partNumber}`.toLowerCase().includes(folded),
  );
  const shown = [...found]
    .sort((a, b) => Number(b.vendor === vendor) - Number(a.vendor === vendor))
    .slice(0, mostShown);
  const left = own.filter(({ part }) => !chosen.has(part));
  return (
    <fieldset className="ticks needs">
      <legend>
        {wide
          ? `Still to order: ${counted(needs.length, 'part line', 'part lines')}`
          : `Meant for this vendor: ${counted(own.length, 'part line', 'part lines')}`}
      </legend>
      <div className="needs-tools">
        {(wide ? needs : own).length > 8 && (
          <TextField name="find needs" label="Find" value={words} onChange={setWords} />
        )}
        {left.length > 1 && <Button onClick={() => onAdd(left)}>Tick all {left.length} meant for this vendor</Button>}
        {own.length > 0 && needs.length > own.length && (
          <Button variant="subtle" onClick={() => setOthers(!others)}>
            {others ? 'Only those meant for this vendor' : `Show the other ${needs.length - own.length} too`}
          </Button>
        )}
      </div>
      <div className="needs-list">
        {shown.map((need) => (
          <Checkbox
            key={need.part}
            label={need.description}
            description={[
              quantityText(need.uncoveredMilli, locale, need.unit),
              need.estimateEachE4 === null ? 'no estimate' : `about ${unitPriceText(need.estimateEachE4, locale)} each`,
              ...(need.partNumber === '' ? [] : [need.partNumber]),
            ].join(' · ')}
            checked={chosen.has(need.part)}
            onChange={(event) => (event.currentTarget.checked ? onAdd([need]) : onDrop(need.part))}
          />
        ))}
      </div>
      {found.length > shown.length && (
        <p className="quiet">{found.length - shown.length} more; find them by a word of their name.</p>
      )}
    </fieldset>
  );
}
