import { say, sayDate, sayNumber } from '../../shared-core/result/words/say.ts';
import type { ImportedRow, ImportQuestion, ImportView } from '../../shared-core/views/import/import-view.ts';
import type { Import } from '../../shared-core/records/import.ts';
import { sayImport } from '../../shared-core/views/import/show-import.ts';

const OPTION_OF: Readonly<Record<ImportQuestion['answer'], string>> = { columns: '--columns', car: '--car', dateOrder: '--date-order', decimalMark: '--decimal-mark', unit: '--unit', items: '--items' };
const SHOWN_ROWS = 5;

/** A preview as text for a person: how the table was read, what is open, the first rows, and every row that is not simply stored. */
export function previewText(view: ImportView): string {
  return [sayImport(view), `Read as: ${readAs(view)}.`, ...view.questions.flatMap(questionLines), ...firstLines(view), ...rowLines(view), ...endLines(view)].join('\n');
}

/** What was stored, as text. */
export function keptText(view: ImportView, id: string): string {
  const { counts } = view;
  return [`Stored: ${sayNumber(counts.readings)} readings and ${sayNumber(counts.records)} records as import ${id}.`, ...rowLines(view), ...itemLines(view), `"import --withdraw ${id}" takes all of it back.`].join('\n');
}

/** The imports that stand, as text. */
export function importsText(imports: readonly Import[]): string {
  const lines = imports.map((one) => `${one.id}  ${sayDate(one.on)}  ${one.file ?? 'without a name'}: ${one.readings} readings, ${one.records} records`);
  return lines.length === 0 ? 'No import stands.' : lines.join('\n');
}

function readAs({ detected, columns }: ImportView): string {
  const delimiter = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'upright lines' }[detected.delimiter.value ?? ','];
  const held = columns.filter(({ holds }) => holds !== null).map(({ number, holds }) => `${holds}=${number}`);
  const order = detected.dateOrder.value === null ? [] : [`dates ${say({ key: `import-order-${detected.dateOrder.value}`, values: {} })}${detected.dateOrder.text === '' ? '' : ` (${detected.dateOrder.text})`}`];
  const unit = detected.unit.value === null ? [] : [`readings in ${detected.unit.value}`];
  const left = columns.filter(({ holds, head }) => holds === null && head !== null && head !== '').map(({ head }) => head);
  return [detected.encoding, `parted by ${delimiter}`, detected.hasHeader.value === true ? 'with a head' : 'without a head', `columns ${held.join(',') || 'none'}`, ...order, ...unit, ...(left.length === 0 ? [] : [`left out: ${left.join(', ')}`])].join('; ');
}

function questionLines(question: ImportQuestion): readonly string[] {
  const given = (value: string) => (question.answer === 'items' ? `${OPTION_OF.items} "${question.subject ?? ''}=${value}"` : `${OPTION_OF[question.answer]} ${value}`);
  return [
    `? ${question.text}`,
    ...question.options.map(({ value, text, examples }) => `    ${given(value)}  ${text}${examples.length === 0 ? '' : `: ${examples.join(', ')}`}${value === question.suggested ? `  (likely${question.why === null ? '' : `: ${question.why}`})` : ''}`),
  ];
}

function firstLines({ first }: ImportView): readonly string[] {
  const rows = first.filter(({ state }) => state !== 'refused').slice(0, SHOWN_ROWS);
  return rows.length === 0 ? [] : ['The first rows as understood:', ...rows.map((row) => `  line ${row.line}: ${understood(row)}`)];
}

function understood(row: ImportedRow): string {
  const work = row.lines.map(({ name, item }) => (item === null ? `"${name}"` : name)).join(', ');
  const parts = [row.car ?? '?', row.date === null ? '?' : sayDate(row.date), row.reading === null ? '' : `${sayNumber(row.reading.value)} ${row.reading.unit}`, work, row.placeName ?? ''];
  return parts.filter((part) => part !== '').join(', ');
}

function rowLines({ rows }: ImportView): readonly string[] {
  const named = rows.filter(({ state }) => state !== 'duplicate');
  const skipped = rows.filter(({ state }) => state === 'duplicate').map(({ line }) => line);
  const lines = named.map((row) => `  line ${row.line} ${row.state === 'refused' ? 'refused' : 'set aside'}${row.date === null ? '' : `, ${sayDate(row.date)}`}: ${row.text} (${row.code ?? ''})`);
  return skipped.length === 0 ? lines : [...lines, `  Skipped, for they stand already or are said twice: lines ${spans(skipped)}.`];
}

/** Numbers in order, runs of them as spans. @example spans([2, 3, 4, 7]) //=> '2 to 4, 7' */
function spans(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? String(from) : `${from} to ${to}`)).join(', ');
}

function itemLines({ items }: ImportView): readonly string[] {
  const own = items.filter(({ item, how }) => item === null && how === 'none').map(({ text, near }) => `"${text}"${near.length === 0 ? '' : ` (perhaps ${near.map(({ id }) => id).join(' or ')})`}`);
  const slips = items.filter(({ how }) => how === 'spelling').map(({ text, name }) => `  "${text}" is taken for ${name}.`);
  return [...slips, ...(own.length === 0 ? [] : [`Lines of their own: ${own.join(', ')}.`])];
}

function endLines(view: ImportView): readonly string[] {
  return [...itemLines(view), view.ready ? 'Nothing is stored yet; --keep stores it.' : 'Nothing is stored.'];
}
