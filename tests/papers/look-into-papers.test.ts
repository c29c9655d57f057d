import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterEach, describe, expect, test } from 'vitest';
import { readExif } from '../../electron/papers/read-exif.ts';
import { paperDesk, type PaperDesk } from '../../electron/papers/paper-desk.ts';
import { pdfThread } from '../../electron/papers/pdf-thread.ts';
import { readPdf } from '../../electron/papers/read-pdf.ts';
import { renderPdfPage } from '../../electron/papers/render-pdf-page.ts';
import { judgePaper } from '../../electron/papers/judge-paper.ts';
import { writePaper } from '../../electron/papers/write-paper.ts';
import { captureTime } from '../../shared-core/records/capture-time.ts';
import { paperFinder } from '../../electron/host/find-paper.ts';
import type { Paper } from '../../shared-core/records/paper.ts';
import { openHouseholdWithPip, temporaryFolder } from '../host/open-test-host.ts';
import { pdfOf, pdfStream, photograph, rawPdf } from './made-papers.ts';
import { jpeg, png } from './small-files.ts';

const desks: PaperDesk[] = [];
afterEach(async () => {
  for (const desk of desks.splice(0)) await desk.close();
});

function desk(): PaperDesk {
  const made = paperDesk();
  desks.push(made);
  return made;
}

async function kept(bytes: Uint8Array): Promise<{ folder: string; paper: Paper }> {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'papers'));
  const media = await judgePaper(bytes);
  if (!media.ok) throw new Error(media.refusal.code);
  return { folder, paper: { id: writePaper(folder, bytes), name: 'p', media: media.value, bytes: bytes.length } };
}

async function lookInto(bytes: Uint8Array) {
  const { folder, paper } = await kept(bytes);
  return desk().contents(folder, paper);
}

// Source: the block is the reference's own, checked there against an independent reader: 2024-02-29T11:37:43Z.
const GOLDEN = '49492a0008000000010069870400010000001a00000000000000020003900200140000003800000011900200070000004c00000000000000323032343a30323a32392031333a33373a3433002b30323a303000';

describe('the EXIF block', () => {
  test('of the reference tells the instant', async () => {
    const tags = await readExif(Buffer.from(GOLDEN, 'hex'));
    expect(tags === null ? null : captureTime(tags)).toEqual({ day: '2024-02-29', time: '13:37:43', offset: '+02:00', instant: '2024-02-29T11:37:43Z', source: 'original' });
    expect(Date.parse('2024-02-29T11:37:43Z') / 1000).toBe(1709206663);
  });

  test('cut short anywhere, or of noise, is read without a fault', async () => {
    const whole = Buffer.from(GOLDEN, 'hex');
    for (let length = 0; length < whole.length; length += 1) await readExif(whole.subarray(0, length));
    for (let seed = 0; seed < 50; seed += 1) await readExif(Buffer.concat([whole.subarray(0, 8 + (seed % 40)), createHash('sha512').update(String(seed)).digest()]));
    expect(await readExif(Buffer.alloc(2_000_000))).toBeNull();
  });
});

