/**
 * Rows of the look-alike catalogue by the two threads they are about, and the pairs that look alike although the limits of
 * near threads don't catch them. Source: the catalogue; sizes by ISO 261, ASME B1.1, B1.20.1, ISO 7-1.
 */
export const lookalikeThreads: readonly (readonly [one: string, other: string, id: string])[] = [
  ['M14x1.5', 'M14x1.25', 'LA01'],
  ['M10x1', 'M10x1.25', 'LA02'],
  ['M10x1', 'M10x1.5', 'LA03'],
  ['M10x1.25', 'M10x1.5', 'LA03'],
  ['3/8-24 UNF', 'M10x1', 'LA04'],
  ['3/8-24 UNF', 'M10x1.25', 'LA05'],
  ['9/16-18 UNF', 'M14x1.5', 'LA06'],
  ['7/8-14 UNF', 'M22x1.5', 'LA07'],
  ['1-1/16-12 UN', 'M27x2', 'LA08'],
  ['3/4-16 UNF', 'M18x1.5', 'LA09'],
  ['1/2-20 UNF', 'M12x1.25', 'LA10'],
  ['5/8-18 UNF', 'M16x1.5', 'LA11'],
  ['#10-32 UNF', 'M5x0.8', 'LA12'],
  ['5/16-18 UNC', 'M8x1.25', 'LA13'],
  ['5/16-18 UNC', 'M8x1', 'LA13'],
  ['5/16-24 UNF', 'M8x1.25', 'LA13'],
  ['5/16-24 UNF', 'M8x1', 'LA13'],
  ['3/8-16 UNC', 'M10x1.5', 'LA14'],
  ['1-1/16-12 UN', '1-1/16-14 UNS', 'LA17'],
  ['1/2-14 NPT', 'R 1/2', 'LA21'],
  ['1/2-14 NPT', 'G 1/2', 'LA21'],
  ['3/4-14 NPT', 'R 3/4', 'LA21'],
  ['3/4-14 NPT', 'G 3/4', 'LA21'],
  ['1/8-27 NPT', 'R 1/8', 'LA25'],
  ['1/8-27 NPT', 'G 1/8', 'LA22'],
  ['1/4-18 NPT', 'R 1/4', 'LA22'],
  ['1/4-18 NPT', 'G 1/4', 'LA22'],
  ['3/8-18 NPT', 'R 3/8', 'LA22'],
  ['3/8-18 NPT', 'G 3/8', 'LA22'],
  ['1-11.5 NPT', 'R 1', 'LA22'],
  ['1-11.5 NPT', 'G 1', 'LA22'],
  ['1/8-27 NPT', 'M10x1', 'LA23'],
  ['R 1/8', 'M10x1', 'LA24'],
  ['1/4-18 NPT', '9/16-18 UNF', 'LA26'],
  ['1/4-18 NPT', 'M14x1.5', 'LA26'],
  ['7/16-20 UNF', '7/16-24 UNS', 'LA38'],
];

/** Alike by experience only. Source: common practice, no published source. */
export const listedAlike: readonly (readonly [one: string, other: string])[] = [['3/8-24 UNF', 'M10x1.25']];
