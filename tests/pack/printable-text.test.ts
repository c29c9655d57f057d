import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fontsHold, printableText } from '../../electron/pack/printable-text.ts';
import { day, openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { packTexts } from './pack-texts.ts';

const canPrint = fontsHold();
const mark = (count: number) => `[${count} character${count === 1 ? '' : 's'} that this page cannot print; see data/history.json]`;

test.each([
  { case: 'Latin with its accents', text: 'Ördög façade Łódź đây', printed: 'Ördög façade Łódź đây', places: 0 },
  { case: 'Cyrillic', text: 'Замена масла, ґїЁ', printed: 'Замена масла, ґїЁ', places: 0 },
  { case: 'Greek', text: 'Αλλαγή λαδιών', printed: 'Αλλαγή λαδιών', places: 0 },
  { case: 'Chinese', text: '機油 5 l', printed: `${mark(2)} 5 l`, places: 1 },
  { case: 'Japanese in two words', text: 'オイル 交換', printed: mark(5), places: 1 },
  { case: 'Hebrew among Latin', text: 'to שמן and back', printed: `to ${mark(3)} and back`, places: 1 },
  { case: 'Arabic, twice', text: 'زيت/زيت', printed: `${mark(3)}/${mark(3)}`, places: 2 },
  { case: 'a picture of two code points', text: 'wash 🚗\ufe0f', printed: `wash ${mark(1)}`, places: 1 },
  { case: 'a joiner between letters', text: 'a\u200db', printed: 'ab', places: 0 },
  { case: 'lines', text: 'a\nb\t機', printed: `a\nb\t${mark(1)}`, places: 1 },
])('$case', ({ text, printed, places }) => {
  expect(printableText(text, canPrint)).toEqual({ text: printed, places });
});

test('whatever is typed, nothing is left that would be a box, and what can be printed is as it was', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (typed) => {
    const { text } = printableText(typed, canPrint);
    expect([...text].every((character) => '\n\r\t'.includes(character) || canPrint(character))).toBe(true);
    const isWhole = [...typed].every((character) => '\n\r\t'.includes(character) || canPrint(character));
    if (isWhole) expect(text).toBe(typed);
  }), { numRuns: 500 });
});

test('a pack prints what its fonts have, marks what they do not, says so on its page of summary, and holds it whole in JSON and CSV', async () => {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Пип' });
  await host.must('record.add', { id: 'a', car: 'pip', date: day('2026-11-20'), title: 'Αλλαγή λαδιών', lines: [{ name: '機油' }], doneBy: 'שמן' });
  const { pdf, file } = await packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder() })).path);
  for (const words of ['Service history of Пип', 'Αλλαγή λαδιών', mark(2), mark(3), 'From the PDF alone: characters that its fonts do not have, in 2 places']) expect(pdf).toContain(words);
  expect(pdf).not.toMatch(/機|שמן/);
  for (const path of ['data/history.json', 'data/tables/records.csv']) for (const word of ['機油', 'שמן']) expect(file(path)).toContain(word);
  expect((JSON.parse(file('data/history.json')) as { document: { blocks: unknown } }).document.blocks).toContainEqual(expect.objectContaining({ rows: [['機油', 'replace', 'done']] }) as unknown);
  expect((await host.must('pack.preview', { car: 'pip' })).withheld.join(' ')).toContain('in 2 places');
});

test('a pack whose every character is printed says nothing of it', async () => {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  expect((await packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder() })).path)).pdf).not.toContain('its fonts');
});
