import { Worker } from 'node:worker_threads';
import { expect, test } from 'vitest';
import { pdfThread } from '../../electron/papers/pdf-thread.ts';

test('a thread that is asked often hears of its faults once', async () => {
  const worker = new Worker(`require('node:worker_threads').parentPort.on('message', () => require('node:worker_threads').parentPort.postMessage({ kind: 'no-page' }))`, { eval: true });
  const thread = pdfThread(5_000, () => worker);
  for (let time = 0; time < 12; time += 1) expect(await thread.ask({ kind: 'render', bytes: new Uint8Array(), page: 1, mostDotsPerInch: null, pixelsWide: 10 })).toMatchObject({ ok: false });
  expect(worker.listenerCount('error')).toBe(1);
  await thread.close();
});

test('a thread that answers while it is ended is held until it has ended, so that a program cannot end before it', async () => {
  const worker = new Worker(`setInterval(() => undefined, 1000)`, { eval: true });
  let rests = 0;
  const rest = worker.unref.bind(worker);
  worker.unref = () => {
    rests += 1;
    rest();
    return worker;
  };
  const thread = pdfThread(5_000, () => worker);
  const asked = thread.ask({ kind: 'render', bytes: new Uint8Array(), page: 1, mostDotsPerInch: null, pixelsWide: 10 });
  await Promise.resolve();
  const closed = thread.close();
  worker.emit('message', { kind: 'no-page' });
  await closed;
  expect(await asked).toMatchObject({ refusal: { code: 'no-such-page' } });
  expect(rests).toBe(0);
});
