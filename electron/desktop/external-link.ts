import { type BrowserWindow, dialog, shell } from 'electron';

const longest = 2048;

/** An address that may leave for the person's browser: https, no password in it, nothing hidden. Null otherwise. */
export function externalLink(address: unknown): URL | null {
  if (typeof address !== 'string' || address.length > longest || !/^https:\/\/[^\s\\/][^\s\\]*$/.test(address))
    return null;
  const url = URL.parse(address);
  const fits = url !== null && url.username === '' && url.password === '';
  return fits && url.hostname.includes('.') ? url : null;
}

/** Shows the host and opens the address in the browser if the person says so. The one place that leaves the program. */
export async function openExternalLink(window: BrowserWindow, address: unknown): Promise<boolean> {
  const url = externalLink(address);
  if (url === null) return false;
  const { response } = await dialog.showMessageBox(window, {
    type: 'question',
    message: `Open ${url.hostname} in your browser?`,
    detail: url.href,
    buttons: ['Open', 'Cancel'],
    defaultId: 1,
    cancelId: 1,
  });
  if (response !== 0) return false;
  await shell.openExternal(url.href);
  return true;
}
