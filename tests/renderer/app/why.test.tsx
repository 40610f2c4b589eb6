import { screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it } from 'vitest';
import type { Derivation, WhyQuestion } from '../../../core/contract/journal.ts';
import { useWhy, WhyProvider } from '../../../renderer/app/why.tsx';
import { WhyButton } from '../../../renderer/parts/page.tsx';
import { shown } from '../shown.tsx';

const derivation: Derivation = {
  title: 'Cost of the clutch kit',
  quantityMilli: null,
  amountMinor: 64_900,
  text: '',
  formula: 'price each × quantity + share of freight',
  source: '',
  terms: [{ label: 'Share of freight', amountMinor: 3000, quantityMilli: null, text: '' }],
  entries: [
    {
      seq: 412,
      on: '2026-02-06',
      text: '1 kit ordered',
      part: 3,
      description: 'Clutch kit',
      quantityMilli: 1000,
      amountMinor: 61_900,
      reversed: false,
    },
  ],
  more: 2,
};
const question: WhyQuestion = { build: 1, figure: 'cost', part: 3 };

function Figure() {
  const why = useWhy();
  return <WhyButton of="the cost" onClick={() => why(question)} />;
}

it('shows the figure, what goes in, and the entries with links to the journal', async () => {
  const asked: WhyQuestion[] = [];
  const ask = async (about: WhyQuestion) => {
    asked.push(about);
    return derivation;
  };
  shown(
    <WhyProvider ask={ask}>
      <Figure />
    </WhyProvider>,
  );
  await userEvent.click(screen.getByRole('button', { name: 'Why? the cost' }));
  const panel = await screen.findByRole('dialog', { name: 'Cost of the clutch kit' });
  expect(asked).toEqual([question]);
  expect(panel.textContent).toContain('$649.00');
  expect(within(panel).getByRole('row', { name: /Share of freight \$30.00/ })).toBeTruthy();
  expect(within(panel).getByRole('link', { name: '1 kit ordered' }).getAttribute('href')).toBe('#/journal?entry=412');
  expect(panel.textContent).toContain('2 earlier entries');
  await userEvent.keyboard('{Escape}');
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
});

it('says why it can’t tell', async () => {
  shown(
    <WhyProvider ask={() => Promise.reject(new TypeError('no answer'))}>
      <Figure />
    </WhyProvider>,
  );
  await userEvent.click(screen.getByRole('button', { name: 'Why? the cost' }));
  expect((await screen.findByRole('alert')).textContent).toContain('does not answer');
});
