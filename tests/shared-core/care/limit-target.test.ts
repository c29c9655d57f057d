import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween } from '../../../shared-core/calendar/local-date.ts';
import { limitTarget } from '../../../shared-core/care/limit-target.ts';
import { anyDate, day } from '../calendar/day.ts';
import { metresOf, pip } from '../fleet/car-examples.ts';
import { doneOn, every, itemOf, knownFrom } from './limit-examples.ts';

const nothing = knownFrom('2020-03-01');
const yearly = { kind: 'calendar', firstDate: day('2022-03-01') } as const;
const certificate = (last: string) => ({ kind: 'keep-date', lastValidDay: day(last) }) as const;

describe('counted from the last completion', () => {
  // Source: our own definition; month ends by the rule of java.time (calendar tests); distances by hand.
  test.each([
    { case: 'months and distance from the last one', item: itemOf(every(12, 15_000)), done: [doneOn('2024-05-01', 40_000), doneOn('2025-06-10', 52_000)], date: '2026-06-10', km: 67_000 },
    { case: 'months alone', item: itemOf(every(24)), done: [doneOn('2025-11-25')], date: '2027-11-25', km: null },
    { case: 'distance alone', item: itemOf(every(null, 15_000)), done: [doneOn('2025-06-10', 52_000)], date: null, km: 67_000 },
    { case: 'clipped to the month\'s end', item: itemOf(every(6)), done: [doneOn('2025-08-31')], date: '2026-02-28', km: null },
    { case: 'never chained: from the anchor, not from a clipped date', item: itemOf(every(1)), done: [doneOn('2025-01-31'), doneOn('2025-02-28')], date: '2025-03-28', km: null },
    { case: 'however early, the repeat interval follows', item: itemOf(every(24, 30_000), {}, every(36, 60_000)), done: [doneOn('2020-03-20', 100)], date: '2022-03-20', km: 30_100 },
    { case: 'without an odometer only the months count', item: itemOf(every(12, 15_000)), done: [doneOn('2025-06-10')], date: '2026-06-10', km: null },
    { case: 'a record goes before what was said of the history', item: itemOf(every(12), { history: 'unknown' }), done: [doneOn('2025-06-10')], date: '2026-06-10', km: null },
  ])('$case', ({ item, done, date, km }) => {
    expect(limitTarget(item, pip, done, nothing)).toMatchObject({ date, metres: km === null ? null : metresOf(km), from: 'completion', since: done.at(-1)?.date });
  });

  test('miles are miles: 10 000 mi after 52 000 km', () => {
    // Source: NIST SP 811 (2008) B.8: 52 000 + 16 093.44 km.
    const item = itemOf({ months: null, distance: { value: 10_000, unit: 'mi' } });
    expect(limitTarget(item, pip, [doneOn('2025-06-10', 52_000)], nothing)?.metres).toBe(68_093_440);
  });

  test('an estimated odometer stays marked', () => {
    const done = { ...doneOn('2025-06-10', 52_000), estimated: true };
    expect(limitTarget(itemOf(every(null, 15_000)), pip, [done], nothing)).toMatchObject({ metres: metresOf(67_000), estimated: true });
  });
});

describe('never done', () => {
  test.each([
    { case: 'the first months from first registration, the first distance from 0', first: every(36, 60_000), registered: '2020-03-01', date: '2023-03-01', km: 60_000 },
    { case: 'no first registration: the distance still counts from 0', first: every(36, 60_000), registered: null, date: null, km: 60_000 },
    { case: 'distance alone needs no first registration', first: every(null, 60_000), registered: null, date: null, km: 60_000 },
  ])('$case', ({ first, registered, date, km }) => {
    const car = { ...pip, firstRegistered: registered === null ? null : day(registered) };
    expect(limitTarget(itemOf(every(24, 30_000), {}, first), car, [], nothing)).toEqual({ date, metres: metresOf(km), from: 'first-registration', since: registered, estimated: false });
  });

  test('months alone and no first registration: no limit is invented', () => {
    expect(limitTarget(itemOf(every(24), {}, every(36)), { ...pip, firstRegistered: null }, [], nothing)).toBeNull();
  });
});

