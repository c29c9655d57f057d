import { describe, expect, test } from 'vitest';
import { judgePaper } from '../../electron/papers/judge-paper.ts';
import { readImageSize } from '../../electron/papers/read-image-size.ts';
import { LARGEST_PAPER_BYTES } from '../../shared-core/contract/host-operations.ts';
import { sampleRandom } from '../../shared-core/sample/sample-random.ts';
import { jpeg, jpegSegment, pdf, png, pngChunk, WEBP } from './small-files.ts';

const PNG = png(10, 7);
const JPEG = jpeg();
const PDF = await pdf();
const flip = (bytes: Buffer, at: number) => Buffer.concat([bytes.subarray(0, at), Buffer.from([(bytes[at] ?? 0) ^ 0x55]), bytes.subarray(at + 1)]);
/** A thumbnail, a whole JPEG of its own, as a camera puts it into the first segments. */
const withThumbnail = jpeg(jpegSegment(0xe1, ...Buffer.from('Exif\0\0'), ...jpeg()));

describe('a paper is what its bytes say', () => {
  test.each([
    { case: 'a PNG', bytes: PNG, media: 'image/png' },
    { case: 'a PNG with notes after its end', bytes: Buffer.concat([PNG, Buffer.from('made by a telephone')]), media: 'image/png' },
    { case: 'a PNG with a note in it that its checksum denies', bytes: Buffer.concat([PNG.subarray(0, 33), flip(pngChunk('tEXt', Buffer.from('a\0b')), 9), PNG.subarray(33)]), media: 'image/png' },
    { case: 'a JPEG', bytes: JPEG, media: 'image/jpeg' },
    { case: 'a JPEG with a film after its end', bytes: Buffer.concat([JPEG, Buffer.alloc(5000, 7)]), media: 'image/jpeg' },
    { case: 'a JPEG with fill bytes before a marker', bytes: Buffer.concat([JPEG.subarray(0, 20), Buffer.from([0xff, 0xff]), JPEG.subarray(20)]), media: 'image/jpeg' },
    { case: 'a JPEG with a thumbnail', bytes: withThumbnail, media: 'image/jpeg' },
    { case: 'a lossy WebP', bytes: WEBP.lossy, media: 'image/webp' },
    { case: 'a lossless WebP', bytes: WEBP.lossless, media: 'image/webp' },
    { case: 'a transparent WebP', bytes: WEBP.transparent, media: 'image/webp' },
    { case: 'a PDF', bytes: PDF, media: 'application/pdf' },
    { case: 'a PDF with rubbish after its end', bytes: Buffer.concat([PDF, Buffer.alloc(500, 32)]), media: 'application/pdf' },
    { case: 'text', bytes: Buffer.from('a receipt'), media: 'application/octet-stream' },
    { case: 'one byte', bytes: Buffer.from('x'), media: 'application/octet-stream' },
    { case: 'a program', bytes: Buffer.concat([Buffer.from('MZ'), Buffer.alloc(200)]), media: 'application/octet-stream' },
    { case: 'a page of HTML', bytes: Buffer.from('<!doctype html><script>alert(1)</script>'), media: 'application/octet-stream' },
    { case: 'an SVG, which may hold a script', bytes: Buffer.from('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><script/></svg>'), media: 'application/octet-stream' },
    { case: 'a GIF, which is not shown', bytes: Buffer.from('GIF89a\x01\0\x01\0\0\0\0;', 'latin1'), media: 'application/octet-stream' },
    { case: 'a page of HTML that has the mark of a PDF further in', bytes: Buffer.from('<script>1</script>%PDF-1.4 %%EOF'), media: 'application/octet-stream' },
  ])('$case', async ({ bytes, media }) => {
    expect(await judgePaper(bytes)).toEqual({ ok: true, value: media });
  });

  // Source: the headers that were written, and for WebP what the program that made them was told.
  test.each([
    { case: 'PNG', bytes: PNG, media: 'image/png', size: { width: 10, height: 7 } },
    { case: 'JPEG', bytes: JPEG, media: 'image/jpeg', size: { width: 8, height: 8 } },
    { case: 'JPEG with a thumbnail', bytes: withThumbnail, media: 'image/jpeg', size: { width: 8, height: 8 } },
    { case: 'lossy WebP', bytes: WEBP.lossy, media: 'image/webp', size: { width: 7, height: 5 } },
    { case: 'lossless WebP', bytes: WEBP.lossless, media: 'image/webp', size: { width: 7, height: 5 } },
    { case: 'transparent WebP', bytes: WEBP.transparent, media: 'image/webp', size: { width: 7, height: 5 } },
  ])('the size of a $case is read', ({ bytes, media, size }) => {
    expect(readImageSize(bytes, media)).toEqual(size);
  });
});

