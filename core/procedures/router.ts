import { benchProcedures } from './bench.ts';
import { buildsProcedures } from './builds.ts';
import { buyingProcedures } from './buying.ts';
import { checksProcedures } from './checks.ts';
import { procedures } from './context.ts';
import { exchangeProcedures } from './exchange.ts';
import { fitsProcedures } from './fits.ts';
import { forecastProcedures } from './forecast.ts';
import { gateProcedures } from './gate.ts';
import { journalProcedures } from './journal.ts';
import { moneyProcedures } from './money.ts';
import { ordersProcedures } from './orders.ts';
import { partsProcedures } from './parts.ts';
import { planProcedures } from './plan.ts';
import { plumbingProcedures } from './plumbing.ts';
import { schematicProcedures } from './plumbing-schematic.ts';
import { recordsProcedures } from './records.ts';
import { searchProcedures } from './search.ts';
import { startProcedures } from './start.ts';
import { tonightProcedures } from './tonight.ts';
import { whatIfProcedures } from './what-if.ts';
import { whyProcedures } from './why.ts';
import { workbookProcedures } from './workbook.ts';

/** Every procedure of the contract answered; one that is missing or misspelt does not compile. */
export const router = procedures.router({
  workbook: workbookProcedures,
  builds: buildsProcedures,
  records: recordsProcedures,
  parts: partsProcedures,
  orders: ordersProcedures,
  money: moneyProcedures,
  plan: planProcedures,
  start: startProcedures,
  gate: gateProcedures,
  forecast: forecastProcedures,
  buying: buyingProcedures,
  checks: checksProcedures,
  fits: fitsProcedures,
  plumbing: { ...plumbingProcedures, ...schematicProcedures },
  bench: benchProcedures,
  tonight: tonightProcedures,
  whatIf: whatIfProcedures,
  journal: journalProcedures,
  why: whyProcedures,
  search: searchProcedures,
  exchange: exchangeProcedures,
});