describe('unknown history', () => {
  test('has no limit until it is answered', () => {
    expect(limitTarget(itemOf(every(12, 15_000), { history: 'unknown' }), pip, [], nothing)).toBeNull();
  });

  // By hand: 2024-07-01 is 182 of 366 days from 2024-01-01 to 2025-01-01: 40 000 + 182/366 x 10 000 = 44 972.678 km.
  test.each([
    { case: 'from the day it has been kept, on the line between readings', keptSince: '2024-07-01', known: knownFrom('2020-03-01', ['2024-01-01', 40_000], ['2025-01-01', 50_000]), date: '2025-07-01', km: 59_972.678, since: '2024-07-01', estimated: true },
    { case: 'from the day of a reading', keptSince: '2024-01-01', known: knownFrom('2020-03-01', ['2024-01-01', 40_000]), date: '2025-01-01', km: 55_000, since: '2024-01-01', estimated: false },
    { case: 'kept from new', keptSince: '2020-03-01', known: knownFrom('2020-03-01', ['2024-01-01', 40_000]), date: '2021-03-01', km: 15_000, since: '2020-03-01', estimated: true },
    { case: 'with no reading only the months count', keptSince: '2024-07-01', known: nothing, date: '2025-07-01', km: null, since: '2024-07-01', estimated: false },
  ])('counted from the purchase by choice: $case', ({ keptSince, known, date, km, since, estimated }) => {
    const car = { ...pip, keptSince: day(keptSince) };
    const item = itemOf(every(12, 15_000), { history: 'from-purchase' }, every(36, 60_000));
    expect(limitTarget(item, car, [], known)).toEqual({ date, metres: km === null ? null : metresOf(km), from: 'purchase', since, estimated });
  });

  test('from a purchase of which no day is known: no limit is invented', () => {
    const item = itemOf(every(12, 15_000), { history: 'from-purchase' });
    // First registration is another day: the car may have been bought years later.
    for (const firstRegistered of [day('2020-03-01'), null]) expect(limitTarget(item, { ...pip, keptSince: null, firstRegistered }, [], knownFrom('2020-03-01', ['2024-01-01', 40_000]))).toBeNull();
  });
});

describe('severe use', () => {
  test.each([
    { case: 'shortens what follows a completion', factor: 0.7, done: [doneOn('2025-06-10', 52_000)], date: '2026-02-10', km: 62_500, from: 'completion' },
    { case: 'and the first interval', factor: 0.5, done: [], date: '2021-09-01', km: 30_000, from: 'first-registration' },
    { case: 'never to nothing', factor: 0.4, done: [doneOn('2025-06-10', 52_000)], date: '2025-10-10', km: 58_000, from: 'completion' },
  ])('$case', ({ factor, done, date, km, from }) => {
    const item = itemOf(every(12, 15_000), {}, every(36, 60_000));
    expect(limitTarget(item, { ...pip, severeUse: factor }, done, nothing)).toMatchObject({ date, metres: metresOf(km), from });
  });

  test('leaves dates of the calendar and of certificates as they are', () => {
    const severe = { ...pip, severeUse: 0.4 };
    expect(limitTarget(itemOf(every(12), { anchor: yearly }), severe, [doneOn('2025-03-05')], nothing)?.date).toBe('2026-03-01');
    expect(limitTarget(itemOf(every(12), { anchor: certificate('2026-05-15') }), severe, [doneOn('2026-05-01')], nothing)?.date).toBe('2027-05-15');
  });
});

