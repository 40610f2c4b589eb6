import { Button, TextInput } from '@mantine/core';
import type { ReactNode } from 'react';
import { identifyThread, type ThreadAnswer } from '../../../core/fit/identify.ts';
import { Refusal } from '../../../core/refusal.ts';
import { diameterOf, perInchOf, pitchOf, type Reading, readsPerInch } from './fit-address.ts';

export type Where = 'outside' | 'inside';

/** What was measured, as it was typed. */
export interface Measured {
  readonly diameter: string;
  readonly pitch: string;
  readonly where: Where;
}

interface Told {
  readonly answer?: ThreadAnswer;
  readonly problem?: string;
}

function answerOf(diameter: Reading, pitch: Reading, where: Where): Told {
  if (diameter.kind !== 'value' || pitch.kind === 'problem') return {};
  try {
    const measured = { diameter: diameter.value, where };
    return { answer: identifyThread(pitch.kind === 'value' ? { ...measured, pitch: pitch.value } : measured) };
  } catch (error) {
    if (error instanceof Refusal) return { problem: error.message };
    throw error;
  }
}

const readAs = (reading: Reading, empty: string, what: string): string =>
  reading.kind === 'value' ? `Read as ${Number(reading.value.toFixed(3))} mm ${what}.` : empty;

function pitchReadAs(typed: string, pitch: Reading): string {
  if (pitch.kind === 'value' && readsPerInch(typed)) {
    return `Read as ${perInchOf(typed)} threads per inch, ${Number(pitch.value.toFixed(3))} mm pitch: no thread is that coarse in mm.`;
  }
  return readAs(pitch, 'In mm, or threads per inch: 1.5 or 18 tpi.', 'pitch');
}

const wheres: readonly { readonly value: Where; readonly label: string }[] = [
  { value: 'outside', label: 'Outside thread, over the tips' },
  { value: 'inside', label: 'Inside thread, in the bore' },
];

export interface ThreadFinderProps {
  readonly measured: Measured;
  readonly onMeasured: (change: Partial<Measured>) => void;
  /** The words of the button that takes a thread: "Use M14x1.5 as first port". */
  readonly takeWords: (name: string) => string;
  /** A designation with its side: "M14x1.5 male". */
  readonly onUse: (designation: string) => void;
}

/** From what was measured to which thread it is, with those that look the same and how to tell them apart. */
export function ThreadFinder({ measured, onMeasured, takeWords, onUse }: ThreadFinderProps) {
  const { where } = measured;
  const diameter = diameterOf(measured.diameter);
  const pitch = pitchOf(measured.pitch);
  const { answer, problem } = answerOf(diameter, pitch, where);
  const other = readsPerInch(measured.pitch) ? null : perInchOf(measured.pitch);
  return (
    <>
      <p>Measure it with a caliper, then lay ten threads beside a rule and divide by ten.</p>
      <fieldset className="fit-gender">
        <legend>What was measured?</legend>
        {wheres.map(({ value, label }) => (
          <Button
            key={value}
            variant={where === value ? 'filled' : 'default'}
            aria-pressed={where === value}
            onClick={() => onMeasured({ where: value })}
          >
            {label}
          </Button>
        ))}
      </fieldset>
      <div className="fit-ports">
        <TextInput
          label="Measured diameter"
          description={readAs(diameter, 'In mm, or with its unit: 13.9 or 0.55 in.', 'diameter')}
          value={measured.diameter}
          autoComplete="off"
          error={diameter.kind === 'problem' ? diameter.problem : false}
          onChange={(event) => onMeasured({ diameter: event.currentTarget.value })}
        />
        <div className="fit-port">
          <TextInput
            label="Pitch or threads per inch"
            description={pitchReadAs(measured.pitch, pitch)}
            value={measured.pitch}
            autoComplete="off"
            error={pitch.kind === 'problem' ? pitch.problem : false}
            onChange={(event) => onMeasured({ pitch: event.currentTarget.value })}
          />
          {other !== null && (
            <Button variant="default" onClick={() => onMeasured({ pitch: `${other} tpi` })}>
              It is {other} threads per inch
            </Button>
          )}
        </div>
      </div>
      <div aria-live="polite">
        {problem !== undefined && <p className="fit-unread">{problem}</p>}
        {answer !== undefined && (
          <Found answer={answer}>
            {(name, designation) => (
              <Button
                variant="default"
                onClick={() => onUse(`${designation} ${where === 'outside' ? 'male' : 'female'}`)}
              >
                {takeWords(name)}
              </Button>
            )}
          </Found>
        )}
      </div>
    </>
  );
}

function Found({
  answer: { text, candidates, tellApart },
  children,
}: {
  readonly answer: ThreadAnswer;
  readonly children: (name: string, designation: string) => ReactNode;
}) {
  const [first, ...others] = candidates;
  if (first === undefined) return <p>{text}.</p>;
  return (
    <>
      <p className="fit-found">
        {first.likely ? 'It is most likely' : 'Nearest is'} <strong>{first.name}</strong>
        {others.length > 0 && `, but ${others.map(({ name }) => name).join(' and ')} can look the same`}.
      </p>
      <ol className="fit-list">
        {candidates.map(({ name, thread, reads, likely, usedOn }) => {
          const way = tellApart.find(({ other }) => other === name);
          return (
            <li key={name}>
              <strong>{name}</strong>
              <p>
                {likely ? 'Measures as it should' : 'Measured a little off'}: a sound one reads {reads[0]} to {reads[1]}{' '}
                mm.
                {usedOn.length > 0 && ` Used on ${usedOn.join(', ')}.`}
              </p>
              {way !== undefined && (
                <p>
                  Tell it from {way.one} by: {way.how}.
                </p>
              )}
              {children(name, thread.name)}
            </li>
          );
        })}
      </ol>
    </>
  );
}
