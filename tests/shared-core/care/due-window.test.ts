import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { dueWindow, UNKNOWN_WINDOW, type DueLimbs } from '../../../shared-core/care/due-window.ts';
import { anyDate, day } from '../calendar/day.ts';
import { metresOf } from '../fleet/car-examples.ts';

const today = day('2026-11-25');
const bare: DueLimbs = { today, time: null, printedDate: null, distance: null, wear: null, target: null, driven: null, wornOut: false, noticeDays: 14 };
const span = (earliest: string | null, likely: string | null, latest: string | null) => {
  const date = (text: string | null) => (text === null ? null : day(text));
  return { earliest: date(earliest), likely: date(likely), latest: date(latest) };
};

describe('the due window', () => {
  // Source: our own definition (min of the limbs at each edge; on equality, time); dates by hand.
  test.each([
    {
      case: 'time alone is exact', limbs: { time: day('2027-03-01') },
      window: { state: 'ahead', earliest: '2027-03-01', likely: '2027-03-01', latest: '2027-03-01', arrangeFrom: '2027-02-15', limb: 'time', lateBy: null },
    },
    {
      case: 'distance alone', limbs: { distance: span('2027-01-10', '2027-03-01', '2027-06-01'), target: metresOf(70_000), driven: metresOf(60_000) },
      window: { state: 'ahead', earliest: '2027-01-10', likely: '2027-03-01', latest: '2027-06-01', arrangeFrom: '2027-01-10', limb: 'distance', lateBy: null },
    },
    {
      case: 'time cuts the late edge', limbs: { time: day('2027-04-01'), distance: span('2027-01-10', '2027-03-01', '2027-06-01') },
      window: { state: 'ahead', earliest: '2027-01-10', likely: '2027-03-01', latest: '2027-04-01', arrangeFrom: '2027-01-10', limb: 'distance' },
    },
    {
      case: 'time cuts the likely date too', limbs: { time: day('2027-02-01'), distance: span('2027-01-10', '2027-03-01', '2027-06-01') },
      window: { earliest: '2027-01-10', likely: '2027-02-01', latest: '2027-02-01', arrangeFrom: '2027-01-10', limb: 'time' },
    },
    {
      case: 'time before all of it: exact', limbs: { time: day('2027-01-05'), distance: span('2027-01-10', '2027-03-01', '2027-06-01') },
      window: { earliest: '2027-01-05', likely: '2027-01-05', latest: '2027-01-05', arrangeFrom: '2026-12-22', limb: 'time' },
    },
    {
      case: 'on equality, time', limbs: { time: day('2027-03-01'), distance: span('2027-01-10', '2027-03-01', '2027-06-01') },
      window: { likely: '2027-03-01', limb: 'time' },
    },
    {
      case: 'time and printed date equal: time', limbs: { time: day('2027-03-01'), printedDate: day('2027-03-01') },
      window: { likely: '2027-03-01', limb: 'time' },
    },
    {
      case: 'a printed date before the time', limbs: { time: day('2027-03-01'), printedDate: day('2027-01-15') },
      window: { state: 'ahead', likely: '2027-01-15', latest: '2027-01-15', arrangeFrom: '2027-01-01', limb: 'printed-date' },
    },
    {
      case: 'of two uncertain limbs, each edge by itself', limbs: { distance: span('2027-01-10', '2027-03-01', '2027-06-01'), wear: span('2027-02-01', '2027-02-20', '2027-07-01') },
      window: { earliest: '2027-01-10', likely: '2027-02-20', latest: '2027-06-01', limb: 'wear' },
    },
    {
      case: 'no likely date: of distance and wear, the one that can come earliest', limbs: { distance: span('2031-05-01', null, null), wear: span('2031-01-01', null, null) },
      window: { earliest: '2031-01-01', likely: null, limb: 'wear' },
    },
    {
      case: 'no likely date, and distance can come earliest', limbs: { distance: span('2031-01-01', null, null), wear: span('2031-05-01', null, null) },
      window: { earliest: '2031-01-01', likely: null, limb: 'distance' },
    },
    {
      case: 'no likely date by wear alone', limbs: { wear: span('2031-05-01', null, null) },
      window: { state: 'ahead', earliest: '2031-05-01', likely: null, limb: 'wear' },
    },
    {
      case: 'distance not to be foreseen, wear early', limbs: { distance: span(null, null, null), wear: span('2031-05-01', null, null) },
      window: { earliest: '2031-05-01', limb: 'wear' },
    },
    {
      case: 'worn out: late, by no days', limbs: { wear: span('2026-11-01', '2026-11-01', '2026-11-01'), wornOut: true, time: day('2027-03-01') },
      window: { state: 'late', likely: '2026-11-01', limb: 'wear', lateBy: { days: null, months: null, metres: null } },
    },
    {
      case: 'distance not to be foreseen, time governs', limbs: { time: day('2027-03-01'), distance: span(null, null, null) },
      window: { earliest: '2027-03-01', likely: '2027-03-01', latest: '2027-03-01', limb: 'time' },
    },
    {
      case: 'only its early edge to be foreseen', limbs: { distance: span('2031-01-01', null, null) },
      window: { state: 'ahead', earliest: '2031-01-01', likely: null, latest: null, arrangeFrom: '2031-01-01', limb: 'distance' },
    },
    { case: 'nothing to be foreseen', limbs: { distance: span(null, null, null) }, window: { state: 'ahead', earliest: null, likely: null, latest: null, arrangeFrom: null, limb: 'distance' } },
    { case: 'nothing at all', limbs: {}, window: { state: 'ahead', earliest: null, likely: null, latest: null, arrangeFrom: null, limb: null, lateBy: null } },
  ])('$case', ({ limbs, window }) => {
    expect(dueWindow({ ...bare, ...limbs })).toMatchObject(window);
  });

  // By hand: five years are 1826 days, so that 2026-11-25 reaches 2031-11-25.
  test.each([
    { time: '2031-11-25', likely: '2031-11-25' }, { time: '2031-11-26', likely: null },
  ])('a date beyond five years is no date: $time', ({ time, likely }) => {
    expect(dueWindow({ ...bare, time: day(time) })).toMatchObject({ state: 'ahead', earliest: likely, likely, latest: likely, limb: 'time' });
  });

  test('one may have to arrange something within five years that falls due after them', () => {
    expect(dueWindow({ ...bare, time: day('2031-12-01'), noticeDays: 14 }).arrangeFrom).toBe('2031-11-17');
  });

  test('an unknown history has no date', () => {
    expect(UNKNOWN_WINDOW).toEqual({ state: 'unknown', earliest: null, likely: null, latest: null, arrangeFrom: null, limb: null, lateBy: null });
  });
});

