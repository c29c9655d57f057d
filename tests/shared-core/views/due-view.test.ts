import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dueViewSchema, type WindowView } from '../../../shared-core/views/due-view.ts';
import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { METRES_IN } from '../../../shared-core/units/distance.ts';
import { anyDate, day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const months = (n: number) => ({ repeat: { months: n, distance: null } });
const distance = (value: number, unit: 'km' | 'mi' = 'mi') => ({ repeat: { months: null, distance: { value, unit } } });
const windowsOf = (household: MemoryHousehold, car = 0) => household.must('due.show', {}).cars[car]?.windows ?? [];

/** A car of miles with an item in every state, a duty and a doubtful reading; and one with nothing. */
function full(): MemoryHousehold {
  const household = memoryHousehold({ unit: 'mi' });
  household.must('car.add', { id: 'bare', name: 'A bare one' });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-25') });
  for (const [date, value] of [['2024-01-10', 9000], ['2025-01-10', 18_000], ['2026-11-20', 34_000]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  household.must('reading.record', { id: 'odd', car: 'pip', value: 3400 });
  const add = (item: RequestOf<'item.add'>) => household.must('item.add', { history: 'never-done', ...item });
  add({ id: 'fluid', car: 'pip', name: 'Brake fluid', interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } } });
  add({ id: 'belt', car: 'pip', name: 'Belt', interval: distance(33_000) });
  add({ id: 'oil', car: 'pip', name: 'Oil', interval: distance(34_100) });
  add({ id: 'plugs', car: 'pip', name: 'Plugs', interval: distance(60_000) });
  add({ id: 'coolant', car: 'pip', name: 'Coolant', interval: months(60), history: 'unknown' });
  add({ id: 'bottle', car: 'pip', name: 'Sealant', interval: months(120), printedDate: day('2027-01-31') });
  add({ id: 'far', car: 'pip', name: 'Airbag', interval: months(240) });
  household.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2027-05-15'), keepsDate: true, noticeDays: 30 });
  return household;
}

describe('the due view', () => {
  test('has the fields of `due --json`, each of its type, and no others but those named here', () => {
    const view = full().must('due.show', {});
    const keys = (one: object | null | undefined) => Object.keys(one ?? {}).sort();
    const car = view.cars.find((one) => one.id === 'pip');
    expect(keys(view)).toEqual(['cars', 'sessions', 'today']);
    expect(keys(car)).toEqual(['allowances', 'doubtful', 'followUps', 'id', 'measured', 'name', 'obligations', 'odometer', 'recalls', 'windows']);
    expect(keys(car?.odometer)).toEqual(['high', 'likely', 'low', 'unit']);
    // More than the documented fields: `sessions` beside the cars; `allowances`, `followUps`, `measured` and `recalls` of a car; `name` of a window; `id`, `name`, `opens` and `late` of a duty.
    for (const window of car?.windows ?? []) expect(keys(window)).toEqual(['arrangeFrom', 'earliest', 'item', 'lateBy', 'latest', 'likely', 'limb', 'name', 'reason', 'state']);
    for (const window of car?.windows ?? []) expect(keys(window.reason)).toEqual(['code', 'text', 'values']);
    expect(keys(car?.obligations[0])).toEqual(['from', 'id', 'kind', 'late', 'name', 'on', 'opens']);
    expect(keys(car?.doubtful[0])).toEqual(expect.arrayContaining(['code', 'date', 'reading', 'repairs', 'text', 'unit', 'value']));
    expect(dueViewSchema.parse(JSON.parse(JSON.stringify(view)))).toEqual(view);
  });

  test('tells each item by its state, limb and dates, soonest first', () => {
    const rows = windowsOf(full(), 0).map(({ item, state, limb, likely, lateBy }) => ({ item, state, limb, likely, lateBy }));
    expect(rows).toMatchObject([
      { item: 'fluid', state: 'late', limb: 'time', likely: '2025-11-25', lateBy: { days: 365, months: 12, distance: null } },
      { item: 'belt', state: 'late', limb: 'distance', lateBy: { days: 0, months: 0, distance: { value: 1000, unit: 'mi' } } },
      { item: 'oil', state: 'probably-due', limb: 'distance', lateBy: null },
      { item: 'bottle', state: 'ahead', limb: 'printed-date', likely: '2027-01-31', lateBy: null },
      { item: 'plugs', state: 'ahead', limb: 'distance', lateBy: null },
      { item: 'far', state: 'ahead', limb: 'time', likely: null, lateBy: null },
      { item: 'coolant', state: 'unknown', limb: null, likely: null, lateBy: null },
    ]);
  });

  test('says why, in a sentence whose every place is filled', () => {
    const reasons = Object.fromEntries(windowsOf(full()).map((window) => [window.item, window.reason]));
    expect(reasons['fluid']).toEqual({ code: 'reason-time-first-registration', values: { since: '2022-11-25', date: '2025-11-25', target: null, unit: 'mi' }, text: 'Time comes first: never done since first registration on 25 Nov 2022, so until 25 Nov 2025.' });
    expect(reasons['belt']).toMatchObject({ code: 'reason-distance-first-registration', values: { target: 33_000, unit: 'mi' } });
    expect(reasons['bottle']).toMatchObject({ code: 'reason-printed-date', values: { date: '2027-01-31' } });
    expect(reasons['coolant']).toMatchObject({ code: 'reason-unknown' });
    for (const reason of Object.values(reasons)) expect(reason.text).not.toMatch(/\{|undefined|null| {2}| \./);
  });

  test('duties are told with the day from which to arrange them and the day from which a renewal keeps the date', () => {
    expect(full().must('due.show', {}).cars[0]?.obligations).toEqual([
      { id: 'test', kind: 'roadworthiness-test', name: 'roadworthiness test', on: '2027-05-15', from: '2027-04-15', opens: '2027-04-16', late: false },
    ]);
  });

  test.each([
    { case: 'no notice', noticeDays: 0, from: '2026-12-18' },
    { case: 'less than the least', noticeDays: 7, from: '2026-12-18' },
    { case: 'the least', noticeDays: 14, from: '2026-12-18' },
    { case: 'more', noticeDays: 60, from: '2026-11-02' },
  ])('with $case, a duty of 1 January is arranged from $from (by hand; at least 14 days: DESIGN section 4)', ({ noticeDays, from }) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip' });
    household.must('obligation.add', { car: 'pip', kind: 'printed-expiry', name: 'first-aid kit', lastValidDay: day('2027-01-01'), months: null, noticeDays });
    expect(household.must('due.show', {}).cars[0]?.obligations).toMatchObject([{ kind: 'printed-expiry', name: 'first-aid kit', from, opens: null }]);
  });

  test('a duty is late from the day after its last valid day', () => {
    const household = full();
    const late = (on: string) => household.on(on).must('due.show', {}).cars.find((car) => car.id === 'pip')?.obligations[0]?.late;
    expect([late('2027-05-15'), late('2027-05-16')]).toEqual([false, true]);
  });

  test('what is needed from a slow supplier is arranged sooner', () => {
    const household = full();
    household.must('specification.set', { id: 'belt-a', name: 'Belt A', unit: 'each' });
    household.must('part.set', { id: 'belt', name: 'Belt', meets: ['belt-a'] });
    household.must('supplier.set', { id: 'slow', name: 'Slow', leadDays: 30 });
    household.must('offer.set', { supplier: 'slow', part: 'belt', quantity: 1, priceMinor: 100, seenOn: day('2026-11-01') });
    household.must('item.add', { id: 'wipers', car: 'pip', name: 'Wipers', history: 'never-done', interval: months(60), needs: [{ specification: 'belt-a', quantity: 1 }] });
    // By hand: 2027-11-25 less 30 + 7 days.
    expect(windowsOf(household).find((window) => window.item === 'wipers')).toMatchObject({ likely: '2027-11-25', arrangeFrom: '2027-10-19' });
  });

  test('a record of several lines on an item is one completion of it', () => {
    const household = full();
    household.must('record.add', { car: 'pip', lines: [{ item: 'fluid' }, { item: 'fluid', name: 'Bled again' }] });
    expect(household.must('car.show', { car: 'pip' }).items.find((one) => one.item.id === 'fluid')?.doneOn).toEqual(['2026-11-25']);
  });

  test('a car with nothing comes last and is told with nothing', () => {
    expect(full().must('due.show', {}).cars[1]).toEqual({ id: 'bare', name: 'A bare one', odometer: null, windows: [], obligations: [], doubtful: [], allowances: [], measured: [], recalls: [], followUps: [] });
  });

  test('an empty household has no cars', () => {
    expect(memoryHousehold().must('due.show', {})).toEqual({ today: '2026-11-25', cars: [], sessions: [] });
  });
});

describe('what is missing for a date', () => {
  const one = (car: Omit<RequestOf<'car.add'>, 'name'>, item: Omit<RequestOf<'item.add'>, 'car' | 'name'>, readings: readonly (readonly [string, number])[] = []) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip', ...car });
    for (const [date, value] of readings) household.must('reading.record', { car: 'pip', value, date: day(date) });
    household.must('item.add', { id: 'x', car: 'pip', name: 'X', ...item });
    return household;
  };
  const state = (household: MemoryHousehold) => { const [window] = windowsOf(household); return [window?.state, window?.reason.code]; };

  test.each([
    { case: 'an answer about its history', car: {}, item: { interval: months(12) }, readings: [], expected: ['unknown', 'reason-unknown'] },
    { case: 'the first registration', car: {}, item: { interval: months(12), history: 'never-done' as const }, readings: [], expected: ['unknown', 'reason-no-registration'] },
    { case: 'the day of purchase', car: {}, item: { interval: months(12), history: 'from-purchase' as const }, readings: [], expected: ['unknown', 'reason-no-purchase'] },
    { case: 'the day of purchase, though it was registered once', car: { firstRegistered: day('2020-03-01') }, item: { interval: months(12), history: 'from-purchase' as const }, readings: [], expected: ['unknown', 'reason-no-purchase'] },
    { case: 'a reading', car: { firstRegistered: day('2020-03-01') }, item: { interval: distance(10_000, 'km'), history: 'never-done' as const }, readings: [], expected: ['unknown', 'reason-no-reading'] },
    { case: 'a reading of about the day of purchase', car: { keptSince: day('2024-01-01') }, item: { interval: distance(10_000, 'km'), history: 'from-purchase' as const }, readings: [['2026-01-10', 50_000]] as const, expected: ['unknown', 'reason-no-distance'] },
    { case: 'nothing: a first distance counts from 0', car: {}, item: { interval: distance(90_000, 'km'), history: 'never-done' as const }, readings: [['2026-01-10', 50_000]] as const, expected: ['ahead', 'reason-distance-first-registration'] },
    { case: 'nothing: a printed date stands by itself', car: {}, item: { interval: months(12), printedDate: day('2027-01-31') }, readings: [], expected: ['ahead', 'reason-printed-date'] },
  ])('$case', ({ car, item, readings, expected }) => {
    expect(state(one(car, item, readings))).toEqual(expected);
  });

  test('work done before anybody read the odometer gives no distance, and that is said', () => {
    const household = one({}, { interval: distance(10_000, 'km') }, [['2026-01-10', 50_000]]);
    household.must('record.add', { car: 'pip', date: day('2025-06-01'), lines: [{ item: 'x' }] });
    expect(state(household)).toEqual(['unknown', 'reason-no-distance']);
    expect(windowsOf(household)[0]?.reason.text).toContain('from 1 Jun 2025');
  });

  test('nothing within five years is no unknown', () => {
    expect(state(one({}, { interval: distance(900_000, 'km'), history: 'never-done' }, [['2026-01-10', 50_000]]))).toEqual(['ahead', 'reason-not-foreseeable']);
  });
});

