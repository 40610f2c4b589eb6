import type { ActResult } from '../../../../core/contract/common.ts';
import type { PartRow } from '../../../../core/contract/parts.ts';
import { Refusal } from '../../../../core/refusal.ts';
import { actKey, api, refusalOf } from '../../../app/client.ts';
import type { PartRowsStore } from '../rows/part-rows.ts';
import type { CellActs } from './column-tools.ts';

/** Where and when cells are stored, as it is at the moment of the commit. */
export interface CellPlace {
  readonly build: number | null;
  readonly asOf: string | null;
  readonly today: string;
  readonly store: PartRowsStore | null;
}

/**
 * Stores cells. The same text sent again after no answer came keeps its key, so it can't be stored twice. When somebody
 * else changed the line meanwhile, both values are said and the line is read again: a second Enter stores over theirs.
 */
export function cellActs(place: () => CellPlace): CellActs {
  let pending: { readonly what: string; readonly key: string } | null = null;
  const store = async (what: string, row: PartRow, send: (key: string) => Promise<ActResult>) => {
    if (pending?.what !== what) pending = { what, key: actKey() };
    const result = await send(pending.key);
    pending = null;
    await place().store?.refresh([row.id], result.act);
  };

  return {
    allowed: () => place().asOf === null,
    save: async (row, values, typed, shown) => {
      const send = (key: string) =>
        api.parts.edit({ key, on: place().today, part: row.id, revision: row.revision, values });
      try {
        await store(JSON.stringify([row.id, row.revision, values]), row, send);
      } catch (error) {
        const refusal = refusalOf(error);
        if (refusal.code !== 'conflict') throw refusal;
        pending = null;
        await place().store?.refresh([row.id]);
        const now = place()
          .store?.loaded()
          .rows.find(({ id }) => id === row.id);
        const theirs = now === undefined ? 'nothing any more: the line was dropped' : `“${shown(now) || 'empty'}”`;
        throw new Refusal(
          'conflict',
          `Somebody changed this line meanwhile. It holds ${theirs}; you typed “${typed}”. Enter stores yours, Esc keeps theirs.`,
          { field: 'revision' },
        );
      }
    },
    putInBin: async (row, bin) => {
      const { build, today } = place();
      if (build === null) return;
      const send = (key: string) =>
        api.parts.act({ key, on: today, build, act: 'bin', items: [{ part: row.id }], bin });
      try {
        await store(JSON.stringify([row.id, 'bin', bin]), row, send);
      } catch (error) {
        throw refusalOf(error);
      }
    },
  };
}
