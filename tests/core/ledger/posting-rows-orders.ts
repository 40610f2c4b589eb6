/** Rows 1 to 14 and 24 of the table of moves: needs, orders, receipts, returns, deposits. */

import { said } from './playing.ts';
import {
  accepted,
  each,
  line,
  needed,
  onShelf,
  ordered,
  type Rows,
  received,
  rejected,
  sentBack,
} from './posting-cases.ts';

export const orderRows: Rows = [
  [
    1,
    [
      {
        name: 'need added',
        before: [],
        draft: needed,
        posts: ['need 8 units', `estimate 1 units ${each}`, 'remaining 12000'],
      },
      {
        name: 'need changed, up',
        before: [needed],
        draft: said('need-changed', { payload: { needMilli: 10_000 } }),
        posts: ['need 2 units', 'remaining 3000'],
      },
      {
        name: 'need changed, down',
        before: [needed],
        draft: said('need-changed', { payload: { needMilli: 6000 } }),
        posts: ['need -2 units', 'remaining -3000'],
      },
      {
        name: 'estimate changed',
        before: [needed],
        draft: said('need-changed', { payload: { estimateEachE4: 2000_0000 } }),
        posts: ['estimate 5000000', 'remaining 4000'],
      },
      {
        name: 'estimate taken away',
        before: [needed],
        draft: said('need-changed', { payload: { estimateEachE4: null } }),
        posts: [`estimate -1 units ${-each}`, 'remaining -12000'],
      },
      {
        name: 'need dropped',
        before: [needed],
        draft: said('need-dropped'),
        posts: ['need -8 units', 'remaining -12000'],
      },
    ],
  ],
  [2, [{ name: 'quote recorded', before: [needed], draft: said('quoted', { amountMinor: 900 }), posts: [] }]],
  [
    3,
    [
      {
        name: 'order placed',
        before: [needed],
        draft: said('ordered', { ...line, units: 6, amountMinor: 6000 }),
        posts: ['ordered 6 units 6000', 'placed 6 units', 'commitment 6000', 'remaining -9000'],
      },
    ],
  ],
  [
    4,
    [
      {
        name: 'acknowledged',
        before: [needed, ordered],
        draft: said('acknowledged', { ...line, units: 3 }),
        posts: ['placed -3 units', 'acknowledged 3 units'],
      },
    ],
  ],
  [
    5,
    [
      {
        name: 'back-order notice, placed then acknowledged then in transit',
        before: [
          ordered,
          said('acknowledged', { ...line, units: 3 }),
          said('shipped', { ...line, units: 3, payload: { from: 'placed' } }),
        ],
        draft: said('back-ordered', { ...line, units: 6 }),
        posts: ['placed -2 units', 'acknowledged -3 units', 'in-transit -1 units', 'back-ordered 6 units'],
      },
    ],
  ],
  [6, [{ name: 'promise changed', before: [ordered], draft: said('promised', line), posts: [] }]],
  [
    7,
    [
      {
        name: 'shipped notice',
        before: [ordered, said('back-ordered', { ...line, units: 8 })],
        draft: said('shipped', { ...line, units: 8 }),
        posts: ['back-ordered -8 units', 'in-transit 8 units'],
      },
    ],
  ],
  [
    8,
    [
      {
        name: 'received in part',
        before: [needed, ordered],
        draft: said('received', { ...line, lot: 1, units: 5 }),
        posts: [
          'placed -5 units',
          'received 5 units',
          'commitment -5000',
          'came-in 5 units',
          'inspection 5 units',
          'cost 5000',
          'vendor -5000',
        ],
      },
      {
        name: 'over-delivery, outside the order',
        before: [needed, ordered, received],
        draft: said('over-delivered', { ...line, lot: 2, units: 1 }),
        posts: ['came-in 1 units', 'inspection 1 units'],
      },
    ],
  ],
  [
    9,
    [
      {
        name: 'accepted to the shelf',
        before: [needed, ordered, received],
        draft: accepted,
        posts: ['inspection -8 units', 'shelf 8 units'],
      },
      {
        name: 'accepted to the build',
        before: [needed, ordered, received],
        draft: said('accepted', { lot: 1, units: 2, payload: { to: 'allocated' } }),
        posts: ['inspection -2 units', 'allocated 2 units'],
      },
    ],
  ],
  [
    10,
    [
      {
        name: 'rejected: claim against the vendor, cost back into the estimate',
        before: onShelf,
        draft: rejected,
        posts: ['shelf -2 units', 'rejected 2 units', 'claims 2000', 'cost -2000', 'remaining 2000'],
      },
    ],
  ],
  [
    11,
    [
      {
        name: 'return sent',
        before: [...onShelf, rejected],
        draft: sentBack,
        posts: ['rejected -2 units', 'returned 2 units'],
      },
    ],
  ],
  [
    12,
    [
      {
        name: 'exchange agreed',
        before: [...onShelf, rejected, sentBack],
        draft: said('exchanged', { ...line, units: 1 }),
        posts: [
          'settled 1 units',
          'claims -1000',
          'replaced 1 units',
          'placed 1 units',
          'vendor 1000',
          'commitment 1000',
          'remaining -1000',
        ],
      },
    ],
  ],
  [
    13,
    [
      {
        name: 'refund with a return fee',
        before: [...onShelf, rejected, sentBack],
        draft: said('refunded', { ...line, amountMinor: 1700, payload: { feeMinor: 300, closesMilli: 2000 } }),
        posts: ['settled 2 units', 'claims -2000', 'cash 1700', 'cost 300'],
      },
      {
        name: 'refund at another rate than was booked',
        before: [...onShelf, rejected, sentBack],
        draft: said('refunded', { ...line, amountMinor: 1950, payload: { claimMinor: 2000 } }),
        posts: ['claims -2000', 'cash 1950', 'exchange 50'],
      },
    ],
  ],
  [
    14,
    [
      {
        name: 'cancelled, not paid',
        before: [needed, ordered],
        draft: said('cancelled', { ...line, units: 2 }),
        posts: ['placed -2 units', 'cancelled 2 units', 'commitment -2000', 'remaining 3000'],
      },
      {
        name: 'cancelled, paid before',
        before: [needed, ordered, said('paid', { ...line, amountMinor: 8000 })],
        draft: said('cancelled', { ...line, units: 2 }),
        posts: [
          'placed -2 units',
          'cancelled 2 units',
          'commitment -2000',
          'claims 2000',
          'vendor -2000',
          'remaining 3000',
        ],
      },
      {
        name: 'cancelled, partly paid: only what exceeds the value still on order',
        before: [needed, ordered, said('paid', { ...line, amountMinor: 6500 })],
        draft: said('cancelled', { ...line, units: 2 }),
        posts: [
          'placed -2 units',
          'cancelled 2 units',
          'commitment -2000',
          'claims 500',
          'vendor -500',
          'remaining 3000',
        ],
      },
    ],
  ],
  [
    24,
    [
      {
        name: 'core deposit paid',
        before: [ordered],
        draft: said('deposit-paid', { ...line, amountMinor: 7500 }),
        posts: ['deposits 7500', 'cash -7500'],
      },
      { name: 'old unit sent', before: [ordered], draft: said('old-unit-sent', line), posts: [] },
      {
        name: 'core deposit refunded',
        before: [ordered, said('deposit-paid', { ...line, amountMinor: 7500 })],
        draft: said('deposit-refunded', { ...line, amountMinor: 5000 }),
        posts: ['cash 5000', 'deposits -5000'],
      },
      {
        name: 'core deposit kept by the vendor',
        before: [ordered, said('deposit-paid', { ...line, amountMinor: 7500 })],
        draft: said('deposit-kept', { ...line, amountMinor: 2500, payload: { reason: 'case cracked' } }),
        posts: ['cost 2500', 'deposits -2500'],
      },
    ],
  ],
];
