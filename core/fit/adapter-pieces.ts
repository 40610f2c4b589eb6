import { dashSizes } from './dash.ts';
import { dashPort } from './parse/dash.ts';
import type { BorePort, DashKind, Gender, Port, ThreadedPort } from './port.ts';
import {
  type AdapterSizeRow,
  flareToBanjo,
  flareToBsp,
  flareToMetric,
  flareToNpt,
  flareToOringStud,
  flareToQuick,
  sensorThreads,
} from './tables/adapter-sizes.ts';
import { quickConnectSizes, splitFlangeSizes } from './tables/other-ends.ts';
import { bspThreads, nptThreads } from './tables/pipe-threads.ts';
import { bspThread, metricThread, nptThread, threadOfTable } from './thread.ts';

/** One adapter: two ends, each of which joins its counterpart. */
export interface Piece {
  /** Row of the table of families. */
  readonly family: string;
  readonly ends: readonly [Port, Port];
  readonly usual: boolean;
}

const inch = 25.4;
const flareDashes = dashSizes.flare37.map(({ dash }) => dash);
const orbDashes = dashSizes.orb.map(({ dash }) => dash);
const nptSizes = nptThreads.map(({ size }) => size);

/** How many listed sizes lie between two dashes. */
const stepsApart = (one: number, other: number): number => {
  const all = [...new Set([...flareDashes, ...orbDashes])].toSorted((first, second) => first - second);
  return Math.abs(all.indexOf(one) - all.indexOf(other));
};

function dashEnd(kind: DashKind, dash: number, gender: Gender): ThreadedPort[] {
  const swivel = gender === 'female' && kind !== 'orb' ? { swivel: true as const } : {};
  const port = dashPort(kind, dash, { gender, ...swivel });
  return port === undefined ? [] : [port];
}

const flare = (dash: number, gender: Gender): ThreadedPort[] => dashEnd('flare37', dash, gender);

const npt = (size: string, gender: Gender): ThreadedPort[] => {
  const thread = nptThread(size);
  return thread === undefined ? [] : [{ kind: 'npt', thread, gender }];
};

const bsp = (kind: 'r' | 'g', size: string, gender: Gender): ThreadedPort[] => {
  const thread = bspThread(size, kind === 'r' ? 'taper' : 'any');
  return thread === undefined ? [] : [{ kind, thread, gender }];
};

function plainThread(text: string, kind: 'thread' | 'mport_oring' | 'banjo', gender: Gender): ThreadedPort[] {
  const metric = /^M([\d.]+)x([\d.]+)$/.exec(text);
  const thread = metric === null ? threadOfTable(text) : metricThread(Number(metric[1]), Number(metric[2]));
  return [kind === 'banjo' ? { kind, thread } : { kind, thread, gender }];
}

const quick = (mm: number, gender: Gender): BorePort[] => [{ kind: 'quick', mm, gender }];

const pieces = (family: string, ones: readonly Port[], others: readonly Port[], usual = true): Piece[] =>
  ones.flatMap((one) => others.map((other) => ({ family, ends: [one, other] as const, usual })));

/** The adapters of a size table, for the flare ends given. */
const bySizes = (
  family: string,
  rows: readonly AdapterSizeRow[],
  genders: readonly Gender[],
  other: (size: string) => readonly Port[],
): Piece[] =>
  rows.flatMap(({ dash, usual, lessUsual }) =>
    genders.flatMap((gender) => [
      ...usual.flatMap((size) => pieces(family, flare(dash, gender), other(size))),
      ...lessUsual.flatMap((size) => pieces(family, flare(dash, gender), other(size), false)),
    ]),
  );

