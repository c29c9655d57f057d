import { isCertain, meantDates, type DateOrder } from '../../calendar/date-text.ts';
import type { LocalDate } from '../../calendar/local-date.ts';
import { findCar } from '../../fleet/find-car.ts';
import { cars, type Car } from '../../fleet/car.ts';
import type { Facts } from '../../journal/facts.ts';
import type { RecordLine } from '../../records/work-record.ts';
import { ok, refuse, type Refusal, type Result } from '../../result/result.ts';
import { amountMark, minorOf, writtenAmount } from '../../units/amount-text.ts';
import type { DistanceUnit } from '../../units/distance.ts';
import { markShown, numberFromText, type DecimalMark } from '../../units/number-text.ts';
import { bareCell, cleanCell, onOneLine, withoutUnit, type CleanText } from './import-cells.ts';
import type { ImportColumn } from './import-choices.ts';
import type { GridRow } from './import-grid.ts';
import { unitOfWord } from './import-heads.ts';
import type { ImportLayout } from './import-layout.ts';
import { meantOutcome } from './import-outcome.ts';
import type { ImportQuestion } from './import-view.ts';

/** What a row is read with. */
export interface RowReading {
  readonly facts: Facts;
  readonly layout: ImportLayout;
  readonly order: DateOrder | null;
  readonly mark: DecimalMark | null;
  /** The car of rows that name none; null: not known. */
  readonly car: Car | null;
  readonly currency: string;
  readonly today: LocalDate;
}

/** A row as it is understood so far; what is null is empty in it, or waits for an answer. */
export interface MeantRow {
  readonly line: number;
  readonly cells: readonly string[];
  readonly car: Car | null;
  readonly date: LocalDate | null;
  /** `unit` is what stands in the row itself. */
  readonly reading: { readonly value: number; readonly unit: DistanceUnit | null } | null;
  readonly work: string;
  readonly outcome: RecordLine['outcome'];
  readonly costMinor: number | null;
  readonly place: string;
  readonly by: string;
  readonly note: string;
  readonly cleaned: readonly Refusal[];
  /** What must be answered before it can be stored. */
  readonly waits: ReadonlySet<ImportQuestion['answer']>;
  readonly refused: Refusal | null;
}

/** Reads one row: each cell by its column; the first that cannot be read refuses the row. */
export function meaningOf(reading: RowReading, row: GridRow): MeantRow {
  const waits = new Set<ImportQuestion['answer']>();
  const cell = (column: ImportColumn) => row.cells[reading.layout.at.get(column)?.index ?? -1] ?? '';
  const texts = { work: textIn(reading, row, 'work'), place: textIn(reading, row, 'place'), by: textIn(reading, row, 'by'), note: textIn(reading, row, 'note') };
  const parts = { wide: widthOf(reading, row), date: dateIn(reading, cell('date'), waits), car: carIn(reading, cell('car'), waits), reading: readingIn(reading, cell, waits), cost: costIn(reading, cell('cost'), waits), outcome: meantOutcome(cell('outcome')), ...texts };
  const bad = Object.values(parts).find((part) => !part.ok);
  const text = (part: Result<CleanText>) => (part.ok ? part.value.text : '');
  return {
    line: row.line, cells: row.cells, waits, refused: bad?.ok === false ? bad.refusal : null,
    car: parts.car.ok ? parts.car.value : null,
    date: parts.date.ok ? parts.date.value : null,
    reading: parts.reading.ok ? parts.reading.value : null,
    costMinor: parts.cost.ok ? parts.cost.value : null,
    outcome: parts.outcome.ok ? parts.outcome.value : 'done',
    work: text(texts.work), place: text(texts.place), by: text(texts.by), note: text(texts.note),
    cleaned: Object.values(texts).flatMap((part) => (part.ok ? part.value.cleaned : [])),
  };
}

/** Cells beyond the head's have been pushed there by a delimiter in the text: then no cell of the row can be trusted. */
function widthOf({ layout }: RowReading, { cells }: GridRow): Result<null> {
  const heads = layout.heads?.length;
  if (heads === undefined || cells.slice(heads).every((cell) => cell.trim() === '')) return ok(null);
  return refuse('import-too-many-cells', { cells: cells.length, heads });
}

