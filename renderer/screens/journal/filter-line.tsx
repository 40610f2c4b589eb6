import { Button, Checkbox, MultiSelect } from '@mantine/core';
import { IconFilterOff } from '@tabler/icons-react';
import { useEffect, useEffectEvent, useState } from 'react';
import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { Link } from '../../app/route.tsx';
import { useWorkspace } from '../../app/workspace.tsx';
import { DateField } from '../../parts/date-field.tsx';
import { Choice, TextField } from '../../parts/fields.tsx';
import { FoundChoice } from './found-choice.tsx';
import { type Asked, isNarrowed } from './journal-filter.ts';
import { isKindGroup, kindGroupNames, kindGroups } from './kind-groups.ts';

export interface FilterLineProps {
  readonly asked: Asked;
  readonly onChange: (asked: Asked) => void;
  readonly names: { readonly part: string; readonly order: string };
}

/** Everything that the journal can be narrowed to. */
export function FilterLine({ asked, onChange, names }: FilterLineProps) {
  const { builds, today, asOf } = useWorkspace();
  const vendors = useRead(['records', null, 'vendor', 'all'], () =>
    api.records.list({ kind: 'vendor', retired: true }),
  );
  const set = (change: Partial<Asked>) => onChange({ ...asked, ...change });
  const latest = asOf ?? undefined;
  return (
    <section className="journal-filters not-printed" aria-label="Which entries">
      <WordsField text={asked.text} onChange={(text) => set({ text })} />
      <MultiSelect
        label="Kinds"
        placeholder={asked.groups.length === 0 ? 'All kinds' : ''}
        value={[...asked.groups]}
        onChange={(groups) => set({ groups: groups.filter(isKindGroup) })}
        data={kindGroupNames.map((name) => ({ value: name, label: kindGroups[name].title }))}
        clearable
        clearButtonProps={{ 'aria-label': 'All kinds' }}
      />
      <FoundChoice label="Part" kind="part" value={asked.part} name={names.part} onChange={(part) => set({ part })} />
      <FoundChoice
        label="Order"
        kind="order"
        value={asked.order}
        name={names.order}
        onChange={(order) => set({ order })}
      />
      <Choice
        name="vendor"
        label="Vendor"
        none="Any vendor"
        value={asked.vendor === null ? null : String(asked.vendor)}
        onChange={(vendor) => set({ vendor: vendor === null ? null : Number(vendor) })}
        options={
          vendors.state === 'ready'
            ? vendors.value.map(({ id, values }) => ({ value: String(id), label: String(values['name']) }))
            : []
        }
      />
      <DateField
        name="from"
        label="From day"
        value={asked.from}
        onChange={(from) => set({ from })}
        today={today}
        {...(latest === undefined ? {} : { max: latest })}
      />
      <DateField name="to" label="To day" value={asked.to} onChange={(to) => set({ to })} today={today} />
      <div className="journal-ticks">
        <Checkbox
          size="md"
          label="Standing entries only"
          checked={asked.standingOnly}
          onChange={(event) => set({ standingOnly: event.currentTarget.checked })}
        />
        {builds.length > 1 && (
          <Checkbox
            size="md"
            label="This build only"
            checked={asked.buildOnly}
            onChange={(event) => set({ buildOnly: event.currentTarget.checked })}
          />
        )}
        {asked.act !== null && (
          <span>
            Act {asked.act} only. <Link to="/journal">All acts</Link>
          </span>
        )}
        {isNarrowed(asked) && (
          <Button
            variant="subtle"
            size="compact"
            leftSection={<IconFilterOff aria-hidden size="1.1em" />}
            onClick={() => onChange({ ...emptied, buildOnly: asked.buildOnly })}
          >
            Show all entries
          </Button>
        )}
      </div>
    </section>
  );
}

const emptied: Asked = {
  text: '',
  groups: [],
  part: null,
  order: null,
  vendor: null,
  act: null,
  from: null,
  to: null,
  standingOnly: false,
  buildOnly: false,
};

/** Words are asked for once the typing pauses, so that the list doesn't jump at every letter. */
function WordsField({ text, onChange }: { readonly text: string; readonly onChange: (text: string) => void }) {
  const [typed, setTyped] = useState(text);
  const [given, setGiven] = useState(text);
  if (given !== text) {
    setGiven(text);
    setTyped(text);
  }
  const ask = useEffectEvent(onChange);
  useEffect(() => {
    if (typed === text) return;
    const pause = setTimeout(() => ask(typed), 250);
    return () => clearTimeout(pause);
  }, [typed, text]);
  return <TextField name="text" label="Words" value={typed} onChange={setTyped} longest={200} />;
}
