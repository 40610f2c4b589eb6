/** The fluid of a line against its hose: the tube's material, and what single hose types are made for. */

import { exceeds } from '../calculators/limits.ts';
import { type Check, checkOf } from './check.ts';
import { named } from './field-labels.ts';
import { compatibility, type FluidRead, readMaterial } from './fluid.ts';
import type { Hose } from './hose.ts';
import type { Line } from './line.ts';
import { hottestOf } from './pressure-checks.ts';
import { tubeMaterials } from './tables/fluid-compatibility.ts';

const makerDecides = "Published guidance and practice; the hose maker's data decides.";
const nitrileAndEthanol =
  'Plain nitrile (NBR) is not sufficient for ethanol-rich fuel: it swells, softens and later cracks. Use hose whose maker states the ethanol share.';
const markSaysNothing =
  'The mark SAE J30 (30R6, 30R7, 30R9) does not by itself promise resistance to ethanol: use hose whose maker states the ethanol share.';

const isFuelHose = (hose: Hose): boolean => /^30R/.test(hose.type?.id ?? '');

export function checkFluid(hose: Hose, { fluid, missing }: FluidRead): Check {
  const material = readMaterial(hose.material);
  const row = fluid !== undefined && material !== undefined ? compatibility(fluid, material) : undefined;
  const { pass, caution, fail, unknown } = checkOf(
    'fluid',
    'Fluid and tube material',
    row?.source ?? 'from memory, elastomer handbook practice; follow the hose maker',
  );
  const ethanolRich = fluid === 'gasoline-ethanol E11-E85';
  if (fluid === undefined) return unknown(`Enter ${missing ?? 'the fluid'}.`);
  if (material === undefined || row === undefined) {
    const marked = isFuelHose(hose) && ethanolRich ? ` ${markSaysNothing}` : '';
    const other = hose.material === undefined ? '' : `“${hose.material}” is in no table here. `;
    return unknown(
      `${other}Enter the material of the hose's tube (${named('tube_material')}: ${tubeMaterials.join(', ')}).${marked}`,
    );
  }
  switch (row.letter) {
    case 'A':
      return pass(`${material} with ${fluid}: usual choice. ${makerDecides}`);
    case 'B':
      return caution(
        `${material} with ${fluid}: limited; the grade, the share and the temperature decide. Ask the hose maker. ${makerDecides}`,
      );
    case 'C':
      return fail(
        ethanolRich && material === 'NBR'
          ? `${nitrileAndEthanol} ${makerDecides}`
          : `${material} with ${fluid}: do not use. ${makerDecides}`,
      );
    default:
      return unknown(`${material} with ${fluid}: not known here. Ask the hose maker.`);
  }
}

export function checkInjection(line: Line, hose: Hose, { family }: FluidRead): Check {
  const { pass, fail, unknown, none } = checkOf(
    'fuel-pressure',
    'Low-pressure fuel hose',
    hose.type?.source ?? 'SAE J30',
  );
  if (family !== 'fuel' || !['30R6', '30R7'].includes(hose.type?.id ?? ''))
    return none('not a low-pressure fuel hose.');
  const rated = hose.maxBar?.value;
  if (line.pressureBar === undefined || rated === undefined)
    return unknown(`Enter the fuel pressure (${named('pressure_bar')}).`);
  return exceeds(line.pressureBar, rated)
    ? fail(
        `${hose.type?.id} is meant for low pressure: ${line.pressureBar} bar is above its ${rated} bar. Use fuel injection hose.`,
      )
    : pass(`${line.pressureBar} bar, marked for ${rated} bar (read the marking).`);
}

export function checkInTank(line: Line, hose: Hose, { family }: FluidRead): Check {
  const { pass, fail, none } = checkOf('in-tank', 'Inside the tank', 'SAE J30 (scope seen)');
  if (line.inTank !== true)
    return none(`the line is not inside a tank${family === 'fuel' ? ` (else tick ${named('in_tank')})` : ''}.`);
  return hose.type?.id === '30R10'
    ? pass('30R10 is submersible.')
    : fail(`Only submersible hose (30R10) may lie in the tank; ${hose.label} is rated for fuel inside, air outside.`);
}

export function checkBoost(hose: Hose, { family }: FluidRead): Check {
  const { pass, caution, fail, unknown, none } = checkOf(
    'oil-mist',
    'Oil mist in boost hose',
    'common practice, no published source',
  );
  if (family !== 'boost') return none('no boost air.');
  const material = readMaterial(hose.material);
  if (material === undefined) return unknown(`Enter the material of the inner layer (${named('tube_material')}).`);
  if (material === 'FVMQ') return pass('A fluorosilicone liner stands oil mist.');
  if (material === 'VMQ (silicone)') {
    return caution('Oil mist softens plain silicone over time: use a hose with a fluorosilicone liner.');
  }
  return ['NBR', 'CR', 'EPDM'].includes(material)
    ? fail(`${material} does not stand hot oil mist.`)
    : pass(`${material}: see fluid and tube material.`);
}

export function checkCoolant(line: Line, hose: Hose, { family }: FluidRead): Check {
  const { pass, fail, unknown, none } = checkOf('coolant-class', 'Coolant hose class', 'SAE J20-2022 (public summary)');
  if (family !== 'coolant' || hose.type?.id !== '20R3/20R4') return none('not a coolant hose of SAE J20.');
  const { hoseClass } = hose;
  if (hoseClass === undefined) {
    return unknown(
      `Enter the class printed on the hose (${named('hose_class')}: ${(hose.type.classes ?? []).map(({ name }) => name).join(', ')}).`,
    );
  }
  const hottest = hottestOf(line);
  if (hottest === undefined) return unknown(`Enter the highest temperature (${named('temp_max_C')}).`);
  return exceeds(hottest, hoseClass.maxC)
    ? fail(`Class ${hoseClass.name} ends at ${hoseClass.maxC} °C, and the line reaches ${hottest} °C.`)
    : pass(`Class ${hoseClass.name} goes to ${hoseClass.maxC} °C.`);
}

export function checkTransmission(line: Line, hose: Hose, { family }: FluidRead): Check {
  const { pass, fail, unknown, none } = checkOf('transmission', 'Transmission oil hose', 'SAE J1532 (public summary)');
  const id = hose.type?.id;
  if (family !== 'transmission' || (id !== 'J1532A' && id !== 'J1532B')) return none('not a hose of SAE J1532.');
  if (id === 'J1532B' && line.addOnCooler === undefined) {
    return unknown(
      `Type B is only for a cooler that was added on: say whether this one was (${named('add_on_cooler')}).`,
    );
  }
  if (id === 'J1532B' && line.addOnCooler === false) return fail('Type B is only for coolers that were added on.');
  if (hose.hoseClass === undefined)
    return unknown(`Enter the class printed on the hose (${named('hose_class')}: 1, 2, 3).`);
  return pass(`${id}, class ${hose.hoseClass.name}: up to ${hose.hoseClass.maxC} °C. See pressure and temperature.`);
}

export function checkCancelled(hose: Hose): Check {
  const { caution, none } = checkOf(
    'cancelled-mark',
    'Cancelled standard',
    hose.type?.source ?? 'SAE J1019 scope (public copy)',
  );
  if (hose.type?.id !== 'J1019') return none('the hose carries no cancelled mark known here.');
  return caution(
    'SAE J1019 was cancelled in September 2007 (its hot-oil test moved to SAE J1405): the figures marked are taken; mind the age of the hose.',
  );
}
