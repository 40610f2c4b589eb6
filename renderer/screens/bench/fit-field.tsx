import { useState } from 'react';
import type { RecordValues } from '../../../core/contract/records.ts';
import { Refusal } from '../../../core/refusal.ts';
import { Choice } from '../../parts/fields.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { NumberField } from './number-field.tsx';

type Fit = NonNullable<RecordValues['measuringSheet']['fit']>;

interface FitFieldProps {
  readonly fit: Fit | null;
  readonly places: readonly string[];
  readonly unit: string;
  readonly onChange: (fit: Fit | null) => void;
}

const decimal = (text: string): number => (text === '' ? Number.NaN : Number(text.replace(',', '.')));

/** "2.90 × 3, 2.95 × 1": sizes with how many of each; a size alone is one. */
function readSizes(text: string): Fit['sizes'] {
  const pieces = text.split(/[;\n]+|,\s+/).map((piece) => piece.trim());
  return pieces
    .filter((piece) => piece !== '')
    .map((piece) => {
      const found = /^([\d.,]+)\s*(?:[x×*]\s*(\d{1,4}))?\s*(.*)$/.exec(piece);
      const size = decimal(found?.[1] ?? '');
      if (found === null || !Number.isFinite(size)) {
        throw new Refusal('bad-input', `“${piece}” can't be taken. Nothing was changed.`, {
          field: 'sizes',
          accepted: 'sizes with how many, such as 2.90 x 3; 2.95 x 1',
        });
      }
      return { name: (found[3] ?? '').slice(0, 40), size, count: Number(found[2] ?? 1) };
    });
}

/** One size a place, in their order; – where it isn't known. */
function readNow(text: string, places: readonly string[]): Fit['now'] {
  const pieces = text.split(/[;\s]+/).filter((piece) => piece !== '');
  const now = pieces.map((piece) => (/^[-–?]$/.test(piece) ? null : decimal(piece)));
  if (
    now.length <= Math.max(places.length, 1) &&
    now.every((one) => one === null || (Number.isFinite(one) && one >= 0))
  ) {
    return now;
  }
  throw new Refusal('bad-input', `“${text.trim()}” can't be taken. Nothing was changed.`, {
    field: 'now',
    accepted: `at most ${places.length} sizes with blanks between, in the order of the places; 0 for none, – for not known`,
  });
}

const writeSizes = (sizes: Fit['sizes']): string =>
  sizes.map(({ size, count, name }) => `${size} x ${count}${name === '' ? '' : ` ${name}`}`).join('; ');
const writeNow = (now: Fit['now']): string => now.map((one) => (one === null ? '–' : String(one))).join(' ');

/** Shims or shells to choose among: what is aimed at, the sizes at hand and what is in now. */
export function FitField({ fit, places, unit, onChange }: FitFieldProps) {
  const [kept, setKept] = useState<Fit>(fit ?? { way: 'shim', target: 0, step: 0.05, sizes: [], now: [] });
  const set = (more: Partial<Fit>) => {
    const next = { ...kept, ...more };
    setKept(next);
    onChange(next);
  };
  return (
    <>
      <Choice
        name="fit"
        label="Shims or shells to choose"
        value={fit?.way ?? null}
        onChange={(way) => (way === null ? onChange(null) : set({ way }))}
        options={[
          { value: 'shim', label: 'Shims' },
          { value: 'shell', label: 'Bearing shells' },
        ]}
        none="None"
      />
      {fit !== null && (
        <>
          <div className="bench-fields">
            <NumberField
              name="fit.target"
              label="Aimed at"
              value={kept.target}
              onChange={(target) => set({ target: target ?? Number.NaN })}
              suffix={unit}
              required
            />
            <NumberField
              name="fit.step"
              label="Sizes come in steps of"
              value={kept.step}
              onChange={(step) => set({ step: step ?? Number.NaN })}
              suffix={unit}
              required
            />
          </div>
          <ReadField
            name="fit.sizes"
            label={fit.way === 'shim' ? 'Shims at hand' : 'Pairs of shells at hand, by their wall'}
            description="Such as 2.90 x 3; 2.95 x 1."
            value={writeSizes(kept.sizes)}
            onChange={(text) => set({ sizes: text === null ? [] : readSizes(text) })}
            read={(text) => writeSizes(readSizes(text))}
            write={(text) => text}
          />
          <ReadField
            name="fit.now"
            label="In the places now"
            description="One size a place, with blanks between; 0 for none, – for not known."
            value={writeNow(kept.now)}
            onChange={(text) => set({ now: text === null ? [] : readNow(text, places) })}
            read={(text) => writeNow(readNow(text, places))}
            write={(text) => text}
          />
        </>
      )}
    </>
  );
}
