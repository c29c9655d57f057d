import { existsSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { LARGEST_PACK_BYTES } from '../../electron/host/serve/take-in-history-pack.ts';
import { bytesFile } from '../../shared-core/handover/pack-files.ts';
import { must } from '../../shared-core/result/assert.ts';
import { sayRefusal } from '../../shared-core/result/words/say.ts';
import { day, temporaryFolder } from '../host/open-test-host.ts';
import { DIGESTS, pipPack, pipPackWith } from '../shared-core/handover/pack-fixture.ts';
import { filesIn, holdersOf } from './all-bytes.ts';
import { handedOver, keeper, nextKeeper, readPack } from './keepers.ts';
import { rawZip, type RawEntry } from './raw-zip.ts';
import { SECRET, secretPng } from './secret-papers.ts';
import { unzipped } from './unzipped.ts';
import { zipOf } from './unpack.ts';

/** A sound pack, and the same taken apart: its entries in their order. */
async function soundPack(): Promise<{ readonly path: string; readonly base: string; readonly entries: readonly RawEntry[] }> {
  const host = await keeper('2025-03-02');
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await host.must('record.add', { car: 'pip', date: day('2025-03-01'), title: 'Bulb', lines: [{ name: 'Bulb' }] });
  const path = await handedOver(host);
  const folder = unzipped(path, temporaryFolder());
  const named = filesIn(folder).map((file) => ({ name: `${basename(folder)}/${relative(folder, file.path)}`, text: file.bytes }));
  return { path, base: basename(folder), entries: named.sort((a, b) => Buffer.compare(Buffer.from(a.name), Buffer.from(b.name))) };
}

/** The sentence by which a taking in is refused, nothing of it being kept; null where it is taken in. */
async function refused(zip: Buffer): Promise<string | null> {
  const path = join(temporaryFolder(), 'hostile.zip');
  writeFileSync(path, zip);
  const host = await keeper('2026-06-01');
  const before = await host.must('seal.show', {});
  const reply = await host.call('pack.take-in', { pack: path });
  if (reply.ok) return null;
  expect(filesIn(join(host.folder, 'papers'))).toEqual([]);
  expect((await host.must('due.show', {})).cars).toEqual([]);
  expect(await host.must('seal.show', {})).toEqual(before);
  expect(readdirSync(dirname(path))).toEqual(['hostile.zip']);
  expect((await host.must('household.examine', {})).faults).toEqual([]);
  for (const escaped of [join(host.folder, '..', 'evil.txt'), join(host.folder, 'evil.txt'), '/tmp/evil.txt', '/evil.txt']) expect(existsSync(escaped), escaped).toBe(false);
  return sayRefusal(reply.refusal);
}

describe('a hostile pack is refused by a sentence, and nothing of it is kept', () => {
  let sound: Awaited<ReturnType<typeof soundPack>>;
  beforeEach(async () => {
    sound = await soundPack();
  });
  const withEntry = (entry: RawEntry) => rawZip([...sound.entries, entry]);
  const changed = (path: string, more: Partial<RawEntry>) => rawZip(sound.entries.map((one) => (one.name === `${sound.base}/${path}` ? { ...one, ...more } : one)));

  test('the same entries by the same writer are no such pack, and are taken in', async () => {
    const zip = rawZip(sound.entries);
    expect(zip.equals(readFileSync(sound.path))).toBe(true);
    expect(await refused(zip)).toBeNull();
  });

  test.each([
    { case: 'a file that states 3.9 GB', more: { size: 3_900_000_000 }, says: /cannot be read safely \(.*size mismatch/ },
    { case: 'a file that states 3.9 GB, and as many in the ZIP', more: { size: 3_900_000_000, stored: 3_900_000_000 }, says: /cannot be read safely \(39\d{8} bytes in \d{5}\)/ },
    { case: 'a file that states 4 GB less one byte', more: { size: 0xffff_ffff, stored: 0xffff_ffff }, says: /cannot be read safely \(429\d{7} bytes in \d{5}\)/ },
    { case: 'a compressed file that states few bytes and holds 30 MB', more: { text: Buffer.alloc(30_000_000), method: 8, size: 1000 }, says: /data\/history\.json cannot be read \(too many bytes/ },
    { case: 'a compressed file of 30 MB that says so', more: { text: Buffer.alloc(30_000_000), method: 8 }, says: /The ZIP itself was altered/ },
  ])('sizes: $case', async ({ more, says }) => {
    expect(await refused(changed('data/history.json', more))).toMatch(says);
  });

  test('sizes: a file larger than any pack that is taken in is not even read', async () => {
    const path = join(temporaryFolder(), 'large.zip');
    writeFileSync(path, '');
    truncateSync(path, LARGEST_PACK_BYTES + 1);
    const host = await keeper('2026-06-01');
    expect(await host.call('pack.take-in', { pack: path })).toMatchObject({ ok: false, refusal: { code: 'pack-too-large-to-take-in' } });
    expect(filesIn(join(host.folder, 'papers'))).toEqual([]);
  });

  test.each(['../evil.txt', '../../evil.txt', '/tmp/evil.txt', '/evil.txt', 'BASE/../../evil.txt', 'BASE/data/papers/../../../../evil.txt', 'BASE\\..\\evil.txt', 'C:/evil.txt', 'BASE/data/papers/evil.txt\0.jpg', 'BASE/data/./evil.txt', 'BASE//evil.txt'])('names: %j', async (name) => {
    expect(await refused(withEntry({ name: name.replace('BASE', sound.base), text: 'evil' }))).toMatch(/^container: .* is no name for a file of a pack; it was not opened\.\nFaults: 1\.$/);
  });

  test.each([{ to: '/etc/passwd' }, { to: '../../../evil.txt' }])('a link to $to is not followed', async ({ to }) => {
    const said = await refused(withEntry({ name: `${sound.base}/data/papers/link.jpg`, text: to, mode: 0o120777 }));
    expect(said).toContain('is a link; it was not followed');
  });

  test('a file of the pack turned into a link is not followed either', async () => {
    expect(await refused(changed('data/history.json', { text: '/etc/passwd', mode: 0o120777 }))).toContain('is a link; it was not followed');
  });
});

describe('packs within packs', () => {
  async function nested(deep: number): Promise<Buffer> {
    let pack = pipPack();
    let zip = await zipOf(pack.name, pack.files);
    for (let at = 0; at < deep; at += 1) {
      pack = pipPackWith(bytesFile('data/previous/1-pip.zip', zip, DIGESTS));
      zip = await zipOf(pack.name, pack.files);
    }
    return zip;
  }

  test('as many as are looked into are sound; one more is named, and no such pack is taken in', async () => {
    const path = join(temporaryFolder(), 'nested.zip');
    const faults = async (deep: number) => {
      writeFileSync(path, await nested(deep));
      const report = await checkPackAt(path);
      return must(report.ok ? report.value : null, 'report').faults.map((fault) => `${fault.code} ${fault.message.key} ${String(fault.path?.split('!/').length)}`);
    };
    expect(await faults(20)).toEqual([]);
    expect(await faults(21)).toEqual(['container fault-previous-too-deep 21']);
    expect(await refused(await nested(40))).toMatch(/lies within 20 packs/);
  }, 120_000);
});

test('a paper blacked out by the first keeper stays so in the pack of the second that leaves the first one out, and in the third household', async () => {
  const first = await keeper('2025-03-02');
  await first.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  const { paper } = await first.must('paper.keep', { name: `${SECRET}.png`, base64: (await secretPng()).toString('base64') });
  await first.must('record.add', { car: 'pip', date: day('2025-03-01'), title: 'Bulb', lines: [{ name: 'Bulb' }], papers: [paper.id] });
  await first.must('paper.redact', { paper: paper.id, marks: [{ page: 1, left: 0, top: 0, width: 0.5, height: 0.5 }] });
  const second = await nextKeeper(await handedOver(first), '2025-09-01');
  const path = await handedOver(second.host, { previous: 'left-out' });
  const { folder, history, said } = readPack(path);
  expect(readdirSync(join(folder, 'data'))).not.toContain('previous');
  expect(history.papers).toHaveLength(1);
  expect(said).toContain('not proven here, for the earlier pack is left out');
  expect(holdersOf(folder, SECRET)).toEqual([]);
  expect(holdersOf(folder, paper.id)).toEqual([]);
  const third = await nextKeeper(path, '2026-06-01');
  expect(holdersOf(join(third.host.folder, 'papers'), SECRET)).toEqual([]);
  expect(filesIn(join(third.host.folder, 'papers')).some((file) => file.path.includes(paper.id))).toBe(false);
  // What came so is no longer the keeper's to black out, and the earlier pack holds the copy alone.
  const taken = must((await second.host.must('car.show', { car: second.car })).papers[0], 'paper');
  expect(taken.id).not.toBe(paper.id);
});
