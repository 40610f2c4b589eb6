import { TextInput } from '@mantine/core';
import { type Fit, fit as judge } from '../../../core/fit/fit.ts';
import type { Params } from '../../app/route.tsx';
import { Choice } from '../../parts/fields.tsx';
import { Answer } from '../../parts/page.tsx';
import { change, portOf, pressureOf, roleOf } from './fit-address.ts';
import { mediumChoices, roleChoices } from './fit-words.ts';
import { PortField } from './port-field.tsx';
import { VerdictDetails, VerdictWords } from './verdict.tsx';
import { WhichThread } from './which-thread.tsx';

/** What the two ports in the address come to, or what is waited for. */
function triedIn(params: Params): { readonly judged: Fit } | { readonly waiting: string } {
  const role = roleOf(params);
  const [one, other] = [portOf(params['a'], role), portOf(params['b'], role)];
  const pressure = pressureOf(params['pressure']);
  const { medium } = params;
  if (pressure.kind === 'problem') return { waiting: 'No verdict while the pressure can’t be read.' };
  if (one?.ok === false || other?.ok === false) return { waiting: 'No verdict while a port can’t be read.' };
  if (one === undefined || other === undefined) return { waiting: 'Write both ports, and this says whether they fit.' };
  return {
    judged: judge(one.port, other.port, {
      role,
      ...(medium === undefined ? {} : { medium }),
      ...(pressure.kind === 'value' ? { pressureBar: pressure.value } : {}),
    }),
  };
}

/** The verdict of the two ports that are typed, as the page's first sentence. */
export function TriedAnswer({ params }: { readonly params: Params }) {
  const tried = triedIn(params);
  const judged = 'judged' in tried ? tried.judged : undefined;
  return (
    <div aria-live="polite">
      <Answer blocks={judged?.verdict === 'lookalike' || judged?.verdict === 'no'}>
        {judged === undefined ? 'waiting' in tried && tried.waiting : <VerdictWords judged={judged} />}
      </Answer>
    </div>
  );
}

/** Two ports that nobody keeps. What is typed stands in the address, so that it can be shared and opened again. */
export function TryTwo({ params }: { readonly params: Params }) {
  const { a = '', b = '', medium, pressure: typedPressure } = params;
  const role = roleOf(params);
  const pressure = pressureOf(typedPressure);
  const tried = triedIn(params);
  const set = (changed: Params) => change(params, { view: 'try', ...changed });
  return (
    <div className="fit-block">
      <div className="fit-ports">
        <PortField
          name="a"
          label="First port"
          placeholder="M14x1.5 male"
          value={a}
          reading={portOf(a, role)}
          onChange={(text) => set({ a: text })}
        />
        <PortField
          name="b"
          label="Second port"
          placeholder="JIC -6 female"
          value={b}
          reading={portOf(b, role)}
          onChange={(text) => set({ b: text })}
        />
      </div>
      <div className="fit-ports">
        <Choice
          name="role"
          label="What the joint is for"
          required
          value={role}
          options={roleChoices}
          onChange={(chosen) => set({ role: chosen ?? '' })}
        />
        <Choice
          name="medium"
          label="What flows through it"
          value={medium ?? null}
          options={mediumChoices(medium)}
          none="Not said"
          onChange={(chosen) => set({ medium: chosen ?? '' })}
        />
        <TextInput
          label="Gauge pressure, bar unless said"
          placeholder="4 or 60 psi"
          name="pressure"
          value={typedPressure ?? ''}
          autoComplete="off"
          error={pressure.kind === 'problem' ? pressure.problem : false}
          onChange={(event) => set({ pressure: event.currentTarget.value })}
        />
      </div>
      {'judged' in tried && <VerdictDetails judged={tried.judged} />}
      <WhichThread params={params} />
    </div>
  );
}
