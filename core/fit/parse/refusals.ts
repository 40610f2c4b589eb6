import { inches, mixed, type Reader, type Rejected, rejected } from './outcome.ts';

const dashAlone = /^(?:dash|size)? ?-? ?\d{1,2}$/;

/** Texts that name something, but not enough of it to know what. */
export const ambiguous: Reader = (core) => {
  if (/^# ?\d+$/.test(core)) {
    return rejected(
      `a number size needs threads per inch (${core === '#10' ? '#10-24 or #10-32' : '#10-32'}); a dash size needs a family`,
      '#10-32 UNF',
      'JIC -6',
    );
  }
  const dash = /\d+$/.exec(core)?.[0];
  if (dashAlone.test(core)) {
    return rejected(
      'a dash size alone does not say the family: 37° flare, 45° flare, ORB, ORFS or hose',
      `JIC -${Number(dash)}`,
      `ORB -${Number(dash)}`,
    );
  }
  if (/^sae ?-?\d+$/.test(core)) {
    return rejected(
      '"SAE n" is used for 37° flare, 45° flare, O-ring boss and quick connects: name the family',
      `JIC -${dash}`,
      `SAE45 -${dash}`,
      `ORB -${dash}`,
      'QC 9.49',
    );
  }
  const pipe = new RegExp(`^(?:(${mixed})(?: in)? pipe(?: thread)?|pipe(?: thread)? (${mixed})(?: in)?)$`).exec(core);
  if (pipe !== null) {
    const size = pipe[1] ?? pipe[2];
    return rejected('"pipe" thread: NPT, BSPT or BSPP?', `${size} NPT`, `R ${size}`, `G ${size}`);
  }
  const inch = new RegExp(`^(${mixed})(?: in)?$`).exec(core)?.[1];
  if (inch !== undefined && inches(inch) !== undefined) {
    return rejected(
      'a bare inch size could be a thread, a tube, a hose bore or a pipe size: add the kind',
      `${inch} UNF`,
      `tube ${inch} in`,
      `hose ${inch} in`,
      `${inch} NPT`,
    );
  }
  return undefined;
};

/** Texts that lack the letter that says what they are. */
export const withoutLetter: Reader = (core) => {
  const found = /^(\d+(?:\.\d+)?) ?x ?(\d+(?:\.\d+)?)$/.exec(core);
  return found === null
    ? undefined
    : rejected('a metric thread begins with M', `M${found[1]}x${found[2]}`, '7/16-20 UNF');
};

const later: readonly (readonly [RegExp, string])[] = [
  [/24°|\bdin ?2353\b|\biso ?8434-?1\b/, '24° cone fittings'],
  [/\bjis\b|\b30°/, '30° flares'],
  [/\blh\b|\bleft[- ]hand(?:ed)?\b/, 'left-hand threads'],
  [/^m ?\d.*\b(?:taper|tapered|keg)\b/, 'metric taper threads'],
  [/\ba\/c\b|\bair[- ]?con/, 'air-conditioning fittings'],
];

/** Things that exist and are left out for now. */
export function notCovered(core: string): Rejected | undefined {
  const found = later.find(([pattern]) => pattern.test(core));
  return found === undefined ? undefined : rejected(`${found[1]} are not covered yet`, 'M14x1.5', 'JIC -6');
}
