import { cars, type Car } from '../../fleet/car.ts';
import type { Facts } from '../../journal/facts.ts';
import { say } from '../../result/words/say.ts';
import type { ImportLayout } from './import-layout.ts';
import type { MeantRow } from './import-meaning.ts';
import type { ImportQuestion, ImportView } from './import-view.ts';

const NAMED_LINES = 5;
const EXAMPLES = 3;
const LONGEST_EXAMPLE = 40;

/** What the columns leave open: where the date stands, and a reading or the work. */
export function columnQuestions(layout: ImportLayout): readonly ImportQuestion[] {
  const all = Array.from({ length: layout.width }, (_, index) => index);
  const free = all.filter((index) => ![...layout.at.values()].some((one) => one.index === index));
  const questions: ImportQuestion[] = [];
  if (!layout.at.has('date')) questions.push(askColumn(layout, 'import-without-date', (layout.likeDates.length > 0 ? layout.likeDates : all).map((index) => `date=${index + 1}`)));
  if (layout.at.has('reading') || layout.at.has('work')) return questions;
  const readings = layout.likeReadings.filter((index) => free.includes(index)).map((index) => `reading=${index + 1}`);
  const works = free.filter((index) => !layout.likeReadings.includes(index) && !layout.likeDates.includes(index)).map((index) => `work=${index + 1}`);
  return [...questions, askColumn(layout, 'import-without-values', [...readings, ...works])];
}

function askColumn(layout: ImportLayout, code: string, values: readonly string[]): ImportQuestion {
  const [only] = values;
  return {
    answer: 'columns', code, text: say({ key: code, values: {} }), subject: null,
    options: values.map((value) => {
      const index = Number(value.split('=')[1]) - 1;
      const head = layout.heads?.[index]?.trim().slice(0, LONGEST_EXAMPLE) ?? '';
      const text = say({ key: head === '' ? 'import-column-number' : 'import-column-headed', values: { number: String(index + 1), head } });
      return { value, text, examples: examplesOf(layout, index) };
    }),
    // A column that is only left over is not likely to hold dates.
    suggested: values.length === 1 && (code !== 'import-without-date' || layout.likeDates.length === 1) ? (only ?? null) : null,
    why: null,
    lines: [],
  };
}

/** The first cells of a column that are not empty. */
export function examplesOf(layout: ImportLayout, index: number): string[] {
  const cells = layout.rows.slice(0, 50).map(({ cells: all }) => all[index]?.trim() ?? '').filter((cell) => cell !== '');
  return cells.slice(0, EXAMPLES).map((cell) => cell.slice(0, LONGEST_EXAMPLE));
}

/** Whose the rows are that name no car. */
export function carQuestion(facts: Facts, rows: readonly MeantRow[]): ImportQuestion | null {
  const waiting = rows.filter(({ waits }) => waits.has('car'));
  if (waiting.length === 0) return null;
  return {
    answer: 'car', code: 'import-without-car', text: say({ key: 'import-without-car', values: {} }), subject: null,
    options: facts.all(cars).map((car: Car) => ({ value: car.id, text: car.name, examples: car.registration === null ? [] : [car.registration] })),
    suggested: null, why: null, lines: waiting.slice(0, NAMED_LINES).map(({ line }) => line),
  };
}

/** Which of several items named alike a text means. */
export function itemQuestions(texts: readonly ImportView['items'][number][]): readonly ImportQuestion[] {
  return texts.filter(({ how }) => how === 'several').map((one): ImportQuestion => ({
    answer: 'items', code: 'import-ask-item', text: say({ key: 'import-ask-item', values: { text: one.text.slice(0, 80), count: one.near.length } }), subject: one.text,
    options: [...one.near.map(({ id, name }) => ({ value: id, text: name, examples: [] })), { value: '', text: say({ key: 'import-no-item', values: {} }), examples: [] }],
    suggested: null, why: null, lines: [],
  }));
}
