import { mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { execFileSync } from 'node:child_process';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { packCheckView } from '../../shared-core/views/pack-check-view.ts';
import { rowsPartSchema } from '../../shared-core/handover/journal-part.ts';
import { historyPartSchema } from '../../shared-core/handover/history-part.ts';
import { day, openHouseholdWithPip, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { pdfOf } from '../papers/made-papers.ts';
import { holdersOf, inflated } from './all-bytes.ts';
import { SECRET, secretJpeg, secretPdf, secretPng } from './secret-papers.ts';
import { isPresent } from './tool-present.ts';
import { unzipped } from './unzipped.ts';

/** Pip with a record of three papers that say the word, each marked, a fourth that is not, and names and notes that say it too. */
async function household(): Promise<{ readonly host: TestHost; readonly ids: readonly string[] }> {
  const host = await openHouseholdWithPip();
  const ids: string[] = [];
  for (const [name, bytes] of [[`${SECRET}.pdf`, await secretPdf()], [`Pip ${SECRET}.jpg`, await secretJpeg()], [`${SECRET}.png`, await secretPng()], ['plain.pdf', await pdfOf(['Plain paper'])]] as const) {
    const { paper } = await host.must('paper.keep', { name, base64: bytes.toString('base64') });
    ids.push(paper.id);
    if (name !== 'plain.pdf') await host.must('paper.describe', { paper: paper.id, name: `for ${SECRET}`, note: `note of ${SECRET}` });
  }
  const [pdf = '', jpeg = '', png = ''] = ids;
  await host.must('record.add', { id: 'work', car: 'pip', date: day('2025-03-01'), title: 'Brake fluid', lines: [{ name: 'Fluid' }], papers: [...ids] });
  await host.must('paper.redact', { paper: pdf, marks: [{ page: 1, left: 0.05, top: 0.05, width: 0.7, height: 0.2 }, { page: 2, left: 0, top: 0.7, width: 1, height: 0.3 }] });
  await host.must('paper.redact', { paper: jpeg, marks: [{ page: 1, left: 0.25, top: 0.25, width: 0.5, height: 0.5 }] });
  await host.must('paper.redact', { paper: png, marks: [{ page: 1, left: 0, top: 0, width: 0.1, height: 0.1 }] });
  return { host, ids };
}

async function packOf(host: TestHost, choice: object = {}): Promise<{ readonly path: string; readonly folder: string }> {
  const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder(), ...choice });
  return { path, folder: unzipped(path, temporaryFolder()) };
}

async function textOf(file: string): Promise<string> {
  const document = await getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 }).promise;
  const pages = await Promise.all(Array.from({ length: document.numPages }, async (_, at) => (await (await document.getPage(at + 1)).getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' ')));
  return pages.join('\n');
}

const historyOf = (folder: string) => historyPartSchema.parse(JSON.parse(readFileSync(join(folder, 'data/history.json'), 'utf8')));
const paperFiles = (folder: string) => readdirSync(join(folder, 'data/papers')).sort();