describe('the state', () => {
  const km = (value: number) => metresOf(value);
  test.each([
    { case: 'late: the day after', limbs: { time: day('2026-11-24') }, state: 'late' },
    { case: 'probably due: the day itself', limbs: { time: day('2026-11-25') }, state: 'probably-due' },
    { case: 'ahead: the day before', limbs: { time: day('2026-11-26') }, state: 'ahead' },
    { case: 'late: the day after its printed date', limbs: { printedDate: day('2026-11-24') }, state: 'late' },
    { case: 'probably due: its printed date', limbs: { printedDate: day('2026-11-25') }, state: 'probably-due' },
    { case: 'late: a reading at the target', limbs: { distance: span('2026-11-20', '2026-11-20', '2026-11-20'), target: km(60_000), driven: km(60_000) }, state: 'late' },
    { case: 'late: a reading past the target, its date ahead', limbs: { time: day('2027-11-20'), target: km(60_000), driven: km(60_001) }, state: 'late' },
    { case: 'only probably due, however long ago it was likely, while no reading says so', limbs: { distance: span('2026-01-01', '2026-02-01', '2026-03-01'), target: km(60_000), driven: km(59_999) }, state: 'probably-due' },
    { case: 'probably due: likely today', limbs: { distance: span('2026-11-01', '2026-11-25', '2026-12-25') }, state: 'probably-due' },
    { case: 'open: likely tomorrow', limbs: { distance: span('2026-11-01', '2026-11-26', '2026-12-25') }, state: 'open' },
    { case: 'open: earliest today', limbs: { distance: span('2026-11-25', '2026-12-26', '2027-12-25') }, state: 'open' },
    { case: 'ahead: earliest tomorrow', limbs: { distance: span('2026-11-26', '2026-12-26', '2027-12-25') }, state: 'ahead' },
    { case: 'open: earliest past, likely not to be foreseen', limbs: { distance: span('2026-11-01', null, null) }, state: 'open' },
    { case: 'late: a measurement past its limit', limbs: { time: day('2027-11-20'), wornOut: true }, state: 'late' },
  ])('$case', ({ limbs, state }) => {
    const window = dueWindow({ ...bare, ...limbs });
    expect(window.state).toBe(state);
    expect(window.lateBy !== null).toBe(state === 'late');
  });

  test('by how much stands beside it', () => {
    // Source: common practice, no source: brake fluid first at 36 months; at 48 months with none recorded it is 12 months late.
    expect(dueWindow({ ...bare, time: day('2025-11-25') }).lateBy).toEqual({ days: 365, months: 12, metres: null });
  });
});

