import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { StandInNotification } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);

beforeEach(() => {
  vi.useFakeTimers();
  StandInNotification.made.length = 0;
});
afterEach(() => vi.useRealTimers());

async function reminding(answers: readonly ({ readonly title: string; readonly body: string } | null)[]) {
  const { remindDaily } = await import('../../electron/shell/remind-daily.ts');
  const left = [...answers];
  const [onClick, onFault] = [vi.fn(), vi.fn()];
  const next = vi.fn(() => left.shift() ?? null);
  return { stop: remindDaily({ next, onClick, onFault }), next, onClick, onFault };
}

describe('the reminder of the window', () => {
  test('is shown at once where there is one, and clicking it brings the window to the front', async () => {
    const { onClick, stop } = await reminding([{ title: 'The cars of Ours', body: 'Pip: oil' }]);
    const [made] = StandInNotification.made;
    expect([made?.options, made?.show.calls.length]).toEqual([{ title: 'The cars of Ours', body: 'Pip: oil' }, 1]);
    made?.emit('click');
    expect(onClick).toHaveBeenCalledTimes(1);
    stop();
  });

  test('is held while the program runs: one that nobody holds is taken away when memory is tidied up, and a click on it lost', async () => {
    const { stop } = await reminding([{ title: 'The cars of Ours', body: 'Pip: oil' }]);
    const made = new WeakRef(StandInNotification.made.pop() ?? {});
    setFlagsFromString('--expose-gc');
    vi.useRealTimers();
    await new Promise((resolve) => setTimeout(resolve, 10));
    (runInNewContext('gc') as () => void)();
    expect(made.deref()).toBeDefined();
    stop();
  });

  test('is looked for again every hour, so that a new day is noticed, until it is stopped', async () => {
    const { next, stop } = await reminding([null, null, { title: 'Late', body: 'Pip' }]);
    expect(StandInNotification.made).toEqual([]);
    vi.advanceTimersByTime(2 * 3_600_000);
    expect([next.mock.calls.length, StandInNotification.made.length]).toEqual([3, 1]);
    stop();
    vi.advanceTimersByTime(24 * 3_600_000);
    expect(next).toHaveBeenCalledTimes(3);
  });

  test('a fault in it is told and ends nothing', async () => {
    const { remindDaily } = await import('../../electron/shell/remind-daily.ts');
    const onFault = vi.fn();
    const stop = remindDaily({ next: () => { throw new Error('locked'); }, onClick: () => undefined, onFault });
    expect(onFault).toHaveBeenCalledWith(expect.objectContaining({ message: 'locked' }));
    stop();
  });
});
