import { Refusal } from '../../../core/refusal.ts';
import { ReadField } from '../../parts/read-field.tsx';

interface Asked {
  readonly runs: number;
  readonly seed: number;
}

/** Reads a whole number from `least` to `most`. */
function whole(text: string, field: string, least: number, most: number): number {
  const value = Number(text.replaceAll(' ', ''));
  if (/^[\d ]+$/.test(text.trim()) && value >= least && value <= most) return value;
  throw new Refusal('bad-input', `“${text.trim()}” can't be used as ${field}. Nothing was changed.`, {
    field,
    accepted: `a whole number from ${least} to ${most}`,
  });
}

/** How many runs, and the seed that they are drawn from. */
export function RunFields({ asked, onAsk }: { readonly asked: Asked; readonly onAsk: (asked: Asked) => void }) {
  return (
    <>
      <ReadField
        name="runs"
        label="Runs"
        value={asked.runs}
        onChange={(runs) => runs !== null && onAsk({ ...asked, runs })}
        read={(text) => whole(text, 'runs', 1, 20_000)}
        write={String}
        numeric
        required
      />
      <ReadField
        name="seed"
        label="Seed"
        value={asked.seed}
        onChange={(seed) => seed !== null && onAsk({ ...asked, seed })}
        read={(text) => whole(text, 'seed', 0, Number.MAX_SAFE_INTEGER)}
        write={String}
        numeric
        required
      />
    </>
  );
}
