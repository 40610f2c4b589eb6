import { hundredths } from './near-threads.ts';
import { isThreaded, type Port, type PortKind } from './port.ts';

/** How to measure each kind of end, in one line. Source: common practice, no published source. */
const ways: Readonly<Record<PortKind, string>> = {
  thread: 'Caliper over the tips of the outside thread; lay ten threads beside a rule and divide by ten for the pitch.',
  mport_oring: 'Measure the thread, then look for a chamfer with room for an O-ring at the mouth of the port.',
  flare37: 'Measure the thread, then hold an angle gauge to the cone: 37° from the axis.',
  flare45: 'Measure the thread, then hold an angle gauge to the cone: 45° from the axis.',
  flareinv: 'Measure the thread of the tube nut; the seat is inside the port and the tube is flared.',
  orb: 'Measure the thread; the stud has an O-ring above the thread and no cone.',
  orfs: 'Measure the thread; the end is flat with an O-ring in a groove.',
  npt: 'The thread gets thinner toward the tip. Count the threads in an inch; the size is the pipe’s, not the diameter.',
  nptf: 'As NPT; dryseal is told by its mark or its papers.',
  r: 'The thread gets thinner toward the tip, flanks 55°. Count the threads in an inch.',
  rp: 'Parallel inside thread with 55° flanks for a taper outside one. Count the threads in an inch.',
  g: 'Parallel thread with 55° flanks and a flat face for a washer. Count the threads in an inch.',
  banjo: 'Caliper over the bolt’s thread; ten threads beside a rule; measure the eye’s bore and thickness.',
  barb: 'Caliper over the highest rib.',
  hose: 'The bore, read from the print on the hose or on a clean cut; never the outside.',
  tube: 'Caliper over the outside, away from the cut.',
  quick: 'Caliper over the smooth part of the male tube end.',
  vband: 'Outside diameter of the tube, then the flange’s diameter, angle, register and thickness: name that profile.',
  slip: 'Caliper over the outer pipe end, or in the inner one, twice at right angles.',
  splitflange: 'Distance between the bolt holes, long and short side, centre to centre.',
  tradeflange: 'A name is no size: count the holes, measure thread, spacing and opening.',
  pattern: 'Hole to hole, edge to edge plus one hole; over the centre for a hole circle.',
  elec: 'Count the cavities; read the family and the key mark on the housing.',
};

const insideThread =
  'Caliper across the tips in the bore, which read about one pitch less than the size; screw a known bolt in by hand to be sure.';

/** What a port measures, for the field in which it is typed. */
export interface PortMeasures {
  readonly diameterMm?: number;
  readonly pitchMm?: number;
  readonly howToMeasure: string;
}

export const measuresOf = (port: Port): PortMeasures => ({
  ...(isThreaded(port)
    ? { diameterMm: Number(hundredths(port.thread.diameter)), pitchMm: Number(port.thread.pitch.toFixed(3)) }
    : {}),
  ...('mm' in port ? { diameterMm: port.mm } : {}),
  howToMeasure: port.kind === 'thread' && port.gender === 'female' ? insideThread : ways[port.kind],
});