describe('looking into a paper', () => {
  test('a photograph: its size as it is to be looked at, its day, a thumbnail turned upright without what the camera noted', async () => {
    const { folder, paper } = await kept(await photograph(800, 400, { DateTimeOriginal: '2026:03:14 09:12:05' }, 6));
    const one = desk();
    expect(await one.contents(folder, paper)).toMatchObject({ state: 'read', pages: 1, width: 400, height: 800, capture: { day: '2026-03-14', time: '09:12:05', offset: null, instant: null } });
    const thumbnail = await one.thumbnail(folder, paper);
    const picture = await sharp(thumbnail ?? new Uint8Array()).metadata();
    expect([picture.format, picture.width, picture.height, picture.exif, picture.orientation]).toEqual(['webp', 180, 360, undefined, undefined]);
    // Turned by a quarter to the right, the dark left half is the upper one.
    const { data } = await sharp(thumbnail ?? new Uint8Array()).raw().toBuffer({ resolveWithObject: true });
    expect([Number(data[0]) < 60, Number(data[data.length - 3]) > 200]).toEqual([true, true]);
  });

  test('a PDF: its pages, its text, a picture of each page and of no other', async () => {
    const { folder, paper } = await kept(await pdfOf(['Invoice 12 May 2026', 'Total 84.20'], ['Second page']));
    const one = desk();
    expect(await one.contents(folder, paper)).toMatchObject({ state: 'read', pages: 2, width: 420, height: 595 });
    expect((await one.contents(folder, paper))?.text).toContain('Total 84.20');
    expect((await one.contents(folder, paper))?.text.split('\f')[1]).toContain('Second page');
    const pages = await Promise.all([1, 2, 3].map((page) => one.page(folder, paper, page)));
    expect(pages.map((page) => page !== null)).toEqual([true, true, false]);
    const { width, height } = await sharp(pages[1] ?? new Uint8Array()).metadata();
    expect(Math.max(width, height)).toBe(2000);
  });

  test('an opaque paper is not looked into, and nothing of it is shown', async () => {
    for (const text of ['<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>', '<html><body>hello</body></html>', 'plain']) {
      const { folder, paper } = await kept(Buffer.from(text));
      const one = desk();
      expect(await one.contents(folder, paper)).toMatchObject({ state: 'opaque', pages: 0, text: '' });
      expect([await one.thumbnail(folder, paper), await one.page(folder, paper, 1)]).toEqual([null, null]);
    }
  });

  test('what was derived is found again; missing, spoilt or of another version it is made anew', async () => {
    const { folder, paper } = await kept(await photograph(40, 20));
    const first = await desk().thumbnail(folder, paper);
    const place = join(folder, 'thumbnails', paper.id.slice(0, 2));
    expect(readdirSync(place).sort()).toEqual([`${paper.id}.json`, `${paper.id}.webp`]);
    for (const spoil of [
      () => rmSync(place, { recursive: true }),
      () => writeFileSync(join(place, `${paper.id}.webp`), '<script>'),
      () => rmSync(join(place, `${paper.id}.webp`)),
      () => writeFileSync(join(place, `${paper.id}.json`), '{"version":0}'),
      () => writeFileSync(join(place, `${paper.id}.json`), 'no json'),
    ]) {
      spoil();
      expect(await desk().thumbnail(folder, paper)).toEqual(first);
      expect(readFileSync(join(place, `${paper.id}.webp`))).toEqual(Buffer.from(first ?? []));
    }
  });

  test('a household that has gone does not come back', async () => {
    const { folder, paper } = await kept(jpeg());
    const one = desk();
    const looking = one.contents(folder, paper);
    rmSync(folder, { recursive: true });
    await looking;
    expect(() => readdirSync(folder)).toThrow('ENOENT');
  });

  test('is no fact: the journal and its examination do not know it', async () => {
    const host = await openHouseholdWithPip();
    const { paper } = await host.must('paper.keep', { name: 'p.png', base64: png(4, 4).toString('base64') });
    const before = await host.must('household.examine', {});
    const find = paperFinder(host.composed);
    expect(await find({ sha256: paper.id, part: 'thumbnail' })).toMatchObject({ mediaType: 'image/webp' });
    expect(await find({ sha256: paper.id, part: { page: 1, of: 'paper' } })).toMatchObject({ mediaType: 'image/webp' });
    expect(await find({ sha256: paper.id, part: { page: 2, of: 'paper' } })).toBeNull();
    expect(await find({ sha256: '0'.repeat(64), part: 'thumbnail' })).toBeNull();
    expect(await host.must('household.examine', {})).toEqual(before);
  });
});

const CATALOG = '<< /Type /Catalog /Pages 2 0 R >>';

