import { IconCircleCheck } from '@tabler/icons-react';
import type { Calculator } from '../../../core/calculators/calculator.ts';
import type { Reading } from './reading.ts';

/** The ways to ask, where there are several; the one in use is marked. What is given decides. */
export function Ways({ calculator, reading }: { readonly calculator: Calculator; readonly reading: Reading }) {
  const { inputs, modes } = calculator;
  if (modes.length < 2) return null;
  const used = reading.state === 'answered' ? reading.answer.mode : undefined;
  return (
    <section className="calculators-prose">
      <h3>Ways to ask; the fields that are filled in decide</h3>
      <ul>
        {modes.map(({ name, title, needs }) => (
          <li key={name}>
            {title}: {needs.map((need) => inputs[need]?.label ?? need).join(', ')}
            {name === used && (
              <strong className="calculators-used">
                {' '}
                <IconCircleCheck aria-hidden size="1.1em" /> in use
              </strong>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
