import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { handlers, order, standIn, StandInWindow, type Contents } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);
// The page is looked for beside the bundle; here it is a page of one line.
vi.mock('../../electron/loopback/page-files.ts', () => ({
  pageFiles: () => ({ answer: (place: string) => (place === '/' ? { headers: { 'content-security-policy': "default-src 'none'" }, body: Buffer.from('page') } : null) }),
}));

const folder = mkdtempSync(path.join(os.tmpdir(), 'main-'));
let window: StandInWindow;
let contents: Contents;

beforeAll(async () => {
  vi.stubEnv('TRUNNION_HOUSEHOLD', path.join(folder, 'household'));
  process.argv = ['electron', '.', '--no-sandbox', '--on', '2031-01-02'];
  await import('../../electron/main.ts');
  await vi.waitFor(() => expect(StandInWindow.opened[0]?.loadURL.calls).toEqual([['trunnion://app/']]));
  window = StandInWindow.opened[0] as StandInWindow;
  contents = window.webContents;
});
afterAll(async () => {
  standIn.app.emit('will-quit');
  await new Promise((resolve) => setTimeout(resolve, 50));
  rmSync(folder, { recursive: true });
});

const frame = (url: string, parent: unknown = null) => ({ url, parent });
const ask = (operation: string, request: unknown, event: unknown = { sender: contents, senderFrame: frame('trunnion://app/') }) => handlers.get(`operation:${operation}`)?.(event, request);

describe('before the first window', () => {
  test('the sandbox and the scheme are set before the program is ready', () => {
    expect(order).toEqual(['sandbox', 'scheme', 'ready']);
    expect(standIn.protocol.registerSchemesAsPrivileged.calls).toEqual([[[{ scheme: 'trunnion', privileges: { standard: true, secure: true, supportFetchAPI: true } }]]]);
  });

  test('the page is in a sandbox and a world of its own, without Node', () => {
    expect(window.options.webPreferences).toMatchObject({
      sandbox: true, contextIsolation: true, nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false,
      webSecurity: true, allowRunningInsecureContent: false, experimentalFeatures: false, webviewTag: false,
      preload: expect.stringMatching(/preload\.cjs$/) as string,
    });
  });
});

describe('what the page may not do', () => {
  test.each(['will-navigate', 'will-frame-navigate', 'will-redirect'])('%s to another address', (name) => {
    const go = (url: string) => {
      const event = { url, preventDefault: vi.fn() };
      contents.emit(name, event);
      return event.preventDefault.mock.calls.length;
    };
    expect([go('trunnion://app/car/pip'), go('https://evil.example/'), go('file:///etc/passwd'), go('trunnion://app.evil.example/')]).toEqual([0, 1, 1, 1]);
  });

  test('open a window, or a page within the page', () => {
    const mayOpen = contents.setWindowOpenHandler.calls[0]?.[0] as (details: { url: string }) => unknown;
    expect(mayOpen({ url: 'trunnion://app/' })).toEqual({ action: 'deny' });
    const event = { preventDefault: vi.fn() };
    contents.emit('will-attach-webview', event);
    expect(event.preventDefault).toHaveBeenCalled();
  });

  test('get a permission or a device', () => {
    const { defaultSession } = standIn.session;
    const answer = vi.fn();
    (defaultSession.setPermissionRequestHandler.calls[0]?.[0] as (c: unknown, p: string, a: typeof answer) => void)(contents, 'geolocation', answer);
    expect(answer).toHaveBeenCalledWith(false);
    expect((defaultSession.setPermissionCheckHandler.calls[0]?.[0] as () => boolean)()).toBe(false);
    expect((defaultSession.setDevicePermissionHandler.calls[0]?.[0] as () => boolean)()).toBe(false);
  });

  test.each([
    ['trunnion://app/assets/a.js', false], ['data:image/png;base64,', false], ['blob:trunnion://app/1', false],
    ['https://evil.example/', true], ['http://127.0.0.1:3000/', true], ['file:///etc/passwd', true], ['ws://evil.example/', true],
  ])('ask the network for %s: cancelled %s', (url, cancel) => {
    const answer = vi.fn();
    const [before] = standIn.session.defaultSession.webRequest.onBeforeRequest.calls[0] as [(details: { url: string }, a: typeof answer) => void];
    before({ url }, answer);
    expect(answer).toHaveBeenCalledWith({ cancel });
  });
});

