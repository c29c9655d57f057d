import { property, assert as holds, array, record, double, constantFrom, integer, asyncProperty } from 'fast-check';
import sharp from 'sharp';
import { afterAll, describe, expect, test } from 'vitest';
import { pdfThread } from '../../electron/papers/pdf-thread.ts';
import { redactImage } from '../../electron/papers/redact-image.ts';
import { redactPaper } from '../../electron/papers/redact-paper.ts';
import type { Mark } from '../../shared-core/records/paper-redaction.ts';
import { turnMark } from '../../shared-core/records/turn-mark.ts';
import { must } from '../../shared-core/result/assert.ts';
import { jpegPoints, jpegsIn, pngPoints, type Points } from './decode-copy.ts';
import { pdfOf, pdfStream, photograph, rawPdf } from './made-papers.ts';
import { WEBP } from './small-files.ts';

const thread = pdfThread();
afterAll(() => thread.close());

const side = double({ min: 0.01, max: 0.6, noNaN: true });
const start = double({ min: 0, max: 0.9, noNaN: true });
const markArbitrary = record({ left: start, top: start, width: side, height: side }).map(({ left, top, width, height }): Mark => turnMark({ page: 1, left, top, width: Math.min(width, 1 - left), height: Math.min(height, 1 - top) }, 0));
const marksArbitrary = array(markArbitrary, { minLength: 1, maxLength: 4 });
const turnArbitrary = constantFrom(0, 90, 180, 270);

/** A picture in which no two neighbours are alike, made by the rule of its seed. */
async function noise(width: number, height: number, seed: number): Promise<Points> {
  const rgb = Uint8Array.from({ length: width * height * 3 }, (_, at) => 20 + (((at + 1) * (seed + 7919) * 2_654_435_761) >>> 24) % 230);
  return { width, height, rgb };
}

const encoded = ({ rgb, width, height }: Points) => sharp(rgb, { raw: { width, height, channels: 3 } });

/** The points of a picture turned clockwise, one by one. */
function turned({ width, height, rgb }: Points, degrees: number): Points {
  if (degrees === 0) return { width, height, rgb };
  const out = new Uint8Array(rgb.length);
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) out.set(rgb.subarray((y * width + x) * 3, (y * width + x) * 3 + 3), (x * height + (height - 1 - y)) * 3);
  return turned({ width: height, height: width, rgb: out }, degrees - 90);
}

/** Whether a point of a page lies in a mark, wholly or in part: its own square and the mark's touch. */
function isMarked(marks: readonly Mark[], x: number, y: number, { width, height }: Points): boolean {
  const slack = 1e-6;
  return marks.some((mark) => x + 1 > mark.left * width + slack && x < (mark.left + mark.width) * width - slack && y + 1 > mark.top * height + slack && y < (mark.top + mark.height) * height - slack);
}

/** Points in a mark that are not black, and points away from all marks that are not as they were. */
function faultsOf(copy: Points, before: Points, marks: readonly Mark[], grid: number, tolerance: number): { readonly left: number; readonly changed: number } {
  const near = marks.map((mark) => ({ ...mark, left: mark.left - grid / copy.width, top: mark.top - grid / copy.height, width: mark.width + (2 * grid) / copy.width, height: mark.height + (2 * grid) / copy.height }));
  let [left, changed] = [0, 0];
  for (let y = 0; y < copy.height; y += 1) for (let x = 0; x < copy.width; x += 1) {
    const at = (y * copy.width + x) * 3;
    const points = [0, 1, 2].map((c) => copy.rgb[at + c] ?? 255);
    if (isMarked(marks, x, y, copy)) left += points.some((value) => value !== 0) ? 1 : 0;
    else if (!isMarked(near, x, y, copy)) changed += points.some((value, c) => Math.abs(value - (before.rgb[at + c] ?? 0)) > tolerance) ? 1 : 0;
  }
  return { left, changed };
}

