import { Button } from '@mantine/core';
import { api } from '../../../app/client.ts';
import { useRead } from '../../../app/data.tsx';
import { type Fact, type KindOfPart, kindNamed } from './fact-fields.ts';

export interface FactProposalsProps {
  readonly part: number;
  readonly kinds: readonly KindOfPart[];
  readonly busy: boolean;
  /** The kind proposed (or none) with the facts that are taken. */
  readonly onAccept: (kind: string, facts: readonly Fact[]) => void;
}

const because = (text: string): string =>
  text.startsWith('the same part in ') ? `Copied from ${text.slice('the same part in '.length)}` : `Read from ${text}`;

/** What the description says plainly, or the same part said in another build: to be accepted, never taken unasked. */
export function FactProposals({ part, kinds, busy, onAccept }: FactProposalsProps) {
  const read = useRead(['checks', 'proposals', part], () => api.checks.proposals({ part }));
  if (read.state !== 'ready') return null;
  const { kind, kindBecause, facts } = read.value;
  if (kind === '' && facts.length === 0) return null;
  const bare = facts.map(({ key, value, unit }) => ({ key, value, unit }));
  return (
    <section aria-label="Proposals">
      <p>Proposed:</p>
      <ul className="part-proposals">
        {kind !== '' && (
          <li>
            <span>
              {because(kindBecause)}: kind of part {(kindNamed(kinds, kind)?.label ?? kind).toLowerCase()}
            </span>
            <Button size="compact" disabled={busy} onClick={() => onAccept(kind, [])}>
              Accept <span className="only-heard">kind of part {kind}</span>
            </Button>
          </li>
        )}
        {facts.map((fact, at) => (
          <li key={fact.key}>
            <span>
              {because(fact.because)}: {fact.label.toLowerCase()} {fact.value} {fact.unit}
            </span>
            <Button size="compact" disabled={busy} onClick={() => onAccept(kind, bare.slice(at, at + 1))}>
              Accept <span className="only-heard">{fact.label}</span>
            </Button>
          </li>
        ))}
      </ul>
      {facts.length + (kind === '' ? 0 : 1) > 1 && (
        <Button disabled={busy} onClick={() => onAccept(kind, bare)}>
          Accept all
        </Button>
      )}
    </section>
  );
}
