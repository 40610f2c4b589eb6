import { Button, Menu } from '@mantine/core';
import { IconChevronDown } from '@tabler/icons-react';
import type { PartDetail, PartRow } from '../../../../core/contract/parts.ts';
import { type ActGroup, specOf } from '../acts/act-specs.ts';
import type { OpenAct } from '../acts/open-act.tsx';

export interface PartActsProps {
  readonly row: PartRow;
  /** What the workbook says can be done now. */
  readonly possible: PartDetail['possible'];
  readonly onAct: (open: OpenAct) => void;
}

/** Groups that stay folded: they are seldom what a part is opened for. */
const folded: readonly ActGroup[] = ['From elsewhere', 'Leaving'];

/** Every act that is possible on the part now: the likely ones as buttons, the rest in two menus. */
export function PartActs({ row, possible, onAct }: PartActsProps) {
  const groups = Map.groupBy(possible, ({ act }) => specOf(act).group);
  const open = ({ act, mostMilli }: PartDetail['possible'][number]) =>
    onAct({ kind: 'units', spec: specOf(act), target: { rows: [row], ...(mostMilli > 0 ? { mostMilli } : {}) } });
  const shown = possible.filter(({ act }) => !folded.includes(specOf(act).group));
  return (
    <>
      {shown.map((each) => (
        <Button key={each.act} onClick={() => open(each)}>
          {specOf(each.act).label}…
        </Button>
      ))}
      {folded.map((group) => {
        const acts = groups.get(group) ?? [];
        if (acts.length === 0) return null;
        return (
          <Menu key={group} position="bottom-start">
            <Menu.Target>
              <Button rightSection={<IconChevronDown aria-hidden size="1em" />}>{group}</Button>
            </Menu.Target>
            <Menu.Dropdown>
              {acts.map((each) => (
                <Menu.Item key={each.act} onClick={() => open(each)}>
                  {specOf(each.act).label}…
                </Menu.Item>
              ))}
            </Menu.Dropdown>
          </Menu>
        );
      })}
    </>
  );
}
