import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { pngBytes } from '../../electron/host/png-bytes.ts';
import { drawSamplePaper } from '../../electron/host/sample-papers.ts';
import { judgePaper } from '../../electron/papers/judge-paper.ts';
import { crc32 } from '../../shared-core/journal/crc32.ts';
import type { PhotographDrawing, ReceiptDrawing } from '../../shared-core/sample/sample-drawing.ts';
import type { PaperStep } from '../../shared-core/sample/sample-step.ts';
import { sampleSteps } from '../../shared-core/sample/sample-steps.ts';
import { day } from './open-test-host.ts';

const receipt: ReceiptDrawing = {
  kind: 'receipt', heading: 'the garage on the corner', number: 'C-1188', date: day('2024-12-03'), car: 'Pip', odometer: '16406 mi', currency: 'GBP',
  lines: [{ text: 'oil, filters, washer', amountMinor: 8925 }, { text: 'regular customer', amountMinor: -360 }], totalMinor: 8566,
};
const photograph: PhotographDrawing = { kind: 'photograph', subject: 'brake-pad', wear: 0.7, seed: 1 };
const has = (program: string) => spawnSync(program, ['--version']).error === undefined;

describe('papers of the sample', () => {
  test('each is taken as what its name says, no two are the same, and together they stay small', async () => {
    const papers = sampleSteps(day('2026-11-25')).filter((step): step is PaperStep => step.operation === 'paper.keep');
    const digests = new Set<string>();
    let bytes = 0;
    for (const { request } of papers) {
      const drawn = await drawSamplePaper(request.draw);
      const media = await judgePaper(drawn);
      expect(media).toEqual({ ok: true, value: request.name.endsWith('.png') ? 'image/png' : 'application/pdf' });
      digests.add(Buffer.from(drawn).toString('latin1'));
      bytes += drawn.length;
    }
    expect(papers.length).toBeGreaterThan(35);
    expect(digests.size).toBe(papers.length);
    expect(bytes).toBeLessThan(1_000_000);
  });

  test.each([receipt, { ...receipt, kind: 'certificate', statements: ['Passed.'] } as const, photograph])('the same $kind is the same bytes, another is not', async (drawing) => {
    const again = await drawSamplePaper({ ...drawing });
    const other = drawing.kind === 'photograph' ? { ...drawing, wear: 0.1 } : { ...drawing, date: day('2024-12-04') };
    expect(Buffer.compare(await drawSamplePaper(drawing), again)).toBe(0);
    expect(Buffer.compare(await drawSamplePaper(other), again)).not.toBe(0);
  });
});

describe('a receipt for other programs', () => {
  const inFile = async (run: (file: string) => string) => {
    const folder = mkdtempSync(join(tmpdir(), 'trunnion-paper-'));
    writeFileSync(join(folder, 'paper.pdf'), await drawSamplePaper(receipt));
    const said = run(join(folder, 'paper.pdf'));
    rmSync(folder, { recursive: true });
    return said;
  };

  // Source: qpdf --check and pdftotext, other people's readers of PDF.
  test.skipIf(!has('qpdf'))('qpdf finds no fault', async () => {
    expect(await inFile((file) => String(spawnSync('qpdf', ['--check', file]).status))).toBe('0');
  });

  test.skipIf(!has('pdftotext'))('pdftotext reads the lines, the printed total and the mark', async () => {
    const text = await inFile((file) => spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).stdout);
    expect(text).toMatch(/Receipt C-1188/);
    expect(text).toMatch(/Date: 3 Dec 2024/);
    expect(text).toMatch(/oil, filters, washer +89\.25/);
    expect(text).toMatch(/regular customer +-3\.60/);
    expect(text).toMatch(/Total, GBP +85\.66/);
    expect(text).toContain('SAMPLE - proves nothing');
  });
});

describe('a picture as PNG', () => {
  test('taken apart again: signature, three chunks with their sums, and every pixel where it was', () => {
    const pixels = Uint8Array.from({ length: 5 * 3 * 3 }, (_, at) => (at * 37) % 256);
    const parts = chunksOf(pngBytes({ width: 5, height: 3, pixels }));
    const data = inflateSync(parts[1]?.data ?? new Uint8Array());
    expect(parts.map((one) => one.type)).toEqual(['IHDR', 'IDAT', 'IEND']);
    expect(parts.every((one) => one.sum === crc32(one.typeAndData))).toBe(true);
    expect([...(parts[0]?.data ?? [])]).toEqual([0, 0, 0, 5, 0, 0, 0, 3, 8, 2, 0, 0, 0]);
    expect([0, 1, 2].map((row) => data[row * 16])).toEqual([0, 0, 0]);
    expect([0, 1, 2].flatMap((row) => [...data.subarray(row * 16 + 1, row * 16 + 16)])).toEqual([...pixels]);
  });

  test('a photograph bears its mark, light letters on a dark ground', async () => {
    const data = inflateSync(chunksOf(await drawSamplePaper(photograph))[1]?.data ?? new Uint8Array());
    const light = (x: number, y: number) => data[y * (320 * 3 + 1) + 1 + x * 3];
    // The upper bar of the letter P, three dots high: row 0, columns 18 to 21 of the letters, after the edge of 2.
    expect(light(10 + (2 + 19) * 3 + 1, 208 + 1)).toBeGreaterThan(200);
    expect(light(10 + 2, 208 + 1)).toBeLessThan(40);
  });
});

interface Chunk {
  readonly type: string;
  readonly data: Uint8Array;
  readonly typeAndData: Uint8Array;
  readonly sum: number;
}

function chunksOf(png: Uint8Array): readonly Chunk[] {
  const bytes = Buffer.from(png);
  expect(bytes.subarray(0, 8).toString('latin1')).toBe('\u0089PNG\r\n\u001a\n');
  const chunks: Chunk[] = [];
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    const typeAndData = bytes.subarray(at + 4, at + 8 + length);
    chunks.push({ type: typeAndData.toString('latin1', 0, 4), data: typeAndData.subarray(4), typeAndData, sum: bytes.readUInt32BE(at + 8 + length) });
    at += 12 + length;
  }
  return chunks;
}
