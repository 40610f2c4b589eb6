/** ISO 4014 head contact diameters and ISO 273 medium holes, from memory; they reproduce the table of VDI 2230. */
interface HeadContact {
  /** Both in mm. */
  readonly headOutside: number;
  readonly hole: number;
}

/** By metric size. */
const headContacts: ReadonlyMap<number, HeadContact> = new Map([
  [6, { headOutside: 8.88, hole: 6.6 }],
  [8, { headOutside: 11.63, hole: 9 }],
  [10, { headOutside: 14.63, hole: 11 }],
  [12, { headOutside: 16.63, hole: 13.5 }],
  [14, { headOutside: 19.64, hole: 15.5 }],
  [16, { headOutside: 22.49, hole: 17.5 }],
]);

/** The table as one line, for people who look a head up. */
export const headContactNote = `Head contact diameter and hole, mm (ISO 4014, ISO 273 medium; from memory): ${[
  ...headContacts,
]
  .map(([size, { headOutside, hole }]) => `M${size} ${headOutside}/${hole}`)
  .join(', ')}.`;
