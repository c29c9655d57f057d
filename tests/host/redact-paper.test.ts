import { describe, expect, test } from 'vitest';
import { paperFinder } from '../../electron/host/find-paper.ts';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { readMigrations } from '../../electron/store/migrate.ts';
import { entryKinds } from '../../shared-core/contract/entry-kinds.ts';
import { must } from '../../shared-core/result/assert.ts';
import sharp from 'sharp';
import { lookInto, oldHousehold, openWith } from '../migrations/old-household.ts';
import { pdfOf } from '../papers/made-papers.ts';
import { png } from '../papers/small-files.ts';
import { openHouseholdWithPip, openTestHost, type TestHost } from './open-test-host.ts';

const MARK = { page: 1, left: 0.1, top: 0.2, width: 0.3, height: 0.1 };

async function kept(host: TestHost, name: string, bytes: Buffer): Promise<string> {
  return (await host.must('paper.keep', { name, base64: bytes.toString('base64') })).paper.id;
}

describe('the marks of a paper', () => {
  test('are noted, shown, changed, undone and taken away, each in the journal', async () => {
    const host = await openHouseholdWithPip();
    const paper = await kept(host, 'p.png', png(40, 20));
    await host.must('paper.redact', { paper, marks: [MARK] });
    const view = await host.must('paper.show', { paper });
    expect([view.marks, view.paper.blackedOut]).toEqual([[MARK], 1]);
    const second = { page: 1, left: 0, top: 0, width: 1, height: 0.1 };
    const { undo } = await host.must('paper.redact', { paper, marks: [MARK, second] });
    expect((await host.must('paper.show', { paper })).marks).toEqual([MARK, second]);
    await host.must('entry.withdraw', { entries: [...undo] });
    expect((await host.must('paper.show', { paper })).marks).toEqual([MARK]);
    await host.must('paper.redact', { paper, marks: [] });
    expect((await host.must('paper.show', { paper })).marks).toEqual([]);
    expect(await host.call('paper.redact', { paper, marks: [] })).toMatchObject({ ok: false, refusal: { code: 'nothing-blacked-out' } });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('stay on the same part of the paper when it is turned, before or after', async () => {
    const host = await openHouseholdWithPip();
    const paper = await kept(host, 'p.png', png(40, 20));
    await host.must('paper.redact', { paper, marks: [MARK] });
    await host.must('paper.describe', { paper, turned: 90 });
    // By hand: a quarter clockwise, top 0.2 and height 0.1 leave 0.7 at the left.
    expect((await host.must('paper.show', { paper })).marks).toEqual([{ page: 1, left: 0.7, top: 0.1, width: 0.1, height: 0.3 }]);
    // What was marked before the page on the screen knew of the turn stands as it was seen.
    await host.must('paper.redact', { paper, marks: [MARK], turned: 0 });
    expect((await host.must('paper.show', { paper })).marks).toEqual([{ page: 1, left: 0.7, top: 0.1, width: 0.1, height: 0.3 }]);
    await host.must('paper.redact', { paper, marks: [MARK] });
    expect((await host.must('paper.show', { paper })).marks).toEqual([MARK]);
  });

  test('are seen in the picture of the copy, which is turned as the paper is; without marks there is no such picture', async () => {
    const host = await openHouseholdWithPip();
    const paper = await kept(host, 'p.png', await sharp({ create: { width: 100, height: 50, channels: 3, background: '#ffffff' } }).png().toBuffer());
    const find = paperFinder(host.composed);
    const part = { page: 1, of: 'copy' } as const;
    expect(await find({ sha256: paper, part })).toBeNull();
    await host.must('paper.redact', { paper, marks: [{ page: 1, left: 0, top: 0, width: 0.5, height: 0.5 }] });
    await host.must('paper.describe', { paper, turned: 90 });
    const { data, info } = await sharp(must(await find({ sha256: paper, part }), 'picture').bytes).raw().toBuffer({ resolveWithObject: true });
    const at = (x: number, y: number) => (data[(y * info.width + x) * info.channels] ?? 0) > 128;
    expect([info.width, info.height, at(45, 5), at(5, 5), at(45, 95)]).toEqual([50, 100, false, true, true]);
    expect(await find({ sha256: paper, part: { page: 2, of: 'copy' } })).toBeNull();
  });

  test.each([
    { case: 'a page that is not there', code: 'no-such-page', marks: [{ ...MARK, page: 3 }] },
    { case: 'over the edge', code: 'mark-outside-page', marks: [{ ...MARK, left: 0.8 }] },
    { case: 'too small to be seen', code: 'mark-too-small', marks: [{ ...MARK, width: 0.00001 }] },
  ])('are refused: $case', async ({ code, marks }) => {
    const host = await openHouseholdWithPip();
    const paper = await kept(host, 'p.pdf', await pdfOf(['One'], ['Two']));
    expect(await host.call('paper.redact', { paper, marks })).toMatchObject({ ok: false, refusal: { code } });
    expect((await host.must('paper.show', { paper })).marks).toEqual([]);
  });

  test('are refused on what cannot be drawn, and on what is no paper', async () => {
    const host = await openHouseholdWithPip();
    const text = await kept(host, 'p.txt', Buffer.from('plain text'));
    expect(await host.call('paper.redact', { paper: text, marks: [MARK] })).toMatchObject({ ok: false, refusal: { code: 'paper-not-drawn' } });
    expect(await host.call('paper.redact', { paper: '0'.repeat(64), marks: [MARK] })).toMatchObject({ ok: false, refusal: { code: 'unknown-paper' } });
    expect(await host.call('paper.redact', { paper: '0'.repeat(64), marks: [] })).toMatchObject({ ok: false, refusal: { code: 'unknown-paper' } });
  });

  test('are among the papers offered for a pack', async () => {
    const host = await openHouseholdWithPip();
    const paper = await kept(host, 'p.png', png(40, 20));
    await host.must('paper.tie', { paper, to: [{ kind: 'car', id: 'pip' }] });
    await host.must('paper.redact', { paper, marks: [MARK, { ...MARK, top: 0.5 }] });
    expect((await host.must('pack.papers', { car: 'pip' })).papers.map((one) => [one.id, one.blackedOut])).toEqual([[paper, 2]]);
  });
});

describe('the entries of marks', () => {
  // Rows as version 1 wrote them: what stands in a journal must be read for ever.
  test.each([
    { kind: 'paper-redacted', values: { id: 'a'.repeat(64), turned: 270, marks: [{ page: 1, left: 0, top: 0.25, width: 1, height: 0.75 }] } },
    { kind: 'paper-redaction-removed', values: { id: 'a'.repeat(64), car: null } },
  ])('of version 1 are read as they were written: $kind', ({ kind, values }) => {
    const known = must(entryKinds.get(kind), kind);
    expect([known.version, known.schema.safeParse(values).success]).toEqual([1, true]);
  });

  test('come into a household of the first version, and it examines clean', async () => {
    const folder = oldHousehold(10);
    expect(openWith(folder, readMigrations())).toMatchObject({ ok: true });
    const host = openTestHost({ folder });
    const paper = await kept(host, 'p.png', png(40, 20));
    const before = await host.must('household.examine', {});
    await host.must('paper.redact', { paper, marks: [MARK] });
    const after = await host.must('household.examine', {});
    expect([after.entries - before.entries, after.faults]).toEqual([1, before.faults]);
    expect(lookInto(databaseFile(folder), (store) => store.prepare<[], string>("SELECT value FROM fact WHERE family = 'paper-redaction'").pluck().all())).toHaveLength(1);
  });
});
