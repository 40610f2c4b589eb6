import type { ContractRouterClient } from '@orpc/contract';
import type { Contract } from '../../core/contract/index.ts';

export type Client = ContractRouterClient<Contract>;

export type NamedKind =
  | 'system'
  | 'phase'
  | 'vendor'
  | 'bin'
  | 'job'
  | 'tool'
  | 'decision'
  | 'bolt-group'
  | 'measuring-sheet'
  | 'budget-line'
  | 'part'
  | 'order'
  | 'order-line'
  | 'port'
  | 'line'
  | 'act';

/** What the player knows while it plays: the ids behind the slugs, and the next idempotency key. */
export interface Stage {
  readonly client: Client;
  build: number;
  readonly by: string;
  name(kind: NamedKind, slug: string, id: number): void;
  /** @throws Error for a slug that nothing was made for yet. */
  id(kind: NamedKind, slug: string): number;
  /** Key and day of the next act. Played again on the same workbook, the same step has the same key. */
  act(on: string): { readonly key: string; readonly on: string };
}

export function newStage(client: Client, by: string): Stage {
  const ids = new Map<string, number>();
  let acts = 0;
  return {
    client,
    build: 0,
    by,
    name: (kind, slug, id) => {
      ids.set(`${kind} ${slug}`, id);
    },
    id: (kind, slug) => {
      const id = ids.get(`${kind} ${slug}`);
      if (id === undefined) throw new Error(`The demo names the ${kind} “${slug}” before it is made`);
      return id;
    },
    act: (on) => {
      acts += 1;
      return { key: `de300000-0000-4000-8000-${String(acts).padStart(12, '0')}`, on };
    },
  };
}

/** The id of the one record that an act made. */
export function onlyMade(result: { readonly made: readonly number[] }): number {
  const [id] = result.made;
  if (id === undefined) throw new Error('The act made no record');
  return id;
}