describe('a copy with random marks, by a decoder that shares nothing with the encoder', () => {
  test('of a PNG is black in every marked point and the same in every other', async () => {
    await holds(asyncProperty(marksArbitrary, turnArbitrary, integer({ min: 9, max: 61 }), integer({ min: 9, max: 61 }), integer({ min: 0, max: 999 }), async (marks, turn, width, height, seed) => {
      const before = await noise(width, height, seed);
      const copy = pngPoints(Buffer.from(must(await redactImage(await encoded(before).png().toBuffer(), 'image/png', { turned: turn, marks }), 'copy')));
      const upright = turned(before, turn);
      expect([copy.width, copy.height]).toEqual([upright.width, upright.height]);
      expect(faultsOf(copy, upright, marks, 0, 0)).toEqual({ left: 0, changed: 0 });
    }), { numRuns: 60, seed: 20_261_130 });
  }, 60_000);

  test('of a JPEG is exactly black in every marked point, and away from the marks as it was within what a JPEG keeps', async () => {
    await holds(asyncProperty(marksArbitrary, turnArbitrary, integer({ min: 17, max: 90 }), integer({ min: 17, max: 90 }), async (marks, turn, width, height) => {
      const smooth: Points = { width, height, rgb: Uint8Array.from({ length: width * height * 3 }, (_, at) => 60 + Math.round((120 * (Math.floor(at / 3) % width)) / width)) };
      const original = await encoded(smooth).jpeg({ quality: 95, chromaSubsampling: '4:4:4' }).toBuffer();
      const copy = await jpegPoints(must(await redactImage(original, 'image/jpeg', { turned: turn, marks }), 'copy'));
      const upright = turned(await jpegPoints(original), turn);
      expect([copy.width, copy.height]).toEqual([upright.width, upright.height]);
      expect(faultsOf(copy, upright, marks, 8, 12)).toEqual({ left: 0, changed: 0 });
    }), { numRuns: 60, seed: 20_261_130 });
  }, 60_000);
});

describe('turning', () => {
  test('four times, or by nothing, gives the same mark', () => {
    holds(property(markArbitrary, turnArbitrary, (mark, turn) => {
      expect(turnMark(turnMark(mark, turn), 360 - turn)).toEqual(mark);
      expect(turnMark(turnMark(turnMark(turnMark(mark, 90), 90), 90), 90)).toEqual(mark);
    }), { numRuns: 500, seed: 20_261_130 });
  });

  // By hand: what is at the top left stands at the top right after a quarter clockwise.
  test.each([
    { degrees: 90, left: 0.9, top: 0, width: 0.1, height: 0.3 },
    { degrees: 180, left: 0.7, top: 0.9, width: 0.3, height: 0.1 },
    { degrees: 270, left: 0, top: 0.7, width: 0.1, height: 0.3 },
  ])('by $degrees degrees carries a mark of the top left corner along', ({ degrees, ...mark }) => {
    expect(turnMark({ page: 1, left: 0, top: 0, width: 0.3, height: 0.1 }, degrees)).toEqual({ page: 1, ...mark });
  });
});

describe('a copy of a photograph', () => {
  test('stands as its camera held it and as it is turned, with no note of the camera', async () => {
    // Orientation 6: the dark left half of what is stored is the upper half of what is seen; turned once more, the right half.
    const bytes = await photograph(80, 40, {}, 6);
    const copy = must(await redactImage(bytes, 'image/jpeg', { turned: 90, marks: [{ page: 1, left: 0, top: 0, width: 0.1, height: 0.1 }] }), 'copy');
    const { width, height, rgb } = await jpegPoints(copy);
    expect([width, height]).toEqual([80, 40]);
    expect([rgb[(20 * 80 + 70) * 3] ?? 255, rgb[(20 * 80 + 30) * 3] ?? 0].map((value) => value > 128)).toEqual([false, true]);
    expect(Buffer.from(copy).includes('Exif')).toBe(false);
    expect((await sharp(copy).metadata()).exif).toBeUndefined();
  });

  test('that lets light through hides nothing: it is laid on white', async () => {
    const hidden = await sharp({ create: { width: 20, height: 20, channels: 4, background: { r: 200, g: 10, b: 10, alpha: 0 } } }).png().toBuffer();
    const { rgb } = pngPoints(Buffer.from(must(await redactImage(hidden, 'image/png', { turned: 0, marks: [{ page: 1, left: 0, top: 0, width: 0.5, height: 1 }] }), 'copy')));
    expect([...rgb.subarray(9 * 3, 11 * 3)]).toEqual([0, 0, 0, 255, 255, 255]);
  });

  test.each(Object.entries(WEBP))('of a WebP (%s) is a JPEG', async (_kind, bytes) => {
    const made = await redactPaper(thread, bytes, 'image/webp', { turned: 0, marks: [{ page: 1, left: 0, top: 0, width: 1, height: 1 }] });
    expect(made).toMatchObject({ ok: true, value: { media: 'image/jpeg', pages: 1 } });
    if (made.ok) expect(new Set((await jpegPoints(made.value.bytes)).rgb)).toEqual(new Set([0]));
  });

  test.each([
    { case: 'grey', make: () => sharp({ create: { width: 30, height: 30, channels: 3, background: '#777777' } }).toColourspace('b-w').png().toBuffer() },
    { case: 'of sixteen bits', make: () => sharp({ create: { width: 30, height: 30, channels: 3, background: '#777777' } }).toColourspace('rgb16').png().toBuffer() },
  ])('of a PNG that is $case is black where it is marked', async ({ make }) => {
    const copy = pngPoints(Buffer.from(must(await redactImage(await make(), 'image/png', { turned: 0, marks: [{ page: 1, left: 0, top: 0, width: 0.5, height: 1 }] }), 'copy')));
    expect([copy.rgb[14 * 3], Math.abs((copy.rgb[15 * 3] ?? 0) - 0x77) <= 1]).toEqual([0, true]);
  });

  test('that is broken is none, and one of too many points is made smaller', async () => {
    expect(await redactImage(Buffer.from('no image'), 'image/jpeg', { turned: 0, marks: [] })).toBeNull();
    const large = await sharp({ create: { width: 8000, height: 5000, channels: 3, background: '#aabbcc' } }).jpeg({ quality: 30 }).toBuffer();
    const { width, height } = await sharp(must(await redactImage(large, 'image/jpeg', { turned: 90, marks: [{ page: 1, left: 0, top: 0, width: 0.5, height: 0.5 }] }), 'copy')).metadata();
    expect(width * height).toBeLessThanOrEqual(30_000_000);
    expect(width / height).toBeCloseTo(5000 / 8000, 2);
  }, 30_000);
});

