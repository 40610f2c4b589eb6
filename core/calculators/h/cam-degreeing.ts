import { formatMeasure, fromSI, toSI } from '../../units/measure.ts';
import { calculator, type NumberInput, refuseInput, type Warning, warning } from '../calculator.ts';
import { makersValueGoverns } from '../cautions.ts';
import { exceeds, fallsShort } from '../limits.ts';

const event = (label: string, hint: string) =>
  ({
    label,
    hint,
    dimension: 'angle',
    unit: 'deg',
    usual: { from: -60, to: 150 },
  }) as const satisfies NumberInput;

const degrees = (angle: number): number => fromSI(angle, 'deg', 'angle');

/** Warns of a centreline outside 95° to 125°; of the exhaust, or of angles before TDC, the size alone counts. */
function centrelineWarnings(centrelines: Readonly<Record<string, number>>): Warning[] {
  return Object.entries(centrelines)
    .filter(([, angle]) => fallsShort(Math.abs(degrees(angle)), 95) || exceeds(Math.abs(degrees(angle)), 125))
    .map(([what, angle]) => {
      const shown = formatMeasure({ value: degrees(angle), unit: 'deg' }, 'angle', 4);
      return warning(`The ${what} of ${shown} is outside 95° to 125°: check the readings.`);
    });
}

function liftNote(lift: number | undefined): string {
  if (lift === undefined) return 'All angles at one stated lift, 0.050 in or 1 mm: write down which.';
  const shown = (unit: string, digits: number) =>
    formatMeasure({ value: fromSI(lift, unit, 'length'), unit }, 'length', digits);
  return `All angles at ${shown('mm', 4)} (${shown('in', 3)}) of lift.`;
}

export const camDegreeing = calculator({
  id: 'H3',
  slug: 'cam-degreeing',
  title: 'Cam degreeing',
  about: 'Durations, centrelines, lobe separation, overlap and advance from the valve events read at one lift.',
  inputs: {
    ivo_btdc: event('Intake opens, before TDC', 'crank degrees; negative after TDC'),
    ivc_abdc: event('Intake closes, after BDC', 'crank degrees; negative before BDC'),
    evo_bbdc: event('Exhaust opens, before BDC', 'crank degrees; negative after BDC'),
    evc_atdc: event('Exhaust closes, after TDC', 'crank degrees; negative before TDC'),
    open_deg_atdc: {
      label: 'Lift reached on opening, after TDC',
      hint: 'crank degrees; negative before TDC',
      dimension: 'angle',
      unit: 'deg',
      must: { atLeast: -360, atMost: 360 },
    },
    close_deg_atdc: {
      label: 'Same lift reached on closing, after TDC',
      hint: 'crank degrees; negative before TDC',
      dimension: 'angle',
      unit: 'deg',
      must: { atLeast: -360, atMost: 360 },
    },
    checking_lift: {
      label: 'Lift the angles were read at',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
      optional: true,
    },
  },
  outputs: {
    intake_duration: { label: 'Intake duration', dimension: 'angle', unit: 'deg' },
    exhaust_duration: { label: 'Exhaust duration', dimension: 'angle', unit: 'deg' },
    intake_centreline_atdc: { label: 'Intake centreline, after TDC', dimension: 'angle', unit: 'deg' },
    exhaust_centreline_btdc: { label: 'Exhaust centreline, before TDC', dimension: 'angle', unit: 'deg' },
    lobe_separation_cam: { label: 'Lobe separation', hint: 'cam degrees', dimension: 'camAngle', unit: 'degCam' },
    overlap: { label: 'Overlap', hint: 'crank degrees', dimension: 'angle', unit: 'deg' },
    cam_advance: { label: 'Cam advance', hint: 'positive: advanced', dimension: 'camAngle', unit: 'degCam' },
    centreline_atdc: { label: 'Centreline, after TDC', dimension: 'angle', unit: 'deg' },
  },
  formula:
    'duration = opening + 180° + closing; intake_centreline_atdc = (180° + ivc_abdc − ivo_btdc)/2; exhaust_centreline_btdc = ' +
    '(180° + evo_bbdc − evc_atdc)/2; lobe_separation_cam = mean of both; overlap = ivo_btdc + evc_atdc; cam_advance = ' +
    'lobe separation − intake centreline; from equal lifts: centreline_atdc = (open_deg_atdc + close_deg_atdc)/2',
  source: 'Derived by hand from the definitions of the events.',
  notes: [
    'Lobe separation is in cam degrees, though its number is the mean of the two crank centrelines.',
    'On an asymmetric lobe, the centreline from events is not the point of peak lift.',
  ],
  caution: makersValueGoverns,
  example: {
    ivo_btdc: { value: 14, unit: 'deg' },
    ivc_abdc: { value: 50, unit: 'deg' },
    evo_bbdc: { value: 58, unit: 'deg' },
    evc_atdc: { value: 10, unit: 'deg' },
  },
  modes: [
    {
      name: 'events',
      title: 'From the four valve events',
      needs: ['ivo_btdc', 'ivc_abdc', 'evo_bbdc', 'evc_atdc'],
      compute: ({ ivo_btdc: ivo, ivc_abdc: ivc, evo_bbdc: evo, evc_atdc: evc, checking_lift }) => {
        const halfTurn = Math.PI;
        const intakeDuration = ivo + halfTurn + ivc;
        const exhaustDuration = evo + halfTurn + evc;
        const within = 'events that leave the valve open for more than 0° and less than 720°';
        if (!(intakeDuration > 0 && intakeDuration < 4 * Math.PI)) {
          refuseInput('ivc_abdc', 'These intake events can’t belong to one opening of the valve.', within);
        }
        if (!(exhaustDuration > 0 && exhaustDuration < 4 * Math.PI)) {
          refuseInput('evc_atdc', 'These exhaust events can’t belong to one opening of the valve.', within);
        }
        const intake = (halfTurn + ivc - ivo) / 2;
        const exhaust = (halfTurn + evo - evc) / 2;
        const separation = (intake + exhaust) / 2;
        return {
          outputs: {
            intake_duration: intakeDuration,
            exhaust_duration: exhaustDuration,
            intake_centreline_atdc: intake,
            exhaust_centreline_btdc: exhaust,
            lobe_separation_cam: toSI(degrees(separation), 'degCam', 'camAngle'),
            overlap: ivo + evc,
            cam_advance: toSI(degrees((exhaust - intake) / 2), 'degCam', 'camAngle'),
          },
          warnings: centrelineWarnings({ 'intake centreline': intake, 'exhaust centreline': exhaust }),
          notes: [liftNote(checking_lift)],
        };
      },
    },
    {
      name: 'equal-lift',
      title: 'From equal lift either side of the peak',
      needs: ['open_deg_atdc', 'close_deg_atdc'],
      compute: ({ open_deg_atdc: open, close_deg_atdc: close, checking_lift }) => {
        if (!exceeds(close, open)) {
          refuseInput('close_deg_atdc', 'The valve must close after it opens.', 'an angle beyond open_deg_atdc');
        }
        const centreline = (open + close) / 2;
        return {
          outputs: { centreline_atdc: centreline },
          warnings: centrelineWarnings({ centreline }),
          notes: [liftNote(checking_lift)],
        };
      },
    },
  ],
});
