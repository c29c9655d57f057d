import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { composeHost, type ComposedHost } from '../../electron/host/compose-host.ts';
import { paperFinder } from '../../electron/host/find-paper.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { operationNames } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { hasWords } from '../../shared-core/result/words/say.ts';
import { diceOf } from '../shared-core/parts/order-seeds.ts';
import { databaseState, type DatabaseState } from './database-state.ts';
import { hostileCall } from './hostile-requests.ts';
import { startServing, type Serving } from './serving.ts';

const CALLS = Number(process.env['STORM_CALLS'] ?? 500);
const SEED = Number(process.env['STORM_SEED'] ?? 20_261_125);

const folder = mkdtempSync(path.join(os.tmpdir(), 'storm-'));
let host: ComposedHost;
let serving: Serving;
let state: DatabaseState;

beforeAll(async () => {
  const opened = composeHost(path.join(folder, 'household'), realWorld());
  if (!opened.ok) throw new Error(opened.refusal.code);
  host = opened.value;
  serving = await startServing({ host: Object.assign(host, { calls: [], push: () => undefined }), operations: operationNames, paper: paperFinder(host) });
  for (const [operation, request] of [
    ['household.start', { name: 'Storm', unit: 'mi' }],
    ['car.add', { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25', keptSince: '2022-11-25' }],
    ['reading.record', { id: 'r1', car: 'pip', value: 9000, date: '2024-01-10' }],
  ] as const) {
    expect(await host.call(operation, request)).toMatchObject({ ok: true });
  }
  state = databaseState(path.join(folder, 'household', 'household.sqlite'));
});
afterAll(async () => {
  state.close();
  await serving.end();
  await host.close();
  rmSync(folder, { recursive: true });
});

test(`${CALLS} hostile calls from seed ${SEED}: each answered in good form, none that is refused changes anything`, { timeout: 600_000 }, async () => {
  const dice = diceOf(SEED);
  const answered = { ok: 0, refused: 0 };
  for (let at = 0; at < CALLS; at += 1) {
    const { operation, body } = hostileCall(dice);
    const before = state.digest();
    const reply = await serving.post(operation, body);
    const told = `call ${at} of seed ${SEED}: ${operation} ${body.slice(0, 300)} -> ${reply.status} ${reply.body.slice(0, 300)}`;
    expect([200, 400], told).toContain(reply.status);
    expect(reply.body, told).not.toMatch(/\n\s+at |node:internal|\.ts:\d/);
    const result = JSON.parse(reply.body) as Result<unknown>;
    if (reply.status !== 200) expect(result.ok, told).toBe(false);
    if (!result.ok) {
      expect(hasWords(result.refusal.code), told).toBe(true);
      expect(state.digest(), told).toBe(before);
    }
    answered[result.ok ? 'ok' : 'refused'] += 1;
  }
  console.log(`${answered.ok} accepted, ${answered.refused} refused`);
  expect(await host.call('household.examine', {})).toMatchObject({ ok: true, value: { faults: [] } });
});
