import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { serveHousehold } from '../browser/serve-household.ts';
import { jsonOf, runProcess } from '../cli/run-command.ts';
import { rawRequest } from '../loopback/raw-request.ts';

const ON = '2026-11-25';
const CARS = ['wren'];

/** A pack as the page asks for it, through the real host on the loopback: the answer says where it stands. */
async function packFromPage(link: string, cookie: string, car: string): Promise<string> {
  const { host, origin, port } = new URL(link);
  const headers = [['Host', host], ['Cookie', cookie], ['Origin', origin], ['Content-Type', 'application/json']] as const;
  const reply = await rawRequest(Number(port), 'POST /operations/pack.write HTTP/1.1', headers, JSON.stringify({ car, withhold: ['price'] }));
  const { value } = JSON.parse(reply.body.toString()) as { value: { path: string } };
  return value.path;
}

async function letIn(link: string): Promise<string> {
  const { host, pathname, search, port } = new URL(link);
  return (await rawRequest(Number(port), `GET ${pathname}${search} HTTP/1.1`, [['Host', host]])).headers['set-cookie']?.split(';')[0] ?? '';
}

test('two packs of one household and one day are the same bytes, by the command and by the loopback host', async () => {
  const host = openTestHost({ on: ON });
  await host.must('sample.open', {});
  const { folder } = host.composed.context.household();
  const cars = (await host.must('due.show', {})).cars.map((car) => car.id);
  expect(cars).toEqual(expect.arrayContaining(CARS));
  // Parts of two papers are black in it, a PDF and a picture.
  const picture = await sharp({ create: { width: 200, height: 100, channels: 3, background: '#ddeeff' } }).jpeg().toBuffer();
  const { paper: photograph } = await host.must('paper.keep', { name: 'wren.jpg', base64: picture.toString('base64') });
  await host.must('paper.tie', { paper: photograph.id, to: [{ kind: 'car', id: 'wren' }] });
  const { papers } = await host.must('pack.papers', { car: 'wren' });
  for (const kind of ['application/pdf', 'image/jpeg']) {
    const paper = papers.find((one) => one.media === kind)?.id ?? '';
    await host.must('paper.redact', { paper, marks: [{ page: 1, left: 0.1, top: 0.1, width: 0.4, height: 0.05 }] });
  }
  await host.composed.close();
  const out = temporaryFolder();
  const served = await serveHousehold(folder, ON);
  try {
    const cookie = await letIn(served.link);
    for (const car of CARS) {
      const ran = await runProcess(['pack', car, '--out', join(out, car), '--withhold', 'price', '--household', folder, '--on', ON, '--json']);
      expect(ran.status, ran.said).toBe(0);
      const [byCommand, byPage] = [String(jsonOf(ran)['path']), await packFromPage(served.link, cookie, car)];
      expect(byPage).not.toBe(byCommand);
      expect(readFileSync(byPage).equals(readFileSync(byCommand))).toBe(true);
      expect(readFileSync(byPage, 'latin1').match(/data\/papers\/\d{4}-parts-blacked-out\.(pdf|jpg)/g)?.length).toBeGreaterThanOrEqual(2);
    }
  } finally {
    await served.stop();
  }
  expect(readdirSync(join(folder, 'packs'))).toHaveLength(CARS.length);
}, 180_000);