describe('when to start to arrange it', () => {
  test.each([
    { case: 'its notice before an exact date', limbs: { time: day('2027-03-01'), noticeDays: 28 }, from: '2027-02-01' },
    { case: 'its early edge, where that is sooner', limbs: { time: day('2027-03-01'), distance: span('2027-01-05', '2027-05-01', null) }, from: '2027-01-05' },
    { case: 'no notice before an early edge: it is early enough', limbs: { distance: span('2027-01-05', '2027-05-01', null) }, from: '2027-01-05' },
    { case: 'the notice before a printed date', limbs: { time: day('2027-03-01'), printedDate: day('2027-02-20') }, from: '2027-02-06' },
    { case: 'it may lie in the past', limbs: { time: day('2026-11-30') }, from: '2026-11-16' },
  ])('$case', ({ limbs, from }) => {
    expect(dueWindow({ ...bare, ...limbs }).arrangeFrom).toBe(from);
  });
});

describe('any due window', () => {
  const anyDay = fc.option(anyDate(day('2020-01-01'), day('2034-01-01')), { freq: 3 });
  const anySpan = fc.option(fc.tuple(anyDay, anyDay, anyDay).map((days) => {
    const [earliest, likely, latest] = days.map((date) => date ?? null).sort((a, b) => ((a ?? '9') < (b ?? '9') ? -1 : 1));
    return { earliest: earliest ?? null, likely: likely ?? null, latest: latest ?? null };
  }));
  const anyMetres = fc.option(fc.integer({ min: 0, max: 200_000 }).map((km) => metresOf(km)));
  const anyLimbs: fc.Arbitrary<DueLimbs> = fc.record({
    today: anyDate(day('2024-01-01'), day('2028-01-01')), time: anyDay, printedDate: anyDay, distance: anySpan, wear: anySpan, target: anyMetres, driven: anyMetres, wornOut: fc.boolean(), noticeDays: fc.integer({ min: 14, max: 60 }),
  });
  const never = '9999-12-31';
  const dateOr = (date: LocalDate | null) => date ?? never;

  test('has its edges in order, each the earliest of its limbs', () => {
    fc.assert(fc.property(anyLimbs, (limbs) => {
      const { earliest, likely, latest } = dueWindow(limbs);
      expect([dateOr(earliest), dateOr(likely), dateOr(latest)]).toEqual([dateOr(earliest), dateOr(likely), dateOr(latest)].sort());
      const five = addDays(limbs.today, 1826);
      for (const edge of ['earliest', 'likely', 'latest'] as const) {
        const first = [limbs.time, limbs.printedDate, limbs.distance?.[edge] ?? null, limbs.wear?.[edge] ?? null].map(dateOr).sort()[0] ?? never;
        expect(dateOr({ earliest, likely, latest }[edge])).toBe(first > five ? never : first);
      }
    }), { numRuns: 500 });
  });

  test('is late exactly where one of the four reasons holds, and only then says by how much', () => {
    fc.assert(fc.property(anyLimbs, (limbs) => {
      const { state, lateBy } = dueWindow(limbs);
      const past = (date: LocalDate | null) => date !== null && limbs.today > date;
      const reasons = past(limbs.time) || past(limbs.printedDate) || (limbs.target !== null && limbs.driven !== null && limbs.driven >= limbs.target) || limbs.wornOut;
      expect([state === 'late', lateBy !== null]).toEqual([reasons, reasons]);
    }), { numRuns: 500 });
  });

  test('moves by four years when all its dates do', () => {
    const moved = (date: LocalDate | null) => (date === null ? null : addDays(date, 1461));
    const movedSpan = (one: DueLimbs['distance']) => (one === null ? null : { earliest: moved(one.earliest), likely: moved(one.likely), latest: moved(one.latest) });
    fc.assert(fc.property(anyLimbs, (limbs) => {
      const window = dueWindow(limbs);
      const later = dueWindow({ ...limbs, today: addDays(limbs.today, 1461), time: moved(limbs.time), printedDate: moved(limbs.printedDate), distance: movedSpan(limbs.distance), wear: movedSpan(limbs.wear) });
      expect(later).toEqual({ ...window, ...movedSpan(window), arrangeFrom: moved(window.arrangeFrom) });
    }), { numRuns: 500 });
  });

  test('is never asked for after its own early edge', () => {
    fc.assert(fc.property(anyLimbs, (limbs) => {
      const { arrangeFrom, earliest } = dueWindow(limbs);
      expect(dateOr(arrangeFrom) <= dateOr(earliest)).toBe(true);
    }));
  });
});
