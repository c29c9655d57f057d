import { ipcMain, type IpcMainInvokeEvent, type WebContents } from 'electron';
import type { Host } from '../../shared-core/contract/host.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import { pageHost } from '../loopback/page-host.ts';
import { isOwnPage } from '../shell/page-address.ts';
import { bug } from './failure.ts';

/** The channel of an operation, and the one on which the host tells by itself; preload.ts uses the same. */
const channelOf = (operation: string) => `operation:${operation}`;
const PUSHES = 'push';

export interface ServedWindows {
  /** Lets a window ask and hear; from its closing on it may no longer. */
  add(contents: WebContents): void;
  /** Stops serving; resolves when what was asked before has been answered. */
  close(): Promise<void>;
}

/**
 * Serves every operation of the contract to windows of our own, each on its channel. The host parses request and reply; whoever
 * else asks, or asks from a frame within a page, is refused without the host hearing of it.
 *
 * Source: Electron's security checklist, item 17: check the sender of every message (seen).
 */
export function serveContract(host: Host, operations: readonly string[]): ServedWindows {
  const windows = new Set<WebContents>();
  const asPage = pageHost(host);
  const running = new Set<Promise<unknown>>();
  const answer = (operation: string, request: unknown): Promise<Result<unknown>> => {
    const reply = asPage.call(operation, request).catch((error: unknown) => bug(error, operation));
    running.add(reply);
    void reply.then(() => running.delete(reply));
    return reply;
  };
  for (const operation of operations) {
    ipcMain.handle(channelOf(operation), (event, request: unknown): Promise<Result<unknown>> => {
      return isOurs(windows, event) ? answer(operation, request) : Promise.resolve(refuse('not-our-page'));
    });
  }
  const stopHearing = host.onPush((push) => windows.forEach((contents) => contents.send(PUSHES, push)));
  return {
    add(contents) {
      windows.add(contents);
      contents.once('destroyed', () => windows.delete(contents));
    },
    async close() {
      stopHearing();
      for (const operation of operations) ipcMain.removeHandler(channelOf(operation));
      windows.clear();
      await Promise.allSettled(running);
    },
  };
}

/** A window that was added, its outermost frame, and our own page in it. */
function isOurs(windows: ReadonlySet<WebContents>, { sender, senderFrame }: IpcMainInvokeEvent): boolean {
  return windows.has(sender) && senderFrame !== null && senderFrame.parent === null && isOwnPage(senderFrame.url);
}
