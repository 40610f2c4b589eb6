import { call } from '@orpc/server';
import type { Fact } from '../checks/read-fact.ts';
import type { exportTables } from '../contract/exchange.ts';
import type { RecordKind, RecordRow } from '../contract/records.ts';
import type { ExportColumn, ExportKind, ExportRow, ExportTable } from '../exchange/export-table.ts';
import { minorDigits } from '../money/currency.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { listJournal } from '../workbook/store/journal.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { type Context, needBuild } from './context.ts';
import { gateProcedures } from './gate.ts';
import { moneyProcedures } from './money.ts';
import { ordersProcedures } from './orders.ts';
import { planProcedures } from './plan.ts';
import { recordsProcedures } from './records.ts';

/** Tables for other programs. Every figure comes from the query that the screen of the same name shows. */

export type ExportName = (typeof exportTables)[number];

interface Asked {
  readonly build: number;
  readonly asOf?: string | undefined;
}

type Column = readonly [key: string, title: string, kind?: ExportKind];
type Made = Omit<ExportTable, 'name'>;

const columnsOf = (list: readonly Column[], currency: string): ExportColumn[] =>
  list.map(([key, title, kind = 'text']) => ({
    key,
    title,
    kind,
    ...(kind === 'money' ? { currency } : {}),
  }));

const table = (list: readonly Column[], currency: string, rows: readonly object[]): Made => ({
  columns: columnsOf(list, currency),
  rows: rows as readonly ExportRow[],
});

const partColumns: readonly Column[] = [
  ['id', 'Line', 'number'],
  ['systemName', 'System'],
  ['phaseName', 'Phase'],
  ['jobName', 'Job'],
  ['description', 'Description'],
  ['partNumber', 'Part number'],
  ['maker', 'Maker'],
  ['vendorName', 'Vendor'],
  ['standing', 'Standing'],
  ['standingText', 'Where it stands'],
  ['unit', 'Unit'],
  ['needMilli', 'Needed', 'quantity'],
  ['uncoveredMilli', 'Still to get', 'quantity'],
  ['onOrderMilli', 'On order', 'quantity'],
  ['backOrderedMilli', 'Back-ordered', 'quantity'],
  ['inspectionMilli', 'To inspect', 'quantity'],
  ['shelfMilli', 'On the shelf', 'quantity'],
  ['allocatedMilli', 'Allocated', 'quantity'],
  ['trialMilli', 'Trial-fitted', 'quantity'],
  ['fittedMilli', 'Fitted', 'quantity'],
  ['snugMilli', 'Snug', 'quantity'],
  ['verifiedMilli', 'Final', 'quantity'],
  ['rejectedMilli', 'Rejected', 'quantity'],
  ['borrowedMilli', 'Borrowed', 'quantity'],
  ['estimateEach', 'Estimate each', 'number'],
  ['costMinor', 'Cost', 'money'],
  ['commitmentMinor', 'On order, value', 'money'],
  ['remainingMinor', 'Still to order, value', 'money'],
  ['paidMinor', 'Paid', 'money'],
  ['stillToPayMinor', 'Still to pay', 'money'],
  ['forecastMinor', 'Forecast', 'money'],
  ['promisedOn', 'Promised', 'date'],
  ['backOrderedOn', 'Back-ordered since', 'date'],
  ['neededBy', 'Needed by', 'date'],
  ['priority', 'Priority', 'number'],
  ['optional', 'Optional'],
  ['binName', 'Bin'],
  ['link', 'Link'],
  ['attention', 'Wants an eye'],
  ['note', 'Note'],
  ['kind', 'Kind'],
  ['facts', 'Facts'],
];

const orderColumns: readonly Column[] = [
  ['number', 'Order'],
  ['vendorName', 'Vendor'],
  ['orderedOn', 'Ordered', 'date'],
  ['standing', 'Standing'],
  ['lines', 'Lines', 'number'],
  ['outstandingLines', 'Lines still to come', 'number'],
  ['promisedOn', 'Promised', 'date'],
  ['backOrderedOn', 'Back-ordered since', 'date'],
  ['chasedOn', 'Chased', 'date'],
  ['currency', 'Currency'],
];
const orderAmounts: readonly Column[] = [
  ['totalBaseMinor', 'Total, base currency', 'money'],
  ['paidBaseMinor', 'Paid', 'money'],
  ['stillToPayMinor', 'Still to pay', 'money'],
  ['claimsMinor', 'Claims', 'money'],
];

