import {
  calculator,
  graveWarning,
  type NumberInput,
  type Result,
  refuseInput,
  type Warning,
  warning,
} from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { awgArea, awgInput, copperResistivity, resistanceRise } from './copper-wire.ts';
import { electricalCaution } from './electrical-caution.ts';

/** Shares of the supply lost; common practice, no published source. */
const muchDrop = 0.03;
const tooMuchDrop = 0.05;

const positive = { above: 0 } as const satisfies NumberInput['must'];

const shared = {
  current: { label: 'Current', dimension: 'current', unit: 'A', must: positive },
  one_way_length: { label: 'Length of wire, one way', dimension: 'length', unit: 'm', must: positive },
  supply: { label: 'Supply voltage', dimension: 'voltage', unit: 'V', must: positive },
  conductor_temp: {
    label: 'Temperature of the conductor',
    dimension: 'temperature',
    unit: 'degC',
    usual: { from: -40, to: 150 },
  },
} as const satisfies Record<string, NumberInput>;

interface Run {
  readonly current: number;
  readonly one_way_length: number;
  readonly supply: number;
  readonly conductor_temp: number;
  readonly ground_return: boolean;
  readonly feeds_fuel_pump: boolean | undefined;
}

function dropWarnings(share: number, feedsFuelPump: boolean | undefined): Warning[] {
  if (exceeds(share, tooMuchDrop) && feedsFuelPump !== false) {
    const which = feedsFuelPump === true ? 'for' : 'if this is';
    return [
      graveWarning(
        `More than 5 % is lost, too much ${which} a fuel-pump feed (common practice): pump flow falls faster than voltage.`,
      ),
    ];
  }
  return exceeds(share, muchDrop)
    ? [warning('More than 3 % of the voltage is lost on the way (common practice): a larger wire, or a shorter one.')]
    : [];
}

function drop(area: number, run: Run): Result<typeof outputs> {
  const rise = resistanceRise(run.conductor_temp);
  if (!(rise > 0)) {
    refuseInput('conductor_temp', 'Copper does not follow the formula in such cold.', 'a temperature of −40 to 150 °C');
  }
  const resistance = ((copperResistivity * run.one_way_length) / area) * (run.ground_return ? 2 : 1) * rise;
  const lost = run.current * resistance;
  if (!exceeds(run.supply, lost)) {
    refuseInput(
      'current',
      'The whole supply voltage would be lost in the wire: such a current can’t flow.',
      'a lower current, or a larger or shorter wire',
    );
  }
  return {
    outputs: {
      loop_resistance: resistance,
      voltage_drop: lost,
      drop_fraction: lost / run.supply,
      load_voltage: run.supply - lost,
    },
    warnings: dropWarnings(lost / run.supply, run.feeds_fuel_pump),
    notes: run.ground_return ? [] : ['Return through the chassis: body and joints add to this drop.'],
  };
}

const outputs = {
  loop_resistance: { label: 'Resistance of the wire', dimension: 'resistance', unit: 'mohm' },
  voltage_drop: { label: 'Voltage lost', dimension: 'voltage', unit: 'V' },
  drop_fraction: { label: 'Share lost', dimension: 'fraction', unit: '%' },
  load_voltage: { label: 'Voltage at the load', dimension: 'voltage', unit: 'V' },
} as const;

const everyRun = ['current', 'one_way_length', 'supply', 'conductor_temp', 'ground_return'] as const;

export const voltageDrop = calculator({
  id: 'K2',
  slug: 'voltage-drop',
  title: 'Voltage drop',
  about: 'The voltage lost between battery and load in a copper wire.',
  inputs: {
    ...shared,
    awg: awgInput,
    area: { label: 'Cross-section', dimension: 'area', unit: 'mm2', must: positive },
    ground_return: { kind: 'yes-no', label: 'Returns by a ground wire', hint: 'no: through the chassis' },
    feeds_fuel_pump: { kind: 'yes-no', label: 'Feeds a fuel pump', optional: true },
  },
  outputs,
  formula:
    'loop_resistance = 0.017241 Ω·mm²/m · one_way_length · (2 with a ground wire, 1 with chassis return)/area · ' +
    '(1 + 0.00393 · (conductor_temp − 20 °C)); voltage_drop = current · loop_resistance; load_voltage = supply − voltage_drop',
  source:
    'Annealed copper standard; ASTM B258 for the gauge (from memory); derived by hand. Limits of 3 % and 5 %: common practice, no published source.',
  notes: ['Solid copper; stranded wire, terminals, relays and fuses add to it.'],
  caution: electricalCaution,
  example: {
    current: { value: 16, unit: 'A' },
    one_way_length: { value: 5, unit: 'm' },
    supply: { value: 13.5, unit: 'V' },
    conductor_temp: { value: 50, unit: 'degC' },
    awg: { value: 12 },
    ground_return: { value: false },
  },
  modes: [
    {
      name: 'gauge',
      title: 'Wire by gauge number',
      needs: [...everyRun, 'awg'],
      compute: ({ awg, current, one_way_length, supply, conductor_temp, ground_return, feeds_fuel_pump }) =>
        drop(awgArea(awg), { current, one_way_length, supply, conductor_temp, ground_return, feeds_fuel_pump }),
    },
    {
      name: 'area',
      title: 'Wire by cross-section',
      needs: [...everyRun, 'area'],
      compute: ({ area, current, one_way_length, supply, conductor_temp, ground_return, feeds_fuel_pump }) =>
        drop(area, { current, one_way_length, supply, conductor_temp, ground_return, feeds_fuel_pump }),
    },
  ],
});
