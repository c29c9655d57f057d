import fc from 'fast-check';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { drawDocument } from '../../electron/pack/draw-document.ts';
import { heading, paragraph, table, type Block } from '../../shared-core/handover/document-value.ts';

// Source: our own rule, a widow and orphan control for whole entries: one that fits on a page is never parted over two.
const NOTHING = { small: new Map<string, Buffer>(), cover: null };
const columns = [['What', 3], ['Kind', 1]] as const;

/** The words of each page. */
async function pagesOf(blocks: readonly Block[], size: 'A4' | 'LETTER'): Promise<readonly string[]> {
  const bytes = await drawDocument({ title: 'T', language: 'en', subject: 'S', foot: 'F', blocks: [...blocks] }, { made: '2026-11-25', size, pictures: NOTHING });
  const pdf = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 }).promise;
  return Promise.all(Array.from({ length: pdf.numPages }, async (_, at) => (await (await pdf.getPage(at + 1)).getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' ')));
}

function entry(n: number, { facts, rows, papers, note }: { readonly facts: number; readonly rows: number; readonly papers: number; readonly note: string }): readonly Block[] {
  return [
    heading(3, `Begin${n}.`),
    { kind: 'facts', rows: Array.from({ length: facts }, (_, at): [string, string] => [`Label ${at}`, note]) },
    table(`Lines of ${n}`, columns, Array.from({ length: rows }, (_, at) => [`row ${at} ${note}`, 'part'])),
    paragraph(note),
    { kind: 'papers', items: Array.from({ length: papers }, (_, at) => ({ paper: 'a'.repeat(64), path: null, caption: `paper ${at}` })) },
    paragraph(`End${n}.`),
  ];
}

test('an entry that fits on a page stands on one page, and takes the heading above it along', async () => {
  const entryOf = fc.record({ facts: fc.integer({ min: 1, max: 5 }), rows: fc.integer({ min: 1, max: 6 }), papers: fc.integer({ min: 0, max: 4 }), note: fc.constantFrom('short', 'a longer note on what was done and seen that runs over more than one line of the cell it stands in, as such notes do') });
  await fc.assert(fc.asyncProperty(fc.array(entryOf, { minLength: 2, maxLength: 6 }), fc.constantFrom('A4' as const, 'LETTER' as const), async (entries, size) => {
    const pages = await pagesOf([heading(2, 'Records.'), ...entries.flatMap((one, n) => entry(n, one))], size);
    const pageOf = (word: string) => pages.findIndex((text) => text.includes(word));
    for (const n of entries.keys()) expect(pageOf(`End${n}.`), `entry ${n} of ${pages.length} pages`).toBe(pageOf(`Begin${n}.`));
    expect(pageOf('Records.')).toBe(pageOf('Begin0.'));
    // No page is left empty for it.
    expect(pages.every((text) => text.includes('.'))).toBe(true);
  }), { numRuns: 10 });
}, 120_000);

test('one that is longer than a page runs on from where it begins', async () => {
  const pages = await pagesOf([heading(2, 'Records.'), paragraph('Before it.'), ...entry(0, { facts: 3, rows: 80, papers: 0, note: 'x' })], 'A4');
  expect(pages.length).toBeGreaterThan(1);
  expect(pages[0]).toContain('Begin0.');
});

test('a heading never stands alone over one that is as long as a page', async () => {
  const note = 'a longer note on what was done and seen that runs over more than one line of the cell it stands in, as such notes do';
  for (const rows of [7, 8, 9, 10, 11, 12, 13, 14]) {
    const pages = await pagesOf([heading(2, 'Records.'), ...entry(0, { facts: 7, rows, papers: 3, note })], 'LETTER');
    expect(pages[0], `${rows} rows`).toContain('Begin0.');
  }
});
