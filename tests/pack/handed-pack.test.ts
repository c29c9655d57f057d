import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { day, openHouseholdWithPip, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';

async function packOf(host: TestHost) {
  const { path, seal } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
  return { bytes: readFileSync(path), seal };
}

/** Hands over in three pieces, as a page does. */
async function hand(host: TestHost, pack: string, bytes: Buffer): Promise<void> {
  const third = Math.ceil(bytes.length / 3);
  for (let from = 0; from < bytes.length; from += third) await host.must('pack.hand', { handed: pack, from, base64: bytes.subarray(from, from + third).toString('base64') });
}

describe('a pack that a page hands over', () => {
  test('is checked against a seal and taken in, once', async () => {
    const { bytes, seal } = await packOf(await openHouseholdWithPip());
    const next = openTestHost();
    await next.must('household.start', { name: 'Next' });
    await hand(next, 'given', bytes);
    expect(await next.must('pack.check-handed', { handed: 'given', seal })).toMatchObject({ sound: true, faults: [] });
    expect(await next.must('pack.take-in-handed', { handed: 'given', seal })).toMatchObject({ car: { name: 'Pip' } });
    expect(await next.call('pack.check-handed', { handed: 'given' })).toMatchObject({ refusal: { code: 'handed-gone' } });
    expect(await next.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('with one byte changed is named by its path, and is not taken in', async () => {
    const { bytes } = await packOf(await openHouseholdWithPip());
    const at = bytes.indexOf('trunnion-history-1');
    bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
    const next = openTestHost();
    await next.must('household.start', { name: 'Next' });
    await hand(next, 'given', bytes);
    const report = await next.must('pack.check-handed', { handed: 'given' });
    expect(report.faults.map((fault) => [fault.code, fault.path])).toContainEqual(['changed', 'data/history.json']);
    expect(await next.call('pack.take-in-handed', { handed: 'given' })).toMatchObject({ refusal: { code: 'pack-not-sound' } });
    expect((await next.must('due.show', {})).cars).toEqual([]);
  });

  test('a piece out of turn, of another pack, or beyond 100 MB is refused', async () => {
    const host = await openHouseholdWithPip();
    await host.must('pack.hand', { handed: 'a', from: 0, base64: Buffer.from('abc').toString('base64') });
    expect(await host.call('pack.hand', { handed: 'a', from: 2, base64: 'YWJj' })).toMatchObject({ refusal: { code: 'handed-gone' } });
    expect(await host.call('pack.hand', { handed: 'b', from: 3, base64: 'YWJj' })).toMatchObject({ refusal: { code: 'handed-gone' } });
    expect(await host.call('pack.hand', { handed: 'a', from: 100_000_001, base64: 'YWJj' })).toMatchObject({ refusal: { code: 'handed-too-large' } });
    expect(await host.must('pack.hand', { handed: 'a', from: 3, base64: 'YWJj' })).toEqual({ bytes: 6 });
    expect(await host.must('pack.check-handed', { handed: 'a' })).toMatchObject({ sound: false });
  });
});

describe('a pack looked at before it is written', () => {
  test('tells what it will hold and shows the pages of the very document that is then written', async () => {
    const host = await openHouseholdWithPip();
    const entered = await host.must('record.add', { car: 'pip', date: day('2026-11-20'), lines: [{ name: 'Bulb' }], doneBy: 'Somebody' });
    const preview = await host.must('pack.preview', { car: 'pip', withhold: ['doneBy'] });
    expect(preview.figures).toContainEqual({ name: 'Work records', text: '1, from 20 Nov 2026 to 20 Nov 2026' });
    expect(preview.withheld.join(' ')).toContain('entries');
    expect(preview.pages).toBeGreaterThan(1);
    const { webp } = await host.must('pack.preview-page', { preview: preview.preview, page: 1 });
    expect(Buffer.from(webp, 'base64').subarray(8, 12).toString()).toBe('WEBP');
    expect(await host.call('pack.preview-page', { preview: preview.preview, page: 39 })).toMatchObject({ refusal: { code: 'no-such-page' } });
    expect(await host.call('pack.preview-page', { preview: 'another', page: 1 })).toMatchObject({ refusal: { code: 'preview-gone' } });
    const written = await host.must('pack.write', { car: 'pip', withhold: ['doneBy'], out: temporaryFolder() });
    expect([written.files, written.bytes]).toEqual([preview.files, preview.bytes]);
    expect(await host.call('entry.withdraw', { entries: [...entered.undo] })).toMatchObject({ refusal: { code: 'entry-sealed' } });
  });

  test('seals nothing: what it shows can still be undone', async () => {
    const host = await openHouseholdWithPip();
    const entered = await host.must('record.add', { car: 'pip', lines: [{ name: 'Bulb' }] });
    await host.must('pack.preview', { car: 'pip' });
    await host.must('entry.withdraw', { entries: [...entered.undo] });
    expect(await host.must('pack.papers', { car: 'pip' })).toEqual({ papers: [], previous: [] });
  });
});