describe('a paper that is broken is refused', () => {
  test.each([
    { case: 'a PNG whose header its checksum denies', bytes: flip(PNG, 19), kind: 'image' },
    { case: 'a PNG with one byte of its pixels changed', bytes: flip(PNG, 45), kind: 'image' },
    { case: 'a PNG without pixels', bytes: Buffer.concat([PNG.subarray(0, 33), pngChunk('IEND', Buffer.alloc(0))]), kind: 'image' },
    { case: 'a PNG with a chunk longer than the file', bytes: Buffer.concat([PNG.subarray(0, 33), Buffer.from('7fffffff49444154', 'hex'), Buffer.alloc(40)]), kind: 'image' },
    { case: 'a PNG of no width', bytes: png(1, 1, { width: 0, height: 1 }), kind: 'image' },
    { case: 'a JPEG that is nothing but a thumbnail', bytes: withThumbnail.subarray(0, -12), kind: 'image' },
    { case: 'a JPEG of rubbish after its mark', bytes: Buffer.concat([JPEG.subarray(0, 3), Buffer.alloc(300, 1)]), kind: 'image' },
    { case: 'a JPEG of segments of no length', bytes: Buffer.concat([JPEG.subarray(0, 2), Buffer.from('ffe00000'.repeat(200), 'hex')]), kind: 'image' },
    { case: 'a WebP of rubbish in its frame', bytes: Buffer.concat([WEBP.lossy.subarray(0, 20), Buffer.alloc(48)]), kind: 'image' },
    { case: 'a WebP of an unknown kind', bytes: Buffer.concat([Buffer.from('RIFF\x28\0\0\0WEBPABCD\x10\0\0\0', 'latin1'), Buffer.alloc(32)]), kind: 'image' },
    { case: 'a PDF that is nothing but its mark', bytes: Buffer.from('%PDF-1.7\n'), kind: 'PDF' },
    { case: 'a PDF whose end mark lies far before its end', bytes: Buffer.concat([PDF, Buffer.alloc(2000, 65)]), kind: 'PDF' },
  ])('$case', async ({ bytes, kind }) => {
    expect(await judgePaper(bytes)).toEqual({ ok: false, refusal: { code: 'paper-broken', values: { kind } } });
  });

  test.each([
    { case: 'PNG', bytes: PNG, from: 20 },
    { case: 'JPEG', bytes: JPEG, from: 4 },
    { case: 'lossy WebP', bytes: WEBP.lossy, from: 12 },
    { case: 'lossless WebP', bytes: WEBP.lossless, from: 12 },
    { case: 'PDF', bytes: PDF, from: 5 },
  ])('a $case cut short anywhere', async ({ bytes, from }) => {
    // A PDF may end with a line's end or without.
    const least = bytes.subarray(0, 4).toString() === '%PDF' ? bytes.indexOf('%%EOF') + 4 : bytes.length - 1;
    for (let cut = from; cut <= least; cut += 1) expect(await judgePaper(bytes.subarray(0, cut)), `cut to ${cut} of ${bytes.length}`).toMatchObject({ ok: false, refusal: { code: 'paper-broken' } });
  });

  test.each([
    { case: 'nothing', bytes: Buffer.alloc(0), code: 'paper-empty' },
    { case: 'a byte too many', bytes: Buffer.alloc(LARGEST_PAPER_BYTES + 1), code: 'paper-too-large' },
    { case: 'a PNG that says it is wider than any', bytes: png(1, 1, { width: 30_001, height: 1 }), code: 'image-too-large' },
    { case: 'a PNG that says it is of more points than any', bytes: png(1, 1, { width: 20_000, height: 20_000 }), code: 'image-too-large' },
    { case: 'a PNG that says it is as large as can be said', bytes: png(1, 1, { width: 0xffff_ffff, height: 0xffff_ffff }), code: 'image-too-large' },
  ])('$case', async ({ bytes, code }) => {
    expect(await judgePaper(bytes)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('as large as it may be, it is taken', async () => {
    expect(await judgePaper(Buffer.alloc(LARGEST_PAPER_BYTES, 'a'))).toEqual({ ok: true, value: 'application/octet-stream' });
  });

  test('whatever its bytes are, it is judged: 3000 files of rubbish behind a good beginning', async () => {
    const random = sampleRandom(20_261_125);
    for (let at = 0; at < 3000; at += 1) {
      const head = [PNG, JPEG, WEBP.lossy, WEBP.lossless, PDF][at % 5] ?? PNG;
      const kept = Math.floor(random() * head.length);
      const bytes = Buffer.concat([head.subarray(0, kept), Buffer.from(Array.from({ length: Math.floor(random() * 200) }, () => (random() < 0.3 ? 0xff : Math.floor(random() * 256))))]);
      const judged = await judgePaper(bytes);
      expect(judged.ok || ['paper-empty', 'paper-broken', 'image-too-large'].includes(judged.refusal.code), `file ${at}`).toBe(true);
    }
  });
});
