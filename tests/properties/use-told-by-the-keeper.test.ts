import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { dueDays, likelyBetween } from '../../shared-core/fleet/odometer-forecast.ts';
import { fitUsage, type DayKm, type Usage, type UseChangeDay } from '../../shared-core/fleet/usage-rate.ts';
import { makeSeason, type Hemisphere, type LaidUpDays } from '../../shared-core/fleet/usage-season.ts';
import { must } from '../../shared-core/result/assert.ts';
import { METRES_IN } from '../../shared-core/units/distance.ts';
import { day } from '../shared-core/calendar/day.ts';
import { memoryHousehold } from '../shared-core/contract/memory-household.ts';
import { anyReadings } from '../shared-core/fleet/usage-examples.ts';

/** Four years with one leap day, in which the calendar comes round (1901 to 2099). */
const FOUR_YEARS = 1461;

/** What a keeper may tell of a car: lay-ups by month and by date, and changes of use, about the days of its readings. */
interface Told {
  readonly hemisphere: Hemisphere;
  readonly months: readonly number[];
  readonly layUps: readonly LaidUpDays[];
  readonly changes: readonly UseChangeDay[];
}

/** Days counted from the first reading. */
const anyTold = (declared: fc.Arbitrary<number | null>): fc.Arbitrary<Told> => fc.record({
  hemisphere: fc.constantFrom<Hemisphere>('north', 'south', 'none'),
  months: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 4 }),
  layUps: fc.array(fc.record({ from: fc.integer({ min: -100, max: 3000 }), days: fc.option(fc.integer({ min: 0, max: 300 })) }), { maxLength: 3 })
    .map((list) => list.map(({ from, days }) => ({ from, to: days === null ? null : from + days }))),
  changes: fc.array(fc.record({ day: fc.integer({ min: -100, max: 3000 }), declaredKmAYear: declared }), { maxLength: 3 }),
});
const undeclared = anyTold(fc.constant(null));
const declared = anyTold(fc.option(fc.integer({ min: 500, max: 60_000 })));
const anyAhead = fc.integer({ min: -500, max: 30_000 });

function fit(readings: readonly DayKm[], told: Told, moved = 0): Usage {
  const first = must(readings[0], 'first').day + moved;
  const at = readings.map((reading) => ({ day: reading.day + moved, km: reading.km }));
  const layUps = told.layUps.map(({ from, to }) => ({ from: first + from, to: to === null ? null : first + to }));
  const changes = told.changes.map((change) => ({ ...change, day: first + change.day }));
  return must(fitUsage({ readings: at, declaredKmAYear: null, season: makeSeason(told.hemisphere, told.months, layUps), changes }), 'usage');
}

const neverOr = (one: number | null) => one ?? Infinity;

describe('a car of which lay-ups and changes of use are told', () => {
  test('is due four years later when all dates are', () => {
    fc.assert(fc.property(anyReadings, declared, anyAhead, (readings, told, ahead) => {
      const [usage, moved] = [fit(readings, told), fit(readings, told, FOUR_YEARS)];
      const shift = (one: number | null) => (one === null ? null : one + FOUR_YEARS);
      const due = dueDays(usage, usage.lastKm + ahead);
      expect(dueDays(moved, usage.lastKm + ahead)).toEqual({ earliest: shift(due.earliest), likely: shift(due.likely), latest: shift(due.latest) });
    }));
  });

  // Without a declared distance: there, more distance may turn the guard, and with it the spread.
  test('is never due later by a higher last reading', () => {
    fc.assert(fc.property(anyReadings, undeclared, anyAhead, fc.integer({ min: 1, max: 5000 }), (readings, told, ahead, more) => {
      const last = must(readings.at(-1), 'last');
      const [usage, higher] = [fit(readings, told), fit([...readings.slice(0, -1), { day: last.day, km: last.km + more }], told)];
      const [due, dueHigher] = [dueDays(usage, last.km + ahead), dueDays(higher, last.km + ahead)];
      for (const edge of ['earliest', 'likely', 'latest'] as const) expect(neverOr(dueHigher[edge])).toBeLessThanOrEqual(neverOr(due[edge]));
    }));
  });

  test('comes to its due days in order, and drives the more the longer it goes', () => {
    fc.assert(fc.property(anyReadings, declared, anyAhead, fc.integer({ min: 0, max: 700 }), fc.integer({ min: 0, max: 700 }), (readings, told, ahead, one, other) => {
      const usage = fit(readings, told);
      const due = dueDays(usage, usage.lastKm + ahead);
      expect(neverOr(due.earliest)).toBeLessThanOrEqual(neverOr(due.likely));
      expect(neverOr(due.likely)).toBeLessThanOrEqual(neverOr(due.latest));
      const [from, middle, to] = [usage.lastDay, usage.lastDay + one, usage.lastDay + one + other];
      expect(likelyBetween(usage, from, middle) + likelyBetween(usage, middle, to)).toBeCloseTo(likelyBetween(usage, from, to), 6);
      expect(likelyBetween(usage, middle, to)).toBeGreaterThanOrEqual(0);
    }));
  });

  test('is never likely due sooner by a lay-up to come', () => {
    fc.assert(fc.property(anyReadings, undeclared, anyAhead, fc.integer({ min: 1, max: 400 }), fc.option(fc.integer({ min: 0, max: 300 })), (readings, told, ahead, after, days) => {
      const usage = fit(readings, told);
      const from = usage.lastDay - must(readings[0], 'first').day + after;
      const rested = fit(readings, { ...told, layUps: [...told.layUps, { from, to: days === null ? null : from + days }] });
      const target = usage.lastKm + ahead;
      expect(neverOr(dueDays(rested, target).likely)).toBeGreaterThanOrEqual(neverOr(dueDays(usage, target).likely));
    }));
  });
});

