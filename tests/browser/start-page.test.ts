import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere, launchChromium } from './launch-chromium.ts';

const BOOTSTRAP = new URL('../../electron/start/bootstrap.mjs', import.meta.url).pathname;

let program: ChildProcess;
let said = '';
let link = '';
const folder = mkdtempSync(path.join(os.tmpdir(), 'start-'));

/** `npm start` as a person without a display runs it. */
beforeAll(async () => {
  const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...env } = process.env;
  program = spawn(process.execPath, [BOOTSTRAP, 'start', '--household', path.join(folder, 'household')], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  program.stderr?.on('data', (piece: Buffer) => (said += piece.toString('utf8')));
  const ended = once(program, 'exit').then(() => {
    throw new Error(`the program ended: ${said}`);
  });
  const [first] = (await Promise.race([once(program.stdout as NodeJS.ReadableStream, 'data'), ended])) as [Buffer];
  ended.catch(() => undefined);
  link = /http:\S+/.exec(first.toString('utf8'))?.[0] ?? '';
});
afterAll(() => {
  program.kill('SIGKILL');
  rmSync(folder, { recursive: true });
});

test('says that there is no window, and where the dashboard is', () => {
  expect(said).toContain('No window: there is no display here. Serving the dashboard for a browser instead.');
  expect(link).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/enter\?token=[\w-]{43}$/);
});

describe.skipIf(chromiumHere === null)('the dashboard in a browser', () => {
  let browser: Browser;
  let page: Page;
  const complaints: string[] = [];

  beforeAll(async () => {
    browser = await launchChromium();
    page = await (await browser.newContext()).newPage();
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    await page.goto(link);
    await page.getByRole('heading', { level: 1 }).waitFor();
  });
  afterAll(() => browser.close());

  test('opens at the link, under its policy, without a complaint', async () => {
    expect(new URL(page.url()).search).toBe('');
    expect(complaints).toEqual([]);
    expect(await axeFaults(page)).toEqual([]);
  });

  test('has its style elements by nonce', async () => {
    const styled = await page.evaluate(() => [...document.querySelectorAll('style')].map((style) => [style.nonce !== '', style.sheet !== null]));
    expect(styled.length).toBeGreaterThan(0);
    expect(styled.every(([nonce, applied]) => nonce === true && applied === true)).toBe(true);
  });

  test('has no Node, no eval and no inline script', async () => {
    expect(await page.evaluate(() => [typeof Reflect.get(window, 'require'), typeof Reflect.get(window, 'process')])).toEqual(['undefined', 'undefined']);
    const blocked = await page.evaluate(async () => {
      const heard: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => heard.push(`${event.effectiveDirective} ${event.blockedURI.replace(/:.*/, '')}`));
      // A text run later is bound by the page's policy, as what runs in here directly is not.
      Reflect.apply(setTimeout, null, ['window.textRan = true', 0]);
      const script = document.createElement('script');
      script.textContent = 'window.inlineRan = true';
      document.head.append(script);
      await fetch('https://example.invalid/').catch(() => undefined);
      await new Promise((resolve) => setTimeout(resolve, 100));
      return { heard: heard.sort(), ran: Reflect.has(window, 'inlineRan') || Reflect.has(window, 'textRan') };
    });
    expect(blocked).toEqual({ heard: ['connect-src https', 'script-src eval', 'script-src-elem inline'], ran: false });
    complaints.length = 0;
  });

  test('asks the host through the bridge’s own address, with the cookie only', async () => {
    const ask = (credentials: RequestCredentials) =>
      page.evaluate(async (how) => {
        const reply = await fetch('/operations/household.state', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}', credentials: how });
        return reply.status;
      }, credentials);
    expect([await ask('same-origin'), await ask('omit')]).toEqual([200, 401]);
    expect(await page.evaluate(() => document.cookie)).toBe('');
    complaints.length = 0;
  });

  test('a page elsewhere can neither read nor ask it', async () => {
    const elsewhere = await browser.newPage();
    await elsewhere.route('http://evil.example/', (route) => route.fulfill({ contentType: 'text/html', body: '<title>x</title>' }));
    await elsewhere.goto('http://evil.example/');
    const outcome = await elsewhere.evaluate(async (origin) => {
      const post = (mode: RequestMode) => fetch(`${origin}/operations/household.state`, { method: 'POST', body: '{}', mode, credentials: 'include' }).then((reply) => reply.type, () => 'refused');
      return [await post('cors'), await fetch(origin, { credentials: 'include' }).then(() => 'read', () => 'refused')];
    }, new URL(link).origin);
    expect(outcome).toEqual(['refused', 'refused']);
    await elsewhere.close();
  });

  test('the link does not work again', async () => {
    const other = await browser.newContext();
    const again = await (await other.newPage()).goto(link);
    expect(again?.status()).toBe(401);
    await other.close();
  });
});

test('stops when told, saying so, with status 0', async () => {
  program.kill('SIGTERM');
  expect(await once(program, 'exit')).toEqual([0, null]);
  expect(said).toContain('Stopped.');
});
