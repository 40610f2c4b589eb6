import type { SearchGroup } from '../parts/palette.tsx';
import { navigate } from './route.tsx';
import type { Screen } from './screens.ts';

type Search = (text: string, signal: AbortSignal) => Promise<readonly SearchGroup[]>;

/** What screens have of their own to be found, such as calculators, behind what the workbook finds. */
export function searchWithScreens(screens: readonly Screen[], search: Search | undefined): Search {
  return async (text, signal) => {
    const [found, ...own] = await Promise.all([
      search?.(text, signal) ?? [],
      ...screens.map(async ({ title, path, finder }): Promise<SearchGroup> => {
        const hits = finder === undefined ? [] : (await finder()).hits(text);
        return {
          title,
          hits: hits.map(({ id, label, detail, params }) => ({
            id: `${path}-${id}`,
            label,
            detail,
            open: () => navigate(path, params),
          })),
        };
      }),
    ]);
    return [...found, ...own.filter(({ hits }) => hits.length > 0)];
  };
}
