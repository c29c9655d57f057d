import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { composeHost, type ComposedHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import type { OperationName } from '../../shared-core/contract/contract.ts';
import { referenceMilliseconds } from './reference.ts';

/**
 * How long the screens wait for the host on the sample household: `npm run bench`. Prints milliseconds and parts of the reference of the same
 * run; it judges nothing.
 */
const TIMES = 20;
const reference = referenceMilliseconds();
const folder = mkdtempSync(path.join(os.tmpdir(), 'bench-'));

try {
  const opened = composeHost(path.join(folder, 'household'), realWorld());
  if (!opened.ok) throw new Error(`the household was refused: ${opened.refusal.code}`);
  await measureAll(opened.value);
  await opened.value.close();
} finally {
  rmSync(folder, { recursive: true });
}

async function measureAll(host: ComposedHost): Promise<void> {
  const sample = await timeOf(host, 'sample.open', {});
  console.log(`the reference: ${reference.toFixed(0)} ms of the processor`);
  console.log(`opening the sample: ${sample.toFixed(0)} ms once`);
  const due = await host.call('due.show', {});
  const [car] = due.ok ? (due.value as { cars: { id: string }[] }).cars : [];
  if (car === undefined) throw new Error('the sample has no car');
  for (const [operation, request] of [['yard.show', {}], ['due.show', {}], ['car.show', { car: car.id }], ['order.propose', {}]] as const) {
    const times: number[] = [];
    for (let n = 0; n < TIMES; n += 1) times.push(await timeOf(host, operation, request));
    times.sort((a, b) => a - b);
    const at = (share: number) => {
      const time = times[Math.floor(share * (TIMES - 1))] ?? 0;
      return `${time.toFixed(1).padStart(7)} ms (${(time / reference).toFixed(2)} of the reference)`;
    };
    console.log(`${operation.padEnd(14)} half within ${at(0.5)}, 19 of 20 within ${at(0.95)}`);
  }
}

async function timeOf(host: ComposedHost, operation: OperationName, request: unknown): Promise<number> {
  const started = performance.now();
  const reply = await host.call(operation, request);
  if (!reply.ok) throw new Error(`${operation} was refused: ${reply.refusal.code}`);
  return performance.now() - started;
}
