/** The scheme and the one name under it that the window loads. There is no other page. */
export const scheme = 'hoistday';
export const ownHost = 'workbook';
export const startAddress = `${scheme}://${ownHost}/`;

/** True for an address of our own page, compared as parsed: not for one that merely begins like it. */
export function isOwnPage(address: string): boolean {
  const url = URL.parse(address);
  return (
    url !== null &&
    url.protocol === `${scheme}:` &&
    url.host === ownHost &&
    url.username === '' &&
    url.password === '' &&
    address.startsWith(startAddress)
  );
}

/** True for what our page may load into itself: its own addresses and what it made in memory. */
export function isOwnContent(address: string): boolean {
  return isOwnPage(address) || address.startsWith(`blob:${startAddress}`) || address.startsWith('data:');
}
