import { readFileSync } from 'node:fs';
import type { CDPSession } from 'playwright-core';
import type { WindowOptions } from '../program/browser-window.ts';
import type { AskingFrame } from '../program/ipc-main.ts';
import type { Addresses } from './addresses.ts';
import { pageScripts } from './page-scripts.ts';

/** The world in which the preload script runs. */
const PRELOAD_WORLD = 'preload';

/** The preload script's worlds by the frame they stand in. */
export interface PreloadWorlds {
  frameOf(world: number): AskingFrame | null;
  ofMainFrame(): number | null;
  deliver(world: number | null, text: string): Promise<void>;
}

/** Puts the preload script, in its own world, into each document of the page before any script of the page's. */
export async function putIntoEachDocument(cdp: CDPSession, { webPreferences = {} }: WindowOptions, addresses: Addresses): Promise<PreloadWorlds> {
  const worlds = watchWorlds(cdp, addresses);
  await cdp.send('Page.enable');
  await cdp.send('Runtime.enable');
  await worlds.readFrames();
  await cdp.send('Runtime.addBinding', { name: 'toMain', executionContextName: PRELOAD_WORLD });
  const scripts = await pageScripts();
  const preload = readFileSync(String(webPreferences['preload']), 'utf8');
  const inMainFrame = webPreferences['nodeIntegrationInSubFrames'] === true ? 'true' : 'window === window.top';
  await cdp.send('Page.addScriptToEvaluateOnNewDocument', { source: scripts.page + nodeInPage(webPreferences) });
  await cdp.send('Page.addScriptToEvaluateOnNewDocument', { worldName: PRELOAD_WORLD, source: `if (${inMainFrame}) {${scripts.preload};((require) => {${preload}\n})(requireElectron);}` });
  return worlds;
}

/** What a page with Node in it would find; what keeps it out is set by the program alone. */
function nodeInPage(preferences: Readonly<Record<string, unknown>>): string {
  const open = preferences['nodeIntegration'] === true && preferences['contextIsolation'] === false && preferences['sandbox'] !== true;
  return open ? ';window.require = () => ({}); window.process = { versions: {} };' : '';
}

function watchWorlds(cdp: CDPSession, addresses: Addresses): PreloadWorlds & { readFrames(): Promise<void> } {
  const frames = new Map<string, { readonly url: string; readonly parent: string | null }>();
  const worlds = new Map<number, string>();
  let main = '';
  const noteFrame = (frame: { readonly id: string; readonly url: string; readonly parentId?: string | undefined }) => {
    frames.set(frame.id, { url: frame.url, parent: frame.parentId ?? null });
    if (frame.parentId === undefined) main = frame.id;
  };
  cdp.on('Page.frameNavigated', ({ frame }) => noteFrame(frame));
  cdp.on('Page.documentOpened', ({ frame }) => noteFrame(frame));
  cdp.on('Page.navigatedWithinDocument', ({ frameId, url }) => noteFrame({ id: frameId, url, parentId: frames.get(frameId)?.parent ?? undefined }));
  cdp.on('Runtime.executionContextCreated', ({ context }) => {
    if (context.name === PRELOAD_WORLD) worlds.set(context.id, String((context.auxData as { readonly frameId?: string } | undefined)?.frameId));
  });
  cdp.on('Runtime.executionContextDestroyed', ({ executionContextId }) => worlds.delete(executionContextId));
  cdp.on('Runtime.executionContextsCleared', () => worlds.clear());
  const frame = (id: string): AskingFrame | null => {
    const found = frames.get(id);
    return found === undefined ? null : { url: addresses.asProgram(found.url), parent: found.parent === null ? null : frame(found.parent) };
  };
  return {
    readFrames: async () => noteFrame((await cdp.send('Page.getFrameTree')).frameTree.frame),
    frameOf: (world) => frame(worlds.get(world) ?? ''),
    ofMainFrame: () => [...worlds].find(([, id]) => id === main)?.[0] ?? null,
    deliver: async (world, text) => {
      if (world === null) return;
      // A document that has gone in the meantime hears nothing, as in the true program.
      await cdp.send('Runtime.callFunctionOn', { functionDeclaration: 'function (text) { deliver(text); }', executionContextId: world, arguments: [{ value: text }] }).catch(() => undefined);
    },
  };
}
