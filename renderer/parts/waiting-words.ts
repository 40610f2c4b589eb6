const mostSaid = 3;

/** The first things waited for; the rest is counted, and stands in the job's own list. */
export function waitingWords(waitsFor: readonly string[]): string {
  const more = waitsFor.length - mostSaid;
  return more > 1 ? `${waitsFor.slice(0, mostSaid).join('; ')}; and ${more} more` : waitsFor.join('; ');
}
