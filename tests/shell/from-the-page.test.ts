import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { operationNames } from '../../shared-core/contract/contract.ts';
import { chromiumHere } from '../browser/launch-chromium.ts';
import { launchStage } from './rehearsal/launch-stage.ts';
import { copiedText, copiedValue } from './rehearsal/copied-values.ts';
import { rehearse, type Rehearsal } from './rehearsal/rehearse.ts';

const folder = mkdtempSync(path.join(os.tmpdir(), 'from-the-page-'));
let browser: Browser;
beforeAll(async () => {
  if (chromiumHere !== null) browser = await launchStage();
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The program with a household just begun, at its page. */
async function open(name: string, bypassCSP: boolean): Promise<{ readonly rehearsal: Rehearsal; readonly page: Page; readonly complaints: string[] }> {
  const complaints: string[] = [];
  const rehearsal = rehearse({ browser, args: ['--household', path.join(folder, name)], context: { bypassCSP }, onPage: (page) => page.on('console', (message) => complaints.push(message.text())) });
  const page = await rehearsal.page();
  await page.getByLabel('Name of the household').waitFor();
  return { rehearsal, page, complaints };
}

/** What a page may be made to go to: each is elsewhere, however much of it looks like ours. */
const ELSEWHERE = (own: string) => [
  'https://evil.example/',
  'https://evil.example/?next=trunnion://app/',
  'https://trunnion.app/',
  `${own.replace('//app.', '//evil.')}/`,
  `${own.replace('//app.', '//app.app.')}/`,
  `${own.replace('//', '//app@')}/`,
  'file:///etc/passwd',
  'data:text/html,<title>elsewhere</title>',
  'blob:https://evil.example/1',
];

// Source: Electron's security checklist, tests of its items 2 to 5, 7, 12 to 14, 17 and 20 (seen; the list of what to try from a page is the project's reference).
describe.skipIf(chromiumHere === null)('from the page', { timeout: 120_000 }, () => {
  let opened: Awaited<ReturnType<typeof open>>;
  let page: Page;
  beforeAll(async () => {
    opened = await open('page', false);
    page = opened.page;
  });
  afterAll(() => opened.rehearsal.stop());

  test('there is no Node: neither require nor process, and nothing of Electron', async () => {
    const seen = await page.evaluate(() => ['require', 'process', 'module', 'global', 'Buffer', 'ipcRenderer', 'electron', 'toMain', 'deliver', 'requireElectron'].map((name) => `${name} ${typeof Reflect.get(window, name)}`));
    expect(seen.filter((one) => !one.endsWith(' undefined'))).toEqual([]);
  });

  test('there is one function for each operation and one for the pushes, which no script can put others in place of', async () => {
    const seen = await page.evaluate(() => {
      const given = window.trunnion as unknown as { operations: Record<string, unknown>; onPush: unknown };
      const before = [given.onPush, Object.values(given.operations)].flat();
      for (const change of [() => Reflect.set(window, 'trunnion', {}), () => Reflect.set(given, 'onPush', null), () => Reflect.set(given.operations, 'car.add', null), () => Reflect.deleteProperty(window, 'trunnion')]) change();
      const after = window.trunnion as unknown as typeof given;
      return { own: Object.keys(after), operations: Object.keys(after.operations), same: [after.onPush, Object.values(after.operations)].flat().every((one, at) => one === before[at]) };
    });
    expect(seen).toEqual({ own: ['operations', 'onPush'], operations: [...operationNames], same: true });
  });

  test('no text is run: eval, a function made of text, a text run later, a script in the page or from elsewhere', async () => {
    // What is run here directly passes the page's policy by; what it leaves for later does not.
    const seen = await page.evaluate(() => new Promise<string[]>((done) => {
      const heard: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => heard.push(`${event.effectiveDirective} ${event.blockedURI.replace(/:.*/, '')}`));
      setTimeout(() => {
        for (const run of [() => (Reflect.get(window, 'eval') as (text: string) => unknown)('window.ran = 1'), () => (Reflect.construct(Function, ['window.ran = 2']) as () => unknown)()]) {
          try {
            run();
          } catch (error) {
            heard.push((error as Error).name);
          }
        }
        Reflect.apply(setTimeout, null, ['window.ran = 3', 0]);
        for (const part of [{ textContent: 'window.ran = 4' }, { src: 'https://evil.example/a.js' }, { src: 'data:text/javascript,window.ran=5' }]) document.head.append(Object.assign(document.createElement('script'), part));
        document.body.insertAdjacentHTML('beforeend', '<img src="x:" onerror="window.ran = 6">');
        setTimeout(() => done([...heard, `ran ${String(Reflect.get(window, 'ran'))}`]), 300);
      }, 0);
    }));
    expect(seen.toSorted()).toEqual(['EvalError', 'EvalError', 'img-src x', 'ran undefined', 'script-src eval', 'script-src eval', 'script-src eval', 'script-src-attr inline', 'script-src-elem data', 'script-src-elem https', 'script-src-elem inline'].toSorted());
  });

  test('no window is opened, whatever is asked for and however', async () => {
    const { notes } = opened.rehearsal;
    const asked = [...ELSEWHERE(new URL(page.url()).origin), page.url(), 'about:blank', ''];
    const answered = await page.evaluate((addresses) => addresses.map((address) => window.open(address) === null), asked);
    expect(answered).toEqual(asked.map(() => true));
    await page.evaluate(() => {
      document.body.insertAdjacentHTML('beforeend', '<a id="away" href="https://evil.example/link" target="_blank">away</a>');
      document.getElementById('away')?.click();
    });
    await page.locator('#away').click({ modifiers: ['Control'] });
    await page.locator('#away').evaluate((link) => link.remove());
    await expect.poll(() => notes.windowsAsked.filter(({ address }) => address === 'https://evil.example/link').length).toBeGreaterThan(0);
    expect(new Set(notes.windowsAsked.map(({ answer }) => answer))).toEqual(new Set(['deny']));
    expect([page.context().pages().length, notes.pages.length, notes.outside]).toEqual([1, 1, []]);
  });

  test('nothing leads away from it, wherever to and however', async () => {
    const own = new URL(page.url());
    await page.evaluate(() => Reflect.set(window, 'stays', true));
    for (const address of ELSEWHERE(own.origin)) {
      for (const way of ['href', 'assign', 'link', 'form', 'refresh'] as const) {
        await page.evaluate(([to, how]) => {
          const add = (html: string) => {
            document.body.insertAdjacentHTML('beforeend', html);
            return document.body.lastElementChild as HTMLElement;
          };
          if (how === 'href') location.href = to;
          if (how === 'assign') location.assign(to);
          if (how === 'link') Object.assign(add('<a>away</a>'), { href: to }).click();
          if (how === 'form') (Object.assign(add('<form></form>'), { action: to }) as HTMLFormElement).submit();
          if (how === 'refresh') document.head.append(Object.assign(document.createElement('meta'), { httpEquiv: 'refresh', content: `0;url=${to}` }));
        }, [address, way] as const).catch((error: unknown) => expect(String(error), `${way} ${address}`).toContain('Not allowed'));
        await page.waitForTimeout(30);
        expect([await page.evaluate(() => Reflect.get(window, 'stays') as unknown), page.url()], `${way} ${address}`).toEqual([true, own.href]);
      }
    }
    expect(opened.rehearsal.notes.outside).toEqual([]);
  });

  test('nothing is granted: its place, camera, notifications, clipboard', async () => {
    const seen = await page.evaluate(async () => [
      await new Promise((done) => navigator.geolocation.getCurrentPosition(() => done('a place'), ({ code }) => done(`place ${code}`))),
      await navigator.mediaDevices.getUserMedia({ video: true }).then(() => 'a camera', ({ name }: Error) => `camera ${name}`),
      await Notification.requestPermission(),
      await navigator.permissions.query({ name: 'geolocation' }).then(({ state }) => state),
      await navigator.permissions.query({ name: 'notifications' }).then(({ state }) => state),
      await navigator.clipboard.readText().then(() => 'a text', ({ name }: Error) => `clipboard ${name}`),
    ]);
    // Chromium without a window says 'default' and 'prompt' for a notification that is denied it.
    expect(seen).toEqual(['place 1', expect.stringMatching(/^camera /), expect.not.stringMatching('granted'), 'denied', expect.not.stringMatching('granted'), 'clipboard NotAllowedError']);
  });

  test('nothing is asked of the network, and no frame stands within it', async () => {
    const seen = await page.evaluate(async () => {
      const heard: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => heard.push(event.effectiveDirective));
      await fetch('https://evil.example/').catch(() => undefined);
      try {
        new WebSocket('wss://evil.example/');
      } catch {
        heard.push('no socket');
      }
      document.body.insertAdjacentHTML('beforeend', '<iframe src="https://evil.example/"></iframe><object data="https://evil.example/"></object>');
      await new Promise((wait) => setTimeout(wait, 300));
      return heard;
    });
    expect(seen.toSorted()).toEqual(['connect-src', 'connect-src', 'frame-src', 'object-src']);
    expect(opened.rehearsal.notes.outside).toEqual([]);
  });

  // Source: OWASP's page on path traversal, the encodings of a way up (from memory).
  test.each([
    '/papers/../../key', '/papers/..%2f..%2fkey', '/papers/%2e%2e/%2e%2e/key', '/papers/%2e%2e%2f%2e%2e%2fkey', '/papers/..%5c..%5ckey', '/papers/%252e%252e%252fkey', '/papers/..%c0%afkey', '/papers/..%00/key',
    '/papers//etc/passwd', '/papers/C:%5cWindows%5cwin.ini', '/assets/../../package.json', '/assets/%2e%2e%2f%2e%2e%2fpackage.json', '/assets//etc/passwd', '//etc/passwd', '/household.sqlite', '/key.draft',
  ])('%s leads to no file', async (place) => {
    const { status, text } = await page.evaluate((address) => fetch(new URL(location.href).origin + address).then(async (reply) => ({ status: reply.status, text: await reply.text() })), place);
    // A browser takes the way up out of an address before it asks: what is left may be a place in the page, and is the page.
    if (status === 200) expect(text).toMatch(/^<!doctype html>[^]*<title>Trunnion<\/title>/);
    else expect([status, text]).toEqual([404, '']);
  });

  test.each(['POST', 'PUT', 'DELETE', 'PATCH'])('%s writes nothing under the papers’ addresses', async (method) => {
    expect(await page.evaluate((how) => fetch(`/papers/${'a'.repeat(64)}`, { method: how, body: 'x' }).then(({ status }) => status), method)).toBe(405);
  });
});

