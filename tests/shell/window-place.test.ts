import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { BrowserWindow } from 'electron';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepPlace, readPlace, writePlace } from '../../electron/shell/kept-place.ts';
import { placeInView } from '../../electron/shell/window-place.ts';
import { StandInWindow } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);

const SHOWN = { maximised: false, fullScreen: false };
const LEFT = { x: 0, y: 0, width: 1920, height: 1040 };
const RIGHT = { x: 1920, y: 0, width: 1280, height: 1000 };
const bounds = (x: number, y: number, width: number, height: number) => ({ x, y, width, height, ...SHOWN });

describe('a window comes back', () => {
  // By hand; our own rule: 120 by 40 points of the upper edge must be on some display.
  test.each([
    { case: 'where it was', was: bounds(100, 50, 1280, 800), areas: [LEFT], is: bounds(100, 50, 1280, 800) },
    { case: 'across two displays', was: bounds(1500, 50, 1000, 800), areas: [LEFT, RIGHT], is: bounds(1500, 50, 1000, 800) },
    { case: 'where only its edge is seen but can be held', was: bounds(1800, 1000, 800, 600), areas: [LEFT], is: bounds(1800, 1000, 800, 600) },
    { case: 'from a display that is gone', was: bounds(2000, 100, 1000, 800), areas: [LEFT], is: bounds(920, 100, 1000, 800) },
    { case: 'from a display that was to the left, onto the nearest', was: bounds(-1500, 100, 1000, 800), areas: [RIGHT, LEFT], is: bounds(0, 100, 1000, 800) },
    { case: 'from above, where its upper edge cannot be held', was: bounds(100, -300, 1000, 800), areas: [LEFT], is: bounds(100, 0, 1000, 800) },
    { case: 'from below', was: bounds(100, 1030, 1000, 800), areas: [LEFT], is: bounds(100, 240, 1000, 800) },
    { case: 'no larger than its display', was: bounds(0, 0, 3840, 2100), areas: [LEFT], is: bounds(0, 0, 1920, 1040) },
    { case: 'as large as the display it is on allows', was: bounds(2000, 0, 1900, 1030), areas: [LEFT, RIGHT], is: bounds(1920, 0, 1280, 1000) },
    { case: 'no smaller than the least size', was: bounds(10, 10, 20, 20), areas: [LEFT], is: bounds(10, 10, 640, 480) },
    { case: 'at the least size on a display that is smaller still', was: bounds(900, 900, 900, 900), areas: [{ x: 0, y: 24, width: 600, height: 400 }], is: bounds(0, 24, 640, 480) },
    { case: 'as it was where no display is known', was: bounds(5000, 5000, 800, 600), areas: [], is: bounds(5000, 5000, 800, 600) },
  ])('$case', ({ was, areas, is }) => {
    expect(placeInView(was, areas)).toEqual(is);
  });

  test('maximised or full screen as it was', () => {
    expect(placeInView({ ...bounds(9000, 0, 800, 600), maximised: true, fullScreen: true }, [LEFT])).toMatchObject({ maximised: true, fullScreen: true, x: 1120 });
  });
});

describe('the place is kept', () => {
  let folder = '';
  let file = '';
  beforeEach(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'place-'));
    file = path.join(folder, 'own', 'window-place.json');
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
    rmSync(folder, { recursive: true });
  });
  const keeping = (onFault: (error: unknown) => void = () => undefined) => {
    const window = new StandInWindow();
    keepPlace(window as unknown as BrowserWindow, file, onFault);
    return window;
  };

  test.each(['resize', 'move', 'maximize', 'unmaximize', 'enter-full-screen', 'leave-full-screen'])('once it rests after %s, whole and with no draft left', (event) => {
    const window = keeping();
    window.state.maximised = event === 'maximize';
    window.state.fullScreen = event === 'enter-full-screen';
    window.emit(event);
    vi.advanceTimersByTime(400);
    window.emit(event);
    vi.advanceTimersByTime(400);
    expect(readPlace(file)).toBeNull();
    vi.advanceTimersByTime(200);
    expect(readPlace(file)).toEqual({ ...window.bounds, maximised: event === 'maximize', fullScreen: event === 'enter-full-screen' });
    expect(readdirSync(path.dirname(file))).toEqual(['window-place.json']);
  });

  test('at its closing at once, and never after it is gone', () => {
    const window = keeping();
    window.emit('move');
    window.bounds = { ...window.bounds, x: 77 };
    window.emit('close');
    expect(readPlace(file)?.x).toBe(77);
    window.emit('move');
    window.state.destroyed = true;
    window.emit('closed');
    rmSync(file);
    vi.advanceTimersByTime(5000);
    expect(readPlace(file)).toBeNull();
  });

  test('where it cannot be, that is told and stops nothing', () => {
    const onFault = vi.fn();
    writeFileSync(path.join(folder, 'own'), 'a file where the folder should be');
    const window = keeping(onFault);
    window.emit('close');
    expect(onFault).toHaveBeenCalledTimes(1);
  });

  test('a draft that was broken off leaves the place that was there', () => {
    writePlace(file, bounds(1, 2, 800, 600));
    rmSync(`${file}.draft`, { force: true });
    mkdirSync(`${file}.draft`);
    expect(() => writePlace(file, bounds(3, 4, 800, 600))).toThrow();
    expect(readPlace(file)).toEqual(bounds(1, 2, 800, 600));
  });

  test.each(['', '{', 'null', '[]', '{"x":1}', '{"x":"1","y":2,"width":3,"height":4,"maximised":false,"fullScreen":false}', '{"x":1e9,"y":2,"width":3,"height":4,"maximised":false,"fullScreen":false}', '{"x":1,"y":2,"width":0,"height":4,"maximised":false,"fullScreen":false}'])('a file of %s is passed over', (text) => {
    mkdirSync(path.dirname(file));
    writeFileSync(file, text);
    expect(readPlace(file)).toBeNull();
    expect(readFileSync(file, 'utf8')).toBe(text);
  });
});
