import { expect, test } from 'vitest';
import { ageBand, agedBackOrders, type BackOrder, countByBand } from '../../../core/purchasing/back-orders.ts';

function backOrder(id: number, noticeOn: string, promisedOn: string | null): BackOrder {
  return { id, noticeOn, promises: [{ givenOn: noticeOn, promisedOn }] };
}

const worked = [
  backOrder(1, '2026-01-10', null),
  backOrder(2, '2026-02-20', '2026-03-15'),
  backOrder(3, '2026-03-20', '2026-04-20'),
  backOrder(4, '2026-03-28', null),
];

test('D69: ages back-orders as of 2026-04-01', () => {
  // Source: derived by hand, recomputed independently.
  const aged = agedBackOrders(worked, '2026-04-01');
  expect(aged.map((order) => order.ageDays)).toEqual([81, 40, 12, 4]);
  expect(aged.map((order) => order.band)).toEqual(['over 60', '31-60', '0-14', '0-14']);
  expect(aged.map((order) => order.pastPromiseDays)).toEqual([null, 17, 0, null]);
  expect(countByBand(aged)).toEqual({ '0-14': 2, '15-30': 0, '31-60': 1, 'over 60': 1 });
});

test('bands meet without a gap', () => {
  expect([0, 14, 15, 30, 31, 60, 61].map(ageBand)).toEqual([
    '0-14',
    '0-14',
    '15-30',
    '15-30',
    '31-60',
    '31-60',
    'over 60',
  ]);
});

test('counts moved promises and measures from the latest one', () => {
  // By hand: moved once; the promise repeated and the answer without a date move nothing.
  const order = {
    id: 5,
    noticeOn: '2026-02-01',
    promises: [
      { givenOn: '2026-02-01', promisedOn: '2026-02-20' },
      { givenOn: '2026-02-10', promisedOn: '2026-02-20' },
      { givenOn: '2026-02-21', promisedOn: '2026-03-10' },
      { givenOn: '2026-03-11', promisedOn: null },
    ],
  };
  expect(agedBackOrders([order], '2026-03-20')[0]).toMatchObject({
    promiseChanges: 1,
    latestPromise: '2026-03-10',
    pastPromiseDays: 10,
  });
  expect(agedBackOrders([order], '2026-02-20')[0]).toMatchObject({ promiseChanges: 0, pastPromiseDays: 0 });
});

test('knows nothing of notices made after the day asked for', () => {
  expect(agedBackOrders(worked, '2026-03-19').map((order) => order.id)).toEqual([1, 2]);
});
