import type { PartRow } from '../contract/parts.ts';
import { Refusal } from '../refusal.ts';
import { all } from '../workbook/store/connection.ts';
import { readPartDetail } from '../workbook/store/part-detail.ts';
import { countParts } from '../workbook/store/part-order.ts';
import { partRows } from '../workbook/store/part-rows.ts';
import { lastAct } from '../workbook/store/remembered.ts';
import { act, counted, needBuild, procedures } from './context.ts';
import { actNouns, doPartAct, possibleActs } from './part-acts.ts';
import { addPart, changePart, needPart } from './part-writing.ts';
import { readQuickAdd } from './quick-add.ts';
import { checkCurrency } from './record-checks.ts';

const { parts } = procedures;

/** Values given for one part line, with undefined left out. */
const descriptionOf = (record: Readonly<Record<string, unknown>>): string => String(record['description']);

export const partsProcedures = {
  rows: parts.rows.handler(({ context, input }) => {
    const { connection } = context.book();
    const rows = partRows(connection, {
      build: input.build,
      asOf: input.asOf,
      today: context.today(),
      dropped: input.dropped,
      from: input.from,
      count: input.count,
    });
    const columns = rows[0] === undefined ? [] : (Object.keys(rows[0]) as (keyof PartRow)[]);
    return {
      total: countParts(connection, input.build, input.dropped === true),
      lastAct: lastAct(connection),
      columns,
      rows: rows.map((row) => columns.map((column) => row[column])),
    };
  }),
  byIds: parts.byIds.handler(({ context, input }) =>
    partRows(context.book().connection, {
      build: input.build,
      asOf: input.asOf,
      today: context.today(),
      ids: input.ids,
      dropped: true,
    }),
  ),
  detail: parts.detail.handler(({ context, input }) =>
    readPartDetail(context.book().connection, input, context.today(), possibleActs),
  ),
  add: parts.add.handler(({ context, input }) => {
    needBuild(context, input.build);
    const [only] = input.parts;
    const label =
      input.parts.length === 1 && only !== undefined
        ? `Adding of ${only.description}`
        : `Adding of ${counted(input.parts.length, 'part line')}`;
    return act(context, input, label, (writer) => {
      for (const part of input.parts) writer.made.push(addPart(writer, input.build, input.on, part));
      return undefined;
    });
  }),
  edit: parts.edit.handler(({ context, input }) =>
    act(context, input, 'Change of a part line', (writer) => {
      const record = needPart(writer, input.part);
      if (record.revision !== input.revision) {
        throw new Refusal(
          'conflict',
          `“${descriptionOf(record)}” was changed since you opened it. Nothing was changed; what you typed is kept here.`,
          {
            field: 'revision',
            accepted: 'the line as it stands now',
            detail: { revision: record.revision },
          },
        );
      }
      changePart(writer, record, input.on, input.values);
      return `Change of ${descriptionOf(record)}`;
    }),
  ),
  editMany: parts.editMany.handler(({ context, input }) =>
    act(context, input, `Change of ${counted(input.parts.length, 'part line')}`, (writer) => {
      for (const part of input.parts) changePart(writer, needPart(writer, part), input.on, input.values);
      return undefined;
    }),
  ),
  drop: parts.drop.handler(({ context, input }) =>
    act(context, input, `Dropping of ${counted(input.parts.length, 'part line')}`, (writer) => {
      for (const part of input.parts) {
        const record = needPart(writer, part);
        const state = writer.state(part);
        const build = Number(record.build);
        if (state.needMilli > 0) {
          writer.post({ kind: 'need-dropped', on: input.on, build, part, payload: { reason: input.reason } });
        }
        const edit = writer.change('parts', part, { retiredOn: input.on });
        writer.post(
          {
            kind: 'record',
            on: input.on,
            build,
            part,
            payload: { record: 'part line', did: 'dropped', reason: input.reason },
          },
          edit === undefined ? [] : [edit],
        );
      }
      return undefined;
    }),
  ),
  readQuickAdd: parts.readQuickAdd.handler(({ context, input }) => {
    needBuild(context, input.build);
    return readQuickAdd(context.book().connection, input.build, input.text);
  }),
  act: parts.act.handler(({ context, input }) => {
    needBuild(context, input.build);
    const [only] = input.items;
    const { connection } = context.book();
    const about =
      input.items.length === 1 && only !== undefined
        ? (all<{ description: string }>(connection, 'SELECT description FROM parts WHERE id = ?', only.part)[0]
            ?.description ?? '')
        : counted(input.items.length, 'line');
    return act(context, input, `${actNouns[input.act]} of ${about}`, (writer) => {
      doPartAct(writer, input);
      return undefined;
    });
  }),
  quote: parts.quote.handler(({ context, input }) =>
    act(context, input, 'Quote', (writer) => {
      checkCurrency(input.currency, 'currency');
      const record = needPart(writer, input.part);
      const build = Number(record.build);
      writer.post({
        kind: 'quoted',
        on: input.on,
        build,
        part: input.part,
        currency: input.currency,
        note: input.note,
        payload: { eachE4: input.eachE4, vendor: input.vendor, validUntil: input.validUntil },
      });
      if (input.asEstimate) {
        if (input.currency !== context.settings().currency) {
          throw new Refusal(
            'bad-input',
            `An estimate is in ${context.settings().currency}; this quote is in ${input.currency}. Nothing was changed.`,
            {
              field: 'asEstimate',
              accepted: `a quote in ${context.settings().currency}, or a quote that is not made the estimate`,
            },
          );
        }
        writer.post({
          kind: 'need-changed',
          on: input.on,
          build,
          part: input.part,
          payload: { estimateEachE4: input.eachE4 },
        });
      }
      return `Quote for ${descriptionOf(record)}`;
    }),
  ),
};
