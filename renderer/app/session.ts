/**
 * In a browser the link carries a secret after the `#`, where it is never sent to a server. It is traded once for a
 * cookie that scripts can't read, and taken out of the address bar. In the desktop window there is nothing to trade.
 *
 * Throws an `Error` with a message for the person when the link is no longer good.
 */
export async function signIn(): Promise<void> {
  if (location.protocol === 'hoistday:') return;
  const token = /^#t=([\w-]+)$/.exec(location.hash)?.[1];
  if (token === undefined) return;
  history.replaceState(null, '', location.pathname + location.search);
  const answer = await fetch('/session', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ token }),
  });
  if (!answer.ok) {
    throw new Error('This link is no longer good. Start Hoistday again and open the new link that it prints.');
  }
}
