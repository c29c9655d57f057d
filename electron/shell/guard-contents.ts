import type { App, Session, WebContents } from 'electron';
import { maySave } from './guard-downloads.ts';
import { isOwnBlob, isOwnPage } from './page-address.ts';

/**
 * Keeps every page of the program where it is: no navigation or redirection to another address, no new window, no page within a page
 * as a webview. Set before the first window.
 *
 * Source: Electron's security checklist, items 12 to 14 (seen).
 */
export function guardContents(app: App): void {
  app.on('web-contents-created', (_event, contents) => guardOne(contents));
}

function guardOne(contents: WebContents): void {
  contents.on('will-navigate', (event) => stopForeign(event, event.url));
  contents.on('will-frame-navigate', (event) => stopForeign(event, event.url));
  contents.on('will-redirect', (event) => stopForeign(event, event.url));
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(({ url }) => {
    // A link to a paper, which a browser would show in a page of its own, offers it to be saved.
    if (isOwnPage(url) && maySave(url)) contents.downloadURL(url);
    return { action: 'deny' };
  });
}

function stopForeign(event: { preventDefault(): void }, address: string): void {
  if (!isOwnPage(address)) event.preventDefault();
}

/** Denies every permission that a page may ask for, every device, and every request to the network. Source: items 5 and 1 of the same list. */
export function denyAll(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isLocal(url) }));
}

function isLocal(address: string): boolean {
  return isOwnPage(address) || isOwnBlob(address) || /^(data|devtools):/i.test(address);
}
