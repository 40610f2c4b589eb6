import type { App, Session, WebContents } from 'electron';
import { isOwnContent, isOwnPage, startAddress } from './own-page.ts';

/** Nothing in the workbook needs a camera, a place, a device or a notice: every permission is refused. */
export function guardSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  // Were a remote address to slip into the page, it is not even looked up. Developer tools are the program's own.
  session.webRequest.onBeforeRequest((details, answer) =>
    answer({ cancel: !isOwnContent(details.url) && !details.url.startsWith('devtools://') }),
  );
  // A download is an export of ours: data from /api or made by the page. Anything else is stopped.
  session.on('will-download', (event, item) => {
    const address = item.getURL();
    if (!address.startsWith(`${startAddress}api/`) && !address.startsWith(`blob:${startAddress}`))
      event.preventDefault();
  });
}

/** Every page that the program ever makes stays on our own address, opens no window and embeds no other page. */
export function guardContents(app: App): void {
  app.on('web-contents-created', (_event, contents) => guardOne(contents));
}

function guardOne(contents: WebContents): void {
  const stay = (event: { preventDefault(): void; url: string }) => {
    if (!isOwnPage(event.url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
