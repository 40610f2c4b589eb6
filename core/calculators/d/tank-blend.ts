import { calculator, type NumberInput, refuseInput, type Warning, warning } from '../calculator.ts';
import { exceeds, fallsShort } from '../limits.ts';

const ethanolShare = {
  dimension: 'fraction',
  unit: '%',
  must: { atLeast: 0, atMost: 100 },
} as const satisfies Omit<NumberInput, 'label'>;

const fuelVolume = { dimension: 'volume', unit: 'L', must: { atLeast: 0 } } as const satisfies Omit<
  NumberInput,
  'label'
>;

/** What is in the tank, and what goes in [m³, ethanol by volume 0 to 1]. */
interface Filling {
  readonly inTank: number;
  readonly tankEthanol: number;
  readonly added: number;
  readonly addEthanol: number;
}

const ethanolOf = ({ inTank, tankEthanol, added, addEthanol }: Filling): number =>
  (inTank * tankEthanol + added * addEthanol) / (inTank + added);

/** Everything that both ways tell; a tank too small for it comes with the most that fits. */
function filled(filling: Filling, capacity: number | undefined) {
  const { inTank, added } = filling;
  if (capacity !== undefined && exceeds(inTank, capacity)) {
    refuseInput('tank_volume', 'The tank can’t hold more than its capacity.', 'a volume up to the tank capacity');
  }
  const total = inTank + added;
  const outputs = { ethanol: ethanolOf(filling), total_volume: total };
  const warnings: Warning[] = [];
  if (capacity === undefined || !exceeds(total, capacity)) return { outputs, warnings };
  const fits = capacity - inTank;
  warnings.push(warning('The tank can’t hold it all: the most that fits, and the blend it gives, stand beside.'));
  return {
    outputs: { ...outputs, most_that_fits: fits, ethanol_when_full: ethanolOf({ ...filling, added: fits }) },
    warnings,
  };
}

export const tankBlend = calculator({
  id: 'D2',
  slug: 'tank-blend',
  title: 'Tank blend',
  about: 'What two fuels give in the tank, or how much to add for a blend.',
  inputs: {
    tank_volume: { ...fuelVolume, label: 'In the tank' },
    tank_ethanol: { ...ethanolShare, label: 'Ethanol of the fuel in the tank, by volume' },
    add_volume: { ...fuelVolume, label: 'Added' },
    add_ethanol: { ...ethanolShare, label: 'Ethanol of the fuel added, by volume' },
    target_ethanol: { ...ethanolShare, label: 'Ethanol wanted, by volume' },
    tank_capacity: {
      label: 'Capacity of the tank',
      dimension: 'volume',
      unit: 'L',
      must: { above: 0 },
      optional: true,
    },
  },
  outputs: {
    ethanol: { label: 'Ethanol, by volume', dimension: 'fraction', unit: '%' },
    add_volume: { label: 'To add', dimension: 'volume', unit: 'L' },
    total_volume: { label: 'In the tank then', dimension: 'volume', unit: 'L' },
    most_that_fits: { label: 'The most that fits', dimension: 'volume', unit: 'L' },
    ethanol_when_full: { label: 'Ethanol with the tank full, by volume', dimension: 'fraction', unit: '%' },
  },
  formula:
    'ethanol = (tank_volume · tank_ethanol + add_volume · add_ethanol)/(tank_volume + add_volume); ' +
    'add_volume = tank_volume · (target_ethanol − tank_ethanol)/(add_ethanol − target_ethanol)',
  source: 'Mixing by volume; derived by hand.',
  notes: [
    'What is left in lines and filter counts only if it is entered with the tank.',
    'Blends that are sold vary: measure the ethanol of both fuels.',
  ],
  caution:
    'Petrol and ethanol vapours ignite: mix in the open, earthed, away from flame. Confirm the blend before boost.',
  example: {
    tank_volume: { value: 25, unit: 'L' },
    tank_ethanol: { value: 10, unit: '%' },
    target_ethanol: { value: 50, unit: '%' },
    add_ethanol: { value: 85, unit: '%' },
  },
  modes: [
    {
      name: 'mix',
      title: 'what a filling gives',
      needs: ['tank_volume', 'tank_ethanol', 'add_volume', 'add_ethanol'],
      compute: ({ tank_volume, tank_ethanol, add_volume, add_ethanol, tank_capacity }) => {
        if (tank_volume + add_volume <= 0) {
          refuseInput('add_volume', 'There is no fuel to mix.', 'a volume above zero here or in the tank');
        }
        return filled(
          { inTank: tank_volume, tankEthanol: tank_ethanol, added: add_volume, addEthanol: add_ethanol },
          tank_capacity,
        );
      },
    },
    {
      name: 'target',
      title: 'how much to add for a blend',
      needs: ['tank_volume', 'tank_ethanol', 'target_ethanol', 'add_ethanol'],
      compute: ({ tank_volume, tank_ethanol, target_ethanol: target, add_ethanol, tank_capacity }) => {
        if (tank_volume <= 0) {
          refuseInput('tank_volume', 'An empty tank has no blend to change.', 'a volume above zero');
        }
        if (!exceeds(add_ethanol, target) && !fallsShort(add_ethanol, target)) {
          refuseInput('add_ethanol', 'No amount of the target itself gets there.', 'a fuel other than the target');
        }
        const low = Math.min(tank_ethanol, add_ethanol);
        const high = Math.max(tank_ethanol, add_ethanol);
        if (fallsShort(target, low) || exceeds(target, high)) {
          refuseInput(
            'target_ethanol',
            'The target must lie between the fuel in the tank and the fuel added.',
            'an ethanol content between those of the two fuels',
          );
        }
        const added = Math.max(0, (tank_volume * (target - tank_ethanol)) / (add_ethanol - target));
        const { outputs, warnings } = filled(
          { inTank: tank_volume, tankEthanol: tank_ethanol, added, addEthanol: add_ethanol },
          tank_capacity,
        );
        return { outputs: { ...outputs, add_volume: added }, warnings };
      },
    },
  ],
});
