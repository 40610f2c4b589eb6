/** Whether two texts name one place: upper and lower case and spaces around it are nothing. */
export const samePlace = (one: string, other: string): boolean =>
  one.trim().toLocaleLowerCase() === other.trim().toLocaleLowerCase();

/** Whether a job can be done at a place; empty = any, and a job of no place can be done at each. */
export const isHere = (job: { readonly place: string }, place: string): boolean =>
  place.trim() === '' || job.place.trim() === '' || samePlace(job.place, place);
