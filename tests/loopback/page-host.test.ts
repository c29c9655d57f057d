import { expect, test } from 'vitest';
import { z } from 'zod';
import { pageHost } from '../../electron/loopback/page-host.ts';
import { contract, operationNames } from '../../shared-core/contract/contract.ts';
import { ok } from '../../shared-core/result/result.ts';
import { scriptedHost } from './serving.ts';

const heard = () => scriptedHost(Object.fromEntries(['pack.write', 'pack.check', 'car.add'].map((name) => [name, () => ok('heard')])));

// Source: ours; found by hostile calls, which wrote packs into folders of their own naming.
test.each([
  { operation: 'pack.write', request: { car: 'pip', out: '/etc' } },
  { operation: 'pack.write', request: { car: 'pip', out: '../..' } },
  { operation: 'pack.write', request: { car: 'pip', out: '' } },
  { operation: 'pack.write', request: { car: 'pip', out: 1 } },
  { operation: 'pack.check', request: { pack: '/etc/passwd' } },
])('$operation $request is refused, and the host does not hear of it', async ({ operation, request }) => {
  const host = heard();
  expect(await pageHost(host).call(operation, request)).toEqual({ ok: false, refusal: { code: 'place-named-by-page', values: {} } });
  expect(host.calls).toEqual([]);
});

test.each([
  { operation: 'pack.write', request: { car: 'pip' } },
  { operation: 'pack.write', request: { car: 'pip', out: null } },
  { operation: 'pack.write', request: null },
  { operation: 'car.add', request: { out: 'a field of another operation' } },
])('$operation $request reaches the host', async ({ operation, request }) => {
  expect(await pageHost(heard()).call(operation, request)).toEqual(ok('heard'));
});

test('every operation whose request names a place on the disk is known here', async () => {
  const named = operationNames.flatMap((operation) => {
    const { properties = {} } = z.toJSONSchema(contract[operation].request, { io: 'input', unrepresentable: 'any' });
    return Object.keys(properties).filter((field) => /^(out|into|pack|folder|path|file|dir|directory)$/.test(field)).map((field) => ({ operation, field }));
  });
  expect(named.length).toBeGreaterThan(0);
  for (const { operation, field } of named) expect(await pageHost(scriptedHost()).call(operation, { [field]: '/etc' }), operation).toMatchObject({ refusal: { code: 'place-named-by-page' } });
});
