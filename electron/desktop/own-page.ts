/** The scheme and the one name under it that the window loads. There is no other page. */
export const scheme = 'hoistday';
export const ownHost = 'workbook';
export const startAddress = `${scheme}://${ownHost}/`;

/**
 * True for an address of our own page. The slash at the end of the start address closes the name, so nothing that
 * merely begins like it (a longer name, a port, a password) gets by.
 */
export function isOwnPage(address: string): boolean {
  return address.startsWith(startAddress) && URL.canParse(address);
}

/** True for what our page may load into itself: its own addresses and what it made in memory. */
export function isOwnContent(address: string): boolean {
  return isOwnPage(address) || address.startsWith(`blob:${startAddress}`) || address.startsWith('data:');
}
