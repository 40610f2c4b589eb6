import { z } from 'zod';
import { benchContract } from './bench.ts';
import { buyingContract } from './buying.ts';
import { checksContract } from './checks.ts';
import { actBase, actResult, id, ofBuild, procedure } from './common.ts';
import { exchangeContract } from './exchange.ts';
import { fitsContract } from './fits.ts';
import { forecastContract } from './forecast.ts';
import { gateContract } from './gate.ts';
import { derivation, journalContract, searchHit, whyQuestion } from './journal.ts';
import { moneyContract } from './money.ts';
import { ordersContract } from './orders.ts';
import { partsContract } from './parts.ts';
import { planContract, startView } from './plan.ts';
import { plumbingContract, schematicContract } from './plumbing.ts';
import { recordsContract } from './records.ts';
import { tonightContract } from './tonight.ts';
import { whatIfContract } from './what-if.ts';
import { buildRow, workbookContract } from './workbook.ts';

/** Every procedure of the program, the same for the window, the browser and the command line. */
export const contract = {
  workbook: workbookContract,
  builds: {
    list: procedure.output(z.array(buildRow)),
    create: procedure
      .input(actBase.extend({ values: buildRow.omit({ id: true }).partial().required({ name: true }) }))
      .output(actResult),
  },
  records: recordsContract,
  parts: partsContract,
  orders: ordersContract,
  money: moneyContract,
  plan: planContract,
  start: { view: procedure.input(ofBuild).output(startView) },
  gate: gateContract,
  forecast: forecastContract,
  buying: buyingContract,
  checks: checksContract,
  fits: fitsContract,
  plumbing: { ...plumbingContract, ...schematicContract },
  bench: benchContract,
  tonight: tonightContract,
  whatIf: whatIfContract,
  journal: journalContract,
  why: { ask: procedure.input(whyQuestion).output(derivation) },
  search: {
    find: procedure.input(z.object({ text: z.string().max(200), build: id.optional() })).output(z.array(searchHit)),
  },
  exchange: exchangeContract,
};
export type Contract = typeof contract;

/** One message of the change feed (GET /api/changes, text/event-stream). */
export interface ChangeNotice {
  readonly act: number;
  readonly label: string;
  /** Part lines to read again; null = read everything again. */
  readonly parts: readonly number[] | null;
}