describe('after a replaced instrument', () => {
  function camper(): MemoryHousehold {
    const household = memoryHousehold();
    household.must('car.add', { id: 'camper', name: 'Camper' });
    household.must('reading.record', { car: 'camper', value: 80_000, date: day('2025-01-10') });
    household.must('item.add', { id: 'oil', car: 'camper', name: 'Oil', interval: distance(5000, 'km') });
    household.must('item.add', { id: 'belt', car: 'camper', name: 'Belt', interval: distance(60_000, 'km') });
    household.must('record.add', { car: 'camper', date: day('2025-01-10'), lines: [{ item: 'oil' }, { item: 'belt' }] });
    household.must('reading.record', { car: 'camper', value: 10, date: day('2026-05-01'), replaced: { lastShown: { value: 90_000, unit: 'km' } } });
    household.must('reading.record', { car: 'camper', value: 2010, date: day('2026-09-01') });
    return household;
  }

  // By hand: oil 80 000 + 5000 = 85 000 on the old one, passed by 92 000 - 85 000; belt 140 000 - 89 990 = 50 010 on the new one.
  test('a target is told as the instrument of its time shows it', () => {
    const [oil, belt] = windowsOf(camper());
    expect(oil).toMatchObject({ item: 'oil', state: 'late', lateBy: { distance: { value: 7000, unit: 'km' } }, reason: { code: 'reason-distance-old-instrument', values: { target: 85_000 } } });
    expect(belt).toMatchObject({ item: 'belt', reason: { code: 'reason-distance-completion', values: { target: 50_010 } } });
  });
});

