import { instrumentOn } from '../../fleet/continuous-distance.ts';
import type { LocalDate } from '../../calendar/local-date.ts';
import type { Car } from '../../fleet/car.ts';
import { instruments } from '../../fleet/instrument.ts';
import { unitShownOn } from '../../fleet/unit-shown.ts';
import type { NewEntry } from '../../journal/entry-kind.ts';
import type { EntryKinds } from '../../journal/replay.ts';
import type { Facts } from '../../journal/facts.ts';
import { must } from '../../result/assert.ts';
import type { Refusal, Result } from '../../result/result.ts';
import { fromTyped, type DistanceUnit } from '../../units/distance.ts';
import type { MeantRow } from './import-meaning.ts';
import { meantPlace } from './import-place.ts';
import { decideRow, type RowDeciding, type RowOutcome, type WholeRow } from './import-row.ts';
import { inTurn } from './import-turns.ts';
import type { FoundUnit } from './import-units.ts';
import type { MeantLine, WorkReader } from './import-work.ts';

/** A row and what it comes to; `outcome` is null while it waits for an answer. */
export interface DecidedRow {
  readonly row: MeantRow;
  readonly reading: WholeRow['reading'];
  readonly lines: readonly MeantLine[];
  readonly outcome: Result<RowOutcome> | null;
}

/** Every row in order of line, and the entries of those not left out, in the order in which they were decided on. */
export interface DecidedRows {
  readonly rows: readonly DecidedRow[];
  readonly entries: readonly NewEntry[];
}

/** Rows of which nothing is open are decided in turn, each laid over the facts for the next. */
export function decideRows(deciding: RowDeciding, rows: readonly MeantRow[], unit: FoundUnit, work: WorkReader, kinds: EntryKinds): DecidedRows {
  const entries: NewEntry[] = [];
  const shown = unitsShown(deciding.facts);
  const read = rows.map((row) => ({ row, ...furtherMeaning(row, unit, work, shown) }));
  const whole = read.flatMap(({ whole: one }) => (one === null ? [] : [{ car: one.car.id, date: one.date, metres: metresOf(one), row: one }]));
  const outcomes = new Map<number, Result<RowOutcome>>();
  for (const { row } of inTurn(whole)) {
    const decided = decideRow(deciding, row);
    outcomes.set(row.line, decided);
    const written = decided.ok && decided.value.state !== 'duplicate' ? decided.value.entries : [];
    for (const entry of written) deciding.facts.lay(must(kinds.get(entry.kind), 'kind of entry').apply(entry.values));
    entries.push(...written);
  }
  const decided = read.map(({ row, reading, lines, refused }): DecidedRow => ({ row, reading, lines, outcome: refused === null ? (outcomes.get(row.line) ?? null) : { ok: false, refusal: refused } }));
  return { rows: decided, entries };
}

function metresOf({ reading }: WholeRow): number | null {
  const metres = reading === null ? null : fromTyped(reading);
  return metres?.ok === true ? metres.value : null;
}

interface FurtherMeaning {
  readonly reading: WholeRow['reading'];
  readonly lines: readonly MeantLine[];
  readonly refused: Refusal | null;
  /** Null where something is open. */
  readonly whole: WholeRow | null;
}

/** What a row means once the unit is known and the work is read. */
function furtherMeaning(row: MeantRow, unit: FoundUnit, work: WorkReader, shown: UnitShown): FurtherMeaning {
  const { car, date, refused } = row;
  const read = car === null || refused !== null ? [] : work.read(car, row.work);
  // What was found good, or to be watched, was looked at and not renewed.
  const lines = row.outcome === 'good' || row.outcome === 'watch' ? read.map((line) => ({ ...line, work: 'check' as const })) : read;
  const own = row.reading?.unit ?? unit.value ?? (car === null || date === null || unit.question !== null ? null : shown(car, date));
  const reading = row.reading === null || own === null ? null : { value: row.reading.value, unit: own };
  const open = row.waits.size > 0 || (row.reading !== null && own === null) || lines.some(({ how }) => how === 'several');
  if (refused !== null || open || car === null || date === null) return { reading, lines, refused, whole: null };
  const whole = { line: row.line, car, date, reading, work: row.work, lines, outcome: row.outcome, costMinor: row.costMinor, note: row.note, ...meantPlace(row.place, row.by) };
  return { reading, lines, refused: null, whole };
}

type UnitShown = (car: Car, date: LocalDate) => DistanceUnit;

/** The unit of a car's instrument on a day, looked up once for each instrument. */
function unitsShown(facts: Facts): UnitShown {
  const known = new Map<string, DistanceUnit>();
  return (car, date) => {
    const key = `${car.id}/${instrumentOn(facts.ofCar(instruments, car.id), date)?.id ?? ''}`;
    const unit = known.get(key) ?? unitShownOn(facts, car, date);
    known.set(key, unit);
    return unit;
  };
}
