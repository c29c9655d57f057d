import type { Car } from '../../fleet/car.ts';
import { cars } from '../../fleet/car.ts';
import { findCar, findHousehold } from '../../fleet/find-car.ts';
import type { Facts } from '../../journal/facts.ts';
import type { Moment } from '../../journal/operation.ts';
import type { EntryKinds } from '../../journal/replay.ts';
import { ok, refuse, type Result } from '../../result/result.ts';
import { amountMark, writtenAmount } from '../../units/amount-text.ts';
import { markShown, numberFromText } from '../../units/number-text.ts';
import { importCars, type ImportCar } from './import-cars.ts';
import { withoutUnit } from './import-cells.ts';
import type { ImportChoices, ImportColumn } from './import-choices.ts';
import { cutTable, type CutTable } from './import-cut.ts';
import { decideRows, type DecidedRows } from './import-decide.ts';
import { findDateOrder, type FoundOrder } from './import-dates.ts';
import { importFacts } from './import-facts.ts';
import type { GridRow } from './import-grid.ts';
import { knownRows } from './import-known.ts';
import type { ImportLayout } from './import-layout.ts';
import { findMark, type FoundMark, type WrittenNumber } from './import-marks.ts';
import { meaningOf } from './import-meaning.ts';
import { carQuestion, columnQuestions, itemQuestions } from './import-questions.ts';
import { findUnit, type FoundUnit } from './import-units.ts';
import type { ImportQuestion, ImportView } from './import-view.ts';
import { workReader } from './import-work.ts';

/** A whole table decided on: what was found out about it, what is to be asked, and every row in order of line. */
export interface DecidedTable extends CutTable, DecidedRows {
  readonly order: FoundOrder;
  readonly mark: FoundMark;
  readonly unit: FoundUnit;
  readonly car: Car | null;
  readonly questions: readonly ImportQuestion[];
  readonly texts: readonly ImportView['items'][number][];
  readonly cars: readonly ImportCar[];
}

/**
 * Decides on a table of readings or of work done: what stands where, what is open, and every row as if it were entered by hand,
 * each seeing the ones before. A bad row is left out and named; what the table leaves open is asked. Nothing is stored here.
 */
export function decideTable(facts: Facts, text: string, choices: ImportChoices, kinds: EntryKinds, moment: Moment): Result<DecidedTable> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const { currency, locale } = household.value;
  const car = carOf(facts, choices);
  if (!car.ok) return car;
  const cut = cutTable(text, choices, moment.today);
  if (!cut.ok) return cut;
  const { layout, delimiter } = cut.value;
  if (columnQuestions(layout).some(({ options }) => options.length === 0)) return refuse('import-no-values');
  const order = findDateOrder({ dates: datesIn(layout), today: moment.today, chosen: choices.dateOrder, locale });
  const mark = findMark(numbersIn(layout, currency), choices.decimalMark);
  const over = importFacts(facts);
  const rows = layout.rows.map((row) => meaningOf({ facts: over, layout, order: order.value, mark: mark.value, car: car.value, currency, today: moment.today }, row));
  const unit = findUnit(over, rows, layout, choices);
  const work = workReader(over, choices.items);
  const decided = decideRows({ facts: over, known: knownRows(over), moment }, rows, unit, work, kinds);
  const asked = [...columnQuestions(layout), carQuestion(facts, rows), order.question, mark.question, unit.question, ...itemQuestions(work.texts())];
  return ok({ layout, delimiter, order, mark, unit, car: car.value, questions: asked.filter((one) => one !== null), texts: work.texts(), cars: importCars(facts, decided.entries), ...decided });
}

/** The car chosen, or the only one there is; null where there are several. */
function carOf(facts: Facts, { car }: ImportChoices): Result<Car | null> {
  if (car !== null) return findCar(facts, car);
  const [only, second] = facts.all(cars);
  if (only === undefined) return refuse('import-no-car');
  return ok(second === undefined ? only : null);
}

function cellIn(layout: ImportLayout, { cells }: GridRow, column: ImportColumn): string {
  return cells[layout.at.get(column)?.index ?? -1]?.trim() ?? '';
}

function datesIn(layout: ImportLayout) {
  return layout.rows.map((row) => {
    const number = numberFromText(withoutUnit(cellIn(layout, row, 'reading')).number, '.');
    return { line: row.line, text: cellIn(layout, row, 'date'), value: number === null ? null : Number(number) };
  });
}

function numbersIn(layout: ImportLayout, currency: string): readonly WrittenNumber[] {
  return layout.rows.flatMap((row): WrittenNumber[] => {
    const reading = withoutUnit(cellIn(layout, row, 'reading')).number;
    const cost = writtenAmount(cellIn(layout, row, 'cost'), currency);
    const [shown, shownCost] = [markShown(reading), cost.ok ? amountMark(cost.value.number, currency) : undefined];
    return [
      ...(shown === undefined ? [] : [{ line: row.line, column: 'reading' as const, text: reading, shown }]),
      ...(shownCost === undefined || !cost.ok ? [] : [{ line: row.line, column: 'cost' as const, text: cost.value.number, shown: shownCost }]),
    ];
  });
}