describe('any household', () => {
  interface Story {
    readonly log: readonly { readonly date: LocalDate; readonly km: number }[];
    readonly everyKm: number;
    readonly everyMonths: number | null;
    readonly doneOn: LocalDate | null;
  }
  const anyStory: fc.Arbitrary<Story> = fc
    .record({
      start: anyDate(day('2022-01-01'), day('2023-12-31')), first: fc.integer({ min: 0, max: 90_000 }), steps: fc.array(fc.record({ days: fc.integer({ min: 20, max: 300 }), kmADay: fc.integer({ min: 5, max: 90 }) }), { maxLength: 3 }),
      everyKm: fc.integer({ min: 1000, max: 60_000 }), everyMonths: fc.option(fc.integer({ min: 1, max: 48 })), doneOn: fc.option(anyDate(day('2022-01-01'), day('2024-12-31'))),
    })
    .map(({ start, first, steps, ...rest }) => {
      const log = [{ date: start, km: first }];
      for (const { days, kmADay } of steps) log.push({ date: addDays(log.at(-1)?.date ?? start, days), km: (log.at(-1)?.km ?? 0) + days * kmADay });
      return { log, ...rest };
    });

  /** Windows of a household that lived the story, every date moved by some days, in one unit or the other. */
  function live(story: Story, moved = 0, unit: 'km' | 'mi' = 'km', moreKm = 0): WindowView | undefined {
    const inUnit = (km: number) => (unit === 'km' ? km : (km * METRES_IN.km) / METRES_IN.mi);
    const household = memoryHousehold({ unit }).on(addDays(day('2026-11-25'), moved));
    household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: addDays(day('2021-06-01'), moved) });
    for (const [at, { date, km }] of story.log.entries()) household.must('reading.record', { car: 'pip', value: inUnit(km + (at === story.log.length - 1 ? moreKm : 0)), date: addDays(date, moved), sure: true });
    household.must('item.add', { id: 'x', car: 'pip', name: 'X', history: 'never-done', interval: { repeat: { months: story.everyMonths, distance: { value: inUnit(story.everyKm), unit } } } });
    if (story.doneOn !== null) household.must('record.add', { car: 'pip', date: addDays(story.doneOn, moved), lines: [{ item: 'x' }] });
    return windowsOf(household)[0];
  }

  const datesOf = (window: WindowView | undefined) => [window?.earliest, window?.likely, window?.latest, window?.arrangeFrom].map((date) => date ?? null);

  test('moves by four years when every date does', () => {
    fc.assert(fc.property(anyStory, (story) => {
      const [now, moved] = [live(story), live(story, 1461)];
      expect(datesOf(moved)).toEqual(datesOf(now).map((date) => (date === null ? null : addDays(date, 1461))));
      expect([moved?.state, moved?.limb, moved?.lateBy]).toEqual([now?.state, now?.limb, now?.lateBy]);
    }), { numRuns: 40 });
  });

  test('is the same in miles as in km, to the metre\'s rounding', () => {
    fc.assert(fc.property(anyStory, (story) => {
      const [km, mi] = [live(story), live(story, 0, 'mi')];
      expect([mi?.state, mi?.limb]).toEqual([km?.state, km?.limb]);
      const days = (window: WindowView | undefined) => datesOf(window).map((date) => (date === null ? null : new Date(date).getTime() / 86_400_000));
      for (const [at, one] of days(km).entries()) expect(Math.abs((one ?? 0) - (days(mi)[at] ?? 0))).toBeLessThanOrEqual(1);
    }), { numRuns: 40 });
  });

  // No declared distance; work done on or after the last reading is left out, for a higher reading then moves its target too.
  test('a higher last reading never makes a date later', () => {
    fc.assert(fc.property(anyStory, fc.integer({ min: 1, max: 3000 }), (story, more) => {
      fc.pre(story.doneOn === null);
      const never = '9999-12-31';
      const [as, higher] = [live(story), live(story, 0, 'km', more)];
      for (const edge of ['earliest', 'likely', 'latest'] as const) expect((higher?.[edge] ?? never) <= (as?.[edge] ?? never)).toBe(true);
    }), { numRuns: 60 });
  });

  test('work done later never gives the earlier next date, where distance is not counted from a forecast', () => {
    fc.assert(fc.property(anyStory, anyDate(day('2022-01-01'), day('2024-12-31')), anyDate(day('2022-01-01'), day('2024-12-31')), (story, one, other) => {
      const last = story.log.at(-1)?.date ?? '';
      fc.pre(one <= last && other <= last);
      const likely = (doneOn: LocalDate) => live({ ...story, doneOn })?.likely ?? '9999-12-31';
      expect(likely(one < other ? one : other) <= likely(one < other ? other : one)).toBe(true);
    }), { numRuns: 40 });
  });
});
