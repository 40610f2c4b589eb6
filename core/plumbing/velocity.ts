import { velocityCheck } from '../calculators/e/velocity-check.ts';
import { runCalculator } from '../calculators/run.ts';
import { type Check, checkOf } from './check.ts';
import { named } from './field-labels.ts';
import type { Hose } from './hose.ts';
import type { Line, Service } from './line.ts';

const kinds: Readonly<Partial<Record<Service, string>>> = {
  pressure: 'pressure',
  return: 'return',
  suction: 'suction',
};

/** The smallest bore on the way: of the hose, and of the ends where they are known. In mm. */
export function smallestBore(line: Line, hose: Hose): number | undefined {
  const bores = [hose.bore?.value, ...line.ends.map(({ boreMm }) => boreMm)].filter((one) => one !== undefined);
  return hose.bore === undefined || bores.length === 0 ? undefined : Math.min(...bores);
}

/** Whether the bore suits the flow, by the velocity calculator. */
export function checkVelocity(line: Line, hose: Hose): Check {
  const { pass, caution, open, none } = checkOf('velocity', 'Bore and flow', velocityCheck.source);
  const { service, flowLitresPerMinute: flow } = line;
  const kind = service === undefined ? undefined : kinds[service];
  if (service !== undefined && kind === undefined)
    return none(`the guides are for liquids under pressure, not ${service}.`);
  const bore = smallestBore(line, hose);
  const missing = [
    ...(flow === undefined ? [`the flow (${named('flow_l_min')})`] : []),
    ...(bore === undefined ? [`the bore of the hose (${named('bore')}), which differs between makers`] : []),
    ...(kind === undefined ? [`what the line does (${named('service')}: suction, return or pressure)`] : []),
  ];
  if (flow === undefined || bore === undefined || kind === undefined) {
    return open(`To check it, enter ${missing.join(', ')}.`);
  }
  const { outputs } = runCalculator(velocityCheck, {
    inputs: {
      flow: { value: flow, unit: 'L/min' },
      inside_diameter: { value: bore, unit: 'mm' },
      line_type: { value: kind },
    },
  });
  const speed = Number(outputs['velocity']?.value);
  const limit = Number(outputs['velocity_limit']?.value);
  const figures = `${speed.toFixed(2)} m/s in ${bore} mm, guide for a ${kind} line up to ${limit} m/s`;
  return outputs['ok']?.value === true
    ? pass(`${figures}.`)
    : caution(
        `${figures}: the line is narrow; a bore of ${Number(outputs['min_inside_diameter']?.value).toFixed(1)} mm would do.`,
      );
}
