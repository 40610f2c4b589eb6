/** Rows 15 to 23 of the table of moves: units between shelf, build, engine and elsewhere. */

import { said } from './playing.ts';
import { fitted, loan, needed, onShelf, type Rows, verified, why } from './posting-cases.ts';

export const unitRows: Rows = [
  [
    15,
    [
      {
        name: 'allocated',
        before: onShelf,
        draft: said('allocated', { lot: 1, units: 2 }),
        posts: ['shelf -2 units', 'allocated 2 units'],
      },
      {
        name: 'released',
        before: [...onShelf, said('allocated', { lot: 1, units: 2 })],
        draft: said('released', { lot: 1, units: 1 }),
        posts: ['allocated -1 units', 'shelf 1 units'],
      },
    ],
  ],
  [
    16,
    [
      {
        name: 'trial-fitted',
        before: onShelf,
        draft: said('trial-fitted', { lot: 1, units: 2 }),
        posts: ['shelf -2 units', 'trial-fitted 2 units'],
      },
      {
        name: 'taken off again',
        before: [...onShelf, said('trial-fitted', { lot: 1, units: 2 })],
        draft: said('taken-off', { lot: 1, units: 2, payload: { to: 'shelf' } }),
        posts: ['trial-fitted -2 units', 'shelf 2 units'],
      },
    ],
  ],
  [
    17,
    [
      {
        name: 'fitted: what is on the engine for trial stays on',
        before: [...onShelf, said('trial-fitted', { lot: 1, units: 1 })],
        draft: said('fitted', { lot: 1, units: 3 }),
        posts: ['trial-fitted -1 units', 'fitted 1 units', 'shelf -2 units', 'fitted 2 units'],
      },
    ],
  ],
  [
    18,
    [
      {
        name: 'snugged',
        before: [...onShelf, fitted],
        draft: said('snugged', { lot: 1, units: 2 }),
        posts: ['fitted -2 units', 'snug 2 units'],
      },
      {
        name: 'verified: snug ones first',
        before: [...onShelf, fitted, said('snugged', { lot: 1, units: 2 })],
        draft: verified,
        posts: ['snug -2 units', 'verified 2 units', 'fitted -1 units', 'verified 1 units'],
      },
      {
        name: 'verification withdrawn',
        before: [...onShelf, fitted, verified],
        draft: said('verification-withdrawn', { lot: 1, units: 1, payload: { reason: 'wrench out of calibration' } }),
        posts: ['verified -1 units', 'fitted 1 units'],
      },
    ],
  ],
  [
    19,
    [
      {
        name: 'removed, good',
        before: [...onShelf, fitted, verified],
        draft: said('taken-off', { lot: 1, units: 2 }),
        posts: ['fitted -1 units', 'allocated 1 units', 'verified -1 units', 'allocated 1 units'],
      },
      {
        name: 'removed, the vendor’s fault',
        before: [...onShelf, fitted],
        draft: said('taken-off', { lot: 1, units: 1, payload: { to: 'rejected', reason: 'faulty' } }),
        posts: ['fitted -1 units', 'rejected 1 units', 'claims 1000', 'cost -1000', 'remaining 1000'],
      },
      {
        name: 'removed, scrapped',
        before: [...onShelf, fitted],
        draft: said('taken-off', { lot: 1, units: 1, payload: { to: 'scrapped', reason: 'stripped thread' } }),
        posts: ['fitted -1 units', 'scrapped 1 units', 'loss 1000', 'cost -1000', 'remaining 1500'],
      },
    ],
  ],
  [
    20,
    [
      {
        name: 'taken from a donor at a value',
        before: [needed],
        draft: said('came-in', { lot: 1, units: 2, amountMinor: 700, payload: { source: 'donor' } }),
        posts: ['came-in 2 units', 'shelf 2 units', 'cost 700', 'transfer -700', 'remaining -3000'],
      },
      {
        name: 'moved to another build',
        before: onShelf,
        draft: said('moved', { lot: 1, units: 1 }),
        posts: ['shelf -1 units', 'moved 1 units', 'transfer 1000', 'cost -1000', 'remaining 1500'],
      },
    ],
  ],
  [
    21,
    [
      {
        name: 'borrowed in: quantity only, and the need stays open',
        before: [needed],
        draft: said('came-in', { lot: 1, units: 1, payload: loan }),
        posts: ['came-in 1 units', 'allocated 1 units'],
      },
      {
        name: 'given back',
        before: [needed, said('came-in', { lot: 1, units: 1, payload: loan })],
        draft: said('given-back', { lot: 1, units: 1 }),
        posts: ['allocated -1 units', 'given-back 1 units'],
      },
    ],
  ],
  [
    22,
    [
      {
        name: 'lent out',
        before: onShelf,
        draft: said('lent', { lot: 1, units: 1 }),
        posts: ['shelf -1 units', 'lent 1 units'],
      },
      {
        name: 'came back',
        before: [...onShelf, said('lent', { lot: 1, units: 1 })],
        draft: said('came-back', { lot: 1, units: 1 }),
        posts: ['lent -1 units', 'shelf 1 units'],
      },
    ],
  ],
  [
    23,
    [
      {
        name: 'lost',
        before: onShelf,
        draft: said('lost', { lot: 1, units: 2, ...why }),
        posts: ['shelf -2 units', 'lost 2 units', 'loss 2000', 'cost -2000', 'remaining 3000'],
      },
      {
        name: 'scrapped',
        before: onShelf,
        draft: said('scrapped', { lot: 1, units: 1, ...why }),
        posts: ['shelf -1 units', 'scrapped 1 units', 'loss 1000', 'cost -1000', 'remaining 1500'],
      },
      {
        name: 'used up: stays a cost of the build',
        before: onShelf,
        draft: said('consumed', { lot: 1, units: 1, ...why }),
        posts: ['shelf -1 units', 'consumed 1 units', 'remaining 1500'],
      },
      {
        name: 'found, cost 0 unless valued',
        before: [needed],
        draft: said('came-in', { lot: 1, units: 1, payload: { source: 'found' } }),
        posts: ['came-in 1 units', 'shelf 1 units', 'remaining -1500'],
      },
      {
        name: 'found after it was written off',
        before: [...onShelf, said('lost', { lot: 1, units: 2, ...why })],
        draft: said('found-again', { lot: 1, units: 1 }),
        posts: ['lost -1 units', 'shelf 1 units', 'cost 1000', 'loss -1000', 'remaining -1500'],
      },
    ],
  ],
];
