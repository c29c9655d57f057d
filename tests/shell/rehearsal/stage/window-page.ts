import type { BrowserContext, Download, Page } from 'playwright-core';
import { copiedText, copiedValue } from '../copied-values.ts';
import { answerRoute } from './answer-route.ts';
import { grantAsTold } from './permissions.ts';
import { putIntoEachDocument, type PreloadWorlds } from './preload-worlds.ts';
import type { WindowSetting } from './window-setting.ts';

/** A window's page, real in Chromium. */
export interface WindowPage {
  readonly page: Page;
  load(address: string): Promise<void>;
  /** Sends to the preload script, as the program's own contents do. */
  send(channel: string, given: readonly unknown[]): Promise<void>;
  /** Begins to save what stands at an address of the program's. */
  download(address: string): Promise<void>;
  /** Ends the page's own process. */
  crash(): Promise<void>;
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
  await context.route('**/*', (route) => answerRoute(setting, page, loading, route).catch(() => route.abort('failed').catch(() => undefined)));
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
    download: (address) =>
      page.evaluate((href) => Object.assign(document.createElement('a'), { href, download: '' }).click(), addresses.onStage(address)),
    crash: () => cdp.send('Page.crash').then(() => undefined),
    close: () => context.close(),
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
