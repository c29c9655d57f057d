import { writeSync } from 'node:fs';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { killPlan } from './kill-plan.ts';

// Makes the entries of a seed in a folder, and says of each step, when it is confirmed, that it is.
const [folder = '', seed = '1'] = process.argv.slice(2);
const host = composeHost(folder, realWorld());
if (!host.ok) throw new Error(host.refusal.code);
for (const [at, step] of killPlan(Number(seed)).entries()) {
  const reply = await host.value.call(step.operation, step.request);
  if (!reply.ok) throw new Error(`step ${at}, ${step.operation}: ${JSON.stringify(reply.refusal)}`);
  writeSync(1, `${at}\n`);
}
writeSync(1, 'all\n');
