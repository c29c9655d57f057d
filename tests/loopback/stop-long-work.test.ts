import { join } from 'node:path';
import { expect, test } from 'vitest';
import { serveHousehold } from '../browser/serve-household.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { rawRequest } from './raw-request.ts';

test('a program that is told to stop asks its long work to stop, and the best found so far is answered', { timeout: 60_000 }, async () => {
  const served = await serveHousehold(join(temporaryFolder(), 'ours'), '2026-11-25');
  const link = new URL(served.link);
  const entered = await rawRequest(Number(link.port), `GET ${link.pathname}${link.search} HTTP/1.1`, [['Host', link.host]]);
  const headers = { cookie: entered.headers['set-cookie']?.split(';')[0] ?? '', origin: link.origin, 'content-type': 'application/json' };
  const ask = async (operation: string, request: object): Promise<unknown> => (await fetch(`${link.origin}/operations/${operation}`, { method: 'POST', headers, body: JSON.stringify(request) })).json();
  expect(await ask('sample.open', {})).toMatchObject({ ok: true });
  const pushes = (await fetch(`${link.origin}/pushes`, { headers })).body?.getReader();
  const planning = ask('plan.propose', { horizonDays: 180, job: 'long' });
  let heard = '';
  while (!heard.includes('job-progress')) heard += Buffer.from((await pushes?.read())?.value ?? []).toString('utf8');
  await served.stop();
  expect(await planning).toMatchObject({ ok: true, value: { status: 'stopped' } });
});