test('lay-up never stops the time limit: a car asleep for eleven months is due on the same date', () => {
  const asleep = { ...pip, laidUpMonths: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] };
  for (const anchor of [{ kind: 'completion' } as const, yearly, certificate('2026-05-15')]) {
    const item = itemOf(every(12), { anchor });
    expect(limitTarget(item, asleep, [doneOn('2025-06-10')], nothing)).toEqual(limitTarget(item, pip, [doneOn('2025-06-10')], nothing));
  }
});

describe('whole steps from a first date', () => {
  // Source: our own definition: the first step after both the day it was done and the date then in force; by hand.
  test.each([
    { case: 'never done: the first date', months: 12, first: '2022-03-01', done: [], date: '2022-03-01' },
    { case: 'done late: no step is lost', months: 12, first: '2022-03-01', done: ['2022-08-10'], date: '2023-03-01' },
    { case: 'done on the day', months: 12, first: '2022-03-01', done: ['2022-03-01'], date: '2023-03-01' },
    { case: 'done early: the date in force is met', months: 12, first: '2022-03-01', done: ['2022-02-20'], date: '2023-03-01' },
    { case: 'done early in a later year as well', months: 12, first: '2022-03-01', done: ['2022-03-05', '2023-02-15'], date: '2024-03-01' },
    { case: 'done so late that a step was missed', months: 12, first: '2022-03-01', done: ['2024-06-01'], date: '2025-03-01' },
    { case: 'two records of one day are one occasion', months: 12, first: '2022-03-01', done: ['2022-03-05', '2022-03-05'], date: '2023-03-01' },
    { case: 'a history older than the first round moves nothing', months: 12, first: '2024-01-31', done: ['2021-01-10', '2022-01-10', '2023-01-10'], date: '2024-01-31' },
    { case: 'two records of one occasion on neighbouring days', months: 12, first: '2027-01-31', done: ['2026-12-01', '2026-12-02'], date: '2028-01-31' },
    { case: 'from a 31st: clipped each time, never drifting', months: 1, first: '2025-01-31', done: ['2025-02-28'], date: '2025-03-31' },
    { case: 'from a 31st, done in February', months: 6, first: '2024-08-31', done: ['2024-09-01'], date: '2025-02-28' },
    { case: 'at the end of the calendar it stops', months: 12, first: '2199-12-31', done: ['2199-12-31'], date: '2199-12-31' },
  ])('$case', ({ months, first, done, date }) => {
    const item = itemOf(every(months), { anchor: { kind: 'calendar', firstDate: day(first) }, history: 'unknown' });
    expect(limitTarget(item, pip, done.map((one) => doneOn(one, 10_000)), nothing)).toEqual({ date, metres: null, from: 'first-date', since: first, estimated: false });
  });
});

describe('a certificate with a last valid day', () => {
  // Source: the published rule (keep-the-date tests); what came before the certificate in force is our own reading.
  test.each([
    { case: 'not renewed', done: [], date: '2026-05-15' },
    { case: 'renewed in the last month: the day is kept', done: ['2026-04-16'], date: '2027-05-15' },
    { case: 'renewed earlier: a year less a day', done: ['2026-04-14'], date: '2027-04-13' },
    { case: 'renewed late', done: ['2026-06-01'], date: '2027-05-31' },
    { case: 'renewed twice', done: ['2026-05-01', '2027-05-01'], date: '2028-05-15' },
    { case: 'the test that gave it, recorded later, does not shorten it', done: ['2025-04-20'], date: '2026-05-15' },
    { case: 'nor do older ones', done: ['2023-05-01', '2024-05-10', '2025-05-10'], date: '2026-05-15' },
  ])('$case', ({ done, date }) => {
    const item = itemOf(every(12), { anchor: certificate('2026-05-15'), history: 'unknown' });
    expect(limitTarget(item, pip, done.map((one) => doneOn(one)), nothing)).toMatchObject({ date, metres: null, from: 'certificate', since: done.at(-1) ?? '2026-05-15' });
  });
});

