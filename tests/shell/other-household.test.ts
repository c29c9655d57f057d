import { existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { EventEmitter } from 'node:events';
import type { App, BrowserWindow } from 'electron';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { realWorld } from '../../electron/host/real-world.ts';
import { openOtherHousehold } from '../../electron/shell/open-other-household.ts';
import { relaunchFor, wordsForHousehold } from '../../electron/shell/relaunch.ts';
import { askedAtStart, hearSecondStart } from '../../electron/shell/second-start.ts';
import { readWindowOptions } from '../../electron/start/start-options.ts';
import { standIn, StandInWindow } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);

const { showMessageBox, showOpenDialog } = standIn.dialog;
let folder = '';
const at = (name: string) => path.join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'other-'));
  mkdirSync(at('home'));
  for (const { calls } of [showMessageBox, showOpenDialog]) calls.length = 0;
});
afterEach(() => rmSync(folder, { recursive: true }));
const boxes = () => showMessageBox.calls.map(([, box]) => box as { message: string; detail: string });

describe('opening another household', () => {
  async function open(chosen: string | null): Promise<string[]> {
    showOpenDialog.willAnswer(Promise.resolve(chosen === null ? { canceled: true, filePaths: [] } : { canceled: false, filePaths: [chosen] }));
    const wentTo: string[] = [];
    await openOtherHousehold({ window: new StandInWindow() as unknown as BrowserWindow, home: at('home'), world: realWorld(), goTo: (to) => void wentTo.push(to) });
    return wentTo;
  }

  test('asks for a folder, which may be made there, and goes over to it', async () => {
    mkdirSync(at('other'));
    expect(await open(at('other'))).toEqual([at('other')]);
    expect(showOpenDialog.calls[0]?.[1]).toMatchObject({ defaultPath: folder, properties: ['openDirectory', 'createDirectory'] });
    expect([boxes(), existsSync(path.join(at('other'), 'household.sqlite'))]).toEqual([[], true]);
    // Let go again: its database is not held open by the look at it.
    expect(existsSync(path.join(at('other'), 'household.sqlite-wal'))).toBe(false);
  });

  test('does nothing where none is chosen', async () => {
    expect([await open(null), boxes()]).toEqual([[], []]);
  });

  test('says so where it is the one that is open, by whatever name', async () => {
    symlinkSync(at('home'), at('link'));
    for (const name of ['home', 'link']) expect(await open(at(name))).toEqual([]);
    expect(boxes()).toMatchObject([{ message: 'This household is open already.' }, { message: 'This household is open already.' }]);
  });

  test.each([
    { case: 'with other things in it', make: () => writeFileSync(path.join(at('other'), 'holiday.jpg'), '') },
    { case: 'with a file that is no household', make: () => writeFileSync(path.join(at('other'), 'household.sqlite'), 'x'.repeat(4000)) },
    { case: 'whose database is lost', make: () => writeFileSync(path.join(at('other'), 'key'), 'x') },
  ])('a folder $case is refused in a sentence, and the open one stays', async ({ make }) => {
    mkdirSync(at('other'));
    make();
    expect(await open(at('other'))).toEqual([]);
    expect(boxes()).toEqual([expect.objectContaining({ message: 'That folder was not opened.', detail: expect.stringMatching(/^[A-Z][^{}]{20,}\.\n\nThe household that was open stays open, as it was\.$/) as string })]);
  });
});

describe('starting again for it', () => {
  test.each([
    { words: ['.'], again: ['.', '--household=/b'] },
    { words: ['.', '--household', '/a', '--on', '2026-11-25'], again: ['.', '--on', '2026-11-25', '--household=/b'] },
    { words: ['--no-sandbox', '--household=/a'], again: ['--no-sandbox', '--household=/b'] },
    { words: ['.', '--household', '--household=/a'], again: ['.', '--household=/b'] },
  ])('$words: $again', ({ words, again }) => {
    expect(wordsForHousehold(words, '/b')).toEqual(again);
  });

  test('an AppImage starts its own file again, anything else itself', () => {
    process.argv = ['electron', '.', '--household', '/a'];
    vi.stubEnv('APPIMAGE', '/apps/trunnion.AppImage');
    const again = (isPackaged: boolean) => {
      const app = { isPackaged, relaunch: vi.fn() };
      relaunchFor(app as unknown as App, '/b');
      return app.relaunch.mock.calls[0] as unknown;
    };
    expect([again(true), again(false)]).toEqual([[{ args: ['.', '--household=/b'], execPath: '/apps/trunnion.AppImage' }], [{ args: ['.', '--household=/b'] }]]);
    vi.unstubAllEnvs();
  });
});

describe('a second start', () => {
  const startAgain = vi.fn();
  function start(data: unknown, { window = new StandInWindow(), home = at('home') as string | null }: { window?: StandInWindow | null; home?: string | null } = {}) {
    const app = new EventEmitter();
    hearSecondStart(app as unknown as App, { window: () => window as unknown as BrowserWindow | null, home: () => home, startAgain });
    app.emit('second-instance', {}, ['electron'], '/', data);
    return window;
  }

  test('brings the window to the front', () => {
    for (const data of [{ household: null, why: null }, undefined, null, { household: 7 }]) expect(start(data)?.focus.calls.length).toBe(1);
    expect(boxes()).toEqual([]);
  });

  test('while the program ends, has it started again for the household that is wanted', () => {
    const closed = new StandInWindow();
    closed.state.destroyed = true;
    start({ household: null, why: null }, { window: closed });
    start({ household: at('third'), why: null }, { window: closed });
    start(undefined, { window: closed });
    expect(startAgain.mock.calls).toEqual([[at('home')], [at('third')], [at('home')]]);
    expect([boxes(), closed.focus.calls.length]).toEqual([[], 0]);
  });

  test('for the household that is open, by whatever name, does no more', () => {
    symlinkSync(at('home'), at('link'));
    for (const name of ['home', 'link']) start({ household: at(name), why: null });
    expect(boxes()).toEqual([]);
  });

  test('for another is told which is open and how to change', () => {
    expect(start({ household: at('other'), why: null })?.focus.calls.length).toBe(1);
    expect(boxes()).toMatchObject([{ message: 'Another household is open in Trunnion.' }]);
    for (const said of [at('home'), at('other'), 'Open another household’s folder…', 'Household']) expect(boxes()[0]?.detail).toContain(said);
  });

  test('that was not understood is told why', () => {
    start({ household: null, why: 'There is no such date.' });
    expect(boxes()).toMatchObject([{ message: 'Trunnion is open already.', detail: 'There is no such date.' }]);
  });

  test('before there is a window, or after it, does nothing', () => {
    const closed = new StandInWindow();
    closed.state.destroyed = true;
    for (const window of [null, closed]) start({ household: at('other'), why: null }, { window });
    start({ household: at('other'), why: null }, { home: null });
    expect([boxes(), closed.focus.calls]).toEqual([[], []]);
  });

  test('tells the household only where one was named', () => {
    vi.stubEnv('TRUNNION_HOUSEHOLD', '');
    const asked = (...words: string[]) => askedAtStart(readWindowOptions(words));
    expect([asked(), asked('--household=/a'), asked('--on=never')]).toEqual([{ household: null, why: null }, { household: path.resolve('/a'), why: null }, { household: null, why: expect.stringMatching(/\.$/) as string }]);
    vi.stubEnv('TRUNNION_HOUSEHOLD', '/c');
    expect([asked(), asked('--household=/a')]).toMatchObject([{ household: path.resolve('/c') }, { household: path.resolve('/a') }]);
    vi.unstubAllEnvs();
  });
});
