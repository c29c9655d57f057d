import { EventEmitter } from 'node:events';
import type { App, BrowserWindow } from 'electron';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { noteChildren, tellPageFaults } from '../../electron/shell/tell-page-faults.ts';
import { standIn, StandInWindow } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);

const { showMessageBox, showMessageBoxSync } = standIn.dialog;
beforeEach(() => {
  for (const { calls } of [showMessageBox, showMessageBoxSync]) calls.length = 0;
});

/** A window whose page fails, and a person who presses the button of that place. */
function faulty(pressed: number) {
  showMessageBox.willAnswer(Promise.resolve({ response: pressed }));
  showMessageBoxSync.willAnswer(pressed);
  const window = new StandInWindow();
  const [quit, stay, note] = [vi.fn(), vi.fn(), vi.fn()];
  tellPageFaults(window as unknown as BrowserWindow, { quit, stay, note });
  return { window, contents: window.webContents, quit, stay, note };
}
const gone = (reason: string) => [{}, { reason, exitCode: 5 }] as const;
const settled = () => new Promise((resolve) => setImmediate(resolve));
const boxes = () => showMessageBox.calls.map(([, box]) => box as { message: string; detail: string; buttons: string[] });

describe('a page that ended', () => {
  test('is told of in plain words, and shown anew', async () => {
    const { contents, quit, note } = faulty(0);
    contents.emit('render-process-gone', ...gone('crashed'));
    await settled();
    expect(boxes()).toMatchObject([{ message: 'The page came to an unexpected end.', buttons: ['Show it anew', 'Quit'] }]);
    expect([contents.reload.calls.length, contents.forcefullyCrashRenderer.calls.length, quit.mock.calls.length]).toEqual([1, 0, 0]);
    expect(note).toHaveBeenCalledWith('the page ended: crashed (5)');
  });

  test('or the program quits in order', async () => {
    const { contents, quit } = faulty(1);
    contents.emit('render-process-gone', ...gone('oom'));
    await settled();
    expect([contents.reload.calls.length, quit.mock.calls.length]).toEqual([0, 1]);
  });

  test('in order is not told of', async () => {
    const { contents, note } = faulty(0);
    contents.emit('render-process-gone', ...gone('clean-exit'));
    await settled();
    expect([boxes(), note.mock.calls.length]).toEqual([[], 1]);
  });

  test('with a window that is closed while it is asked is not shown anew', async () => {
    const { window, contents } = faulty(0);
    contents.emit('render-process-gone', ...gone('crashed'));
    window.state.destroyed = true;
    await settled();
    expect(contents.reload.calls).toEqual([]);
  });
});

describe('a page that does not answer', () => {
  test('is waited for', async () => {
    const { window, contents, quit } = faulty(0);
    window.emit('unresponsive');
    await settled();
    expect(boxes()).toMatchObject([{ message: 'The page does not answer.', buttons: ['Wait', 'Show it anew', 'Quit'] }]);
    expect([contents.reload.calls.length, quit.mock.calls.length]).toEqual([0, 0]);
  });

  test('is ended and shown anew, without asking about that end as well', async () => {
    const { window, contents } = faulty(1);
    window.emit('unresponsive');
    await settled();
    contents.emit('render-process-gone', ...gone('killed'));
    await settled();
    expect([contents.forcefullyCrashRenderer.calls.length, contents.reload.calls.length, boxes().length]).toEqual([1, 1, 1]);
    contents.emit('render-process-gone', ...gone('crashed'));
    await settled();
    expect(boxes().length).toBe(2);
  });

  test('is asked about once, and no longer when it answers again', async () => {
    const { window, contents } = faulty(1);
    window.emit('unresponsive');
    window.emit('unresponsive');
    const { signal } = showMessageBox.calls[0]?.[1] as { signal: AbortSignal };
    window.emit('responsive');
    expect(signal.aborted).toBe(true);
    await settled();
    expect([boxes().length, contents.reload.calls.length]).toEqual([1, 0]);
  });
});

describe('a page where something is typed and not kept', () => {
  test.each([{ pressed: 0, leaves: 0, stays: 1 }, { pressed: 1, leaves: 1, stays: 0 }])('button $pressed: leaves $leaves, stays $stays', ({ pressed, leaves, stays }) => {
    const { contents, stay } = faulty(pressed);
    const event = { preventDefault: vi.fn() };
    contents.emit('will-prevent-unload', event);
    expect(showMessageBoxSync.calls[0]?.[1]).toMatchObject({ message: 'Something was typed and not kept.', buttons: ['Stay', 'Leave it'], cancelId: 0 });
    expect([event.preventDefault.mock.calls.length, stay.mock.calls.length]).toEqual([leaves, stays]);
  });
});

test('another process that ended is noted', () => {
  const app = new EventEmitter();
  const note = vi.fn();
  noteChildren(app as unknown as App, note);
  app.emit('child-process-gone', {}, { type: 'GPU', reason: 'crashed', exitCode: 9 });
  expect(note).toHaveBeenCalledWith('GPU ended: crashed (9)');
});