function flareFamilies(): Piece[] {
  const both: readonly Gender[] = ['male', 'female'];
  const pairs = flareDashes.flatMap((one) => flareDashes.map((other) => [one, other] as const));
  return [
    ...pairs
      .filter(([one, other]) => one <= other)
      .flatMap(([one, other]) => pieces('A01', flare(one, 'male'), flare(other, 'male'), stepsApart(one, other) < 3)),
    ...pairs.flatMap(([one, other]) =>
      pieces('A02', flare(one, 'female'), flare(other, 'male'), stepsApart(one, other) < 3),
    ),
    ...bySizes('A03', flareToNpt, ['male'], (size) => npt(size, 'male')),
    ...bySizes('A04', flareToNpt, ['male'], (size) => npt(size, 'female')),
    ...bySizes('A05', flareToNpt, ['female'], (size) => [...npt(size, 'male'), ...npt(size, 'female')]),
    ...flareDashes.flatMap((dash) =>
      orbDashes
        .filter((other) => stepsApart(dash, other) <= 2)
        .flatMap((other) =>
          both.flatMap((gender) => pieces('A06', flare(dash, gender), dashEnd('orb', other, 'male'))),
        ),
    ),
    ...bySizes('A07', flareToMetric, ['male'], (size) => plainThread(size, 'thread', 'male')),
    ...bySizes('A08', flareToOringStud, ['male'], (size) => plainThread(size, 'mport_oring', 'male')),
    ...bySizes('A09', flareToBsp, ['male'], (size) => bsp('g', size, 'male')),
    ...bySizes('A10', flareToBsp, ['male'], (size) => bsp('r', size, 'male')),
    ...flareDashes.flatMap((dash) => [
      ...pieces('A11', flare(dash, 'male'), dashEnd('flare45', dash, 'female')),
      ...pieces('A11', flare(dash, 'female'), dashEnd('flare45', dash, 'male')),
      ...pieces('A26', flare(dash, 'female'), flare(dash, 'female')),
      ...both.flatMap((one) => both.flatMap((two) => pieces('A32', flare(dash, one), dashEnd('orfs', dash, two)))),
    ]),
    ...pairs
      .filter(([one, other]) => stepsApart(one, other) <= 1)
      .flatMap(([one, other]) => pieces('A12', flare(one, 'male'), dashEnd('flareinv', other, 'male'), one === other)),
    ...bySizes('A13', flareToBanjo, ['male'], (size) => plainThread(size, 'banjo', 'male')),
    ...flareToQuick.flatMap(({ dash, female, male }) => [
      ...female.flatMap((mm) => pieces('A15', flare(dash, 'male'), quick(mm, 'female'))),
      ...male.flatMap((mm) => pieces('A16', flare(dash, 'male'), quick(mm, 'male'))),
    ]),
  ];
}

function pipeFamilies(): Piece[] {
  const nptPairs = nptSizes.flatMap((one, at) => nptSizes.map((other, where) => ({ one, other, steps: at - where })));
  return [
    ...flareToNpt.flatMap(({ dash, usual }) =>
      usual.flatMap((size) => pieces('A17', dashEnd('orb', dash, 'male'), npt(size, 'female'))),
    ),
    ...flareToQuick.flatMap(({ dash, female, male }) => [
      ...female.flatMap((mm) => pieces('A17', dashEnd('orb', dash, 'male'), quick(mm, 'female'))),
      ...male.flatMap((mm) => pieces('A17', dashEnd('orb', dash, 'male'), quick(mm, 'male'))),
    ]),
    ...orbDashes.flatMap((one) =>
      orbDashes
        .filter((other) => other !== one)
        .flatMap((other) =>
          pieces('A18', dashEnd('orb', one, 'male'), dashEnd('orb', other, 'female'), stepsApart(one, other) < 3),
        ),
    ),
    ...nptPairs
      .filter(({ steps }) => steps >= 1 && steps <= 3)
      .flatMap(({ one, other }) => pieces('A19', npt(one, 'male'), npt(other, 'female'))),
    ...nptPairs
      .filter(({ steps }) => steps >= 0 && steps <= 3)
      .flatMap(({ one, other }) => [
        ...pieces('A20', npt(one, 'male'), npt(other, 'male')),
        ...pieces('A20', npt(one, 'female'), npt(other, 'female')),
      ]),
    ...sensorThreads.flatMap((thread) => [
      ...pieces('A21', npt('1/8', 'male'), plainThread(thread, 'thread', 'female')),
      ...pieces('A21', plainThread(thread, 'thread', 'male'), npt('1/8', 'female')),
    ]),
    ...bspThreads.flatMap(({ size }) => [
      ...pieces('A22', bsp('r', size, 'male'), npt(size, 'female')),
      ...pieces('A22', npt(size, 'male'), [...bsp('r', size, 'female'), ...bsp('g', size, 'female')]),
    ]),
  ];
}

