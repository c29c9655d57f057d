import { dayNumber } from '../../calendar/local-date.ts';
import { carUse, dayKm } from '../../fleet/car-usage.ts';
import type { Car } from '../../fleet/car.ts';
import { offsetOf, instrumentOn } from '../../fleet/continuous-distance.ts';
import type { DayKm } from '../../fleet/usage-evidence.ts';
import { unitShownOn } from '../../fleet/unit-shown.ts';
import type { Facts } from '../../journal/facts.ts';
import { say } from '../../result/words/say.ts';
import { METRES_IN, type DistanceUnit } from '../../units/distance.ts';
import { rowsBy } from './rows-by.ts';
import type { ImportChoices } from './import-choices.ts';
import type { ImportLayout } from './import-layout.ts';
import type { MeantRow } from './import-meaning.ts';
import type { ImportQuestion, ImportView } from './import-view.ts';

/** The unit of the readings that name none; null: each car's own, unless a question is open. */
export interface FoundUnit {
  readonly value: DistanceUnit | null;
  readonly by: ImportView['detected']['unit']['by'];
  readonly question: ImportQuestion | null;
}

const UNITS: readonly DistanceUnit[] = ['km', 'mi'];
const LOOKED_AT_ROWS = 60;
const NAMED_LINES = 5;
const EXAMPLES = 3;
/** Off by more than this factor, while the other unit is off by less: then the car's own unit is doubted. A mile is 1.6 km. */
const DOUBTED_FROM = Math.log(1.25);

/**
 * Finds the unit: as chosen, by the column's head, else each car's own. It is asked where some readings name a unit that is not
 * the car's own and others none, and where the other unit agrees better with the readings that the car already has.
 *
 * Source: ours, no source.
 */
export function findUnit(facts: Facts, rows: readonly MeantRow[], layout: ImportLayout, choices: ImportChoices): FoundUnit {
  if (choices.unit !== null) return { value: choices.unit, by: 'choice', question: null };
  const headed = layout.known.get('reading')?.unit ?? null;
  if (headed !== null) return { value: headed, by: 'header', question: null };
  const read = rows.filter((row) => row.refused === null && row.reading !== null);
  const bare = read.filter(({ reading }) => reading?.unit === null);
  const named = new Set(read.flatMap(({ reading }) => reading?.unit ?? []));
  if (bare.length === 0) return { value: null, by: named.size > 0 ? 'values' : 'none', question: null };
  const cars = new Set(bare.map(({ car, date }) => (car === null || date === null ? null : unitShownOn(facts, car, date))));
  const own = named.size === 1 && cars.size === 1 && cars.has([...named][0] ?? null);
  if (named.size > 0 && !own) return { value: null, by: 'none', question: ask('import-ask-unit-some', bare, named.size === 1 ? ([...named][0] ?? null) : null, 'import-why-others') };
  const doubted = doubtedUnit(facts, bare);
  return { value: null, by: doubted === null ? 'car' : 'none', question: doubted === null ? null : ask('import-ask-unit-car', bare, doubted, 'import-why-known') };
}

function ask(code: string, bare: readonly MeantRow[], suggested: DistanceUnit | null, why: string): ImportQuestion {
  return {
    answer: 'unit', code, subject: null, suggested,
    text: say({ key: code, values: { count: bare.length, line: bare[0]?.line ?? 0 } }),
    options: UNITS.map((unit) => ({ value: unit, text: say({ key: `import-unit-${unit}`, values: {} }), examples: bare.slice(0, EXAMPLES).map(({ reading }) => `${reading?.value ?? ''} ${unit}`) })),
    why: suggested === null ? null : say({ key: why, values: {} }),
    lines: bare.slice(0, NAMED_LINES).map(({ line }) => line),
  };
}

/** The other unit, where the readings of the first car that can be compared are nearer to it. */
function doubtedUnit(facts: Facts, bare: readonly MeantRow[]): DistanceUnit | null {
  for (const rows of rowsBy(bare.filter(({ car, date }) => car !== null && date !== null), ({ car }) => car?.id).values()) {
    const car = rows[0]?.car ?? null;
    const other = car === null ? null : nearerInOther(facts, car, rows);
    if (other !== null) return other;
  }
  return null;
}

function nearerInOther(facts: Facts, car: Car, rows: readonly MeantRow[]): DistanceUnit | null {
  const use = carUse(facts, car);
  const known = use.points.map(dayKm);
  const step = Math.ceil(rows.length / LOOKED_AT_ROWS);
  const off: Record<DistanceUnit, number[]> = { km: [], mi: [] };
  const own: DistanceUnit[] = [];
  for (const { date, reading } of rows.filter((_, at) => at % step === 0)) {
    const expected = date === null ? null : kmOn(known, dayNumber(date));
    if (date === null || reading === null || expected === null) continue;
    own.push(unitShownOn(facts, car, date));
    const offset = offsetOf(use.instruments, instrumentOn(use.instruments, date)?.id ?? null) / 1000;
    for (const unit of UNITS) off[unit].push(Math.abs(Math.log((reading.value * METRES_IN[unit] / 1000 + offset) / expected)));
  }
  const [unit] = own;
  if (unit === undefined || own.some((one) => one !== unit)) return null;
  const other = unit === 'km' ? 'mi' : 'km';
  return median(off[unit]) > DOUBTED_FROM && median(off[other]) < DOUBTED_FROM ? other : null;
}

/** The known distance on a day between two readings, on a straight line; null outside them, and where the car is as good as new. */
function kmOn(known: readonly DayKm[], day: number): number | null {
  const after = known.findIndex((one) => one.day >= day);
  const [before, next] = [known[Math.max(0, after - 1)], known[after]];
  if (before === undefined || next === undefined || before.day > day) return null;
  const share = next.day === before.day ? 0 : (day - before.day) / (next.day - before.day);
  const km = before.km + share * (next.km - before.km);
  return km > 100 ? km : null;
}

function median(values: readonly number[]): number {
  const sorted = [...values].filter((value) => Number.isFinite(value)).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
