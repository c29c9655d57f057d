import type { LocalDate } from '../../calendar/local-date.ts';
import { itemKey } from '../../care/match-item.ts';
import { workRecords, type WorkRecord } from '../../records/work-record.ts';
import { refuse, type Refusal } from '../../result/result.ts';
import { METRES_IN, type DistanceAsTyped } from '../../units/distance.ts';
import { rowsBy } from './rows-by.ts';
import type { ImportFacts } from './import-facts.ts';

/** A reading or record that a row would only say again. */
interface Known {
  readonly id: string;
  /** The line of this table that says it; null: it stands already. */
  readonly line: number | null;
}

/** What is known already of readings and work, by car and day: what stands, and the rows taken so far. */
export interface KnownRows {
  reading(car: string, date: LocalDate, typed: DistanceAsTyped): Known | null;
  work(car: string, record: WorkIdentity): Known | null;
  addReading(car: string, date: LocalDate, typed: DistanceAsTyped, id: string, line: number): void;
  addWork(car: string, record: WorkIdentity, id: string, line: number): void;
}

/** By what work is known again: its day, what was done, and what it cost. */
export interface WorkIdentity {
  readonly date: LocalDate;
  readonly title: string;
  /** Items, or names of lines of their own. */
  readonly lines: readonly string[];
  readonly costMinor: number | null;
}

interface KnownReading extends Known {
  readonly metres: number;
}

interface KnownWork extends Known {
  readonly key: WorkKey;
}

interface WorkKey {
  readonly title: string;
  readonly lines: string;
  readonly costMinor: number | null;
}

/** Looks up what is known already, each car's lists read once. */
export function knownRows(facts: ImportFacts): KnownRows {
  const readingsBy = new Map<string, Map<string, KnownReading[]>>();
  const worksBy = new Map<string, Map<string, KnownWork[]>>();
  const readingsOf = (car: string) => once(readingsBy, car, () => rowsBy<KnownReading & { readonly date: LocalDate }, string>(facts.readingsBelow(car).map((one) => ({ id: one.id, line: null, metres: one.shown, date: one.date })), ({ date }) => date));
  const worksOf = (car: string) => once(worksBy, car, () => rowsBy(facts.ofCar(workRecords, car).map((one) => ({ key: keyOf(identityOf(one)), id: one.id, line: null, date: one.date })), ({ date }) => date));
  return {
    // As people write it in whole units: half a unit off is the same reading, taken from a table that had rounded it.
    reading: (car, date, typed) => (readingsOf(car).get(date) ?? []).find(({ metres }) => Math.abs(metres - typed.value * METRES_IN[typed.unit]) < METRES_IN[typed.unit] / 2) ?? null,
    work: (car, record) => {
      const key = keyOf(record);
      return (worksOf(car).get(record.date) ?? []).find((other) => sameWork(other.key, key)) ?? null;
    },
    addReading: (car, date, typed, id, line) => append(readingsOf(car), date, { id, line, metres: typed.value * METRES_IN[typed.unit] }),
    addWork: (car, record, id, line) => append(worksOf(car), record.date, { key: keyOf(record), id, line }),
  };
}

/** Why a row is skipped: it stands already, or an earlier row of the table says it. */
export function saidAlready(known: Known): Refusal {
  return known.line === null ? refuse('import-known').refusal : refuse('import-twice', { line: known.line }).refusal;
}

function identityOf(record: WorkRecord): WorkIdentity {
  const { date, title, lines, printedTotalMinor, costs } = record;
  const costMinor = printedTotalMinor ?? (costs.length === 0 ? null : costs.reduce((sum, { amountMinor }) => sum + amountMinor, 0));
  return { date, title, lines: lines.map(({ item, name }) => item ?? name), costMinor };
}

function sameWork(one: WorkKey, other: WorkKey): boolean {
  const costsAgree = one.costMinor === null || other.costMinor === null || one.costMinor === other.costMinor;
  return costsAgree && (one.title === other.title || one.lines === other.lines);
}

function keyOf({ title, lines, costMinor }: WorkIdentity): WorkKey {
  return { title: plain(title), lines: lines.map(plain).sort().join(' / '), costMinor };
}

function plain(text: string): string {
  return itemKey(text) || text.trim().toLowerCase();
}

function once<Value>(map: Map<string, Value>, key: string, make: () => Value): Value {
  const known = map.get(key) ?? make();
  map.set(key, known);
  return known;
}

function append<Value>(map: Map<string, Value[]>, key: string, value: Value): void {
  once(map, key, () => []).push(value);
}