/** The number of a column as people count, for a sentence. */
const numberOf = ({ layout }: RowReading, column: ImportColumn) => (layout.at.get(column)?.index ?? 0) + 1;

function textIn(reading: RowReading, { cells }: GridRow, column: ImportColumn): Result<CleanText> {
  const at = reading.layout.at.get(column);
  const clean = at === undefined ? ok({ text: '', cleaned: [] }) : cleanCell(cells[at.index] ?? '', at.index + 1);
  const several = column === 'work' || column === 'note';
  return clean.ok && !several ? ok(onOneLine(clean.value, numberOf(reading, column))) : clean;
}

function dateIn(reading: RowReading, cell: string, waits: Set<ImportQuestion['answer']>): Result<LocalDate | null> {
  if (!reading.layout.at.has('date')) {
    waits.add('columns');
    return ok(null);
  }
  const bare = bareCell(cell, numberOf(reading, 'date'));
  if (!bare.ok) return bare;
  const value = bare.value.slice(0, 40);
  const meant = meantDates(bare.value, reading.today);
  if (Object.keys(meant).length === 0) return value === '' ? refuse('import-date-missing') : refuse('import-not-a-date', { value });
  if (isCertain(meant)) return ok(meant.ymd ?? null);
  const date = reading.order === null ? undefined : meant[reading.order];
  if (date !== undefined) return ok(date);
  if (reading.order !== null) return refuse('import-other-order', { value });
  waits.add('dateOrder');
  return ok(null);
}

function carIn({ facts, car }: RowReading, cell: string, waits: Set<ImportQuestion['answer']>): Result<Car | null> {
  const named = cell.trim();
  if (named !== '') return carNamed(facts, named);
  if (car === null) waits.add('car');
  return ok(car);
}

/** A car by its id, its name, or its registration in any way of writing. */
function carNamed(facts: Facts, named: string): Result<Car> {
  const found = findCar(facts, named);
  if (found.ok || found.refusal.code !== 'unknown-car') return found;
  const plate = (text: string) => text.toLowerCase().replace(/[\s.-]/g, '');
  const [only, second] = facts.all(cars).filter(({ registration }) => registration !== null && plate(registration) === plate(named));
  return only !== undefined && second === undefined ? ok(only) : found;
}

function readingIn(reading: RowReading, cell: (column: ImportColumn) => string, waits: Set<ImportQuestion['answer']>): Result<MeantRow['reading']> {
  const bare = bareCell(cell('reading'), numberOf(reading, 'reading'));
  if (!bare.ok || bare.value === '') return bare.ok ? ok(null) : bare;
  const { number, unit } = withoutUnit(bare.value);
  const shown = markShown(number);
  const text = numberFromText(number, reading.mark);
  if (shown === 'either' && text === null) {
    waits.add('decimalMark');
    return ok(null);
  }
  if (text === null || text.startsWith('-')) return refuse('not-a-distance', { value: bare.value.slice(0, 40) });
  const named = cell('unit').trim();
  if (named !== '' && unitOfWord(named) === null) return refuse('import-unknown-unit', { value: named.slice(0, 40) });
  return ok({ value: Number(text), unit: unit ?? unitOfWord(named) });
}

function costIn(reading: RowReading, cell: string, waits: Set<ImportQuestion['answer']>): Result<number | null> {
  const bare = bareCell(cell, numberOf(reading, 'cost'));
  if (!bare.ok || bare.value === '') return bare.ok ? ok(null) : bare;
  const headed = reading.layout.known.get('cost')?.currencies ?? null;
  const written = writtenAmount(bare.value, reading.currency);
  if (!written.ok) return written;
  if (headed !== null && !headed.includes(reading.currency)) return refuse('import-currency', { value: `${bare.value.slice(0, 30)} ${headed[0] ?? ''}`, currency: reading.currency });
  const minor = minorOf(written.value, reading.currency, reading.mark);
  if (minor.ok && minor.value === null && amountMark(written.value.number, reading.currency) === 'either') waits.add('decimalMark');
  return minor;
}
