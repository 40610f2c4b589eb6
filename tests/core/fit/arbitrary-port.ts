import fc from 'fast-check';
import { dashSizes } from '../../../core/fit/dash.ts';
import { dashPort } from '../../../core/fit/parse/dash.ts';
import { dashKinds, type Gender, type Port } from '../../../core/fit/port.ts';
import { splitFlangeSizes } from '../../../core/fit/tables/other-ends.ts';
import { bspThreads, nptThreads } from '../../../core/fit/tables/pipe-threads.ts';
import {
  bspThread,
  metricDiameters,
  metricPitches,
  metricThread,
  nptThread,
  type Thread,
  unifiedRows,
  unifiedThread,
} from '../../../core/fit/thread.ts';

const listed = (thread: Thread | undefined): Thread => {
  if (thread === undefined) throw new Error('The tables don’t list their own thread.');
  return thread;
};

const gender = fc.constantFrom<Gender | undefined>('male', 'female', undefined);
const withGender = (port: Port, said: Gender | undefined): Port =>
  said === undefined ? port : { ...port, gender: said };

const metric = fc.constantFrom(
  ...metricDiameters().flatMap((diameter) => metricPitches(diameter).map((pitch) => metricThread(diameter, pitch))),
);
const unified = fc.constantFrom(...unifiedRows.map(({ size, tpi }) => listed(unifiedThread(size, tpi))));
const tenths = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((value) => value / 10);
const word = fc.constantFrom('p1', 'p2', 'x', 'q7');

const threaded: fc.Arbitrary<Port> = fc.oneof(
  fc.tuple(fc.oneof(metric, unified), gender).map(([thread, said]) => withGender({ kind: 'thread', thread }, said)),
  fc.tuple(metric, gender).map(([thread, said]) => withGender({ kind: 'mport_oring', thread }, said)),
  fc.oneof(metric, unified).map((thread): Port => ({ kind: 'banjo', thread })),
  fc
    .tuple(fc.constantFrom(...nptThreads.map(({ size }) => size)), fc.constantFrom('npt', 'nptf'), gender)
    .map(([size, kind, said]) => withGender({ kind, thread: listed(nptThread(size)) }, said)),
  fc
    .tuple(fc.constantFrom(...bspThreads.map(({ size }) => size)), gender)
    .map(([size, said]) => withGender({ kind: 'g', thread: listed(bspThread(size)) }, said)),
  fc
    .tuple(fc.constantFrom(...bspThreads.filter(({ taperListed }) => taperListed).map(({ size }) => size)), gender)
    .map(([size, said]) => withGender({ kind: 'r', thread: listed(bspThread(size, 'taper')) }, said)),
  fc
    .constantFrom(...bspThreads.filter(({ taperListed }) => taperListed).map(({ size }) => size))
    .map((size): Port => ({ kind: 'rp', thread: listed(bspThread(size, 'taper')), gender: 'female' })),
  fc
    .tuple(
      fc.constantFrom(...dashKinds.flatMap((kind) => dashSizes[kind].map(({ dash }) => ({ kind, dash })))),
      gender,
      fc.constantFrom<'AN' | 'JIC'>('AN', 'JIC'),
      fc.boolean(),
    )
    .map(([{ kind, dash }, said, grade, swivel]) => {
      const port = dashPort(kind, dash, swivel ? { swivel: true } : {}, grade);
      if (port === undefined) throw new Error(`${kind} has no -${dash}.`);
      return withGender(port, said);
    }),
);

const other: fc.Arbitrary<Port> = fc.oneof(
  fc.tuple(fc.constantFrom('barb', 'hose'), tenths(3, 100)).map(([kind, mm]): Port => ({ kind, mm })),
  fc.integer({ min: 300, max: 6000 }).map((value): Port => ({ kind: 'tube', mm: value / 100 })),
  fc
    .tuple(fc.constantFrom(6.35, 7.89, 9.49, 11.8, 15.82), gender)
    .map(([mm, said]) => withGender({ kind: 'quick', mm }, said)),
  fc
    .tuple(tenths(5, 130), fc.option(word, { nil: undefined }))
    .map(([mm, profile]): Port => ({ kind: 'vband', mm, ...(profile === undefined ? {} : { profile }) })),
  fc.tuple(tenths(5, 130), fc.constantFrom('od', 'id')).map(([mm, of]): Port => ({ kind: 'slip', mm, of })),
  fc.constantFrom(...splitFlangeSizes).map(({ code, dash }): Port => ({ kind: 'splitflange', code, dash })),
  fc.constantFrom('T3', 'T4', 'T3 divided', 'T25/T28').map((name): Port => ({ kind: 'tradeflange', name })),
  fc
    .tuple(fc.integer({ min: 1, max: 12 }), metric, tenths(20, 150), fc.option(tenths(20, 150), { nil: undefined }))
    .map(
      ([count, screw, first, second]): Port => ({
        kind: 'pattern',
        count,
        screw,
        spacing: second === undefined ? [first] : [first, second],
      }),
    ),
  fc
    .tuple(
      fc.integer({ min: 1, max: 8 }),
      gender,
      fc.option(fc.constantFrom('A', 'B'), { nil: undefined }),
      fc.option(word, { nil: undefined }),
    )
    .map(([cavities, said, key, family]) =>
      withGender(
        { kind: 'elec', cavities, ...(key === undefined ? {} : { key }), ...(family === undefined ? {} : { family }) },
        said,
      ),
    ),
);

const seal = fc.constantFrom<'washer' | 'sealant' | undefined>('washer', 'sealant', undefined);

/** Any port that can be written. */
export const anyPort: fc.Arbitrary<Port> = fc
  .tuple(fc.oneof({ weight: 3, arbitrary: threaded }, { weight: 2, arbitrary: other }), seal)
  .map(([port, said]) => (said === undefined ? port : { ...port, seal: said }));
