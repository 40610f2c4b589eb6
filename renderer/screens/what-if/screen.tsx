import { Button } from '@mantine/core';
import { IconArrowsSplit, IconPlus, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { VariantChange } from '../../../core/contract/records.ts';
import type { WhatIfView } from '../../../core/contract/what-if.ts';
import { api } from '../../app/client.ts';
import { navigate, type Params, useRoute } from '../../app/route.tsx';
import { useTask } from '../../app/task.ts';
import { useReading } from '../../app/workspace.tsx';
import { Toolbar } from '../../parts/furniture.tsx';
import { useLocale } from '../../parts/locale.tsx';
import { Empty, Loading } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';
import { type AskedChange, ChangeForm } from './change-form.tsx';
import { changeText } from './change-words.ts';
import { KeepForm } from './keep-form.tsx';
import { KeptVariants } from './kept-variants.tsx';
import { SideBySide } from './side-by-side.tsx';
import { useNames } from './use-names.ts';
import './what-if.css';

/** Things changed on trial: what they do to the day, the money and the orders. */
export default function WhatIfScreen() {
  const reading = useReading();
  if (reading === null) {
    return (
      <Page title="What if">
        <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
          Changes can be tried out here once the workbook has a build; one is made at the start.
        </Empty>
      </Page>
    );
  }
  if (reading.asOf !== undefined) {
    return (
      <Page title="What if">
        <p>A past day is shown: go back to today to try something out.</p>
      </Page>
    );
  }
  return <WhatIfOfBuild key={reading.build} build={reading.build} />;
}

interface Trying {
  readonly name: string;
  readonly changes: readonly VariantChange[];
}

const tried = 'Tried';

const same = (one: VariantChange, other: VariantChange): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What the address asks to try out: another wait for a part, other hours of a job. */
function askedOf({ part, job }: Params): AskedChange | null {
  if (part !== undefined && /^\d+$/.test(part)) return { what: 'lead time', subject: part };
  if (job !== undefined && /^\d+$/.test(job)) return { what: 'job hours', subject: job };
  return null;
}

function WhatIfOfBuild({ build }: { readonly build: number }) {
  const locale = useLocale();
  const names = useNames(build);
  const [changes, setChanges] = useState<readonly VariantChange[]>([]);
  const { params } = useRoute();
  const asked = askedOf(params);
  const [adding, setAdding] = useState(asked !== null);
  const [keeping, setKeeping] = useState(false);
  const [worked, setWorked] = useState<WhatIfView | null>(null);
  const work = useTask(async (variants: readonly Trying[]) => {
    setWorked(
      await api.whatIf.run({ build, variants: variants.map((one) => ({ ...one, changes: [...one.changes] })) }),
    );
  });
  const change = (next: readonly VariantChange[]) => {
    setChanges(next);
    setWorked(null);
  };
  return (
    <Page
      title="What if"
      answer={
        <Answer>{worked?.answer ?? 'Change something on trial, and see what it does to the day and the money.'}</Answer>
      }
    >
      <p className="soft">It is worked out on a copy in memory: nothing of it touches the journal.</p>
      <section className="what-if-section" aria-labelledby="what-if-changes">
        <h2 id="what-if-changes">What would be otherwise</h2>
        {changes.length === 0 ? (
          <p>Nothing yet.</p>
        ) : (
          <ul className="what-if-changes">
            {changes.map((one, index) => {
              const text = changeText(one, names, locale);
              return (
                <li key={text}>
                  <span>{text}</span>
                  <Button
                    size="compact"
                    variant="subtle"
                    leftSection={<IconTrash aria-hidden size="1.1em" />}
                    onClick={() => change(changes.filter((_, at) => at !== index))}
                  >
                    Leave out <span className="only-heard">{text}</span>
                  </Button>
                </li>
              );
            })}
          </ul>
        )}
        <Toolbar label="Try out">
          <Button leftSection={<IconPlus aria-hidden size="1.1em" />} onClick={() => setAdding(true)}>
            Add a change…
          </Button>
          <Button
            variant="filled"
            leftSection={<IconArrowsSplit aria-hidden size="1.1em" />}
            loading={work.busy}
            disabled={changes.length === 0}
            onClick={() => void work.run([{ name: tried, changes }])}
          >
            Work it out
          </Button>
          <Button disabled={changes.length === 0} onClick={() => setKeeping(true)}>
            Keep as a variant…
          </Button>
        </Toolbar>
      </section>
      {work.refusal !== null && <RefusalNote refusal={work.refusal} />}
      {work.busy && <Loading label="Working it out" />}
      {worked !== null && !work.busy && <SideBySide view={worked} />}
      <KeptVariants
        build={build}
        names={names}
        busy={work.busy}
        onOpen={(variant) => change(variant.changes)}
        onCompare={(variants) => void work.run(variants)}
      />
      {adding && (
        <ChangeForm
          names={names}
          asked={asked}
          onAdd={(one) => change(changes.some((other) => same(one, other)) ? changes : [...changes, one])}
          onClose={() => {
            setAdding(false);
            if (asked !== null) navigate('/what-if', {}, { replace: true });
          }}
        />
      )}
      {keeping && <KeepForm build={build} changes={changes} onClose={() => setKeeping(false)} />}
    </Page>
  );
}
