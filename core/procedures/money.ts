import type { MoneyRow } from '../contract/money.ts';
import { formatMoney } from '../money/currency.ts';
import { Refusal } from '../refusal.ts';
import { readSettings } from '../workbook/store/connection.ts';
import { budgetEntries, moneyOf, moneyOverTime, moneyPerMonth } from '../workbook/store/money.ts';
import { needRecord, readRecord } from '../workbook/store/record-tables.ts';
import { act, counted, needBuild, procedures } from './context.ts';
import { earnedProcedures } from './money-earned.ts';
import { createRecord } from './records.ts';

const { money } = procedures;

const tables = { system: 'systems', phase: 'phases', vendor: 'vendors' } as const;

export const moneyProcedures = {
  ...earnedProcedures,
  summary: money.summary.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const { currency } = readSettings(connection);
    const { total } = moneyOf(connection, input.build, context.today(), input.asOf);
    return { ...total, currency, answer: moneyAnswer(total, currency) };
  }),
  by: money.by.handler(({ context, input }): MoneyRow[] => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const { rows } = moneyOf(connection, input.build, context.today(), input.asOf, input.by);
    const unassigned = input.by === 'vendor' ? 'No vendor' : 'Unassigned';
    const named = [...rows].map(([id, row]) => {
      const record = id === null ? undefined : readRecord(connection, tables[input.by], id);
      return {
        sort: Number(record?.['sort'] ?? 0),
        row: { ...row, id, name: id === null ? unassigned : String(record?.['name'] ?? id) },
      };
    });
    return named
      .sort((a, b) =>
        a.row.id === null || b.row.id === null
          ? Number(a.row.id === null) - Number(b.row.id === null)
          : input.by === 'vendor'
            ? b.row.forecastMinor - a.row.forecastMinor
            : a.sort - b.sort || a.row.id - b.row.id,
      )
      .map(({ row }) => row);
  }),
  overTime: money.overTime.handler(({ context, input }) => {
    needBuild(context, input.build);
    return moneyOverTime(context.book().connection, input.build, input.asOf ?? context.today());
  }),
  perMonth: money.perMonth.handler(({ context, input }) => {
    needBuild(context, input.build);
    return moneyPerMonth(context.book().connection, input.build, input.asOf ?? context.today());
  }),
  budgetChanges: money.budgetChanges.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const until = input.asOf ?? '9999-12-31';
    return budgetEntries(connection, input.build)
      .filter(({ on }) => on <= until)
      .map((entry) => {
        const line = entry.lineId === null ? undefined : readRecord(connection, 'budgetLines', entry.lineId);
        return {
          seq: entry.seq,
          on: entry.on,
          line: entry.lineId,
          lineName: line === undefined ? 'Contingency' : String(line['name']),
          system: (line?.['system'] as number | null | undefined) ?? null,
          phase: (line?.['phase'] as number | null | undefined) ?? null,
          kind: entry.kind,
          amountMinor: entry.amountMinor,
          reason: entry.reason,
          by: entry.by,
          reversed: entry.reversed,
        };
      });
  }),
  changeBudget: money.changeBudget.handler(({ context, input }) => {
    const build = needBuild(context, input.build);
    return act(context, input, 'Budget change', (writer) => {
      const payload = { reason: input.reason, by: input.by };
      if (input.kind === 'contingency') {
        writer.post({
          kind: 'budgeted',
          on: input.on,
          build: build.id,
          subjectKind: 'build',
          subject: build.id,
          amountMinor: input.amountMinor,
          payload: { ...payload, contingency: true },
        });
        return 'Contingency change';
      }
      if (input.line === null && input.newLine === undefined) {
        throw new Refusal('bad-input', 'Name the budget line, or the new one to make. Nothing was changed.', {
          field: 'line',
          accepted: 'a budget line, or the name of a new one',
        });
      }
      const line = input.line ?? createRecord(writer, 'budgetLine', build.id, input.on, { ...input.newLine });
      const record = needRecord(writer.connection, 'budgetLines', line, 'line');
      writer.post({
        kind: input.kind === 'change' ? 'budgeted' : 'contingency-drawn',
        on: input.on,
        build: build.id,
        subjectKind: 'budget-line',
        subject: line,
        amountMinor: input.amountMinor,
        payload,
      });
      return `${input.kind === 'change' ? 'Budget change' : 'Contingency drawn'} for ${String(record['name'])}`;
    });
  }),
};

/** The Money page's first sentence. */
function moneyAnswer(total: Omit<MoneyRow, 'id' | 'name'>, currency: string): string {
  const say = (minor: number): string => formatMoney(minor, currency);
  if (total.forecastMinor === 0 && total.budgetMinor === 0)
    return 'Nothing is priced yet: the first estimate or order starts the account.';
  const gap =
    total.withoutEstimate === 0
      ? ''
      : ` at least, for ${counted(total.withoutEstimate, 'line')} ${total.withoutEstimate === 1 ? 'has' : 'have'} no estimate`;
  const against =
    total.budgetMinor === 0
      ? 'no budget is set'
      : total.varianceMinor < 0
        ? `${say(-total.varianceMinor)} over the budget of ${say(total.budgetMinor)}`
        : `${say(total.varianceMinor)} inside the budget of ${say(total.budgetMinor)}`;
  const exchange = total.exchangeMinor === 0 ? '' : ` Exchange differences of ${say(total.exchangeMinor)} stand apart.`;
  return `${say(total.paidMinor)} is paid, ${say(total.stillToPayMinor)} is owed on orders and ${say(total.remainingMinor)} is still to order: ${say(total.forecastMinor)} in all${gap}, ${against}.${exchange}`;
}
