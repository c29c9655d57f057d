import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { placeFile, writePlace } from '../../electron/shell/kept-place.ts';
import { handlers, order, standIn, StandInWindow, type Contents } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);
// The page is looked for beside the bundle; here it is a page of one line.
vi.mock('../../electron/loopback/page-files.ts', () => ({
  pageFiles: () => ({ answer: (place: string) => (place === '/' ? { headers: { 'content-security-policy': "default-src 'none'" }, body: Buffer.from('page') } : null) }),
}));

const folder = mkdtempSync(path.join(os.tmpdir(), 'main-'));
const heardBefore = (['uncaughtException', 'unhandledRejection'] as const).map((name) => [name as 'uncaughtException', process.listeners(name as 'uncaughtException')] as const);
let window: StandInWindow;
let contents: Contents;

beforeAll(async () => {
  vi.stubEnv('TRUNNION_HOUSEHOLD', path.join(folder, 'household'));
  process.argv = ['electron', '.', '--no-sandbox', '--on', '2031-01-02'];
  writePlace(placeFile(standIn.app.getPath('userData')), { x: 2500, y: 30, width: 1000, height: 700, maximised: false, fullScreen: false });
  await import('../../electron/main.ts');
  await vi.waitFor(() => expect(StandInWindow.opened[0]?.loadURL.calls).toEqual([['trunnion://app/']]));
  window = StandInWindow.opened[0] as StandInWindow;
  contents = window.webContents;
});
afterAll(() => {
  for (const [name, listeners] of heardBefore) for (const listener of process.listeners(name)) if (!listeners.includes(listener)) process.off(name, listener);
  rmSync(folder, { recursive: true });
});