const moneyColumns = (title: string): readonly Column[] => [
  ['name', title],
  ['budgetMinor', 'Budget', 'money'],
  ['paidMinor', 'Paid', 'money'],
  ['stillToPayMinor', 'Still to pay', 'money'],
  ['remainingMinor', 'Still to order', 'money'],
  ['costMinor', 'Cost', 'money'],
  ['commitmentMinor', 'On order', 'money'],
  ['forecastMinor', 'Forecast', 'money'],
  ['varianceMinor', 'Budget less forecast', 'money'],
  ['depositsMinor', 'Core deposits', 'money'],
  ['claimsMinor', 'Claims', 'money'],
  ['lossMinor', 'Loss', 'money'],
  ['exchangeMinor', 'Exchange differences', 'money'],
  ['withoutEstimate', 'Lines without a price', 'number'],
];

const decimal = (e4: number | null, digits: number): string | null => {
  if (e4 === null) return null;
  const places = digits + 4;
  const text = String(Math.abs(e4)).padStart(places + 1, '0');
  const fraction = text.slice(-places).replace(/0+$/, '').padEnd(digits, '0');
  return `${e4 < 0 ? '-' : ''}${text.slice(0, -places)}${fraction === '' ? '' : `.${fraction}`}`;
};

/** What each part line says of itself, in one cell: "injector flow: 1050 cc/min; dead time: 0.9 ms". */
function factTexts(connection: Connection, build: number): Map<number, string> {
  return new Map(
    listRecords(connection, 'parts', "build = ? AND facts <> '[]'", build).map((record) => [
      record.id,
      (record['facts'] as unknown as Fact[])
        .map(({ key, value, unit }) => `${key}: ${value}${unit === '' ? '' : ` ${unit}`}`)
        .join('; '),
    ]),
  );
}

const yes = (value: unknown): string => (value === true ? 'yes' : '');

type Maker = (context: Context, asked: Asked, currency: string) => Promise<Made>;

/** Names of records by number, retired ones too. */
async function namesOf(context: Context, kind: RecordKind, build: number): Promise<(id: number | null) => string> {
  const rows = await call(recordsProcedures.list, { kind, build, retired: true }, { context });
  const names = new Map(rows.map(({ id, values }) => [id, String(values['name'] ?? values['title'] ?? '')]));
  return (id) => (id === null ? '' : (names.get(id) ?? ''));
}

const ofDay = ({ build, asOf }: Asked): { build: number; asOf?: string } => ({
  build,
  ...(asOf === undefined ? {} : { asOf }),
});

const money =
  (by: 'system' | 'phase' | 'vendor', title: string): Maker =>
  async (context, asked, currency) =>
    table(moneyColumns(title), currency, await call(moneyProcedures.by, { ...ofDay(asked), by }, { context }));

/** A table of records: their own values, with the names of what they point at and what counts say of them. */
const records =
  (kind: RecordKind, list: readonly Column[], more: (row: RecordRow) => ExportRow = () => ({})): Maker =>
  async (context, { build }, currency) => {
    const rows = await call(recordsProcedures.list, { kind, build }, { context });
    return table(
      list,
      currency,
      rows.map((row) => ({ ...(row.values as ExportRow), ...more(row) })),
    );
  };

