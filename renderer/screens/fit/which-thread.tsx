import { Button, TextInput } from '@mantine/core';
import { identifyThread, type ThreadAnswer } from '../../../core/fit/identify.ts';
import { Refusal } from '../../../core/refusal.ts';
import type { Params } from '../../app/route.tsx';
import { change, diameterOf, pitchOf, type Reading } from './fit-address.ts';

type Where = 'outside' | 'inside';

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

const wheres: readonly { readonly value: Where; readonly label: string }[] = [
  { value: 'outside', label: 'Outside thread, over the tips' },
  { value: 'inside', label: 'Inside thread, in the bore' },
];

/** For those who don't know the notation: what was measured, which thread it is, and what looks the same. */
export function WhichThread({ params }: { readonly params: Params }) {
  const { d, p, in: inside } = params;
  const where: Where = inside === 'inside' ? 'inside' : 'outside';
  const diameter = diameterOf(d);
  const pitch = pitchOf(p);
  const { answer, problem } = answerOf(diameter, pitch, where);
  return (
    <section aria-labelledby="which-thread" className="fit-which">
      <h2 id="which-thread">What is this thread?</h2>
      <p>Measure it with a caliper, then lay ten threads beside a rule and divide by ten.</p>
      <fieldset className="fit-gender">
        <legend>What was measured?</legend>
        {wheres.map(({ value, label }) => (
          <Button
            key={value}
            variant={where === value ? 'filled' : 'default'}
            aria-pressed={where === value}
            onClick={() => change(params, { in: value })}
          >
            {label}
          </Button>
        ))}
      </fieldset>
      <div className="fit-ports">
        <TextInput
          label="Measured diameter"
          description={readAs(diameter, 'In mm, or with its unit: 13.9 or 0.55 in.', 'diameter')}
          value={d ?? ''}
          autoComplete="off"
          error={diameter.kind === 'problem' ? diameter.problem : false}
          onChange={(event) => change(params, { d: event.currentTarget.value })}
        />
        <TextInput
          label="Pitch or threads per inch"
          description={readAs(pitch, 'In mm, or threads per inch: 1.5 or 18 tpi.', 'pitch')}
          value={p ?? ''}
          autoComplete="off"
          error={pitch.kind === 'problem' ? pitch.problem : false}
          onChange={(event) => change(params, { p: event.currentTarget.value })}
        />
      </div>
      <div aria-live="polite">
        {problem !== undefined && <p className="fit-unread">{problem}</p>}
        {answer !== undefined && <Found answer={answer} where={where} params={params} />}
      </div>
    </section>
  );
}

function Found({
  answer: { text, candidates, tellApart },
  where,
  params,
}: {
  readonly answer: ThreadAnswer;
  readonly where: Where;
  readonly params: Params;
}) {
  const [first, ...others] = candidates;
  if (first === undefined) return <p>{text}.</p>;
  const side = where === 'outside' ? 'male' : 'female';
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
              <Button variant="default" onClick={() => change(params, { a: `${thread.name} ${side}` })}>
                Use {name} as first port
              </Button>
            </li>
          );
        })}
      </ol>
    </>
  );
}
