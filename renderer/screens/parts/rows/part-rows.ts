import type { ChangeNotice } from '../../../../core/contract/index.ts';
import type { PartRow } from '../../../../core/contract/parts.ts';
import { mergeRows } from './merge-rows.ts';

export interface Reading {
  readonly build: number;
  readonly asOf?: string;
}

/** What the loader asks of the workbook. */
export interface PartsSource {
  readonly rows: (
    input: Reading & { readonly from: number; readonly count: number },
  ) => Promise<{ total: number; lastAct: number; columns: string[]; rows: unknown[][] }>;
  readonly byIds: (input: Reading & { readonly ids: number[] }) => Promise<PartRow[]>;
}

/** The lines as far as they are here. */
export interface LoadedRows {
  readonly rows: readonly PartRow[];
  /** Lines in all; null until the first page is here. */
  readonly total: number | null;
  readonly complete: boolean;
  readonly error: unknown;
}

export interface PartRowsStore {
  readonly subscribe: (listener: () => void) => () => void;
  readonly loaded: () => LoadedRows;
  /** Reads all lines again; those that are shown stay until the new ones are here. */
  readonly reload: () => void;
  /** Reads the lines again that an act changed. The act's own message of the change feed is then passed over. */
  readonly refresh: (ids: readonly number[], act?: number) => Promise<void>;
  readonly hear: (notice: ChangeNotice) => void;
}

/** Enough to fill any screen: asked for alone, so that something is there at once. */
export const firstPage = 200;
const chunk = 10_000;
/** As many ids as one question takes; beyond them the whole list is read again. */
const mostIds = 5000;
const nothing: LoadedRows = { rows: [], total: null, complete: false, error: null };

function objects(columns: readonly string[], rows: readonly unknown[][]): PartRow[] {
  return rows.map((row) => {
    const made: Record<string, unknown> = {};
    for (let at = 0; at < columns.length; at += 1) made[columns[at] as string] = row[at];
    return made as PartRow;
  });
}

/** Loads the part lines of a build page by page and keeps them up to date line by line. */
export function partRowsStore(source: PartsSource, reading: Reading): PartRowsStore {
  const listeners = new Set<() => void>();
  let loaded = nothing;
  let run = 0;
  let lastAct = 0;
  let loading = false;
  /** Lines changed while pages are still coming in: they are read again at the end. */
  const changed = new Set<number>();
  const show = (next: LoadedRows) => {
    loaded = next;
    for (const listener of listeners) listener();
  };

  const load = async (again = 3): Promise<void> => {
    run += 1;
    loading = true;
    const mine = run;
    const replacing = loaded.complete;
    const found = new Map<number, PartRow>();
    try {
      let total = 1;
      for (let from = 0; from < total; ) {
        const count = from === 0 ? firstPage : chunk;
        const page = await source.rows({ ...reading, from, count });
        if (mine !== run) return;
        if (from === 0) lastAct = page.lastAct;
        // A line that came or went between two pages moves the others: one could be missed where pages meet.
        else if (page.lastAct !== lastAct && again > 0) return await load(again - 1);
        total = page.total;
        for (const row of objects(page.columns, page.rows)) found.set(row.id, row);
        from += count;
        const complete = from >= total;
        if (complete || !replacing) show({ rows: [...found.values()], total, complete, error: null });
      }
      loading = false;
      const late = [...changed];
      changed.clear();
      if (late.length > 0) await refresh(late);
    } catch (error) {
      if (mine !== run) return;
      loading = false;
      show({ ...loaded, error });
    }
  };

  const refresh = async (ids: readonly number[], act?: number) => {
    if (act !== undefined) lastAct = Math.max(lastAct, act);
    if (ids.length === 0) return;
    if (loading) {
      for (const id of ids) changed.add(id);
      return;
    }
    if (ids.length > mostIds) return load();
    const mine = run;
    try {
      const read = await source.byIds({ ...reading, ids: [...ids] });
      if (mine !== run) {
        for (const id of ids) changed.add(id);
        return;
      }
      const rows = mergeRows(loaded.rows, ids, read);
      show({ rows, total: rows.length, complete: true, error: null });
    } catch (error) {
      if (mine === run) show({ ...loaded, error });
    }
  };

  void load();
  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    loaded: () => loaded,
    reload: () => void load(),
    refresh,
    hear: ({ act, parts }) => {
      if (parts === null) void load();
      else if (act > lastAct) void refresh(parts, act);
    },
  };
}
