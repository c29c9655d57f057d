import { expect, test } from 'vitest';
import { openSoundPack } from '../../electron/pack/sound-pack.ts';
import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import type { PackToTakeIn } from '../../shared-core/handover/pack-to-take-in.ts';
import { takeInPack } from '../../shared-core/handover/take-in-pack.ts';
import { memoryFacts } from '../../shared-core/journal/memory-facts.ts';
import { must } from '../../shared-core/result/assert.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';

async function started(on: string): Promise<TestHost> {
  const host = openTestHost({ on });
  await host.must('household.start', { name: 'Household' });
  return host;
}

/** A car with two records, under ids of the longest kind that differ in their first letter alone. */
async function twoRecords(): Promise<{ readonly path: string }> {
  const host = await started('2026-03-02');
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  const end = '0123456789'.repeat(6);
  for (const title of ['oil', 'brakes']) await host.must('record.add', { id: `${title.slice(0, 1)}aaa${end}`, car: 'pip', date: day('2026-03-02'), place: 'home', title, lines: [{ name: title }] });
  return host.must('pack.write', { car: 'pip', out: temporaryFolder() });
}

async function opened(path: string): Promise<PackToTakeIn> {
  const sound = await openSoundPack(path);
  if (!sound.ok) throw new Error(sound.refusal.code);
  return { ...sound.value, digest: 'ab'.repeat(32), sealed: false, papers: new Set(), today: day('2026-06-01'), ownFingerprint: 'cd'.repeat(32) };
}

test('records whose long ids end alike stay two', async () => {
  const { path } = await twoRecords();
  const second = await started('2026-06-01');
  const { car, records } = await second.must('pack.take-in', { pack: path });
  expect(records).toBe(2);
  const shown = (await second.must('car.show', { car: car.id })).records.map(({ record }) => record);
  expect(shown.map((one) => one.title).sort()).toEqual(['brakes', 'oil']);
  for (const one of shown) expect(await second.call('record.amend', { id: one.id, title: 'Mine', why: 'no' })).toMatchObject({ ok: false, refusal: { code: 'of-earlier-keeper' } });
  const [once, again] = [takeInPack(entryKinds, memoryFacts(entryKinds, []), await opened(path)), takeInPack(entryKinds, memoryFacts(entryKinds, []), await opened(path))];
  expect(once).toEqual(again);
});

test.each(['work-recorded', 'car-set'])('a pack with %s of a newer version is refused, and says so', async (kind) => {
  const pack = await opened((await twoRecords()).path);
  const nothing = memoryFacts(entryKinds, []);
  expect(takeInPack(entryKinds, nothing, pack)).toMatchObject({ ok: true, value: { records: 2 } });
  const version = must(entryKinds.get(kind), kind).version + 1;
  const entries = pack.rows.entries.map((one) => (one.row.kind === kind ? { ...one, row: { ...one.row, version } } : one));
  expect(takeInPack(entryKinds, nothing, { ...pack, rows: { ...pack.rows, entries } })).toMatchObject({ ok: false, refusal: { code: 'pack-from-newer', values: { name: 'pip-history-2026-03-02' } } });
});
