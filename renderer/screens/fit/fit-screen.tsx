import { TextInput } from '@mantine/core';
import { fit as judge } from '../../../core/fit/fit.ts';
import { useRoute } from '../../app/route.tsx';
import { Choice } from '../../parts/fields.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { change, portOf, pressureOf, roleOf } from './fit-address.ts';
import { mediumChoices, roleChoices } from './fit-words.ts';
import { PortField } from './port-field.tsx';
import { VerdictDetails, VerdictWords } from './verdict.tsx';
import { WhichThread } from './which-thread.tsx';
import './fit.css';

/** Whether two ports join. What is typed stands in the address, so that it can be shared and opened again. */
export default function FitScreen() {
  const { params } = useRoute();
  const { a = '', b = '', medium, pressure: typedPressure } = params;
  const role = roleOf(params);
  const one = portOf(a, role);
  const other = portOf(b, role);
  const pressure = pressureOf(typedPressure);
  const judged =
    one?.ok === true && other?.ok === true && pressure.kind !== 'problem'
      ? judge(one.port, other.port, {
          role,
          ...(medium === undefined ? {} : { medium }),
          ...(pressure.kind === 'value' ? { pressureBar: pressure.value } : {}),
        })
      : undefined;
  const waiting =
    pressure.kind === 'problem'
      ? 'No verdict while the pressure can’t be read.'
      : one?.ok === false || other?.ok === false
        ? 'No verdict while a port can’t be read.'
        : 'Write both ports, and this says whether they fit.';
  const known = mediumChoices.some(({ value }) => value === medium);
  const media = known || medium === undefined ? mediumChoices : [...mediumChoices, { value: medium, label: medium }];
  return (
    <Page
      title="Fit"
      answer={
        <div aria-live="polite">
          <Answer blocks={judged?.verdict === 'lookalike' || judged?.verdict === 'no'}>
            {judged === undefined ? waiting : <VerdictWords judged={judged} />}
          </Answer>
        </div>
      }
    >
      <div className="fit-ports">
        <PortField
          name="a"
          label="First port"
          placeholder="M14x1.5 male"
          value={a}
          reading={one}
          onChange={(text) => change(params, { a: text })}
        />
        <PortField
          name="b"
          label="Second port"
          placeholder="JIC -6 female"
          value={b}
          reading={other}
          onChange={(text) => change(params, { b: text })}
        />
      </div>
      <div className="fit-ports">
        <Choice
          name="role"
          label="What the joint is for"
          required
          value={role}
          options={roleChoices}
          onChange={(chosen) => change(params, { role: chosen ?? '' })}
        />
        <Choice
          name="medium"
          label="What flows through it"
          value={medium ?? null}
          options={media}
          none="Not said"
          onChange={(chosen) => change(params, { medium: chosen ?? '' })}
        />
        <TextInput
          label="Gauge pressure, bar unless said"
          placeholder="4 or 60 psi"
          name="pressure"
          value={typedPressure ?? ''}
          autoComplete="off"
          error={pressure.kind === 'problem' ? pressure.problem : false}
          onChange={(event) => change(params, { pressure: event.currentTarget.value })}
        />
      </div>
      {judged !== undefined && <VerdictDetails judged={judged} />}
      <WhichThread params={params} />
    </Page>
  );
}