function otherFamilies(): Piece[] {
  const metric = [...new Set(flareToMetric.flatMap(({ usual, lessUsual }) => [...usual, ...lessUsual]))];
  const nominal = quickConnectSizes.map(({ mm }) => mm);
  return [
    ...metric.flatMap((one) =>
      metric
        .filter((other) => other !== one)
        .flatMap((other) => pieces('A23', plainThread(one, 'thread', 'male'), plainThread(other, 'thread', 'female'))),
    ),
    ...nominal.flatMap((one) =>
      nominal
        .filter((other) => other !== one)
        .flatMap((other) => pieces('A33', quick(one, 'female'), quick(other, 'male'))),
    ),
    ...splitFlangeSizes.flatMap(({ code, dash }) => {
      const head: Port = { kind: 'splitflange', code, dash };
      return [
        ...pieces('A27', [head], flare(dash, 'male')),
        ...pieces('A27', [head], dashEnd('orb', dash, 'female')),
        ...nptSizes
          .filter((size) => nominalInch(size) * 16 === dash)
          .flatMap((size) => pieces('A27', [head], npt(size, 'male'))),
      ];
    }),
  ];
}

/** `1-1/4` as a number; sizes of the tables only. */
const nominalInch = (size: string): number =>
  size
    .split('-')
    .map((part) => part.split('/').map(Number))
    .reduce((sum, [top = 0, bottom = 1]) => sum + top / bottom, 0);

let listed: readonly Piece[] | undefined;

/** Every adapter whose sizes are listed; made once. */
export function listedPieces(): readonly Piece[] {
  listed ??= [...flareFamilies(), ...pipeFamilies(), ...otherFamilies()];
  return listed;
}

/** A dash takes hoses from the next smaller to the next larger nominal. */
function dashesFor(mm: number): readonly { readonly dash: number; readonly usual: boolean }[] {
  return flareDashes.flatMap((dash, at) => {
    const least = ((flareDashes[at - 1] ?? dash - 1) * inch) / 16;
    const most = ((flareDashes[at + 1] ?? dash + 4) * inch) / 16;
    return mm >= least && mm <= most ? [{ dash, usual: Math.abs((dash * inch) / 16 - mm) <= 0.8 }] : [];
  });
}

/** Largest step of a hose joiner or reducer. */
const largestStep = 2;

/** Adapters with a hose or barb end, for the bores in question. */
export function borePieces(bores: readonly number[]): readonly Piece[] {
  const sizes = [...new Set(bores)];
  const barb = (mm: number): BorePort[] => [{ kind: 'barb', mm }];
  const hose = (mm: number): BorePort[] => [{ kind: 'hose', mm }];
  const metric = [...new Set(flareToMetric.flatMap(({ usual }) => usual))];
  const pairs = sizes.flatMap((one) =>
    sizes.filter((other) => other >= one && other <= one * largestStep).map((other) => [one, other] as const),
  );
  return [
    ...sizes.flatMap((mm) =>
      dashesFor(mm).flatMap(({ dash, usual }) => [
        ...pieces('A14', flare(dash, 'male'), barb(mm), usual),
        ...pieces('A31', flare(dash, 'female'), barb(mm), usual),
        ...pieces('A17', dashEnd('orb', dash, 'male'), barb(mm), usual),
      ]),
    ),
    ...sizes.flatMap((mm) =>
      metric
        .filter((thread) => {
          const diameter = Number(/^M([\d.]+)/.exec(thread)?.[1]);
          return mm <= diameter && mm >= 0.35 * diameter;
        })
        .flatMap((thread) => pieces('A24', plainThread(thread, 'thread', 'male'), barb(mm))),
    ),
    ...pairs.flatMap(([one, other]) => [
      ...pieces('A25', barb(one), barb(other)),
      ...pieces(one === other ? 'A34' : 'A29', hose(one), hose(other)),
    ]),
  ];
}