describe('a hostile file', () => {
  test('truncated files are refused on arrival, or said to be unreadable', async () => {
    const whole = await photograph(640, 640);
    expect(await judgePaper(whole.subarray(0, whole.length - 200))).toMatchObject({ ok: false });
    const document = await pdfOf(['A receipt']);
    expect(await judgePaper(document.subarray(0, document.length / 2))).toMatchObject({ ok: false });
    expect(await lookInto(Buffer.concat([document.subarray(0, 60), Buffer.from('%%EOF')]))).toMatchObject({ state: 'unreadable', pages: 0, thumbnail: null });
    // The end mark is there, some of the scan is not: a camera that ran empty. It is shown as far as it goes.
    expect(await lookInto(Buffer.concat([whole.subarray(0, whole.length - 300), Buffer.from([0xff, 0xd9])]))).toMatchObject({ state: 'read', width: 640 });
  });

  test('a PDF that says it has a milliard of pages takes no longer than another', async () => {
    const lying = rawPdf(CATALOG, '<< /Type /Pages /Kids [3 0 R] /Count 1000000000 >>', '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] >>');
    const started = performance.now();
    const contents = await lookInto(lying);
    expect(contents?.state).toMatch(/^(read|unreadable)$/);
    expect(performance.now() - started).toBeLessThan(10_000);
  });

  test('a stream that swells a thousandfold ends within its time and memory, and the next file is read', async () => {
    const swollen = deflateSync(deflateSync(Buffer.alloc(400_000_000, 'q Q '), { level: 9 }), { level: 9 });
    expect(swollen.length).toBeLessThan(100_000);
    const bomb = rawPdf(CATALOG, '<< /Type /Pages /Kids [3 0 R] /Count 1 >>', '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /Contents 4 0 R >>', pdfStream('/Filter [/FlateDecode /FlateDecode]', swollen));
    const thread = pdfThread(8_000);
    const before = process.memoryUsage().rss;
    const started = performance.now();
    const drawn = await renderPdfPage(thread, bomb, 1, 300);
    expect(performance.now() - started).toBeLessThan(12_000);
    expect(process.memoryUsage().rss - before).toBeLessThan(700_000_000);
    expect(drawn.ok ? 'drawn' : drawn.refusal.code).toMatch(/^(drawn|pdf-broken|pdf-too-slow)$/);
    expect(await readPdf(thread, await pdfOf(['still here']))).toMatchObject({ ok: true, value: { pages: 1 } });
    await thread.close();
  }, 40_000);

  test('a page that never ends is given up after its time', async () => {
    const stripes = Buffer.from(`q ${'0 0 200 200 re f '.repeat(2_000_000)} Q`);
    const slow = rawPdf(CATALOG, '<< /Type /Pages /Kids [3 0 R] /Count 1 >>', '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /Contents 4 0 R >>', pdfStream('/Filter /FlateDecode', deflateSync(stripes)));
    const thread = pdfThread(300);
    expect(await renderPdfPage(thread, slow, 1, 2000)).toMatchObject({ ok: false, refusal: { code: 'pdf-too-slow' } });
    await thread.close();
  });

  test.each([
    { case: 'no size at all', box: '[0 0 0 0]' },
    { case: 'a size turned inside out', box: '[200 200 0 0]' },
    { case: 'a hair that is as long as it may be', box: '[0 0 0.01 14400]' },
    { case: 'a size beyond all bounds', box: '[0 0 1e30 1e30]' },
  ])('a page of $case takes bounded memory', async ({ box }) => {
    const contents = await lookInto(rawPdf(CATALOG, '<< /Type /Pages /Kids [3 0 R] /Count 1 >>', `<< /Type /Page /Parent 2 0 R /MediaBox ${box} >>`));
    expect(contents?.state).toMatch(/^(read|unreadable)$/);
  });

  test('a PDF behind a password says so', async () => {
    const { default: PdfDocument } = await import('pdfkit');
    const document = new PdfDocument({ userPassword: 'secret', ownerPassword: 'owner' });
    const pieces: Buffer[] = [];
    document.on('data', (piece: Buffer) => pieces.push(piece));
    const ended = new Promise((resolve) => document.on('end', resolve));
    document.text('hidden');
    document.end();
    await ended;
    expect(await lookInto(Buffer.concat(pieces))).toMatchObject({ state: 'locked', text: '' });
  });

  test('a PNG that swells beyond all bounds is refused by its header', async () => {
    expect(await judgePaper(png(1, 1, { width: 20_000, height: 20_000 }))).toMatchObject({ ok: false, refusal: { code: 'image-too-large' } });
    expect(await lookInto(png(1, 1, { width: 9_000, height: 9_000 }))).toMatchObject({ state: 'unreadable', thumbnail: null });
  });

  test('noise that begins like a PDF or an image breaks nothing', async () => {
    const one = desk();
    for (let seed = 0; seed < 12; seed += 1) {
      const noise = Buffer.concat(Array.from({ length: 40 }, (_, n) => createHash('sha512').update(`${seed}.${n}`).digest()));
      const { folder, paper } = await kept(Buffer.concat([Buffer.from('%PDF-1.7\n'), noise, Buffer.from('\n%%EOF')]));
      expect(await one.contents(folder, paper)).toMatchObject({ state: 'unreadable' });
    }
    const { folder, paper } = await kept(await pdfOf(['whole']));
    expect(await one.contents(folder, paper)).toMatchObject({ state: 'read' });
  });
});
