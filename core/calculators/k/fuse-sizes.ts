// Source: standard sizes of vehicle fuses, ISO 8820 family, from memory, text not seen.
/** Fuses to be had [A], in order. */
export const fuseSizes = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100] as const;
