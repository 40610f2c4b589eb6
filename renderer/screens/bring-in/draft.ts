import { useCallback, useSyncExternalStore } from 'react';
import type { ImportChoices, ImportReport } from '../../../core/contract/exchange.ts';
import type { Mapping, PaidState } from '../../../core/exchange/import-types.ts';
import type { Table, TableRead } from '../../../core/exchange/table-types.ts';
import type { LocaleSettings } from '../../parts/locale.tsx';

/** A file that was brought in before, by which act and when. */
export type KnownFile = { readonly act: number; readonly on: string; readonly label: string };

/** Everything that was decided so far about one file. Plain data beside the file itself. */
export interface Draft {
  readonly file: File;
  readonly token: string;
  readonly read: TableRead;
  /** Our guess, or what was confirmed before, for each sheet. */
  readonly guesses: readonly Mapping[];
  readonly known: KnownFile | null;
  readonly again: boolean;
  /** Null: as it was found. */
  readonly encoding: string | null;
  readonly sheet: number;
  /** Changed by hand, for each sheet. */
  readonly mappings: Readonly<Record<number, Mapping>>;
  readonly answers: Readonly<Record<string, string>>;
  readonly paid: PaidState;
  readonly currency: string;
  readonly matches: Readonly<Record<string, number>>;
  /** The step that is open, and the last one that was opened. */
  readonly step: number;
  readonly reached: number;
  readonly report: ImportReport | null;
}

/** A file that was just read, with nothing decided yet. */
export function newDraft(
  file: File,
  found: { token: string; read: TableRead; mappings: readonly Mapping[]; known: KnownFile | null },
  currency: string,
): Draft {
  return {
    file,
    token: found.token,
    read: found.read,
    guesses: found.mappings,
    known: found.known,
    again: false,
    encoding: null,
    sheet: 0,
    mappings: {},
    answers: {},
    paid: 'not-recorded',
    currency,
    matches: {},
    step: 1,
    reached: 1,
    report: null,
  };
}

export const tableOf = (draft: Draft): Table | undefined => draft.read.tables[draft.sheet];

export const mappingOf = (draft: Draft): Mapping | undefined =>
  draft.mappings[draft.sheet] ?? draft.guesses[draft.sheet];

/** What the workbook is asked to plan and to bring in. */
export function choicesOf(draft: Draft, build: number, locale: LocaleSettings): ImportChoices {
  const mapping = mappingOf(draft);
  return {
    token: draft.token,
    sheet: draft.sheet,
    answers: { ...draft.answers },
    build,
    defaults: {
      currency: draft.currency,
      dateOrder: locale.dateForm === 'mm/dd/yyyy' ? 'month-first' : 'day-first',
      paid: draft.paid,
      missingQuantityIsOne: false,
    },
    ...(draft.encoding === null ? {} : { encoding: draft.encoding }),
    ...(mapping === undefined ? {} : { mapping }),
    ...(Object.keys(draft.matches).length === 0 ? {} : { matches: { ...draft.matches } }),
  };
}

// The draft outlives the screen, so that a look at the parts in the middle of it costs nothing that was answered.
let kept: { readonly place: string; readonly draft: Draft } | null = null;
const listeners = new Set<() => void>();

function keep(place: string, draft: Draft | null): void {
  kept = draft === null ? null : { place, draft };
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export type ChangeDraft = (change: Partial<Draft>) => void;

/** The draft of one build; null while no file is chosen. `place` names the workbook and the build. */
export function useDraft(place: string): {
  readonly draft: Draft | null;
  readonly start: (draft: Draft | null) => void;
  readonly change: ChangeDraft;
} {
  const draft = useSyncExternalStore(subscribe, () => (kept?.place === place ? kept.draft : null));
  const start = useCallback((next: Draft | null) => keep(place, next), [place]);
  const change = useCallback<ChangeDraft>(
    (next) => {
      if (kept?.place === place) keep(place, { ...kept.draft, ...next });
    },
    [place],
  );
  return { draft, start, change };
}