/** The same page without its policy: what the main program alone keeps from it. */
describe.skipIf(chromiumHere === null)('without the page’s own policy the main program still', { timeout: 120_000 }, () => {
  let opened: Awaited<ReturnType<typeof open>>;
  let page: Page;
  beforeAll(async () => {
    opened = await open('no-policy', true);
    page = opened.page;
  });
  afterAll(() => opened.rehearsal.stop());

  test('cancels what would ask the network', async () => {
    const seen = await page.evaluate(async () => {
      document.body.insertAdjacentHTML('beforeend', '<img src="https://evil.example/a.png"><iframe src="https://evil.example/"></iframe><link rel="stylesheet" href="https://evil.example/a.css">');
      return Promise.all(['https://evil.example/', 'http://127.0.0.1:9/', 'http://localhost:9/'].map((address) => fetch(address).then(() => 'reached', () => 'cancelled')));
    });
    expect(seen).toEqual(['cancelled', 'cancelled', 'cancelled']);
    expect(opened.rehearsal.notes.outside).toEqual([]);
  });

  test('keeps a frame where it is', async () => {
    await page.evaluate(() => document.body.insertAdjacentHTML('beforeend', '<iframe id="inner" srcdoc="<title>inner</title>"></iframe>'));
    const found = () => page.frames().find((frame) => frame.url() === 'about:srcdoc');
    await expect.poll(found).toBeDefined();
    const inner = found();
    for (const address of ['https://evil.example/', `${new URL(page.url()).origin.replace('//app.', '//evil.')}/`]) {
      await inner?.evaluate((to) => location.assign(to), address);
      await page.waitForTimeout(100);
      expect([inner?.url(), opened.rehearsal.notes.outside]).toEqual(['about:srcdoc', []]);
    }
  });

  test.each([
    { case: 'one with its own text', html: '<iframe id="caller" srcdoc="<title>inner</title>"></iframe>', opened: false, address: /^about:srcdoc$/ },
    { case: 'one that bears our page’s very address', html: '<iframe id="caller"></iframe>', opened: true, address: /^http:.*\/$/ },
  ])('refuses the call of a frame within the page, even one that has the preload script’s own way out: $case', async ({ html, opened: written, address }) => {
    await page.evaluate((text) => document.body.insertAdjacentHTML('beforeend', text), html);
    // A document that another opens takes over its address.
    if (written) await page.locator('#caller').evaluate((frame: HTMLIFrameElement) => frame.contentDocument?.open().close());
    const cdp = await page.context().newCDPSession(page);
    await cdp.send('Runtime.enable');
    await cdp.send('Runtime.addBinding', { name: 'toMain', executionContextName: 'preload' });
    const found = async () => (await cdp.send('Page.getFrameTree')).frameTree.childFrames?.find(({ frame }) => address.test(frame.url))?.frame.id;
    await expect.poll(found).toBeDefined();
    const inner = (await found()) ?? '';
    const { executionContextId } = await cdp.send('Page.createIsolatedWorld', { frameId: inner, worldName: 'preload' });
    const call = copiedText({ id: 1, channel: 'operation:household.state', given: [{}] });
    const answer = await cdp.send('Runtime.evaluate', {
      contextId: executionContextId, awaitPromise: true, returnByValue: true,
      expression: `new Promise((done) => { globalThis.deliver = done; toMain(${JSON.stringify(call)}); })`,
    });
    expect(copiedValue(answer.result.value as string)).toEqual({ id: 1, value: { ok: false, refusal: { code: 'not-our-page', values: {} } } });
    expect(await page.evaluate(() => window.trunnion?.operations['household.state']?.({}))).toMatchObject({ ok: true });
    await page.evaluate(() => document.getElementById('caller')?.remove());
  });
});
