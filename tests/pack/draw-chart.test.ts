import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { drawDocument } from '../../electron/pack/draw-document.ts';
import type { Block } from '../../shared-core/handover/document-value.ts';

/** Every text of the first page, each with how far from the left and the right edge of the paper it stands. */
async function drawn(blocks: readonly Block[]) {
  const bytes = await drawDocument({ title: 'T', language: 'en', subject: 'S', foot: 'F', blocks: [...blocks] }, { made: '2026-11-25', size: 'A4', pictures: { small: new Map(), cover: null } });
  const page = await (await getDocument({ data: new Uint8Array(bytes), useSystemFonts: false }).promise).getPage(1);
  const items = (await page.getTextContent()).items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
  return items.map((item) => ({ text: item.str, x: Number(item.transform[4]), y: Number(item.transform[5]), right: Number(item.transform[4]) + item.width }));
}

const SOURCES = ['read by the keeper', 'a garage', 'roadworthiness test', 'at the purchase', 'imported', 'with a work record'];
const chart = (sources: readonly string[]): Block => ({ kind: 'chart', caption: 'Readings', unit: 'km', points: sources.map((source, at) => ({ date: `20${10 + at}-05-01`, value: 10_000 * (at + 1), source })) });

test('every source of a reading is named under the chart, inside the page, on as many lines as that takes, and what follows stands below', async () => {
  const texts = await drawn([chart(SOURCES), { kind: 'paragraph', text: 'What follows' }]);
  const named = texts.filter(({ text }) => SOURCES.includes(text));
  expect(named.map(({ text }) => text).sort()).toEqual([...SOURCES].sort());
  for (const { right } of named) expect(right).toBeLessThan(595.28 - 54);
  const lines = [...new Set(named.map(({ y }) => Math.round(y)))];
  expect(lines.length).toBeGreaterThan(1);
  const after = texts.find(({ text }) => text === 'What follows')?.y ?? Infinity;
  expect(after).toBeLessThan(Math.min(...lines) - 8);
});

test('few sources stand on one line', async () => {
  const named = (await drawn([chart(SOURCES.slice(0, 3))])).filter(({ text }) => SOURCES.includes(text));
  expect(new Set(named.map(({ y }) => Math.round(y))).size).toBe(1);
});
