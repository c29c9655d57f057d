import { copiedText, copiedValue } from '../copied-values.ts';
import { openSide, type Said } from './between-worlds.ts';

declare const PAGE_SIDE: string;
declare const PRELOAD_SIDE: string;
/** The way out of this world to the stage; no other world has it. */
declare const toMain: (message: string) => void;

type Listener = (event: object, ...given: unknown[]) => void;
interface Waiting {
  readonly resolve: (value: unknown) => void;
  readonly reject: (why: Error) => void;
}

const exposed: Said[] = [];
const side = openSide(PRELOAD_SIDE, PAGE_SIDE, (said) => {
  if (said.kind === 'here') exposed.forEach(side.say);
});
const waiting = new Map<number, Waiting>();
const listeners = new Map<string, Set<Listener>>();
let asked = 0;

const contextBridge = {
  exposeInMainWorld(name: string, value: unknown): void {
    const said: Said = { kind: 'expose', name, value: side.carry(value) };
    exposed.push(said);
    side.say(said);
  },
};

const ipcRenderer = {
  invoke: (channel: string, ...given: unknown[]): Promise<unknown> => new Promise((resolve, reject) => {
    const id = (asked += 1);
    waiting.set(id, { resolve, reject });
    toMain(copiedText({ id, channel, given }));
  }),
  on: (channel: string, listener: Listener) => void (listeners.get(channel) ?? listeners.set(channel, new Set()).get(channel))?.add(listener),
  off: (channel: string, listener: Listener) => void listeners.get(channel)?.delete(listener),
};

/** What comes from the program: an answer to what was invoked, or something sent by itself. */
function deliver(text: string): void {
  const told = copiedValue(text) as { readonly id: number; readonly value?: unknown; readonly fault?: string } | { readonly channel: string; readonly given: readonly unknown[] };
  if ('channel' in told) return listeners.get(told.channel)?.forEach((hear) => hear({}, ...told.given));
  const question = waiting.get(told.id);
  waiting.delete(told.id);
  if (told.fault === undefined) question?.resolve(told.value);
  else question?.reject(new Error(told.fault));
}

/** What a sandboxed preload script may load. */
function requireElectron(name: string): unknown {
  if (name === 'electron') return { contextBridge, ipcRenderer };
  throw new Error(`module not found: ${name}`);
}

Object.assign(globalThis, { deliver, requireElectron });
