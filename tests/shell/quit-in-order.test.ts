import { EventEmitter } from 'node:events';
import type { App } from 'electron';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { quitInOrder } from '../../electron/shell/quit-in-order.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A program whose household takes as long to close as the test likes. */
function quitting() {
  const did: string[] = [];
  const app = Object.assign(new EventEmitter(), { quit: () => did.push('quit'), exit: (status: number) => did.push(`exit ${status}`) });
  let closed = () => undefined as void;
  const close = () => {
    did.push('close');
    return new Promise<void>((resolve) => (closed = resolve));
  };
  const onFault = vi.fn();
  const willQuit = async () => {
    const event = { preventDefault: vi.fn() };
    app.emit('will-quit', event);
    await vi.advanceTimersByTimeAsync(0);
    return event.preventDefault.mock.calls.length;
  };
  return { did, willQuit, onFault, closed: async () => (closed(), vi.advanceTimersByTimeAsync(0)), quitting: quitInOrder(app as unknown as App, close, onFault) };
}

describe('quitting', () => {
  test('waits until the household is closed', async () => {
    const { did, willQuit, closed } = quitting();
    expect(await willQuit()).toBe(1);
    expect(did).toEqual(['close']);
    await closed();
    expect(did).toEqual(['close', 'exit 0']);
  });

  test('closes once, however often it is asked for', async () => {
    const { did, willQuit, closed } = quitting();
    expect([await willQuit(), await willQuit()]).toEqual([1, 1]);
    await closed();
    expect(did).toEqual(['close', 'exit 0']);
  });

  test('waits ten seconds and no longer', async () => {
    const { did, willQuit } = quitting();
    await willQuit();
    await vi.advanceTimersByTimeAsync(9999);
    expect(did).toEqual(['close']);
    await vi.advanceTimersByTimeAsync(1);
    expect(did).toEqual(['close', 'exit 0']);
  });

  test('ends although closing fails, and tells of it', async () => {
    const app = Object.assign(new EventEmitter(), { exit: vi.fn() });
    const onFault = vi.fn();
    quitInOrder(app as unknown as App, () => Promise.reject(new Error('locked')), onFault);
    app.emit('will-quit', { preventDefault: () => undefined });
    await vi.advanceTimersByTimeAsync(0);
    expect([onFault.mock.calls.length, app.exit.mock.calls]).toEqual([1, [[0]]]);
  });

  test('does what comes last once all is closed, unless the person stayed meanwhile', async () => {
    const first = quitting();
    first.quitting.quit(() => first.did.push('start again'));
    await first.willQuit();
    await first.closed();
    expect(first.did).toEqual(['quit', 'close', 'start again', 'exit 0']);
    const stayed = quitting();
    stayed.quitting.quit(() => stayed.did.push('start again'));
    stayed.quitting.stay();
    stayed.quitting.quit();
    await stayed.willQuit();
    await stayed.closed();
    expect(stayed.did).toEqual(['quit', 'quit', 'close', 'exit 0']);
  });

  test('what comes while it ends is done last, unless something else is to be', async () => {
    const plain = quitting();
    await plain.willQuit();
    plain.quitting.atLast(() => plain.did.push('again'));
    await plain.closed();
    expect(plain.did).toEqual(['close', 'again', 'exit 0']);
    const goesOver = quitting();
    goesOver.quitting.quit(() => goesOver.did.push('other'));
    await goesOver.willQuit();
    goesOver.quitting.atLast(() => goesOver.did.push('again'));
    await goesOver.closed();
    expect(goesOver.did).toEqual(['quit', 'close', 'other', 'exit 0']);
  });

  test('after a fault closes as well, ends with its status, and starts nothing again', async () => {
    const { did, closed, quitting: end } = quitting();
    end.quit(() => did.push('start again'));
    void end.endWith(1);
    await closed();
    expect(did).toEqual(['quit', 'close', 'exit 1']);
  });
});
