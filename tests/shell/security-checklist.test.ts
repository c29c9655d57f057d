import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const read = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');

/** The rows of the table in DEVELOPERS.md: the item's number, and the line that does it. */
const rows = read('DEVELOPERS.md').split('\n').flatMap((line) => {
  const cells = line.split(' | ');
  const item = /^\| (\d+) /.exec(line)?.[1];
  const [file, code] = [cells[2], cells[3]].map((cell) => /^`(.+)`$/.exec(cell ?? '')?.[1]);
  return cells.length === 5 && item !== undefined && file !== undefined && code !== undefined ? [{ item: Number(item), file, code }] : [];
});

// Source: Electron's security checklist: 17 items seen, 18 to 20 of later editions from memory.
test('every item of the checklist is in the table', () => {
  expect([...new Set(rows.map(({ item }) => item))]).toEqual(Array.from({ length: 20 }, (_, at) => at + 1));
});

test.each(rows)('item $item: $file has the line that does it', ({ file, code }) => {
  expect(read(file).split('\n').map((line) => line.trim())).toContain(code);
});
