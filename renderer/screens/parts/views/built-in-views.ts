import type { SheetFilter, SheetView } from '../../../parts/sheet/sheet-types.ts';
import { plainView } from '../../../parts/sheet/sheet-view.ts';
import { hiddenAtFirst } from '../columns/part-columns.tsx';

/** What a fresh sheet looks like. */
export const firstView: SheetView = { ...plainView, columns: { ...plainView.columns, hidden: hiddenAtFirst } };

/** Quantity columns are empty where there is none. */
const filled = (key: string): SheetFilter => ({ key, op: 'blank', value: false });

const showing = (...keys: string[]): readonly string[] => hiddenAtFirst.filter((key) => !keys.includes(key));
const view = (filters: readonly SheetFilter[], more: Partial<SheetView> = {}, shown: string[] = []): SheetView => ({
  ...firstView,
  columns: { ...firstView.columns, hidden: showing(...shown) },
  filters,
  ...more,
});

/** Views that are there before anybody saves one. */
export const builtInViews: readonly { readonly id: string; readonly name: string; readonly view: SheetView }[] = [
  { id: 'all', name: 'All lines', view: firstView },
  {
    id: 'to-get',
    name: 'Still to get',
    view: view([filled('toGet')], { sort: [{ key: 'neededBy', dir: 'ascending' }] }, ['neededBy', 'priority']),
  },
  {
    id: 'coming',
    name: 'On the way',
    view: view([filled('onOrder')], { sort: [{ key: 'promised', dir: 'ascending' }] }, ['backOrdered']),
  },
  { id: 'in-hand', name: 'In hand, not fitted', view: view([filled('inHand')], {}, ['bin', 'job']) },
  { id: 'for-now', name: 'Trial or borrowed', view: view([filled('temporary')], {}, ['temporary', 'bin']) },
  { id: 'eye', name: 'Wants an eye', view: view([filled('attention')], {}, ['attention']) },
];
