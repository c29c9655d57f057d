import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { pdfThread } from '../../electron/papers/pdf-thread.ts';

test('a thread that is asked often hears of its faults once', async () => {
  const worker = new Worker(`require('node:worker_threads').parentPort.on('message', () => require('node:worker_threads').parentPort.postMessage({ kind: 'no-page' }))`, { eval: true });
  const thread = pdfThread(5_000, () => worker);
  for (let time = 0; time < 12; time += 1) expect(await thread.ask({ kind: 'render', bytes: new Uint8Array(), page: 1, pixelsWide: 10 })).toMatchObject({ ok: false });
  expect(worker.listenerCount('error')).toBe(1);
  await thread.close();
});
