import type { PartRow } from '../../../core/contract/parts.ts';
import { useWhy } from '../../app/why.tsx';
import { useReading } from '../../app/workspace.tsx';
import { counted, moneyText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { Answer } from '../../parts/page.tsx';
import { sumOf } from './columns/row-figures.ts';

/** How many lines stand where, for the first sentence. */
export interface PartCounts {
  readonly lines: number;
  readonly toGet: number;
  readonly backOrdered: number;
  readonly wrong: number;
  readonly fitted: number;
  readonly forecastMinor: number;
}

export function countParts(rows: readonly PartRow[]): PartCounts {
  const count = (is: (row: PartRow) => boolean) => rows.filter(is).length;
  return {
    lines: rows.length,
    toGet: count(({ uncoveredMilli }) => uncoveredMilli > 0),
    backOrdered: count(({ backOrderedMilli }) => backOrderedMilli > 0),
    wrong: count(({ standing }) => standing === 'wrong'),
    fitted: count(({ standing }) => standing === 'fitted' || standing === 'snug' || standing === 'final'),
    forecastMinor: sumOf(rows, ({ forecastMinor }) => forecastMinor),
  };
}

const joined = (pieces: readonly string[]): string =>
  pieces.length < 2 ? (pieces[0] ?? '') : `${pieces.slice(0, -1).join(', ')} and ${pieces.at(-1)}`;

/** "Of 160 lines, 41 are still to get and 3 on back-order; 1 is wrong." */
export function answerWords({ lines, toGet, backOrdered, wrong, fitted }: PartCounts, past: boolean): string {
  const is = (count: number) => (past ? (count === 1 ? 'was' : 'were') : count === 1 ? 'is' : 'are');
  const n = (count: number) => count.toLocaleString('en');
  const open = [
    ...(toGet === 0 ? [] : [`${n(toGet)} ${is(toGet)} still to get`]),
    ...(backOrdered === 0 ? [] : [`${n(backOrdered)} ${is(backOrdered)} on back-order`]),
    ...(wrong === 0 ? [] : [`${n(wrong)} ${is(wrong)} wrong`]),
  ];
  if (open.length === 0) {
    if (fitted === lines)
      return lines === 1 ? `The one line ${is(1)} on the engine.` : `All ${n(lines)} lines ${is(lines)} on the engine.`;
    return `Nothing ${is(1)} left to order: ${counted(lines, 'line', 'lines')}, ${n(fitted)} of them on the engine.`;
  }
  return `Of ${counted(lines, 'line', 'lines')}, ${joined(open)}; ${n(fitted)} ${is(fitted)} on the engine.`;
}

/** The page's first sentence. Counts are said once all lines are here, never of a part of them. */
export function PartsAnswer(props: {
  readonly rows: readonly PartRow[];
  readonly total: number | null;
  readonly complete: boolean;
}) {
  const { rows, total, complete } = props;
  const locale = useLocale();
  const ask = useWhy();
  const reading = useReading();
  if (total === null) return <Answer>Reading the parts list…</Answer>;
  if (!complete) {
    return <Answer>{`${total.toLocaleString(locale.language)} lines; the last of them are still coming in.`}</Answer>;
  }
  if (total === 0) return <Answer>The parts list is empty.</Answer>;
  const counts = countParts(rows);
  const past = reading?.asOf !== undefined;
  return (
    <Answer
      blocks={counts.wrong > 0 || counts.backOrdered > 0}
      {...(reading === null ? {} : { onWhy: () => ask({ ...reading, figure: 'forecast' }) })}
    >
      {answerWords(counts, past)} In all they {past ? 'came' : 'come'} to{' '}
      <span className="figure">{moneyText(counts.forecastMinor, locale)}</span>.
    </Answer>
  );
}
