import type { ActResult } from '../contract/common.ts';
import type { ActWriter } from '../workbook/store/act.ts';
import { readSettings } from '../workbook/store/connection.ts';
import { readOrderDetail } from '../workbook/store/order-detail.ts';
import { dueRows } from '../workbook/store/order-due.ts';
import { needsOfVendor } from '../workbook/store/order-needs.ts';
import { needOrder, type OrderRecord } from '../workbook/store/order-records.ts';
import { orderRows } from '../workbook/store/order-rows.ts';
import { vendorCards } from '../workbook/store/order-vendors.ts';
import { needRecord } from '../workbook/store/record-tables.ts';
import { act, type Context, needBuild, procedures } from './context.ts';
import { numberOrder } from './order-acts.ts';
import { chasingProcedures } from './order-chasing.ts';
import { fitNotices } from './order-fits.ts';
import { dayRate, landLines } from './order-landing.ts';
import { chaseOrder, moveLines, promiseLines } from './order-moves.ts';
import { payOrder } from './order-paying.ts';
import { placeOrder } from './order-placing.ts';
import { receiveBox, receiveParts } from './order-receiving.ts';
import { repriceOrder } from './order-repricing.ts';
import { depositOnLine, refundLine } from './order-settling.ts';
import { checkCurrency } from './record-checks.ts';

const { orders } = procedures;

/** One act on an order that stands; `work` answers its label. */
function onOrder(
  context: Context,
  input: { readonly key: string; readonly on: string; readonly order: number },
  work: (writer: ActWriter, order: OrderRecord) => string,
): ActResult {
  return act(context, input, 'Order', (writer) => work(writer, needOrder(writer.connection, input.order)));
}

/** A day before today asks for the past; today and later for what stands now. */
function pastOf(context: Context, asOf: string | undefined): string | undefined {
  return asOf !== undefined && asOf < context.today() ? asOf : undefined;
}

const said = (key: string, value: string): Record<string, string> => (value === '' ? {} : { [key]: value });

export const ordersProcedures = {
  ...chasingProcedures,
  list: orders.list.handler(({ context, input }) => {
    needBuild(context, input.build);
    const asOf = pastOf(context, input.asOf);
    return orderRows(context.book().connection, { build: input.build, asOf }, context.today());
  }),
  detail: orders.detail.handler(({ context, input }) =>
    readOrderDetail(context.book().connection, input, context.today()),
  ),
  needsOf: orders.needsOf.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    if (input.vendor !== null) needRecord(connection, 'vendors', input.vendor, 'vendor');
    return needsOfVendor(connection, input.build, input.vendor);
  }),
  land: orders.land.handler(({ context, input }) => {
    needBuild(context, input.build);
    const { connection } = context.book();
    const base = readSettings(connection).currency;
    checkCurrency(input.currency, 'currency');
    const { rate, rateOn, notices } = dayRate(connection, base, input.currency, input.on, input.rate);
    const landed = landLines(input.lines, input.charges, input.currency, base, rate);
    return {
      ...landed,
      lines: [...landed.lines],
      rate,
      rateOn,
      notices: [...notices, ...fitNotices(connection, input)],
    };
  }),
  place: orders.place.handler(({ context, input }) =>
    act(context, input, 'Order', (writer) =>
      placeOrder(writer, input.order, input.on, input.paid ?? false, { despite: input.despiteFits ?? '' }),
    ),
  ),
  acknowledge: orders.acknowledge.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => {
      const label = moveLines(writer, order, 'acknowledged', {
        ...input,
        note: '',
        // An acknowledgement without a day says nothing about one: an earlier promise holds.
        payload: input.promisedOn === null ? {} : { promisedOn: input.promisedOn },
      });
      numberOrder(writer, order, input.on, input.number);
      return label;
    }),
  ),
  backOrder: orders.backOrder.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) =>
      moveLines(writer, order, 'back-ordered', { ...input, payload: { promisedOn: input.promisedOn } }),
    ),
  ),
  promise: orders.promise.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => promiseLines(writer, order, input)),
  ),
  ship: orders.ship.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) =>
      moveLines(writer, order, 'shipped', {
        ...input,
        note: '',
        payload: {
          ...said('tracking', input.tracking),
          ...(input.expectedOn === null ? {} : { promisedOn: input.expectedOn }),
        },
      }),
    ),
  ),
  chase: orders.chase.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => chaseOrder(writer, order, input)),
  ),
  receiveBox: orders.receiveBox.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => receiveBox(writer, order, input)),
  ),
  receiveParts: orders.receiveParts.handler(({ context, input }) => {
    const build = needBuild(context, input.build);
    return act(context, input, 'Receipt', (writer) => receiveParts(writer, build.id, input));
  }),
  reprice: orders.reprice.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => repriceOrder(writer, order, input)),
  ),
  cancel: orders.cancel.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) =>
      moveLines(writer, order, 'cancelled', { ...input, note: '', payload: said('reason', input.reason) }),
    ),
  ),
  pay: orders.pay.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => payOrder(writer, order, input)),
  ),
  refund: orders.refund.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => refundLine(writer, order, input)),
  ),
  deposit: orders.deposit.handler(({ context, input }) =>
    onOrder(context, input, (writer, order) => depositOnLine(writer, order, input)),
  ),
  due: orders.due.handler(({ context, input }) => {
    needBuild(context, input.build);
    return dueRows(context.book().connection, input.build, context.today(), pastOf(context, input.asOf));
  }),
  vendorCards: orders.vendorCards.handler(({ context, input }) => {
    needBuild(context, input.build);
    return vendorCards(context.book().connection, input.build, context.today(), pastOf(context, input.asOf));
  }),
};
