import type { BrowserWindow } from 'electron';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { bringToFront, openWindow } from '../../electron/shell/open-window.ts';
import { StandInWindow } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);
beforeEach(() => void (StandInWindow.opened.length = 0));

const open = async (place: Parameters<typeof openWindow>[0]['place']) => {
  const order: string[] = [];
  await openWindow({ preload: '/p.cjs', place, beforeLoading: (window) => order.push((window as unknown as StandInWindow).loadURL.calls.length === 0 ? 'before loading' : 'too late') });
  expect(order).toEqual(['before loading']);
  const window = StandInWindow.opened[0] as StandInWindow;
  expect(window.show.calls).toEqual([]);
  window.emit('ready-to-show');
  return window;
};

describe('a window', () => {
  test('is shown where it was left, and never below its least size', async () => {
    const window = await open({ x: 5, y: 6, width: 900, height: 700, maximised: false, fullScreen: false });
    expect(window.options).toMatchObject({ x: 5, y: 6, width: 900, height: 700, minWidth: 640, minHeight: 480, show: false });
    expect([window.show.calls.length, window.maximize.calls.length, window.setFullScreen.calls.length]).toEqual([1, 0, 0]);
  });

  test('is maximised or full screen as it was', async () => {
    const window = await open({ x: 5, y: 6, width: 900, height: 700, maximised: true, fullScreen: true });
    expect([window.maximize.calls, window.setFullScreen.calls]).toEqual([[[]], [[true]]]);
  });

  test('is put in the middle by the system the first time', async () => {
    const { options } = await open(null);
    expect(options).toMatchObject({ width: 1280, height: 800 });
    expect('x' in options || 'y' in options).toBe(false);
  });

  test('is no fault when it is closed while it loads, and is one when its page cannot be loaded', async () => {
    for (const destroyed of [true, false]) {
      const opening = openWindow({ preload: '/p.cjs', place: null, beforeLoading: (made) => {
        const window = made as unknown as StandInWindow;
        window.state.destroyed = destroyed;
        Object.assign(window, { loadURL: () => Promise.reject(new Error('ERR_ABORTED')) });
      } });
      await (destroyed ? expect(opening).resolves.toBeDefined() : expect(opening).rejects.toThrow('ERR_ABORTED'));
    }
  });
});

describe('bringing it to the front', () => {
  test('restores, shows and focuses it', () => {
    const window = new StandInWindow();
    bringToFront(window as unknown as BrowserWindow);
    expect([window.restore.calls.length, window.show.calls.length, window.focus.calls.length]).toEqual([1, 1, 1]);
  });

  test('does nothing to a window that is closed or not there yet', () => {
    const window = new StandInWindow();
    window.state.destroyed = true;
    bringToFront(window as unknown as BrowserWindow);
    bringToFront(null);
    expect([window.restore.calls.length, window.show.calls.length, window.focus.calls.length]).toEqual([0, 0, 0]);
  });
});
