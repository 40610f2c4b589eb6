import type { PartDetail } from '../../../../core/contract/parts.ts';

type Lot = PartDetail['lots'][number];

const placeWords: Readonly<Record<string, string>> = {
  inspection: 'to inspect',
  shelf: 'on the shelf',
  allocated: 'set aside',
  'trial-fitted': 'on for trial',
  verified: 'final',
  lent: 'lent out',
  returned: 'sent back, not settled',
  settled: 'sent back and settled',
  'given-back': 'given back',
  consumed: 'used up',
};

/** Where a lot's units are, in words, with how many. */
export const lotPlaces = (places: Lot['places']): readonly (readonly [place: string, milli: number])[] =>
  Object.entries(places).map(([place, milli]) => [placeWords[place] ?? place, milli]);

const sourceWords: Readonly<Record<Lot['source'], string>> = {
  bought: 'bought',
  owned: 'from own stock',
  donor: 'from a donor',
  borrowed: 'borrowed',
  found: 'found',
  made: 'made',
  'over-delivery': 'more than was ordered',
};

/** Where a lot came from: "borrowed from Aldo Brenn". */
export const lotSourceWords = ({ source, owner }: Lot): string =>
  owner === '' ? sourceWords[source] : `${sourceWords[source]}${source === 'borrowed' ? ' from' : ','} ${owner}`;
