import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { composeHost, type ComposedHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { pageHost } from '../../electron/loopback/page-host.ts';
import { contract, operationNames, type OperationName } from '../../shared-core/contract/contract.ts';
import { hasWords } from '../../shared-core/result/words/say.ts';
import { databaseState, type DatabaseState } from '../loopback/database-state.ts';

const SEED = 20_261_130;
const RUNS = 40;

const folder = mkdtempSync(path.join(os.tmpdir(), 'hostile-values-'));
let host: ComposedHost;
let state: DatabaseState;
beforeAll(async () => {
  const opened = composeHost(path.join(folder, 'household'), realWorld());
  if (!opened.ok) throw new Error(opened.refusal.code);
  host = opened.value;
  await host.call('household.start', { name: 'Ours' });
  await host.call('car.add', { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25' });
  state = databaseState(path.join(folder, 'household', 'household.sqlite'));
});
afterAll(async () => {
  state.close();
  await host.close();
  rmSync(folder, { recursive: true });
});

/** Any value that a window can send, keys of every object's own among them. */
const anything = fc.anything({ withBigInt: true, withDate: true, withMap: true, withSet: true, withSparseArray: true, withTypedArray: true, withNullPrototype: true, withBoxedValues: true, withObjectString: true, maxDepth: 3 });

/** What no field was meant for: any value at all, or the operation's own fields with any values in them. */
function hostileRequest(operation: OperationName): fc.Arbitrary<unknown> {
  const schema = z.toJSONSchema(contract[operation].request, { io: 'input', unrepresentable: 'any' });
  const names = Object.keys(schema.properties ?? {});
  const ownFields = fc.record(Object.fromEntries(names.map((name) => [name, fc.oneof(anything, fc.string(), fc.integer(), fc.constantFrom('pip', '2024-02-30', '', null))])), { requiredKeys: [] });
  // Asked rightly with nothing at all, some do something large: the sample, a copy of the household.
  return fc.oneof(anything, ownFields).filter((request) => typeof request !== 'object' || request === null || Object.keys(request).length > 0);
}

test.each(operationNames)('%s: any value is answered in good form, and one that is refused changes nothing', async (operation) => {
  const asPage = pageHost(host);
  await fc.assert(
    fc.asyncProperty(hostileRequest(operation), async (request) => {
      const before = state.digest();
      const reply = await asPage.call(operation, request);
      if (reply.ok) return;
      expect(hasWords(reply.refusal.code)).toBe(true);
      expect(reply.refusal.code).not.toBe('internal');
      expect(state.digest()).toBe(before);
    }),
    { seed: SEED, numRuns: RUNS },
  );
});