describe('a copy of a PDF', () => {
  test('is black on the marked page only, at the marks, in pages of the same size', async () => {
    const made = await redactPaper(thread, await pdfOf(['First'], ['Second']), 'application/pdf', { turned: 0, marks: [{ page: 2, left: 0.1, top: 0.1, width: 0.3, height: 0.2 }] });
    expect(made).toMatchObject({ ok: true, value: { pages: 2 } });
    if (!made.ok) return;
    const [first, second] = await Promise.all(jpegsIn(Buffer.from(made.value.bytes)).map(jpegPoints));
    const black = ({ rgb, width, height }: Points) => rgb[(Math.floor(height * 0.2) * width + Math.floor(width * 0.25)) * 3];
    expect([first, second].map((page) => black(must(page, 'page')))).toEqual([255, 0]);
    // A5 at 200 dots an inch: 5.83 by 8.27 inches.
    expect([first?.width, first?.height]).toEqual([1165, 1653]);
  });

  // A page that says it is turned (/Rotate) is looked at turned, and is marked as it is looked at.
  test('of a page that is turned in itself, and by the keeper, is marked as it is seen', async () => {
    const page = rawPdf('<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [3 0 R] /Count 1 >>', '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 200] /Rotate 90 /Contents 4 0 R /Resources << >> >>', pdfStream('', Buffer.from('1 0 0 rg 0 180 40 20 re f')));
    // Unturned, red stands at the top left of a page of 300 by 200; turned by 90 at the top right of 200 by 300; by 90 more at the bottom right.
    const made = await redactPaper(thread, page, 'application/pdf', { turned: 90, marks: [{ page: 1, left: 0.8, top: 0.85, width: 0.1, height: 0.15 }] });
    if (!made.ok) throw new Error(made.refusal.code);
    const text = Buffer.from(made.value.bytes).toString('latin1');
    expect(text).toMatch(/\/MediaBox \[0 0 300 200\]/);
    const { rgb, width, height } = await jpegPoints(must(jpegsIn(Buffer.from(made.value.bytes))[0], 'picture'));
    const at = (x: number, y: number) => [0, 1, 2].map((c) => (rgb[(Math.floor(y * height) * width + Math.floor(x * width)) * 3 + c] ?? 0) > 128);
    expect([at(0.95, 0.95), at(0.85, 0.95), at(0.1, 0.1)]).toEqual([[true, false, false], [false, false, false], [true, true, true]]);
  });

  test('that is broken, or no picture at all, is refused', async () => {
    expect(await redactPaper(thread, Buffer.from('%PDF-1.4 broken %%EOF'), 'application/pdf', { turned: 0, marks: [] })).toMatchObject({ ok: false, refusal: { code: 'pdf-broken' } });
    expect(await redactPaper(thread, Buffer.from('text'), 'application/octet-stream', { turned: 0, marks: [] })).toMatchObject({ ok: false, refusal: { code: 'paper-not-drawn' } });
  });
});
