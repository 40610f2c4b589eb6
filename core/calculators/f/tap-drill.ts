import { calculator, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { diameter, fastenerCaution, pitch, refuseCoarseThread } from './fasteners.ts';

/** The two heights that 100 % can mean: diameter lost per pitch, and how it reads. */
const bases = {
  '3/4H': { factor: 1.299_038, words: '100 % is 3/4 H, as in drill tables' },
  '5/8H': { factor: 1.082_532, words: '100 % is 5/8 H, the full ISO and UN internal profile' },
} as const;

const usualShare = { from: 50, to: 85 } as const;

export const tapDrill = calculator({
  id: 'F8',
  slug: 'tap-drill',
  title: 'Tap drill and thread percentage',
  about: 'Which drill leaves a share of thread, or what share of thread a drill leaves.',
  inputs: {
    diameter,
    pitch,
    thread_pct: {
      label: 'Share of thread',
      dimension: 'fraction',
      unit: '%',
      must: { above: 0 },
      usual: usualShare,
    },
    drill: { label: 'Drill', dimension: 'length', unit: 'mm', must: { above: 0 } },
    basis: {
      kind: 'choice',
      label: 'What 100 % means',
      choices: { '3/4H': bases['3/4H'].words, '5/8H': bases['5/8H'].words },
      default: '3/4H',
      defaultSource: "drill tables, for example Machinery's Handbook",
    },
  },
  outputs: {
    drill: { label: 'Drill', dimension: 'length', unit: 'mm' },
    thread_pct: { label: 'Share of thread', dimension: 'fraction', unit: '%' },
    basis_used: { kind: 'text', label: 'Reckoned so that' },
  },
  formula: 'drill = d - k · P · thread_pct; thread_pct = (d - drill)/(k · P); k = 1.299038 for 3/4H, 1.082532 for 5/8H',
  source: "Machinery's Handbook, 31st edition, tap drill table (seen); ISO 68-1 and ASME B1.1 profile (from memory).",
  notes: ['The two meanings of 100 % differ by 20 %: compare shares of thread of one basis only.'],
  caution: fastenerCaution,
  example: {
    diameter: { value: 10, unit: 'mm' },
    pitch: { value: 1.5, unit: 'mm' },
    thread_pct: { value: 75, unit: '%' },
  },
  modes: [
    {
      name: 'drill',
      title: 'drill from share of thread',
      needs: ['diameter', 'pitch', 'thread_pct'],
      compute: (given) => {
        refuseCoarseThread('pitch', given.diameter, given.pitch);
        const { factor, words } = bases[given.basis];
        const drill = given.diameter - factor * given.pitch * given.thread_pct;
        if (!exceeds(drill, 0)) {
          refuseInput('thread_pct', 'That share of thread leaves no hole.', 'a share of thread of 50 to 85 %');
        }
        return { outputs: { drill, basis_used: words } };
      },
    },
    {
      name: 'share',
      title: 'share of thread from drill',
      needs: ['diameter', 'pitch', 'drill'],
      compute: (given) => {
        refuseCoarseThread('pitch', given.diameter, given.pitch);
        if (!fallsShort(given.drill, given.diameter)) {
          refuseInput('drill', 'The drill is as wide as the thread.', 'a drill below the nominal diameter');
        }
        const { factor, words } = bases[given.basis];
        const share = (given.diameter - given.drill) / (factor * given.pitch);
        const warnings: Warning[] = [];
        if (fallsShort(share, usualShare.from / 100)) warnings.push(warning('Below 50 % the thread strips easily.'));
        if (exceeds(share, usualShare.to / 100)) warnings.push(warning('Above 85 % the tap binds and may break.'));
        return { outputs: { thread_pct: share, basis_used: words }, warnings };
      },
    },
  ],
});