describe('a household in which they are told', () => {
  interface Story {
    readonly steps: readonly { readonly days: number; readonly kmADay: number }[];
    readonly rest: { readonly from: number; readonly days: number | null };
    readonly change: { readonly at: number; readonly kmAYear: number | null };
    readonly everyKm: number;
  }
  const anyStory: fc.Arbitrary<Story> = fc.record({
    steps: fc.array(fc.record({ days: fc.integer({ min: 20, max: 250 }), kmADay: fc.integer({ min: 5, max: 90 }) }), { minLength: 1, maxLength: 4 }),
    rest: fc.record({ from: fc.integer({ min: 0, max: 1500 }), days: fc.option(fc.integer({ min: 0, max: 300 })) }),
    change: fc.record({ at: fc.integer({ min: 0, max: 1500 }), kmAYear: fc.option(fc.integer({ min: 1000, max: 40_000 })) }),
    everyKm: fc.integer({ min: 1000, max: 60_000 }),
  });

  function live({ steps, rest, change, everyKm }: Story, moved: number, unit: 'km' | 'mi') {
    const typed = (km: number) => (unit === 'km' ? km : (km * METRES_IN.km) / METRES_IN.mi);
    const start = addDays(day('2023-01-10'), moved);
    const household = memoryHousehold({ unit }).on(addDays(day('2026-11-25'), moved));
    household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: addDays(start, -500) });
    let [date, km] = [start, 20_000];
    household.must('reading.record', { car: 'pip', value: typed(km), date, sure: true });
    for (const step of steps) {
      [date, km] = [addDays(date, step.days), km + step.days * step.kmADay];
      household.must('reading.record', { car: 'pip', value: typed(km), date, sure: true });
    }
    household.must('lay-up.set', { car: 'pip', from: addDays(start, rest.from), to: rest.days === null ? null : addDays(start, rest.from + rest.days) });
    household.must('use-change.set', { car: 'pip', date: addDays(start, change.at), declaredAYear: change.kmAYear === null ? null : { value: typed(change.kmAYear), unit } });
    household.must('item.add', { id: 'x', car: 'pip', name: 'X', history: 'never-done', interval: { repeat: { months: null, distance: { value: typed(everyKm), unit } } } });
    return household.must('due.show', {}).cars[0]?.windows[0];
  }

  const datesOf = (window: ReturnType<typeof live>): readonly (LocalDate | null)[] => [window?.earliest, window?.likely, window?.latest, window?.arrangeFrom].map((date) => date ?? null);

  test('shifting all dates by 1461 days shifts every window by 1461', () => {
    fc.assert(fc.property(anyStory, (story) => {
      const [now, moved] = [live(story, 0, 'km'), live(story, FOUR_YEARS, 'km')];
      expect(datesOf(moved)).toEqual(datesOf(now).map((date) => (date === null ? null : addDays(date, FOUR_YEARS))));
      expect(moved?.state).toBe(now?.state);
    }), { numRuns: 40 });
  });

  test('miles and km agree, to the metre\'s rounding', () => {
    fc.assert(fc.property(anyStory, (story) => {
      const [km, mi] = [datesOf(live(story, 0, 'km')), datesOf(live(story, 0, 'mi'))];
      for (const [at, date] of km.entries()) {
        const other = mi[at] ?? null;
        // At the far end of what is foreseen a metre may decide whether there is a date at all.
        if (date === null || other === null) expect([date, other].filter((one) => one !== null).every((one) => one > '2027-06-01')).toBe(true);
        else expect(Math.abs(daysBetween(date, other))).toBeLessThanOrEqual(1);
      }
    }), { numRuns: 40 });
  });
});
