import { readFileSync } from 'node:fs';
import { copiedText, copiedValue } from '../copied-values.ts';
import type { Browser, BrowserContext, BrowserContextOptions, CDPSession, Download, Frame, Page, Request, Route } from 'playwright-core';
import type { WindowOptions } from '../program/browser-window.ts';
import type { AskingFrame } from '../program/ipc-main.ts';
import type { TwoWay } from '../two-way.ts';
import type { Addresses } from './addresses.ts';
import { grantAsTold } from './permissions.ts';
import { pageScripts } from './page-scripts.ts';
import type { StageNotes } from './stage-notes.ts';

/** The world in which the preload script runs. */
const PRELOAD_WORLD = 'preload';

/** What the page of a window needs around it. */
export interface WindowSetting {
  readonly browser: Browser;
  readonly program: TwoWay;
  readonly window: number;
  readonly options: WindowOptions;
  readonly context: BrowserContextOptions;
  readonly notes: StageNotes;
  readonly addresses: Addresses;
  readonly onPage: (page: Page) => void;
  readonly alterations: Alterations;
}

/** What stands between the program's answers and the page, by channel. */
export type Alterations = Map<string, (reply: unknown) => unknown>;

/** A window's page, real in Chromium. */
export interface WindowPage {
  readonly page: Page;
  load(address: string): Promise<void>;
  /** Sends to the preload script, as the program's own contents do. */
  send(channel: string, given: readonly unknown[]): Promise<void>;
  close(): Promise<void>;
}

/** Opens the page of a window: its preload script in a world of its own, its requests answered by the program, what it tries told to the program. */
export async function openWindowPage(setting: WindowSetting): Promise<WindowPage> {
  const { browser, options, notes, program, window, addresses } = setting;
  const context = await browser.newContext({ locale: 'en-GB', viewport: { width: options.width ?? 800, height: options.height ?? 600 }, ...setting.context });
  const page = await context.newPage();
  setting.onPage(page);
  const cdp = await context.newCDPSession(page);
  const loading = { byProgram: false };
  await context.route('**/*', (route) => answerRoute(setting, page, loading, route));
  const worlds = await putIntoEachDocument(cdp, options, addresses);
  cdp.on('Runtime.bindingCalled', (called) => void passOn(setting, worlds, called).catch(() => undefined));
  cdp.on('Page.windowOpen', ({ url }) => void askForWindow(setting, context, url).catch(() => undefined));
  page.on('download', (download) => void askForDownload(setting, download).catch(() => undefined));
  page.on('crash', () => program.tell('page-gone', window, 'crashed'));
  notes.pages.push(page);
  return {
    page,
    async load(address) {
      await grantAsTold(setting, cdp, address);
      loading.byProgram = true;
      await page.goto(addresses.onStage(address)).finally(() => (loading.byProgram = false));
    },
    send: (channel, given) => worlds.deliver(worlds.ofMainFrame(), copiedText({ channel, given })),
    close: () => context.close(),
  };
}

/** The preload script's worlds by the frame they stand in. */
interface PreloadWorlds {
  frameOf(world: number): AskingFrame | null;
  ofMainFrame(): number | null;
  deliver(world: number | null, text: string): Promise<void>;
}

async function putIntoEachDocument(cdp: CDPSession, { webPreferences = {} }: WindowOptions, addresses: Addresses): Promise<PreloadWorlds> {
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

const same = (reply: unknown) => reply;

/** A question of the preload script goes to the program with the frame it came from; the answer goes back to the same world. */
async function passOn({ program, window, alterations }: WindowSetting, worlds: PreloadWorlds, { payload, executionContextId }: { readonly payload: string; readonly executionContextId: number }): Promise<void> {
  const frame = worlds.frameOf(executionContextId);
  const { id, channel, given } = copiedValue(payload) as { readonly id: number; readonly channel: string; readonly given: readonly unknown[] };
  const told = await program.ask('invoke', window, frame, channel, given).then(async (value) => ({ id, value: await (alterations.get(channel) ?? same)(value) }), (error: unknown) => ({ id, fault: `Error invoking remote method '${channel}': ${String(error)}` }));
  await worlds.deliver(executionContextId, copiedText(told));
}

/** Answers one request of the page as the program says; nothing at all goes out to the network. */
async function answerRoute({ program, window, notes, addresses }: WindowSetting, page: Page, loading: { readonly byProgram: boolean }, route: Route): Promise<void> {
  const request = route.request();
  const address = addresses.asProgram(request.url());
  if (request.isNavigationRequest() && !loading.byProgram) {
    const isMainFrame = frameOf(request) === page.mainFrame();
    const events = isMainFrame ? ['will-frame-navigate', 'will-navigate'] : ['will-frame-navigate'];
    if (!(await program.ask('may-navigate', window, events, { url: address, isMainFrame }))) return route.abort('aborted');
  }
  if (!(await program.ask('lets', address, request.method(), request.resourceType()))) return route.abort('blockedbyclient');
  if (address !== request.url()) return route.continue();
  notes.outside.push(address);
  return route.abort('internetdisconnected');
}

/** The frame that a request is for; null for one that is not there yet. */
function frameOf(request: Request): Frame | null {
  try {
    return request.frame();
  } catch {
    return null;
  }
}

async function askForWindow({ program, window, notes, addresses }: WindowSetting, context: BrowserContext, url: string): Promise<void> {
  const address = addresses.asProgram(url);
  const answer = (await program.ask('may-open', window, { url: address, frameName: '', features: '', disposition: 'foreground-tab' })) as 'allow' | 'deny';
  notes.windowsAsked.push({ address, answer });
  if (answer === 'allow') notes.pages.push(await context.newPage());
}

async function askForDownload({ program, window, notes, addresses }: WindowSetting, download: Download): Promise<void> {
  const address = addresses.asProgram(download.url());
  const { goesOn, dialog } = (await program.ask('download', window, address, download.suggestedFilename())) as { readonly goesOn: boolean; readonly dialog: unknown };
  notes.downloads.push({ address, goesOn, dialog });
  if (!goesOn) await download.cancel();
}