const makers: Record<ExportName, Maker> = {
  async parts(context, asked, currency) {
    const { connection } = context.book();
    const digits = minorDigits(currency);
    const name = {
      system: await namesOf(context, 'system', asked.build),
      phase: await namesOf(context, 'phase', asked.build),
      job: await namesOf(context, 'job', asked.build),
      vendor: await namesOf(context, 'vendor', asked.build),
      bin: await namesOf(context, 'bin', asked.build),
    };
    const rows = partRows(connection, { build: asked.build, asOf: asked.asOf, today: context.today() });
    const facts = factTexts(connection, asked.build);
    return table(
      partColumns,
      currency,
      rows.map((row) => ({
        ...row,
        optional: yes(row.optional),
        systemName: name.system(row.system),
        phaseName: name.phase(row.phase),
        jobName: name.job(row.job),
        vendorName: name.vendor(row.vendor),
        binName: name.bin(row.bin),
        estimateEach: decimal(row.estimateEachE4, digits),
        facts: facts.get(row.id) ?? '',
      })),
    );
  },
  async orders(context, asked, currency) {
    const rows = await call(ordersProcedures.list, ofDay(asked), { context });
    const made = table([...orderColumns, ...orderAmounts], currency, rows);
    const total: ExportColumn = { key: 'totalMinor', title: 'Total', kind: 'money', currencyKey: 'currency' };
    return { ...made, columns: made.columns.toSpliced(orderColumns.length, 0, total) };
  },
  async 'order lines'(context, asked, currency) {
    const rows: object[] = [];
    for (const { id } of await call(ordersProcedures.list, ofDay(asked), { context })) {
      const detail = await call(
        ordersProcedures.detail,
        { order: id, ...(asked.asOf === undefined ? {} : { asOf: asked.asOf }) },
        { context },
      );
      const { number, vendorName, orderedOn, currency: own } = detail.row;
      for (const line of detail.lines) {
        rows.push({
          number,
          vendorName,
          orderedOn,
          ...line,
          ...line.landed,
          currency: own,
          each: decimal(line.eachE4, minorDigits(own)),
          promisedOn: line.promises.at(-1)?.promisedOn ?? null,
        });
      }
    }
    const made = table(
      [
        ['number', 'Order'],
        ['vendorName', 'Vendor'],
        ['orderedOn', 'Ordered', 'date'],
        ['description', 'Description'],
        ['partNumber', 'Part number'],
        ['unit', 'Unit'],
        ['orderedMilli', 'Ordered, units', 'quantity'],
        ['receivedMilli', 'Received', 'quantity'],
        ['outstandingMilli', 'Still to come', 'quantity'],
        ['backOrderedMilli', 'Back-ordered', 'quantity'],
        ['cancelledMilli', 'Cancelled', 'quantity'],
        ['rejectedMilli', 'Rejected', 'quantity'],
        ['backOrderedOn', 'Back-ordered since', 'date'],
        ['promisedOn', 'Promised', 'date'],
        ['currency', 'Currency'],
        ['each', 'Price each', 'number'],
        ['landedBaseMinor', 'Landed, base currency', 'money'],
        ['commitmentMinor', 'On order', 'money'],
        ['costMinor', 'Cost', 'money'],
        ['claimsMinor', 'Claims', 'money'],
      ],
      currency,
      rows,
    );
    const own = (key: string, title: string): ExportColumn => ({ key, title, kind: 'money', currencyKey: 'currency' });
    return {
      ...made,
      columns: made.columns.toSpliced(
        16,
        0,
        own('extendedMinor', 'Goods'),
        own('discountMinor', 'Discount'),
        own('shippingMinor', 'Shipping'),
        own('dutyMinor', 'Duty'),
        own('taxMinor', 'Tax'),
        own('landedMinor', 'Landed'),
      ),
    };
  },
  'money by system': money('system', 'System'),
  'money by phase': money('phase', 'Phase'),
  'money by vendor': money('vendor', 'Vendor'),
  async jobs(context, asked, currency) {
    const { phases } = await call(planProcedures.view, ofDay(asked), { context });
    const system = await namesOf(context, 'system', asked.build);
    return table(
      [
        ['phase', 'Phase'],
        ['title', 'Job'],
        ['systemName', 'System'],
        ['done', 'Done'],
        ['doneOn', 'Done on', 'date'],
        ['signedBy', 'Signed by'],
        ['minutesGuess', 'Minutes guessed', 'number'],
        ['minutesSpent', 'Minutes spent', 'number'],
        ['waits', 'Waits for'],
        ['note', 'Note'],
      ],
      currency,
      phases.flatMap((phase) =>
        phase.jobs.map((job) => ({
          phase: phase.name,
          title: job.title,
          systemName: system(job.system),
          done: yes(job.done),
          doneOn: job.doneOn,
          signedBy: job.signedBy,
          minutesGuess: job.minutesGuess,
          minutesSpent: job.minutesSpent,
          waits: job.waitsFor.join('; '),
          note: job.note,
        })),
      ),
    );
  },
  async 'hoist check'(context, asked, currency) {
    const { blockers, waived } = await call(gateProcedures.review, ofDay(asked), { context });
    const columns: readonly Column[] = [
      ['kind', 'What stands'],
      ['title', 'Item'],
      ['why', 'Why'],
      ['standing', 'Standing'],
      ['clears', 'What clears it'],
      ['readyOn', 'Work can begin', 'date'],
      ['clearOn', 'Clear at best', 'date'],
      ['noDate', 'Why there is no date'],
      ['minutes', 'Minutes', 'number'],
      ['costMinor', 'Still costs', 'money'],
      ['waiver', 'Waived'],
    ];
    return table(columns, currency, [
      ...blockers.map((blocker) => ({ ...blocker, subject: null, waiver: '' })),
      ...waived.map((blocker) => ({ ...blocker, subject: null, waiver: `${blocker.reason}, ${blocker.by}` })),
    ]);
  },
  async journal(context, asked, currency) {
    const { connection } = context.book();
    const rows: object[] = [];
    let before: number | undefined;
    do {
      const page = listJournal(connection, {
        build: asked.build,
        limit: 1000,
        ...(asked.asOf === undefined ? {} : { to: asked.asOf }),
        ...(before === undefined ? {} : { before }),
      });
      for (const row of page.rows) rows.push(row);
      before = page.next ?? undefined;
    } while (before !== undefined);
    return table(
      [
        ['seq', 'Entry', 'number'],
        ['on', 'Day', 'date'],
        ['recordedAt', 'Recorded'],
        ['author', 'By'],
        ['actLabel', 'Act'],
        ['kind', 'Kind'],
        ['text', 'What happened'],
        ['description', 'About'],
        ['orderNumber', 'Order'],
        ['vendorName', 'Vendor'],
        ['quantityMilli', 'Quantity', 'quantity'],
        ['unit', 'Unit'],
        ['amountMinor', 'Amount', 'money'],
        ['note', 'Note'],
        ['reverses', 'Takes back', 'number'],
        ['reversedBy', 'Taken back by', 'number'],
      ],
      currency,
      rows,
    );
  },
  vendors: records('vendor', [
    ['name', 'Vendor'],
    ['site', 'Site'],
    ['contact', 'Contact'],
    ['account', 'Account'],
    ['currency', 'Currency'],
    ['leadDays', 'Usual days', 'number'],
    ['note', 'Note'],
  ]),
  bins: records('bin', [
    ['name', 'Bin'],
    ['place', 'Place'],
    ['note', 'Note'],
  ]),
  tools: records(
    'tool',
    [
      ['name', 'Tool'],
      ['atHand', 'At hand'],
      ['whereabouts', 'Where it is'],
      ['dueOn', 'Due', 'date'],
      ['hireMinor', 'Hire', 'money'],
      ['note', 'Note'],
    ],
    ({ standing }) => ({ atHand: yes(standing['atHand']) }),
  ),
  decisions: records(
    'decision',
    [
      ['title', 'Decision'],
      ['made', 'Made'],
      ['choices', 'Options'],
      ['owner', 'Owner'],
      ['neededBy', 'Needed by', 'date'],
      ['gate', 'Before the hoist check'],
      ['note', 'Note'],
    ],
    ({ values, standing }) => ({
      made: yes(standing['made']),
      gate: yes(values['beforeGate']),
      choices: ((values['options'] as { text: string }[] | undefined) ?? []).map(({ text }) => text).join('; '),
      options: null,
    }),
  ),
  async 'bolt groups'(context, asked, currency) {
    const system = await namesOf(context, 'system', asked.build);
    const job = await namesOf(context, 'job', asked.build);
    return records(
      'boltGroup',
      [
        ['name', 'Bolt group'],
        ['systemName', 'System'],
        ['jobName', 'Job'],
        ['count', 'Bolts', 'number'],
        ['snug', 'Snug', 'number'],
        ['final', 'Final', 'number'],
        ['method', 'Method'],
        ['torqueNm', 'Torque, N·m', 'quantity'],
        ['angleDeg', 'Angle, degrees', 'number'],
        ['source', 'Figure from'],
        ['sequence', 'Sequence'],
        ['lubricant', 'Lubricant'],
        ['note', 'Note'],
        ['caution', 'Caution'],
      ],
      ({ values, standing }) => ({
        systemName: system(values['system'] as number | null),
        jobName: job(values['job'] as number | null),
        snug: Number(standing['snug'] ?? 0),
        final: Number(standing['final'] ?? 0),
        torqueNm: values['torqueMilliNm'] as number | null,
        caution: 'Check every torque against the maker’s manual before it is used.',
      }),
    )(context, asked, currency);
  },
  async due(context, asked, currency) {
    const rows = await call(ordersProcedures.due, ofDay(asked), { context });
    return table(
      [
        ['promisedOn', 'Promised', 'date'],
        ['description', 'Description'],
        ['outstandingMilli', 'Still to come', 'quantity'],
        ['unit', 'Unit'],
        ['vendorName', 'Vendor'],
        ['orderNumber', 'Order'],
        ['orderedOn', 'Ordered', 'date'],
        ['backOrderedMilli', 'Back-ordered', 'quantity'],
        ['backOrderedOn', 'Back-ordered since', 'date'],
        ['ageDays', 'Days on back-order', 'number'],
        ['pastPromiseDays', 'Days past the promise', 'number'],
        ['promiseChanges', 'Promise changes', 'number'],
        ['chasedOn', 'Chased', 'date'],
        ['commitmentMinor', 'Value', 'money'],
      ],
      currency,
      rows,
    );
  },
};

/** One table of a build, now or at the end of a past day where the table has a past. */
export async function exportTableOf(context: Context, name: ExportName, asked: Asked): Promise<ExportTable> {
  needBuild(context, asked.build);
  return { name, ...(await makers[name](context, asked, context.settings().currency)) };
}