const PAPER = `trunnion://app/papers/${'a'.repeat(64)}`;
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
    const asked = ['trunnion://app/', 'https://evil.example/', PAPER, `${PAPER}/../../`, `https://evil.example/?${PAPER}`];
    expect(asked.map((url) => mayOpen({ url }))).toEqual(asked.map(() => ({ action: 'deny' })));
    // A paper is offered to be saved, and nothing else is.
    expect(contents.downloadURL.calls).toEqual([[PAPER]]);
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
    ['https://evil.example/', true], ['http://127.0.0.1:3000/', true], ['file:///etc/passwd', true], ['blob:https://evil.example/1', true], ['ws://evil.example/', true],
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
  const press = (menu: string, entry: string) => {
    const items = standIn.Menu.setApplicationMenu.calls[0]?.[0] as { id?: string; submenu: { id?: string; click: () => void }[] }[];
    items.find(({ id }) => id === menu)?.submenu.find(({ id }) => id === entry)?.click();
  };

  test('a second start brings the window to the front', () => {
    standIn.app.emit('second-instance', {}, [], '/', { household: null, why: null });
    expect([window.restore.calls.length, window.focus.calls.length]).toEqual([1, 1]);
    expect(standIn.app.requestSingleInstanceLock.calls).toEqual([[{ household: path.join(folder, 'household'), why: null }]]);
  });

  test('a file dropped on the window leads nowhere', () => {
    expect(window.options.webPreferences['navigateOnDragDrop']).toBe(false);
    for (const name of ['will-navigate', 'will-frame-navigate']) {
      const event = { url: 'file:///home/me/receipt.pdf', preventDefault: vi.fn() };
      contents.emit(name, event);
      expect(event.preventDefault).toHaveBeenCalledTimes(1);
    }
  });

  test('prints the page as it is shown; a person who cancels is told nothing, a failure is said', () => {
    press('menu-household', 'menu-print');
    const [options, printed] = contents.print.calls[0] as [unknown, (printed: boolean, why: string) => void];
    expect(options).toEqual({ silent: false, printBackground: true });
    printed(true, '');
    printed(false, 'Print job canceled');
    expect(standIn.dialog.showMessageBox.calls).toEqual([]);
    printed(false, 'Print job failed');
    expect(standIn.dialog.showMessageBox.calls.splice(0)).toMatchObject([[window, { message: 'The page was not printed.' }]]);
  });

  test('shows the folder of the household, or says where it is', async () => {
    press('menu-household', 'menu-show-folder');
    expect(standIn.shell.openPath.calls).toEqual([[path.join(folder, 'household')]]);
    standIn.shell.openPath.willAnswer(Promise.resolve('no program for it'));
    press('menu-household', 'menu-show-folder');
    await vi.waitFor(() => expect(standIn.dialog.showMessageBox.calls.splice(0)).toMatchObject([[window, { detail: `It is at ${path.join(folder, 'household')}.` }]]));
  });

  test('tells its version', async () => {
    press('menu-help', 'menu-about');
    await vi.waitFor(() => expect(standIn.dialog.showMessageBox.calls.splice(0)).toMatchObject([[window, { message: 'Trunnion 0.1.0' }]]));
  });

  test('the window is where it was left, brought into view', () => {
    expect(window.options).toMatchObject({ x: 920, y: 30, width: 1000, height: 700 });
  });

  test('only what is the page’s own is saved', () => {
    const cancelled = (url: string) => {
      const event = { preventDefault: vi.fn() };
      const item = { getURL: () => url, getURLChain: () => [url], getFilename: () => 'a.csv', setSaveDialogOptions: vi.fn() };
      standIn.session.defaultSession.emit('will-download', event, item);
      return [event.preventDefault.mock.calls.length, (item.setSaveDialogOptions.mock.calls[0] as [{ defaultPath: string }] | undefined)?.[0].defaultPath];
    };
    expect([cancelled('blob:trunnion://app/1'), cancelled('https://evil.example/a.csv')]).toEqual([[0, path.join(standIn.app.getPath('downloads'), 'a.csv')], [1, undefined]]);
  });

  test('a page that ends is shown anew, or the program quits in order', async () => {
    standIn.dialog.showMessageBox.willAnswer(Promise.resolve({ response: 1 }));
    contents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 5 });
    await vi.waitFor(() => expect(standIn.app.quit.calls.splice(0)).toEqual([[]]));
    expect(standIn.dialog.showMessageBox.calls.splice(0).length).toBe(1);
    standIn.dialog.showMessageBox.willAnswer(Promise.resolve({ response: 0 }));
  });

  test('keeps the window’s place in its own folder', () => {
    window.emit('close');
    expect(JSON.parse(readFileSync(path.join(standIn.app.getPath('userData'), 'window-place.json'), 'utf8'))).toEqual({ ...window.bounds, maximised: false, fullScreen: false });
    rmSync(standIn.app.getPath('userData'), { recursive: true });
  });

  test('the last window closed ends it', () => {
    standIn.app.emit('window-all-closed');
    expect(standIn.app.quit.calls).toEqual([[]]);
  });

  test('goes over to another household only when this one is closed', async () => {
    const other = path.join(folder, 'other');
    mkdirSync(other);
    standIn.dialog.showOpenDialog.willAnswer(Promise.resolve({ canceled: false, filePaths: [other] }));
    standIn.app.quit.calls.length = 0;
    press('menu-household', 'menu-open-other');
    await vi.waitFor(() => expect(standIn.app.quit.calls).toEqual([[]]));
    expect([standIn.app.relaunch.calls, standIn.app.exit.calls]).toEqual([[], []]);
    const reply = ask('paper.keep', { name: 'last.txt', base64: 'bGFzdA==' });
    const event = { preventDefault: vi.fn() };
    standIn.app.emit('will-quit', event);
    expect(event.preventDefault).toHaveBeenCalledTimes(1);
    await vi.waitFor(() => expect(standIn.app.exit.calls).toEqual([[0]]));
    expect(standIn.app.relaunch.calls).toEqual([[{ args: ['.', '--no-sandbox', '--on', '2031-01-02', `--household=${other}`] }]]);
    // What was asked before the end was answered, and the household let go.
    expect(await reply).toMatchObject({ ok: true });
    expect(existsSync(path.join(folder, 'household', 'household.sqlite-wal'))).toBe(false);
    expect(handlers.size).toBe(0);
  });
});
