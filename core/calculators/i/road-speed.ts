import { toSI } from '../../units/measure.ts';
import { calculator, graveWarning } from '../calculator.ts';
import { exceeds } from '../limits.ts';
import { roadLegal } from './road-legal.ts';
import { speedSymbolChoices, speedSymbols } from './speed-symbols.ts';

export const roadSpeed = calculator({
  id: 'I2',
  slug: 'road-speed',
  title: 'Road speed',
  about: 'How fast the car goes at an engine speed in a gear.',
  inputs: {
    rpm: { label: 'Engine speed', dimension: 'rotation', unit: 'rpm', must: { atLeast: 0 }, usual: { to: 20_000 } },
    gear_ratio: { label: 'Gear ratio', dimension: 'number', unit: '-', must: { above: 0 } },
    final_drive: { label: 'Final drive', dimension: 'number', unit: '-', must: { above: 0 } },
    rolling_circumference: {
      label: 'Rolling circumference',
      hint: 'best measured: the way of one turn of the wheel',
      dimension: 'length',
      unit: 'mm',
      must: { above: 0 },
    },
    speed_symbol: {
      kind: 'choice',
      label: 'Speed symbol of the tyre',
      choices: speedSymbolChoices,
      optional: true,
    },
  },
  outputs: { road_speed: { label: 'Road speed', dimension: 'speed', unit: 'km/h' } },
  formula: 'road_speed = rpm/(gear_ratio · final_drive) · rolling_circumference',
  source: 'Derived by hand. Speed symbols: ISO 4000-1 and UN Regulation 30 (from memory).',
  notes: ['No slip, of tyre or converter, is counted.'],
  caution: roadLegal,
  example: {
    rpm: { value: 6500, unit: 'rpm' },
    gear_ratio: { value: 1 },
    final_drive: { value: 4.1 },
    rolling_circumference: { value: 1940, unit: 'mm' },
  },
  compute: ({ rpm: omega, gear_ratio, final_drive, rolling_circumference, speed_symbol: symbol }) => {
    const turns = omega / (2 * Math.PI);
    const speed = (turns / (gear_ratio * final_drive)) * rolling_circumference;
    const beyond = symbol !== undefined && exceeds(speed, toSI(speedSymbols[symbol], 'km/h', 'speed'));
    return {
      outputs: { road_speed: speed },
      warnings: beyond
        ? [
            graveWarning(
              `Above the ${speedSymbols[symbol]} km/h of the tyre’s speed symbol ${symbol}: the tyre can fail.`,
            ),
          ]
        : [],
    };
  },
});
