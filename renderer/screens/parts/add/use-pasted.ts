import { useEffect, useState } from 'react';
import type { ImportChoices, ImportReport } from '../../../../core/contract/exchange.ts';
import type { ImportPlan, Mapping } from '../../../../core/exchange/import-types.ts';
import { api } from '../../../app/client.ts';
import { type RefusalWords, refusalWords } from '../../../parts/refusal-note.tsx';

/** A pasted text as understood: which column is what, and the lines that would be added. */
export interface PastedPlan {
  readonly choices: ImportChoices;
  readonly plan: ImportPlan;
  readonly mapping: Mapping;
  /** The same text was added before, by this act. */
  readonly known: string | null;
}

export type Pasted =
  | { readonly state: 'nothing' }
  | { readonly state: 'reading' }
  | { readonly state: 'refused'; readonly refusal: RefusalWords }
  | ({ readonly state: 'ready' } & PastedPlan);

async function readPasted(text: string, build: number, currency: string, answers: Record<string, string>) {
  // The same reader as for a file: headings, prices, sections and doubtful words are understood alike.
  const file = new File([text], 'pasted lines.tsv', { type: 'text/tab-separated-values' });
  const { token, mappings, known } = await api.exchange.read({ file });
  const [mapping] = mappings;
  const choices: ImportChoices = {
    token,
    sheet: 0,
    answers,
    defaults: { currency, paid: 'not-recorded', missingQuantityIsOne: true },
    build,
    ...(mapping === undefined ? {} : { mapping }),
  };
  const planned = await api.exchange.plan(choices);
  return { choices, plan: planned.plan, mapping: planned.mapping, known: known?.label ?? null };
}

/** Reads pasted text as it changes; an answer that comes too late is dropped. */
export function usePasted(
  text: string,
  build: number | null,
  currency: string,
  answers: Record<string, string>,
): Pasted {
  const [pasted, setPasted] = useState<Pasted>({ state: 'nothing' });
  useEffect(() => {
    if (build === null || text.trim() === '') {
      setPasted({ state: 'nothing' });
      return;
    }
    let wanted = true;
    setPasted((now) => (now.state === 'ready' ? now : { state: 'reading' }));
    const wait = setTimeout(() => {
      readPasted(text, build, currency, answers).then(
        (ready) => wanted && setPasted({ state: 'ready', ...ready }),
        (error: unknown) => wanted && setPasted({ state: 'refused', refusal: refusalWords(error) }),
      );
    }, 250);
    return () => {
      wanted = false;
      clearTimeout(wait);
    };
  }, [text, build, currency, answers]);
  return pasted;
}

/** Adds the planned lines as one act; new systems, vendors and bins are made with them. */
export const bringInPasted = (key: string, input: ImportChoices & { readonly on: string; readonly again: boolean }) =>
  api.exchange.bringIn({ key, ...input }) as Promise<ImportReport>;
