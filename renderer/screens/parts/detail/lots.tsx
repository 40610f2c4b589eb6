import { Button, Menu } from '@mantine/core';
import { IconChevronDown } from '@tabler/icons-react';
import type { PartDetail, PartRow } from '../../../../core/contract/parts.ts';
import { moves } from '../../../../core/ledger/moves.ts';
import { DateText } from '../../../parts/figures.tsx';
import { moneyText, quantityText } from '../../../parts/formats.ts';
import { useLocale } from '../../../parts/locale.tsx';
import { type Column, SimpleTable } from '../../../parts/simple-table.tsx';
import { type ActSpec, actSpecs } from '../acts/act-specs.ts';
import type { OpenAct } from '../acts/open-act.tsx';
import { lotPlaces, lotSourceWords } from './lot-words.ts';
import { moveOfAct } from './move-of-act.ts';
import type { PartSectionProps } from './part-in-full.tsx';

type Lot = PartDetail['lots'][number];

/** The acts that could move units of this lot: it holds some where the act takes them from, and is whose it must be. */
export function actsForLot(lot: Lot): { readonly spec: ActSpec; readonly mostMilli: number }[] {
  return actSpecs.flatMap((spec) => {
    const kind = moveOfAct[spec.act];
    if (kind === undefined) return [];
    const borrowed = lot.source === 'borrowed';
    if (spec.act === 'give back' ? !borrowed : borrowed && !borrowedMay.has(spec.act)) return [];
    if (spec.act === 'send back' && lot.line === null) return [];
    const mostMilli = moves[kind].from.reduce((sum, bucket) => sum + (lot.places[bucket] ?? 0), 0);
    return mostMilli > 0 ? [{ spec, mostMilli }] : [];
  });
}

/** Acts on units that aren't ours: on and off the engine, and losing them. */
const borrowedMay: ReadonlySet<string> = new Set(
  actSpecs
    .map(({ act }) => act)
    .filter((act) => {
      const kind = moveOfAct[act];
      return kind !== undefined && moves[kind].whose.words === '';
    }),
);

/** The units that came in, delivery by delivery, with where they are and what can be done with just these. */
export function Lots({ detail, names, closed, onAct }: PartSectionProps & { readonly onAct: (open: OpenAct) => void }) {
  const { row, lots } = detail;
  const locale = useLocale();
  if (lots.length === 0) return null;
  const columns: Column<Lot>[] = [
    {
      id: 'came',
      title: 'Came in',
      rowHeader: true,
      cell: (lot) => (
        <>
          <DateText date={lot.cameInOn} />
          <span className="parts-under">
            {quantityText(lot.cameInMilli, locale, row.unit)}, {lotSourceWords(lot)}
          </span>
        </>
      ),
    },
    {
      id: 'places',
      title: 'Where they are',
      cell: (lot) => (
        <>
          {lotPlaces(lot.places).map(([place, milli]) => (
            <span key={place} className="part-place">
              {quantityText(milli, locale, row.unit)} {place}
            </span>
          ))}
          {names.bin.nameOf(lot.bin) !== '' && <span className="parts-under">Bin {names.bin.nameOf(lot.bin)}</span>}
          {lot.dueOn !== null && (
            <span className="parts-under">
              Due back <DateText date={lot.dueOn} />
            </span>
          )}
        </>
      ),
    },
    {
      id: 'cost',
      title: 'Cost',
      figures: true,
      cell: ({ costMinor }) => (costMinor === 0 ? '' : moneyText(costMinor, locale)),
    },
    {
      id: 'acts',
      title: 'Do',
      cell: (lot) => (closed === null && !row.dropped ? <LotActs lot={lot} row={row} onAct={onAct} /> : null),
    },
  ];
  return (
    <section aria-label="Units that came in">
      <h3>Units that came in</h3>
      <SimpleTable
        caption="Units that came in"
        captionHidden
        columns={columns}
        rows={lots}
        rowKey={({ id }) => String(id)}
      />
    </section>
  );
}

function LotActs(props: { readonly lot: Lot; readonly row: PartRow; readonly onAct: (open: OpenAct) => void }) {
  const { lot, row, onAct } = props;
  const acts = actsForLot(lot);
  if (acts.length === 0) return null;
  return (
    <Menu position="bottom-end">
      <Menu.Target>
        <Button size="compact" rightSection={<IconChevronDown aria-hidden size="1em" />}>
          These
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        {acts.map(({ spec, mostMilli }) => (
          <Menu.Item
            key={spec.act}
            onClick={() => onAct({ kind: 'units', spec, target: { rows: [row], lot: lot.id, mostMilli } })}
          >
            {spec.label}…
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  );
}
