import type { Gender } from '../port.ts';
import { bspThreads, nptThreads } from '../tables/pipe-threads.ts';
import { bspThread, nptThread } from '../thread.ts';
import { commonSides, inches, mixed, type Outcome, type Reader, rejected, type Sides, understood } from './outcome.ts';

const tpiText = String.raw`(?: ?- ?(\d+(?:\.\d+)?)| (\d+(?:\.\d+)?) ?tpi)?`;
const nptAfter = new RegExp(`^(${mixed})(?: in)?${tpiText} ?-? ?([mf])? ?-?(nptf|npt)$`);
const nptBefore = new RegExp(`^([mf])? ?-?(nptf|npt) ?-? ?(${mixed})(?: in)?${tpiText}$`);
const bspWords = 'bspp|bspt|bsp|pf|pt|rc|rp|r|g';
const bspBefore = new RegExp(`^(${bspWords}) ?(${mixed})(?: in)?${tpiText} ?([ab])?$`);
const bspAfter = new RegExp(`^(${mixed})(?: in)?${tpiText} ?-? ?(${bspWords})(?: ?([ab]))?$`);

/** The size as the table writes it, so that 2/16 is 1/8. */
const listed = (rows: readonly { readonly size: string }[], size: string): string | undefined =>
  rows.find((row) => inches(row.size) === inches(size))?.size;

const letters: Readonly<Record<string, Gender>> = { m: 'male', f: 'female' };

function npt(
  sizeText: string,
  tpi: string | undefined,
  word: string,
  letter: string | undefined,
  sides: Sides,
): Outcome {
  const size = listed(nptThreads, sizeText);
  const thread = size === undefined ? undefined : nptThread(size);
  if (size === undefined || thread === undefined) {
    const sizes = nptThreads.map((row) => row.size).join(', ');
    return rejected(`${sizeText} is not a listed NPT size; listed: ${sizes}`, '1/8-27 NPT');
  }
  if (tpi !== undefined && Number(tpi) !== thread.tpi) {
    return rejected(`${size} NPT has ${thread.tpi} threads per inch, not ${tpi}`, thread.name);
  }
  const saidTwice = letter !== undefined && sides.gender !== undefined && sides.gender !== letters[letter];
  if (saidTwice) return rejected('both male and female are said', `${thread.name} male`, `${thread.name} female`);
  const gender = letter === undefined ? sides.gender : letters[letter];
  const kind = word === 'nptf' ? 'nptf' : 'npt';
  const notes =
    kind === 'nptf' ? [gender === undefined ? 'dryseal, gender not given' : 'dryseal: the F does not mean female'] : [];
  return understood(
    { kind, thread, ...commonSides({ ...sides, ...(gender === undefined ? {} : { gender }) }) },
    [],
    notes,
  );
}

export const nptReader: Reader = (core, sides) => {
  const after = nptAfter.exec(core);
  if (after !== null) return npt(after[1] ?? '', after[2] ?? after[3], after[5] ?? '', after[4], sides);
  const before = nptBefore.exec(core);
  if (before !== null) return npt(before[3] ?? '', before[4] ?? before[5], before[2] ?? '', before[1], sides);
  return undefined;
};

function bsp(word: string, sizeText: string, tpi: string | undefined, sides: Sides): Outcome {
  if (word === 'bsp') {
    return rejected(
      'BSP is either taper (R / Rc, seals on the thread) or parallel (G, seals on a washer): say which',
      `R ${sizeText} male`,
      `Rc ${sizeText}`,
      `G ${sizeText} male`,
    );
  }
  const parallel = word === 'g' || word === 'bspp' || word === 'pf';
  const size = listed(bspThreads, sizeText);
  const thread = size === undefined ? undefined : bspThread(size, parallel ? 'any' : 'taper');
  if (size === undefined || thread === undefined) {
    const rows = bspThreads.filter((row) => parallel || row.taperListed);
    return rejected(
      `${sizeText} is not a listed BSP${size === undefined ? '' : ' taper'} size; listed: ${rows.map((row) => row.size).join(', ')}`,
      parallel ? 'G 1/8' : 'R 1/8 male',
    );
  }
  if (tpi !== undefined && Number(tpi) !== thread.tpi) {
    const other = nptThread(size)?.tpi === Number(tpi) ? ` (${tpi} is NPT)` : '';
    return rejected(
      `${size} BSP has ${thread.tpi} threads per inch, not ${tpi}${other}`,
      parallel ? `G ${size}` : `R ${size} male`,
      ...(other === '' ? [] : [`${size}-${tpi} NPT`]),
    );
  }
  if (parallel) {
    return understood(
      { kind: 'g', thread, ...commonSides(sides) },
      [],
      word === 'pf' ? ['PF is an older Japanese name'] : [],
    );
  }
  if ((word === 'rc' || word === 'rp') && sides.gender === 'male') {
    return rejected(
      `${word === 'rc' ? 'Rc' : 'Rp'} is an inside thread by ISO 7-1; the outside one is R`,
      `R ${size} male`,
      `${word === 'rc' ? 'Rc' : 'Rp'} ${size}`,
    );
  }
  if (word === 'rp') return understood({ kind: 'rp', thread, ...commonSides({ ...sides, gender: 'female' }) });
  const gender = word === 'rc' ? 'female' : sides.gender;
  const notes = [
    ...(word === 'r' && gender === undefined
      ? ['R is the outside thread by ISO 7-1; say male, or Rc for the inside one']
      : []),
    ...(word === 'pt' ? ['PT is an older Japanese name'] : []),
    ...(gender === 'female' && word !== 'rc' ? [`R ${size} series, female (Rc)`] : []),
  ];
  return understood(
    { kind: 'r', thread, ...commonSides({ ...sides, ...(gender === undefined ? {} : { gender }) }) },
    [],
    notes,
  );
}

export const bspReader: Reader = (core, sides) => {
  const before = bspBefore.exec(core);
  if (before !== null) return bsp(before[1] ?? '', before[2] ?? '', before[3] ?? before[4], sides);
  const after = bspAfter.exec(core);
  if (after !== null) return bsp(after[4] ?? '', after[1] ?? '', after[2] ?? after[3], sides);
  return undefined;
};
