import { readingRecorded } from '../../fleet/reading.ts';
import { hexText } from '../../journal/hex-text.ts';
import type { Sha256 } from '../../journal/digest.ts';
import { utf8Bytes } from '../../journal/utf8-text.ts';
import { workRecorded } from '../../records/work-record.ts';
import type { Refusal } from '../../result/result.ts';
import { say, sayRefusal } from '../../result/words/say.ts';
import type { DecidedRow } from './import-decide.ts';
import { meantPlace } from './import-place.ts';
import { examplesOf } from './import-questions.ts';
import type { DecidedTable } from './import-table.ts';
import type { ImportedRow, ImportView } from './import-view.ts';

/** The file that a table came in. */
export interface ImportedFile {
  /** Its name without folders; null where it has none. */
  readonly name: string | null;
  readonly encoding: string;
  /** Of its bytes. */
  readonly digest: string;
}

const FIRST_ROWS = 20;
const LONGEST_CELL = 80;
const MOST_CELLS = 20;

/** What is shown of a decided table before anything is stored. */
export function showImport(table: DecidedTable, file: ImportedFile, sha256: Sha256): ImportView {
  const rows = table.rows.map(showRow);
  const count = (state: ImportedRow['state']) => rows.filter((row) => row.state === state).length;
  const counts = { rows: rows.length, stored: count('stored'), setAside: count('set-aside'), duplicates: count('duplicate'), refused: count('refused'), waiting: count('waiting'), ...countsOf(table) };
  return {
    kind: table.layout.at.has('work') ? 'history' : 'readings',
    file: file.name, digest: file.digest,
    outcome: hexText(sha256(utf8Bytes(JSON.stringify([rows, table.questions])))),
    ready: table.questions.length === 0 && table.entries.length > 0,
    detected: detectedIn(table, file),
    columns: columnsOf(table),
    questions: [...table.questions],
    counts,
    cars: [...table.cars],
    items: [...table.texts],
    first: rows.slice(0, FIRST_ROWS),
    rows: rows.filter(({ state }) => state === 'refused' || state === 'set-aside' || state === 'duplicate'),
  };
}

function countsOf({ entries }: DecidedTable): { readonly readings: number; readonly records: number } {
  const count = (kind: string) => entries.filter((entry) => entry.kind === kind).length;
  return { readings: count(readingRecorded.kind), records: count(workRecorded.kind) };
}

function detectedIn({ delimiter, layout, order, mark, unit, car }: DecidedTable, file: ImportedFile): ImportView['detected'] {
  const none = { text: '', others: [] };
  return {
    encoding: file.encoding,
    delimiter: { value: delimiter.value, by: delimiter.by, text: '', others: [...delimiter.others] },
    hasHeader: { value: layout.heads !== null, by: layout.headedBy, text: '', others: [layout.heads === null] },
    dateOrder: { value: order.value, by: order.by, text: order.text, others: [...order.others] },
    decimalMark: { value: mark.value, by: mark.by, text: mark.text, others: [] },
    unit: { value: unit.value, by: unit.by, ...none },
    car: { value: car?.id ?? null, by: car === null ? 'none' : 'choice', ...none },
  };
}

function columnsOf({ layout }: DecidedTable): ImportView['columns'] {
  return Array.from({ length: layout.width }, (_, index) => {
    const [holds, known] = [...layout.at].find(([, one]) => one.index === index) ?? [null, null];
    return { number: index + 1, head: layout.heads === null ? null : (layout.heads[index] ?? '').trim().slice(0, LONGEST_CELL), holds, by: known?.by ?? 'none', examples: examplesOf(layout, index) };
  });
}

function showRow({ row, reading, lines, outcome }: DecidedRow): ImportedRow {
  const said = whyNot(outcome);
  const place = lines.length === 0 ? { place: null, placeName: null, by: null } : meantPlace(row.place, row.by);
  const decided = outcome?.ok === true && outcome.value.state !== 'duplicate' ? outcome.value.cleaned : [];
  return {
    line: row.line,
    state: outcome === null ? 'waiting' : outcome.ok ? outcome.value.state : 'refused',
    car: row.car?.id ?? null, date: row.date, reading,
    lines: lines.map(({ text, item, name, work }) => ({ text: cut(text), item: item?.id ?? null, name, work })),
    outcome: lines.length === 0 ? null : row.outcome, costMinor: row.costMinor, ...place, note: cut(row.note),
    code: said?.code ?? null, text: said === null ? '' : sayRefusal(said),
    cleaned: [...row.cleaned, ...decided].map((one) => ({ code: one.code, text: sayRefusal(one) })),
    cells: row.cells.slice(0, MOST_CELLS).map(cut),
  };
}

/** Why a row is not simply stored. */
function whyNot(outcome: DecidedRow['outcome']): Refusal | null {
  if (outcome === null) return null;
  if (!outcome.ok) return outcome.refusal;
  if (outcome.value.state === 'duplicate') return outcome.value.why;
  const { doubt } = outcome.value;
  return doubt === null ? null : { code: `doubt-${doubt}`, values: {} };
}

function cut(text: string): string {
  return text.slice(0, LONGEST_CELL);
}

/** A file's name as it is kept: without folders and signs that turn or break the writing; null where nothing is left. */
export function keptFileName(name: string | null): string | null {
  const bare = (name ?? '').normalize('NFC').replace(/^.*[\\/]/s, '').replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '').trim();
  return bare === '' ? null : bare.slice(0, 120).replace(/[\ud800-\udbff]$/, '').trim();
}

/** What a preview says in one sentence. */
export function sayImport({ counts, questions }: Pick<ImportView, 'counts' | 'questions'>): string {
  return say({ key: questions.length > 0 ? 'import-said-open' : 'import-said', values: { ...counts, questions: questions.length } });
}
