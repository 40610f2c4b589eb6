import { dashNames, dashSizes } from '../../../core/fit/dash.ts';
import type { DashKind } from '../../../core/fit/port.ts';
import { banjoSizes, oRingPorts } from '../../../core/fit/tables/metric-ports.ts';
import {
  inchBores,
  metricBores,
  quickConnectSizes,
  splitFlangeSizes,
  turbineFlangeNames,
  vbandTubes,
} from '../../../core/fit/tables/other-ends.ts';
import { bspThreads, nptThreads } from '../../../core/fit/tables/pipe-threads.ts';
import { metricDiameters, metricPitches, plain, unifiedRows } from '../../../core/fit/thread.ts';

interface Size {
  /** The designation without its side. */
  readonly value: string;
  readonly label: string;
}

/** A sort of end, for those who don't know how it is written: its sizes come from the tables of the fit check. */
export interface EndKind {
  readonly id: string;
  readonly label: string;
  readonly sizes: readonly Size[];
}

const same = (value: string): Size => ({ value, label: value });

const dashes = (kind: DashKind, told = ''): readonly Size[] =>
  dashSizes[kind].map(({ dash, thread }) => ({
    value: `${dashNames[kind]} -${dash}`,
    label: `${dashNames[kind]} -${dash}${told}, thread ${thread}`,
  }));

const metric: readonly Size[] = metricDiameters().flatMap((diameter) =>
  metricPitches(diameter).map((pitch, at) => ({
    value: `M${plain(diameter)}x${plain(pitch)}`,
    label: `M${plain(diameter)}x${plain(pitch)}${at === 0 ? '' : ', fine'}`,
  })),
);
const unified: readonly Size[] = unifiedRows.map(({ size, tpi, series }) => same(`${size}-${tpi} ${series}`));

const bores = (kind: 'barb' | 'hose'): readonly Size[] => [
  ...metricBores.map((mm) => same(`${kind} ${plain(mm)} mm`)),
  ...inchBores.map(({ inch, mm }) => ({ value: `${kind} ${inch} in`, label: `${kind} ${inch} in, ${plain(mm)} mm` })),
];

/** The sorts of ends, as the picker lists them. */
export const endKinds: readonly EndKind[] = [
  { id: 'thread', label: 'Thread: bolt, sensor, plug', sizes: [...metric, ...unified] },
  {
    id: 'pipe',
    label: 'Pipe thread',
    sizes: [
      ...nptThreads.map(({ size, tpi }) => ({ value: `${size} NPT`, label: `${size} NPT, taper, ${tpi} to the inch` })),
      ...bspThreads.map(({ size, tpi }) => ({ value: `G ${size}`, label: `G ${size}, parallel, ${tpi} to the inch` })),
    ],
  },
  {
    id: 'taper',
    label: 'Pipe thread with 55° flanks, taper',
    sizes: bspThreads
      .filter(({ taperListed }) => taperListed)
      .flatMap(({ size }) => [
        { value: `R ${size}`, label: `R ${size}, outside, taper` },
        { value: `Rc ${size}`, label: `Rc ${size}, inside, taper` },
        { value: `Rp ${size}`, label: `Rp ${size}, inside, parallel` },
      ]),
  },
  {
    id: 'flare',
    label: 'Flare',
    sizes: [
      ...dashes('flare37', ', 37° cone'),
      ...dashes('flare45', ', 45° cone'),
      ...dashes('flareinv', ', inverted'),
    ],
  },
  {
    id: 'boss',
    label: 'O-ring boss or flat face with O-ring',
    sizes: [
      ...dashes('orb'),
      ...oRingPorts.map((thread) => same(`ISO6149 ${thread}`)),
      ...dashes('orfs', ', flat face'),
    ],
  },
  { id: 'banjo', label: 'Banjo', sizes: banjoSizes.map(({ thread }) => same(`banjo ${thread}`)) },
  { id: 'hose', label: 'Hose, by its bore', sizes: bores('hose') },
  { id: 'barb', label: 'Barb for a hose', sizes: bores('barb') },
  {
    id: 'quick',
    label: 'Quick connect',
    sizes: quickConnectSizes.map(({ mm, inch }) => ({ value: `QC ${mm}`, label: `${mm} mm, ${inch} in` })),
  },
  {
    id: 'vband',
    label: 'V-band',
    sizes: vbandTubes.map((mm) => ({ value: `VB ${plain(mm)}`, label: `tube ${plain(mm)} mm` })),
  },
  {
    id: 'slip',
    label: 'Slip joint of two pipes',
    sizes: vbandTubes.flatMap((mm) => [
      { value: `slip ${plain(mm)} od`, label: `${plain(mm)} mm outside` },
      { value: `slip ${plain(mm)} id`, label: `${plain(mm)} mm inside` },
    ]),
  },
  {
    id: 'flange',
    label: 'Flange with a name or a code',
    sizes: [
      ...turbineFlangeNames.map((name) => same(`flange ${name}`)),
      ...splitFlangeSizes.map(({ code, dash, longMm, shortMm }) => ({
        value: `flange code${code} -${dash}`,
        label: `flange code${code} -${dash}, holes ${longMm} x ${shortMm} mm`,
      })),
    ],
  },
  { id: 'pattern', label: 'Hole pattern', sizes: [] },
  { id: 'connector', label: 'Electrical connector', sizes: [] },
];
