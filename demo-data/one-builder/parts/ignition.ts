import type { SystemParts } from '../../types.ts';

export const ignition: SystemParts = {
  system: 'ignition',
  parts: [
    {
      slug: 'coils',
      what: 'Ignition coil, one a plug',
      need: 6,
      guess: '64.00',
      from: 'tessock',
      job: 'plugs-coils',
      number: 'TC-6',
      maker: 'Tessock',
      facts: [
        ['energy', '100', 'mJ'],
        ['dwell at 14 V', '2.8', 'ms'],
      ],
    },
    {
      slug: 'plugs',
      what: 'Spark plug, cold',
      need: 6,
      guess: '11.80',
      from: 'tessock',
      job: 'plugs-coils',
      number: 'TP-14C',
      facts: [
        ['thread', 'M14x1.25'],
        ['gap', '0.6', 'mm'],
      ],
    },
    { slug: 'coil-bracket', what: 'Coil bracket, home-made', need: 1, guess: null, from: null, job: 'plugs-coils' },
    {
      slug: 'trigger-wheel',
      what: 'Trigger wheel, 36 teeth less one',
      need: 1,
      guess: '86.00',
      from: 'tessock',
      job: 'front-cover',
      number: 'TW-36',
      facts: [['teeth', '36-1']],
    },
    {
      slug: 'crank-sensor',
      what: 'Crank position sensor',
      need: 1,
      guess: '54.00',
      from: 'tessock',
      job: 'sensors',
      number: 'TS-CR',
      facts: [['gap', '0.8', 'mm']],
    },
    {
      slug: 'cam-sensor',
      what: 'Cam position sensor',
      need: 1,
      guess: '48.00',
      from: 'tessock',
      job: 'sensors',
      number: 'TS-CA',
    },
  ],
};
