/** Making a line at the bench, step by step. Common practice, no published source; the makers' own sheets go before it. */
import { clockingOf } from './clocking.ts';
import type { Hose } from './hose.ts';
import type { Lengths } from './lengths.ts';
import type { EndStyle, Line } from './line.ts';

export interface MakingStep {
  readonly id: string;
  /** Two or three words, for a large target. */
  readonly title: string;
  readonly text: string;
  /** Where somebody can be hurt, now or later. */
  readonly caution?: string;
}

const eyes = 'Eye protection on: braid wires and cuttings fly.';
const hands = 'Gloves on: cut braid is needles. Keep the free hand out of the way of the blade.';

const endSteps: Readonly<Record<EndStyle, readonly MakingStep[]>> = {
  reusable: [
    {
      id: 'socket',
      title: 'Socket on',
      text: 'Work each socket over the cut end, with no braid wire turned back, until the hose stops where its maker says.',
      caution: hands,
    },
    {
      id: 'nipple',
      title: 'Nipple in',
      text: 'Oil the nipple, push it in straight and screw it home to the gap of its maker. See that the hose has not crept out: the mark must not move.',
      caution: 'Hold the socket in soft jaws, not in the hand: the wrench slips.',
    },
  ],
  crimp: [
    {
      id: 'socket',
      title: 'Shell on',
      text: 'Push shell and end on until the hose stops, and mark the hose at the shell.',
      caution: hands,
    },
    {
      id: 'nipple',
      title: 'Crimp',
      text: 'Crimp with the die and to the diameter of the maker of that end; measure it, and see that the mark has not moved.',
      caution: 'Hands clear of the press. Ends and hose of different makers are not rated together.',
    },
  ],
  'push-on': [
    {
      id: 'nipple',
      title: 'Push on',
      text: 'Push the hose over the barbs up to the stop, with what its maker allows as lubricant, and without a clamp.',
      caution: 'Brace the end in soft jaws, not against the body: it slips.',
    },
  ],
  barb: [
    {
      id: 'socket',
      title: 'Clamps on',
      text: 'Slide the clamps over the hose before the end goes in.',
    },
    {
      id: 'nipple',
      title: 'Barb in',
      text: 'Push the hose past the bead or last barb, set the clamp behind it and tighten as its maker says.',
      caution: 'Mind the hand behind the screwdriver.',
    },
  ],
};

function stepsOfStyles(styles: readonly (EndStyle | undefined)[]): readonly MakingStep[] {
  const known = [...new Set(styles)].map((style) => style ?? 'reusable');
  const several = new Set(known).size > 1;
  return [...new Set(known)].flatMap((style) =>
    endSteps[style].map((step) =>
      several ? { ...step, id: `${step.id}-${style}`, title: `${step.title} (${style})` } : step,
    ),
  );
}

/**
 * The steps for one line, in order; ids are the same for the same step of every line, so that each can be recorded. Ends
 * whose style nobody gave are taken as reusable.
 */
export function makingSteps(
  line: Line,
  hose: Hose,
  { cutMm, toleranceMm, freeHoseMm }: Lengths,
): readonly MakingStep[] {
  const braided = hose.type === undefined || !/^(?:fuel hose|heater)/.test(hose.type.construction);
  const clocking = clockingOf(line, freeHoseMm);
  const bar = line.pressureBar === undefined ? '' : ` The line works at up to ${line.pressureBar} bar.`;
  return [
    ...(line.sleeve === undefined
      ? []
      : [
          {
            id: 'sleeve',
            title: 'Sleeve on',
            text: `Cut ${Math.ceil(freeHoseMm)} mm of ${line.sleeve} sleeve and have it on before the second end: it doesn't go over one.`,
          },
        ]),
    ...(braided
      ? [
          {
            id: 'tape',
            title: 'Tape the cut',
            text: `Mark ${cutMm} mm and wrap tape tightly around the mark, so that the braid doesn't fray.`,
          },
        ]
      : []),
    {
      id: 'cut',
      title: 'Cut square',
      text: `Cut through the middle of the mark, square to the hose: ${cutMm} mm ± ${Number(toleranceMm.toFixed(1))} mm. Measure again.`,
      caution: `${eyes} ${hands}`,
    },
    ...stepsOfStyles(line.ends.map(({ style }) => style)),
    ...(clocking.applies ? [{ id: 'clock', title: 'Clock the ends', text: clocking.text }] : []),
    {
      id: 'debris',
      title: 'Debris out',
      text: 'Blow through from both sides, flush with clean solvent or the fluid of the line, look through against light, then cap both ends.',
      caution: 'Eye protection on; never aim compressed air at skin. A chip in an oil line ends a bearing.',
    },
    {
      id: 'pressure',
      title: 'Pressure check',
      text: `Fill with liquid, bleed the air, and hold the test pressure that the hose's maker states; look for weeping and for an end that creeps.${bar}`,
      caution:
        'Test with liquid, never with air. Stand aside, eye protection on, and keep hands off a line under pressure: a fine jet goes through skin. The makers’ test instructions govern.',
    },
    {
      id: 'label',
      title: 'Label',
      text: `Label the line${line.name === undefined ? '' : ` “${line.name}”`} with fluid, direction and date.`,
    },
  ];
}

/** Steps that nobody has recorded as done, in order. */
export function openSteps(steps: readonly MakingStep[], doneIds: ReadonlySet<string>): readonly MakingStep[] {
  return steps.filter(({ id }) => !doneIds.has(id));
}
