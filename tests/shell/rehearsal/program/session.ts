import { EventEmitter } from 'node:events';
import type { RehearsedContents } from './web-contents.ts';

type RequestHandler = (contents: RehearsedContents | null, permission: string, answer: (granted: boolean) => void, details: object) => void;
type CheckHandler = (contents: RehearsedContents | null, permission: string, origin: string, details: object) => boolean;
type BeforeRequest = (details: { readonly url: string; readonly method: string; readonly resourceType: string }, answer: (what: { readonly cancel?: boolean }) => void) => void;

/** What a page may do and reach. Without handlers everything is granted and let through, as by the true program. */
class RehearsedSession extends EventEmitter {
  #request: RequestHandler = (_contents, _permission, answer) => answer(true);
  #check: CheckHandler = () => true;
  #before: BeforeRequest = (_details, answer) => answer({});
  readonly webRequest = {
    onBeforeRequest: (handler: BeforeRequest) => void (this.#before = handler),
  };

  setPermissionRequestHandler(handler: RequestHandler): void {
    this.#request = handler;
  }
  setPermissionCheckHandler(handler: CheckHandler): void {
    this.#check = handler;
  }
  setDevicePermissionHandler(): void {}
  setDisplayMediaRequestHandler(): void {}
  setUSBProtectedClassesHandler(): void {}
  setBluetoothPairingHandler(): void {}
  setSpellCheckerEnabled(): void {}
  setDownloadPath(): void {}

  /** Whether a page is granted something it asks for. */
  grants(contents: RehearsedContents | null, permission: string, origin: string): Promise<boolean> {
    if (!this.#check(contents, permission, origin, {})) return Promise.resolve(false);
    return new Promise((resolve) => this.#request(contents, permission, resolve, { requestingUrl: origin }));
  }
  /** Whether a request goes out. */
  lets(url: string, method: string, resourceType: string): Promise<boolean> {
    return new Promise((resolve) => this.#before({ url, method, resourceType }, ({ cancel }) => resolve(cancel !== true)));
  }
}

export const session = { defaultSession: new RehearsedSession() };