test('a certificate kept from a 31st comes back to the 31st after a short month', () => {
  // Source: "the new last day keeps the old one's day"; month-ends are our own reading.
  const item = itemOf(every(6), { anchor: certificate('2025-08-31'), history: 'unknown' });
  expect(limitTarget(item, pip, [doneOn('2025-08-20')], nothing)?.date).toBe('2026-02-28');
  expect(limitTarget(item, pip, [doneOn('2025-08-20'), doneOn('2026-02-10')], nothing)?.date).toBe('2026-08-31');
});

describe('any limit', () => {
  const anyMonths = fc.integer({ min: 1, max: 60 });
  const anyAnchor = fc.constantFrom({ kind: 'completion' } as const, { kind: 'calendar', firstDate: day('2010-01-31') } as const, certificate('2010-02-28'));
  const anyDone = anyDate(day('2008-01-01'), day('2040-01-01'));

  test('of two completions the later never gives the earlier next date', () => {
    fc.assert(fc.property(anyAnchor, anyMonths, anyDone, anyDone, (anchor, months, one, other) => {
      const next = (date: typeof one) => limitTarget(itemOf(every(months), { anchor }), pip, [{ date, metres: null, estimated: false }], nothing)?.date ?? '';
      const [earlier, late] = one < other ? [one, other] : [other, one];
      expect(next(earlier) <= next(late)).toBe(true);
    }), { numRuns: 500 });
  });

  test('one completion more never brings the next date forward', () => {
    fc.assert(fc.property(anyAnchor, anyMonths, fc.uniqueArray(anyDone, { minLength: 2, maxLength: 5 }), (anchor, months, dates) => {
      const done = [...dates].sort().map((date) => ({ date, metres: null, estimated: false }));
      const next = (list: typeof done) => limitTarget(itemOf(every(months), { anchor }), pip, list, nothing)?.date ?? '';
      expect(next(done.slice(0, -1)) <= next(done)).toBe(true);
    }), { numRuns: 500 });
  });

  test('after any completion, a date of the calendar lies ahead of it and is a whole step', () => {
    fc.assert(fc.property(anyDone, anyDone, anyMonths, (firstDate, done, months) => {
      const date = limitTarget(itemOf(every(months), { anchor: { kind: 'calendar', firstDate } }), pip, [{ date: done, metres: null, estimated: false }], nothing)?.date ?? firstDate;
      expect(date > done && date >= firstDate).toBe(true);
      const steps = Array.from({ length: 500 }, (_, step) => addMonths(firstDate, step * months));
      expect(steps).toContain(date);
    }));
  });

  test('moves by four years when every date does', () => {
    fc.assert(fc.property(anyAnchor, anyMonths, anyDone, (anchor, months, date) => {
      const moved = (days: number) => {
        const to = anchor.kind === 'calendar' ? { ...anchor, firstDate: addDays(anchor.firstDate, days) } : anchor.kind === 'keep-date' ? { ...anchor, lastValidDay: addDays(anchor.lastValidDay, days) } : anchor;
        return limitTarget(itemOf(every(months), { anchor: to }), pip, [{ date: addDays(date, days), metres: null, estimated: false }], nothing)?.date ?? date;
      };
      expect(daysBetween(moved(0), moved(1461))).toBe(1461);
    }));
  });

  test('a higher odometer at the work never lowers the distance target', () => {
    const anyKm = fc.integer({ min: 0, max: 400_000 });
    fc.assert(fc.property(anyKm, anyKm, fc.integer({ min: 1, max: 60_000 }), (one, other, km) => {
      const target = (at: number) => limitTarget(itemOf(every(null, km)), pip, [doneOn('2025-06-10', at)], nothing)?.metres ?? 0;
      expect(target(Math.min(one, other))).toBeLessThanOrEqual(target(Math.max(one, other)));
    }));
  });
});
