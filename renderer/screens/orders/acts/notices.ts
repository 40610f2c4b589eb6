import type { ActResult } from '../../../../core/contract/common.ts';
import type { OrderDetail } from '../../../../core/contract/orders.ts';
import { api } from '../../../app/client.ts';

type Line = OrderDetail['lines'][number];

/** What the vendor said, or was asked, about lines of an order. */
export type NoticeName = 'acknowledge' | 'back-order' | 'promise' | 'ship' | 'chase' | 'cancel';

export interface NoticeInput {
  readonly order: number;
  readonly on: string;
  readonly lines: readonly { readonly line: number; readonly quantityMilli: number }[];
  readonly promisedOn: string | null;
  readonly text: string;
  readonly number: string;
}

export interface Notice {
  readonly title: string;
  readonly submit: string;
  readonly day: string;
  /** Most units of a line that the notice can be about now; null where the notice isn't about quantities. */
  readonly most: ((line: Line) => number) | null;
  /** The words of the promise's field. */
  readonly promise?: { readonly label: string; readonly description: string };
  /** The words of the free text's field. */
  readonly text?: { readonly label: string; readonly longest: number };
  /** Whether the vendor's own order number can be given. */
  readonly number?: boolean;
  /** The notice gives something up. */
  readonly blocks?: boolean;
  readonly send: (key: string, input: NoticeInput) => Promise<ActResult>;
}

const about = (input: NoticeInput) => ({ order: input.order, on: input.on, lines: [...input.lines] });

/** Each notice: its words, what it can be about, and the act that enters it. */
export const notices: Readonly<Record<NoticeName, Notice>> = {
  acknowledge: {
    title: 'Order acknowledged',
    submit: 'Note the acknowledgement',
    day: 'Acknowledged on',
    most: (line) => line.placedMilli,
    promise: { label: 'Promised for', description: 'Empty: they named no date, and an earlier one holds.' },
    number: true,
    send: (key, input) =>
      api.orders.acknowledge({
        key,
        ...about(input),
        promisedOn: input.promisedOn,
        ...(input.number === '' ? {} : { number: input.number }),
      }),
  },
  'back-order': {
    title: 'On back-order',
    submit: 'Put on back-order',
    day: 'Said on',
    most: (line) => line.placedMilli + line.acknowledgedMilli + line.inTransitMilli,
    promise: { label: 'Promised for', description: 'Empty: they gave no date.' },
    text: { label: 'What they said', longest: 2000 },
    send: (key, input) =>
      api.orders.backOrder({ key, ...about(input), promisedOn: input.promisedOn, note: input.text }),
  },
  promise: {
    title: 'New promise',
    submit: 'Note the promise',
    day: 'Said on',
    most: null,
    promise: { label: 'Promised for', description: 'Empty: they gave no date. Earlier promises are kept.' },
    text: { label: 'What they said', longest: 2000 },
    send: (key, { order, on, lines, promisedOn, text }) =>
      api.orders.promise({ key, order, on, lines: lines.map(({ line }) => line), promisedOn, note: text }),
  },
  ship: {
    title: 'Sent by the vendor',
    submit: 'Note as sent',
    day: 'Sent on',
    most: (line) => line.placedMilli + line.acknowledgedMilli + line.backOrderedMilli,
    promise: { label: 'Expected on', description: 'Empty: no date was given.' },
    text: { label: 'Tracking number', longest: 200 },
    send: (key, input) => api.orders.ship({ key, ...about(input), expectedOn: input.promisedOn, tracking: input.text }),
  },
  chase: {
    title: 'Vendor asked',
    submit: 'Note it',
    day: 'Asked on',
    most: null,
    text: { label: 'What they said', longest: 2000 },
    send: (key, { order, on, text }) => api.orders.chase({ key, order, on, note: text }),
  },
  cancel: {
    title: 'Cancel what is still to come',
    submit: 'Cancel these',
    day: 'Cancelled on',
    most: (line) => line.outstandingMilli,
    text: { label: 'Reason', longest: 400 },
    blocks: true,
    send: (key, input) => api.orders.cancel({ key, ...about(input), reason: input.text }),
  },
};
