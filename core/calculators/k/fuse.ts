import { calculator, graveWarning, refuseInput } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';
import { electricalCaution } from './electrical-caution.ts';
import { fuseSizes } from './fuse-sizes.ts';

/** How far a fuse is loaded for long; common practice, and fuse makers' guidance from memory. */
const continuousLoading = 0.8;

export const fuse = calculator({
  id: 'K3',
  slug: 'fuse',
  title: 'Fuse',
  about: 'The fuse for a continuous current, and whether the wire is safe behind it.',
  inputs: {
    continuous_current: { label: 'Continuous current', dimension: 'current', unit: 'A', must: { above: 0 } },
    wire_rating: {
      label: 'Rating of the wire',
      hint: 'the maker’s value at the real temperature and bundle',
      dimension: 'current',
      unit: 'A',
      must: { above: 0 },
    },
  },
  outputs: {
    min_fuse: { label: 'Least fuse', dimension: 'current', unit: 'A' },
    fuse: { label: 'Fuse, next standard size', dimension: 'current', unit: 'A' },
    ok: { kind: 'yes-no', label: 'The fuse protects the wire' },
  },
  formula: 'min_fuse = continuous_current/0.8; fuse = the next standard size; ok when fuse ≤ wire_rating',
  source:
    'Continuous loading of 80 %: common practice (ISO 8820 family and fuse-maker guidance, from memory); derived by hand.',
  notes: [
    'The fuse protects the wire: if the wire is too small, enlarge the wire, never the fuse.',
    'Place the fuse close to the source.',
    'Motors draw several times their running current at start: use the data-sheet curve.',
  ],
  caution: electricalCaution,
  example: { continuous_current: { value: 16, unit: 'A' }, wire_rating: { value: 30, unit: 'A' } },
  compute: ({ continuous_current: current, wire_rating: rating }) => {
    const least = current / continuousLoading;
    const size = fuseSizes.find((one) => !fallsShort(one, least));
    if (size === undefined) {
      refuseInput(
        'continuous_current',
        'No standard size up to 100 A carries this current.',
        'a current of 80 A at most, or the load shared between several fused wires',
      );
    }
    const ok = !exceeds(size, rating);
    return {
      outputs: { min_fuse: least, fuse: size, ok },
      warnings: ok
        ? []
        : [graveWarning('The wire would burn before the fuse blows: enlarge the wire, never the fuse.')],
    };
  },
});
