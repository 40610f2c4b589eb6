import type { Blocker, BlockerKind } from '../../../core/contract/gate.ts';
import type { Derivation } from '../../../core/contract/journal.ts';
import { showMinutes } from '../../../core/schedule/working-time.ts';
import { dateText } from '../../parts/formats.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';

/** The heading above each kind of thing that blocks. */
export const kindHeadings: Readonly<Record<BlockerKind, string>> = {
  'part not in hand': 'Parts not in hand',
  'part not fitted': 'Parts not fitted',
  'part not verified': 'Parts not verified',
  'trial part on': 'Trial parts on',
  'borrowed part on': 'Borrowed parts on',
  'wrong part not settled': 'Wrong parts not settled',
  'bolts not final': 'Bolts not at final torque',
  'check failing': 'Checks that fail',
  'check unknown': 'Checks that lack a figure',
  'measurement missing': 'Measurements missing',
  'measurement out': 'Measurements out of limits',
  'fit wrong': 'Fits that are wrong',
  'fit unknown': 'Fits that lack something',
  'line unfit': 'Lines that fail a check',
  'line unknown': 'Lines that lack something',
  'line not made': 'Lines not made',
  'job open': 'Jobs open',
  'tool missing': 'Tools missing',
  'decision open': 'Decisions open',
};

/** Where each kind of subject is opened, by the parameter that names it. */
const subjectPlaces = {
  part: ['/parts', 'part'],
  job: ['/plan', 'job'],
  tool: ['/lists', 'tool'],
  decision: ['/lists', 'decision'],
  'bolt-group': ['/bench', 'torque'],
  check: ['/checks', 'check'],
  'measuring-sheet': ['/bench', 'sheet'],
  connection: ['/fit', 'connection'],
  'declared-fit': ['/fit', 'declared'],
  'hose-line': ['/plumbing', 'line'],
} as const;

/** The address of what blocks. */
export function placeOf({ kind, id }: Blocker['subject']): {
  readonly to: string;
  readonly params: Record<string, number>;
} {
  const [to, param] = subjectPlaces[kind];
  return { to, params: { [param]: id } };
}

/** Names one thing that blocks, for as long as it does. */
export const blockerKey = ({ kind, subject }: Pick<Blocker, 'kind' | 'subject'>): string =>
  `${kind}/${subject.kind}/${subject.id}`;

export interface BlockerGroup<Row extends Blocker> {
  readonly kind: BlockerKind;
  readonly heading: string;
  readonly rows: readonly Row[];
}

/** What blocks, by kind in the order of the headings; within a kind, what holds the date longest comes first. */
export function groupedByKind<Row extends Blocker>(rows: readonly Row[]): readonly BlockerGroup<Row>[] {
  const groups = Map.groupBy(rows, ({ kind }) => kind);
  return (Object.keys(kindHeadings) as BlockerKind[]).flatMap((kind) => {
    const found = groups.get(kind);
    return found === undefined ? [] : [{ kind, heading: kindHeadings[kind], rows: found }];
  });
}

/** Where the figures of one row come from: what the check counted for it, said in its own words. */
export function blockerDerivation(blocker: Blocker, locale: LocaleSettings): Derivation {
  const term = (label: string, text: string, amountMinor: number | null = null) => ({
    label,
    text,
    amountMinor,
    quantityMilli: null,
  });
  const day = (date: string | null, none: string) => (date === null ? none : dateText(date, locale));
  return {
    title: blocker.title,
    quantityMilli: null,
    amountMinor: null,
    text: blocker.why,
    formula:
      'It is cleared once it is ready and its work is done in the free hours, after what it waits for. Days gained compares the day of the whole check with and without it.',
    source: blocker.noDate,
    terms: [
      term('Work on it may begin', day(blocker.readyOn, 'not known')),
      ...(blocker.readyLateOn === null
        ? []
        : [
            term('In four of five cases by', day(blocker.readyLateOn, '')),
            term('These days stand on', blocker.readySays),
          ]),
      term('Hands-on work', blocker.minutes === 0 ? 'none counted here' : showMinutes(blocker.minutes)),
      term('Cleared at best', day(blocker.clearOn, 'no date')),
      term('Days gained if cleared now', String(blocker.daysGained)),
      term('Still costs', blocker.costMinor === null ? 'not known' : '', blocker.costMinor),
    ],
    entries: [],
    more: 0,
  };
}
