import type { RehearsedContents } from './web-contents.ts';

/** The frame that asks, as the page's browser knows it. */
export interface AskingFrame {
  readonly url: string;
  readonly parent: AskingFrame | null;
}
type Handler = (event: { readonly sender: RehearsedContents; readonly senderFrame: AskingFrame | null }, ...given: readonly unknown[]) => unknown;

const handlers = new Map<string, Handler>();

/** What pages may ask for, by channel. */
export const ipcMain = {
  handle: (channel: string, handler: Handler) => {
    if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
    handlers.set(channel, handler);
  },
  removeHandler: (channel: string) => void handlers.delete(channel),
};

/** Runs what a page invoked. */
export async function invoked(sender: RehearsedContents, senderFrame: AskingFrame | null, channel: string, given: readonly unknown[]): Promise<unknown> {
  const handler = handlers.get(channel);
  if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
  return handler({ sender, senderFrame }, ...given);
}
