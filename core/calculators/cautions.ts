/** Cautions that several calculators print beside their results. */

/** For torque, clearance, timing and fuel-pressure results. */
export const makersValueGoverns =
  'A planning figure. Where the maker of the engine or part publishes a value, that value governs.';