describe('operations', () => {
  test('our own page is answered by the household', async () => {
    expect(await ask('household.state', {})).toMatchObject({ ok: true, value: { household: null, sample: false } });
    expect(await ask('household.state', { more: 1 })).toMatchObject({ ok: false });
  });

  test.each([
    { case: 'a window that was not opened here', event: () => ({ sender: {}, senderFrame: frame('trunnion://app/') }) },
    { case: 'a frame within the page', event: () => ({ sender: contents, senderFrame: frame('trunnion://app/', {}) }) },
    { case: 'another page in our window', event: () => ({ sender: contents, senderFrame: frame('https://evil.example/') }) },
    { case: 'a page whose address only begins like ours', event: () => ({ sender: contents, senderFrame: frame('trunnion://app.evil.example/') }) },
    { case: 'a frame that is gone', event: () => ({ sender: contents, senderFrame: null }) },
  ])('$case is refused', async ({ event }) => {
    expect(await ask('household.state', {}, event())).toEqual({ ok: false, refusal: { code: 'not-our-page', values: {} } });
  });

  test('a page may not name a place on the disk', async () => {
    expect(await ask('pack.write', { car: 'pip', out: '/etc' })).toEqual({ ok: false, refusal: { code: 'place-named-by-page', values: {} } });
  });

  test('a change is told to the window', async () => {
    const started = await ask('household.start', { name: 'Ours', currency: 'GBP' });
    expect(started).toMatchObject({ ok: true });
    expect(contents.send.calls).toContainEqual(['push', expect.objectContaining({ kind: 'changed' })]);
  });

  test('the day named at the start is today', async () => {
    expect(await ask('due.show', {})).toMatchObject({ ok: true, value: { today: '2031-01-02' } });
  });
});

describe('the protocol', () => {
  const get = (url: string, method = 'GET') => (standIn.protocol.handle.calls[0]?.[1] as (request: { url: string; method: string }) => Promise<Response>)({ url, method });

  test('gives the page with its policy', async () => {
    const reply = await get('trunnion://app/');
    expect([reply.status, await reply.text(), reply.headers.get('content-security-policy')]).toEqual([200, 'page', "default-src 'none'"]);
  });

  test.each([
    ['POST', 'trunnion://app/', 405], ['GET', 'trunnion://evil/', 421], ['GET', 'trunnion://app/../secret', 404], ['GET', 'trunnion://app/papers/..%2f..%2fkey', 404],
    ['GET', `trunnion://app/papers/${'a'.repeat(64)}`, 404], ['GET', 'trunnion://app/papers/', 404],
  ])('%s %s: %i', async (method, url, status) => {
    expect((await get(url, method)).status).toBe(status);
  });

  test('gives a kept paper in its sandbox', async () => {
    const png = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==';
    const kept = (await ask('paper.keep', { name: 'a.png', base64: png })) as { ok: boolean; value: { paper: { id: string } } };
    expect(kept).toMatchObject({ ok: true });
    const reply = await get(`trunnion://app/papers/${kept.value.paper.id}`);
    expect([reply.status, reply.headers.get('content-type'), (await reply.arrayBuffer()).byteLength]).toEqual([200, 'image/png', Buffer.from(png, 'base64').length]);
    expect(reply.headers.get('content-security-policy')).toMatch(/^sandbox;/);
  });
});

describe('one program', () => {
  test('a second start brings the window to the front', () => {
    standIn.app.emit('second-instance');
    expect([window.restore.calls.length, window.focus.calls.length]).toEqual([1, 1]);
  });

  test('the last window closed ends it', () => {
    standIn.app.emit('window-all-closed');
    expect(standIn.app.quit.calls).toEqual([[]]);
  });
});
