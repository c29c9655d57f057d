import { describe, expect, test } from 'vitest';
import type { ComposedHost } from '../../electron/host/compose-host.ts';
import type { HostContext } from '../../electron/host/host-context.ts';
import { beginJob } from '../../electron/host/running-jobs.ts';
import { emptyProgram, letGo } from '../../electron/shell/program.ts';

describe('letting the program go', () => {
  test('asks long work to stop, waits for what was asked, and then closes the household', async () => {
    const order: string[] = [];
    const context = { push: () => undefined } as unknown as HostContext;
    const job = beginJob(context, 'a plan');
    const stopped = () => (job.ok && job.value.stop.stopped ? 'stopped' : 'running');
    const host = { context, close: () => Promise.resolve(void order.push('closed')) } as unknown as ComposedHost;
    const served = { add: () => undefined, close: async () => (order.push(stopped()), await Promise.resolve(), void order.push('answered')) };
    await letGo({ host, served, window: null, stopReminding: () => order.push('reminds no more') });
    expect(order).toEqual(['reminds no more', 'stopped', 'answered', 'closed']);
  });

  test('has nothing to do before there is anything', async () => {
    await expect(letGo(emptyProgram())).resolves.toBeUndefined();
  });
});