describe('a pack with papers of which parts are blacked out', () => {
  test('holds the word in no file, stream, text or name, and no digest of the papers themselves', async () => {
    const { host, ids } = await household();
    const { folder } = await packOf(host);
    expect(holdersOf(folder, SECRET)).toEqual([]);
    expect(paperFiles(folder)).toEqual(['0001-parts-blacked-out.pdf', '0002-parts-blacked-out.jpg', '0003-parts-blacked-out.png', '0004-plain.pdf']);
    for (const id of ids.slice(0, 3)) expect(holdersOf(folder, id).concat(holdersOf(folder, id.slice(0, 12)))).toEqual([]);
    for (const file of ['data/history.pdf', 'data/papers/0001-parts-blacked-out.pdf']) expect((await textOf(join(folder, file))).toUpperCase(), file).not.toContain(SECRET);
    // The same search finds the word in the papers as they were kept.
    const kept = temporaryFolder();
    mkdirSync(join(kept, 'papers'));
    for (const [name, bytes] of [['a.pdf', await secretPdf()], ['b.jpg', await secretJpeg()], ['c.png', await secretPng()]] as const) writeFileSync(join(kept, 'papers', name), bytes);
    expect(holdersOf(kept, SECRET)).toHaveLength(3);
    expect(await textOf(join(kept, 'papers/a.pdf'))).toContain(SECRET);
  }, 60_000);

  test('checks clean, with nothing but what it says of itself, and says who blacked out how much on which page', async () => {
    const { host } = await household();
    const { path, folder } = await packOf(host);
    const report = await checkPackAt(path);
    expect(report).toMatchObject({ ok: true, value: { faults: [], warnings: [] } });
    if (!report.ok) return;
    const { notes, withheld } = packCheckView(report.value);
    expect(notes).toContain('data/papers/0001-parts-blacked-out.pdf: the keeper handed over a copy in which parts are blacked out (1 on page 1, 1 on page 2).');
    expect(withheld.map((one) => one.field)).toContain('papers');
    const { papers } = historyOf(folder);
    expect(papers.map(({ blackedOut, redactedFrom }) => [blackedOut, redactedFrom])).toEqual([[[{ page: 1, parts: 1 }, { page: 2, parts: 1 }], null], [[{ page: 1, parts: 1 }], null], [[{ page: 1, parts: 1 }], null], [undefined, null]]);
    const text = (await textOf(join(folder, 'data/history.pdf'))).replace(/\s+/g, ' ');
    expect(text).toContain('Parts of data/papers/0001-parts-blacked-out.pdf, blacked out by the keeper in a copy: 1 on page 1, 1 on page 2.');
    expect(text).toContain('Paper 2, parts blacked out');
  }, 60_000);

  test('says which rows name the paper in a field they withhold, and their digests can be proven later', async () => {
    const { host, ids } = await household();
    const { folder } = await packOf(host);
    const { papers } = historyOf(folder);
    const rows = rowsPartSchema.parse(JSON.parse(readFileSync(join(folder, 'data/journal/rows.json'), 'utf8'))).entries;
    const row = rows.find((one) => one.row.kind === 'work-recorded');
    expect(papers.map((one) => one.namedIn)).toEqual(Array(4).fill([row?.row.seq]));
    expect(row?.withheld).toEqual(['papers']);
    // The keeper chooses to name them: then the row shows them, and the check proves them.
    const named = await packOf(host, { nameOriginals: true });
    expect(historyOf(named.folder).papers.map((one) => [one.redactedFrom, one.namedIn])).toEqual([...ids.slice(0, 3).map((id) => [id, undefined]), [null, undefined]]);
    expect(await checkPackAt(named.path)).toMatchObject({ ok: true, value: { faults: [], warnings: [] } });
    expect(holdersOf(named.folder, SECRET)).toEqual([]);
  }, 60_000);

  test('of a PDF holds pictures of all its pages at their size, and nothing else', async () => {
    const { host } = await household();
    const { folder } = await packOf(host);
    const file = join(folder, 'data/papers/0001-parts-blacked-out.pdf');
    const document = await getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 }).promise;
    expect(document.numPages).toBe(2);
    // A5 in points.
    for (const page of [1, 2]) expect((await document.getPage(page)).view.map(Math.round)).toEqual([0, 0, 420, 595]);
    expect(await document.getAttachments()).toBeNull();
    expect(await (await document.getPage(1)).getAnnotations()).toEqual([]);
    const { info } = await document.getMetadata();
    expect(Object.keys(info).filter((key) => ['Title', 'Author', 'Keywords', 'Subject'].includes(key))).toEqual([]);
    expect((await textOf(file)).trim()).toBe('');
    const bytes = readFileSync(file);
    expect(bytes.toString('latin1').match(/%%EOF/g)).toHaveLength(1);
    expect(bytes.toString('latin1').match(/\/Subtype ?\/Image/g)).toHaveLength(2);
    // Each page draws one picture and no text.
    expect(inflated(bytes).filter((stream) => / BT|Tj/.test(stream.toString('latin1')))).toEqual([]);
    if (isPresent('qpdf', '--version')) expect(execFileSync('qpdf', ['--check', file], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors');
  }, 60_000);

  test('left out or outside the days shown, a marked paper is named neither by its name nor by its digest', async () => {
    const { host, ids } = await household();
    for (const choice of [{ onlyPapers: [ids[3] ?? ''] }, { papers: false }, { period: { from: day('2025-06-01'), to: null } }]) {
      const { folder, path } = await packOf(host, choice);
      expect(holdersOf(folder, SECRET), JSON.stringify(choice)).toEqual([]);
      for (const id of ids.slice(0, 3)) expect(holdersOf(folder, id)).toEqual([]);
      expect(await checkPackAt(path)).toMatchObject({ ok: true, value: { faults: [], warnings: [] } });
    }
  }, 60_000);

  test('shows the copy, never the paper, as the photograph of the first page and among the small pictures', async () => {
    const { host, ids } = await household();
    const { folder } = await packOf(host, { cover: ids[1] ?? '' });
    if (!isPresent('pdfimages', '-v')) return;
    const out = temporaryFolder();
    execFileSync('pdfimages', ['-png', join(folder, 'data/history.pdf'), join(out, 'p')]);
    const middles = await Promise.all(readdirSync(out).map(async (name) => {
      const { data, info } = await sharp(join(out, name)).removeAlpha().raw().toBuffer({ resolveWithObject: true });
      return [...data.subarray((Math.floor(info.height / 2) * info.width + Math.floor(info.width / 2)) * info.channels).subarray(0, 1)][0] ?? 255;
    }));
    // The cover and the small picture of the photograph are black in the middle, where it is marked.
    expect(middles.filter((value) => value < 8)).toHaveLength(2);
  }, 60_000);

  test('is the same bytes twice, also where the copies are made anew, and a copy altered on the disk is made anew', async () => {
    const { host } = await household();
    const first = readFileSync((await packOf(host)).path);
    const thumbnails = join(host.folder, 'thumbnails');
    const copies = readdirSync(thumbnails, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.copy'));
    expect(copies).toHaveLength(3);
    const written = () => copies.map((name) => statSync(join(thumbnails, name)).mtimeMs);
    const before = written();
    expect(readFileSync((await packOf(host)).path).equals(first)).toBe(true);
    expect(written(), 'a copy that is whole is taken as it is').toEqual(before);
    for (const name of copies) writeFileSync(join(thumbnails, name), SECRET);
    expect(readFileSync((await packOf(host)).path).equals(first)).toBe(true);
  }, 60_000);

  test('is taken in by the next keeper with the copies in the places of the papers', async () => {
    const { host } = await household();
    const { path } = await packOf(host);
    const next = openTestHost();
    await next.must('household.start', { name: 'Next' });
    const taken = await next.must('pack.take-in', { pack: path });
    expect(taken.records).toBe(1);
    const { records } = await next.must('car.show', { car: taken.car.id });
    expect(records[0]?.record.papers).toHaveLength(4);
    const { papers } = await next.must('papers.show', { show: 'tied' });
    expect(papers.map((one) => one.name).sort()).toEqual(['parts-blacked-out.jpg', 'parts-blacked-out.pdf', 'parts-blacked-out.png', 'plain.pdf']);
    // Blacking out what goes along whole in the earlier keeper's pack would hold nothing back.
    const [paper] = papers;
    const mark = { page: 1, left: 0, top: 0, width: 1, height: 0.1 };
    expect(await next.call('paper.redact', { paper: paper?.id ?? '', marks: [mark] })).toMatchObject({ ok: false, refusal: { code: 'redacted-in-earlier-pack' } });
  }, 60_000);
});

describe('a paper that cannot be copied', () => {
  test('stops the pack rather than go along as it is', async () => {
    const { host, ids } = await household();
    const [id = ''] = ids;
    writeFileSync(join(host.folder, 'papers', id.slice(0, 2), id), 'altered');
    const out = temporaryFolder();
    expect(await host.call('pack.write', { car: 'pip', out })).toMatchObject({ ok: false, refusal: { code: 'paper-not-redacted' } });
    expect(readdirSync(out)).toEqual([]);
  });
});
