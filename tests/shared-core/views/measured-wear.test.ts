import { describe, expect, test } from 'vitest';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import type { WindowView } from '../../../shared-core/views/due-view.ts';
import { papersOfCar } from '../../../shared-core/views/papers-of-car.ts';
import { day } from '../calendar/day.ts';
import { measure, measuredHousehold, padItem, seriesOf, windowOf } from '../care/measured-household.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

describe('the earlier of wear and interval', () => {
  test('wear, where it comes first, and the numbers are said', () => {
    const household = measuredHousehold();
    padItem(household);
    measure(household, '2025-01-01', 9);
    measure(household, '2026-01-01', 7);
    // By hand: 2 mm every 10 000 km reach 3 mm at 50 000 km; the odometer stands at 38 333 km on 2026-11-01, at some 10 000 km a year.
    const window = windowOf(household);
    expect(window).toMatchObject({ state: 'ahead', limb: 'wear', lateBy: null, reason: { code: 'reason-wear' } });
    expect(window?.reason.text).toBe('Wear comes first: pad, front left, was 7 mm on 1 Jan 2026, wears by 2 mm every 10\u202f000 km, and 3 mm is its limit.');
    expect((window?.likely ?? '') > '2027-10-01' && (window?.likely ?? '') < '2028-03-01').toBe(true);
    expect(window?.earliest && window.likely && window.latest && window.earliest < window.likely && window.likely < window.latest).toBe(true);
    expect(seriesOf(household)[0]?.limits).toMatchObject([{ items: ['pads'], verdict: 'wears', earliest: window?.earliest, likely: window?.likely, latest: window?.latest }]);
  });

  test('the interval, where that comes first', () => {
    const household = measuredHousehold();
    padItem(household, { interval: { repeat: { months: 50, distance: null } } });
    measure(household, '2025-01-01', 9);
    measure(household, '2026-01-01', 7);
    expect(windowOf(household)).toMatchObject({ limb: 'time', likely: '2027-03-01', latest: '2027-03-01', reason: { code: 'reason-time-first-registration' } });
  });

  test('an interval by distance that comes later still makes the earlier edge no later', () => {
    const household = measuredHousehold();
    padItem(household, { interval: { repeat: { months: null, distance: { value: 60_000, unit: 'km' } } } });
    const alone = windowOf(household);
    measure(household, '2025-01-01', 9);
    measure(household, '2026-01-01', 7);
    const both = windowOf(household);
    expect([alone?.limb, both?.limb]).toEqual(['distance', 'wear']);
    expect((both?.earliest ?? '') < (alone?.earliest ?? '') && (both?.latest ?? '') < (alone?.latest ?? '9')).toBe(true);
  });

  test('of several places the first one governs', () => {
    const household = measuredHousehold();
    padItem(household);
    for (const [place, values] of [['front-left', [9, 8]], ['front-right', [9, 6]], ['rear-left', [9, 4]]] as const) {
      measure(household, '2025-01-01', values[0], { place });
      measure(household, '2026-01-01', values[1], { place });
    }
    // The rear is none of the places of this item.
    expect(windowOf(household)).toMatchObject({ limb: 'wear', reason: { values: { subject: 'pad, front right' } } });
  });
});

describe('an item of a starting set', () => {
  /** A car just bought with its set, and the law chosen for its tread. */
  function started(law: 'mm' | null = 'mm') {
    const household = memoryHousehold({ hemisphere: 'none' });
    household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2018-01-01'), keptSince: day('2026-11-01') });
    household.must('reading.record', { car: 'pip', value: 80_000, date: day('2026-11-01') });
    const { items } = household.must('items.start', { car: 'pip', set: 'petrol' });
    const tyres = items.find(({ name }) => name.startsWith('Tyre tread'))?.id ?? '';
    if (law !== null) household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 1.6, unit: 'mm' } });
    const shown = () => household.must('intake.show', { car: 'pip' });
    return { household, tyres, items, shown };
  }

  test.each([
    { what: 'tread', name: 'Tyre tread', value: 4, unit: 'mm' },
    { what: 'pad', name: 'Brake pads', value: 4, unit: 'mm' },
    { what: 'brake-fluid-moisture', name: 'Brake fluid', value: 2, unit: '%' },
    { what: 'battery-voltage', name: 'Starter battery', value: 12.5, unit: 'V' },
    { what: 'coolant-protection', name: 'Frost protection', value: -30, unit: 'C' },
    { what: 'belt', name: 'Drive belts', value: 2, unit: 'grade' },
  ] as const)('is found by what was measured: $what', ({ what, name, value, unit }) => {
    const { household, items } = started();
    const { measurement } = household.must('measurement.add', { car: 'pip', what, value, unit, place: what === 'tread' || what === 'pad' ? 'front-left' : null });
    expect(items.find(({ id }) => id === measurement.item)?.name).toMatch(name);
  });

  test('tread that fails the law chosen is said wherever the item is', () => {
    const { household, tyres, shown } = started();
    expect(windowOf(household, tyres)?.state).toBe('unknown');
    measure(household, '2026-11-20', 1.2, { what: 'tread', place: 'front-left' });
    const text = 'Tread, front left: was 1.2 mm on 20 Nov 2026, past its limit of 1.6 mm.';
    expect(windowOf(household, tyres)).toMatchObject({ state: 'late', limb: 'wear', reason: { text } });
    expect(shown().now.find(({ item }) => item === tyres)?.reason.text).toBe(text);
    expect(JSON.stringify(household.must('yard.show', {}))).toContain(text);
  });

  test('what was measured was looked at', () => {
    const { household, tyres, shown } = started();
    expect(shown().look.some(({ item }) => item === tyres)).toBe(true);
    measure(household, '2026-11-20', 5, { what: 'tread', place: 'front-left' });
    expect(shown().wait.find(({ item }) => item === tyres)).toMatchObject({ until: '2027-05-20', reason: { text: 'It was 5 mm when it was measured on 20 Nov 2026: look again by 20 May 2027.' } });
    household.on('2027-05-20');
    expect(shown().look.some(({ item }) => item === tyres)).toBe(true);
  });

  test('without a law chosen no limit is invented', () => {
    const { household, tyres } = started(null);
    measure(household, '2026-11-20', 1.2, { what: 'tread', place: 'front-left' });
    expect(windowOf(household, tyres)?.state).toBe('unknown');
  });
});

describe('worn past its limit', () => {
  test('is late, though no date has come', () => {
    const household = measuredHousehold();
    padItem(household);
    measure(household, '2026-11-20', 2.9);
    expect(windowOf(household)).toMatchObject({
      state: 'late', limb: 'wear', earliest: '2026-11-20', likely: '2026-11-20', lateBy: { days: 0, months: 0, distance: null },
      reason: { code: 'reason-worn-out', text: 'Pad, front left: was 2.9 mm on 20 Nov 2026, past its limit of 3 mm.' },
    });
  });

  test('is late by its date as well where that is past', () => {
    const household = measuredHousehold();
    padItem(household, { interval: { repeat: { months: 40, distance: null } } });
    measure(household, '2026-11-20', 2.9);
    expect(windowOf(household)).toMatchObject({ state: 'late', limb: 'time', lateBy: { months: 6 } });
  });

  test('of two items only the one whose limit it is past', () => {
    const household = measuredHousehold();
    padItem(household);
    padItem(household, { id: 'look', measure: { kind: 'pad', name: null, places: [], limit: { value: 5, unit: 'mm' }, way: null } });
    measure(household, '2026-11-20', 4);
    expect([windowOf(household, 'pads')?.state, windowOf(household, 'look')?.state]).toEqual(['ahead', 'late']);
  });

  test('is the reason, though another is foreseen to have been worn before', () => {
    const household = measuredHousehold();
    padItem(household);
    measure(household, '2024-01-01', 9, { place: 'front-right' });
    measure(household, '2025-01-01', 3.2, { place: 'front-right' });
    expect(windowOf(household)).toMatchObject({ state: 'probably-due', reason: { code: 'reason-wear' } });
    measure(household, '2026-11-20', 2.9);
    expect(windowOf(household)).toMatchObject({ state: 'late', reason: { code: 'reason-worn-out', values: { subject: 'Pad, front left' } } });
  });

  test('is over once it was replaced, before anybody measures again', () => {
    const household = measuredHousehold();
    padItem(household);
    measure(household, '2026-11-20', 2.9);
    household.must('record.add', { car: 'pip', date: day('2026-11-22'), lines: [{ item: 'pads' }] });
    expect(windowOf(household)).toMatchObject({ state: 'ahead', limb: 'time', likely: null });
    expect(seriesOf(household)[0]?.limits).toMatchObject([{ verdict: 'too-few', words: { code: 'wear-none' } }]);
  });

  test('a wheel in store makes nothing late', () => {
    const household = measuredHousehold();
    household.must('item.add', { id: 'tyres', car: 'pip', name: 'tyres', history: 'never-done', interval: { repeat: { months: 120, distance: null } }, measure: { kind: 'tread', name: null, places: [], limit: { value: 1.6, unit: 'mm' }, way: null } });
    household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: day('2024-01-01') });
    measure(household, '2026-11-01', 1.5, { what: 'tread', wheel: 'a' });
    expect(windowOf(household, 'tyres')).toMatchObject({ state: 'late', reason: { text: 'Tread, A, front left: was 1.5 mm on 1 Nov 2026, past its limit of 1.6 mm.' } });
    household.must('wheel.move', { car: 'pip', moves: [{ wheel: 'a', place: 'spare' }] });
    expect(windowOf(household, 'tyres')).toMatchObject({ state: 'ahead' });
    household.must('item.change', { id: 'tyres', measure: { kind: 'tread', name: null, places: ['spare'], limit: { value: 1.6, unit: 'mm' }, way: null } });
    expect(windowOf(household, 'tyres')).toMatchObject({ state: 'late' });
  });
});

describe('measurements that give no date', () => {
  test.each([
    { case: 'one', values: [['2026-01-01', 7]], verdict: 'too-few', text: 'Measured once: it takes two, with wear between them. Measure again later.' },
    { case: 'no wear yet', values: [['2025-01-01', 7], ['2026-01-01', 6.8]], verdict: 'flat', text: 'No wear to be seen beyond what gauges differ. Measure again later.' },
    {
      case: 'they contradict', values: [['2025-01-01', 5], ['2026-01-01', 9]], verdict: 'contradictory',
      text: 'It got better, which wear does not do: 5 mm on 1 Jan 2025, then 9 mm on 1 Jan 2026. Was it replaced? Then mark the later one as the first of a new part. Else correct the one that is wrong.',
    },
  ] as const)('$case: the interval stands alone, and the series says why', ({ values, verdict, text }) => {
    const household = measuredHousehold();
    padItem(household);
    const before = windowOf(household);
    for (const [date, value] of values) measure(household, date, value);
    expect(windowOf(household)).toEqual(before);
    expect(seriesOf(household)[0]?.limits).toMatchObject([{ verdict, earliest: null, likely: null, latest: null, words: { text } }]);
  });

  test('what lies beyond five years is said so', () => {
    const household = measuredHousehold();
    padItem(household);
    measure(household, '2025-01-01', 14);
    measure(household, '2026-01-01', 13);
    expect(seriesOf(household)[0]?.limits).toMatchObject([{ verdict: 'wears', likely: null, words: { text: 'It wears by 1 mm every 10\u202f000 km and does not reach 3 mm within five years.' } }]);
  });

  test('no limit, no verdict; the line is drawn all the same', () => {
    const household = measuredHousehold();
    measure(household, '2025-01-01', 9);
    measure(household, '2026-01-01', 7);
    expect(seriesOf(household)).toMatchObject([{ limits: [], line: { rate: { rate: -2 } } }]);
  });
});

describe('an item of unknown history', () => {
  test('is due by wear alone, and says that its interval does not count', () => {
    const household = measuredHousehold();
    padItem(household, { history: 'unknown' });
    expect(windowOf(household)).toMatchObject({ state: 'unknown', reason: { code: 'reason-unknown' } });
    measure(household, '2025-01-01', 9);
    expect(windowOf(household)).toMatchObject({ state: 'unknown' });
    measure(household, '2026-01-01', 7);
    expect(windowOf(household)).toMatchObject({ state: 'ahead', limb: 'wear', reason: { code: 'reason-wear-alone' } });
    measure(household, '2026-11-20', 2.5);
    expect(windowOf(household)).toMatchObject({ state: 'late', limb: 'wear', reason: { code: 'reason-worn-out' } });
  });

  test('with no likely date within five years, the one that can come earliest governs', () => {
    const household = measuredHousehold();
    padItem(household, { history: 'unknown' });
    for (const [place, first] of [['front-left', 15], ['front-right', 14]] as const) {
      measure(household, '2025-01-01', first, { place });
      measure(household, '2026-01-01', first - 1, { place });
    }
    expect(windowOf(household)).toMatchObject({ likely: null, limb: 'wear', reason: { values: { subject: 'Pad, front right' } } });
  });

  test('stays unknown where wear gives no date within five years', () => {
    const household = measuredHousehold();
    padItem(household, { history: 'unknown' });
    measure(household, '2025-01-01', 30);
    measure(household, '2026-01-01', 29);
    expect(windowOf(household)).toMatchObject({ state: 'unknown', earliest: null });
  });
});

describe('what belongs together', () => {
  test('the paper of a measurement is a paper of the car', () => {
    const household = measuredHousehold();
    const paper = 'ab'.repeat(32);
    measure(household, '2026-01-01', 7, { paper });
    expect(papersOfCar(household.facts(), 'pip')).toEqual([paper]);
  });

  test('shifted by 1461 days, every window and verdict shifts by 1461', () => {
    // The household's own story, told again four years and a leap day later.
    const told = (shift: number) => {
      const on = (date: string) => addDays(day(date), shift);
      const household = memoryHousehold({ hemisphere: 'none' });
      household.on(on('2026-11-25'));
      household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: on('2023-01-01') });
      for (const [date, value] of [['2023-01-01', 0], ['2024-02-29', 11_000], ['2025-01-01', 20_000], ['2026-11-01', 38_333]] as const) household.must('reading.record', { car: 'pip', value, date: on(date) });
      padItem(household, { interval: { repeat: { months: 90, distance: { value: 80_000, unit: 'km' } } } });
      for (const [date, value] of [['2024-03-01', 10], ['2025-02-01', 8.6], ['2025-09-10', 7.9], ['2026-06-01', 7]] as const) measure(household, on(date), value);
      household.must('wheel.add', { id: 'a', car: 'pip', name: 'A', place: 'front-left', on: on('2024-01-01') });
      household.must('wheel.move', { car: 'pip', on: on('2025-05-05'), moves: [{ wheel: 'a', place: 'off' }] });
      household.must('wheel.move', { car: 'pip', on: on('2025-10-05'), moves: [{ wheel: 'a', place: 'rear-left' }] });
      household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 1.6, unit: 'mm' } });
      for (const [date, value] of [['2024-01-01', 8], ['2025-02-01', 6.5], ['2026-06-01', 4.6]] as const) measure(household, on(date), value, { what: 'tread', wheel: 'a' });
      return { window: windowOf(household), verdicts: seriesOf(household).flatMap((series) => series.limits) };
    };
    const [here, there] = [told(0), told(1461)];
    const dates = ({ earliest, likely, latest }: Pick<WindowView, 'earliest' | 'likely' | 'latest'>) => [earliest, likely, latest];
    const moved = (one: readonly (ReturnType<typeof day> | null)[]) => one.map((date) => (date === null ? null : addDays(date, 1461)));
    expect(here.window?.limb).toBe('wear');
    expect(here.verdicts.map((one) => one.verdict)).toEqual(['wears', 'wears']);
    if (here.window === undefined || there.window === undefined) throw new Error('no window');
    expect(dates(there.window)).toEqual(moved(dates(here.window)));
    expect(there.verdicts.map(dates)).toEqual(here.verdicts.map((one) => moved(dates(one))));
  });
});

describe('what measurements say and no window does', () => {
  function bare() {
    const household = memoryHousehold({ hemisphere: 'none' });
    household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2018-01-01') });
    for (const [date, value] of [['2025-01-01', 80_000], ['2026-01-01', 95_000], ['2026-11-20', 109_000]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
    household.must('wear-limit.set', { car: 'pip', what: 'tread', limit: { value: 1.6, unit: 'mm' } });
    return household;
  }
  const told = (household: ReturnType<typeof bare>) => household.must('due.show', {}).cars[0]?.measured.map(({ subject, verdict, text }) => ({ subject, verdict, text }));

  test('tread below the law, of a car none of whose items is measured by it', () => {
    const household = bare();
    measure(household, '2026-11-20', 1.2, { what: 'tread', place: 'front-left' });
    expect(told(household)).toEqual([{ subject: 'tread, front left', verdict: 'past-limit', text: 'Past its limit of 1.6 mm: 1.2 mm on 20 Nov 2026.' }]);
    household.must('item.add', { id: 'tyres', car: 'pip', name: 'Tyres', work: 'check', history: 'unknown', interval: { repeat: { months: 6, distance: null } }, measure: { kind: 'tread', name: null, places: [], limit: null, way: null } });
    expect(told(household)).toEqual([]);
    expect(windowOf(household, 'tyres')).toMatchObject({ state: 'late', limb: 'wear' });
  });

  test('a value that got better', () => {
    const household = bare();
    measure(household, '2025-01-01', 4, { what: 'tread', place: 'front-left' });
    measure(household, '2026-01-01', 7, { what: 'tread', place: 'front-left' });
    const [one, ...others] = told(household) ?? [];
    expect([one?.subject, one?.verdict, others.length]).toEqual(['tread, front left', 'contradictory', 0]);
    expect(one?.text).toMatch(/^It got better, which wear does not do: 4 mm on 1 Jan 2025, then 7 mm on 1 Jan 2026\./);
  });

  test('nothing, while all is well', () => {
    const household = bare();
    measure(household, '2025-01-01', 7, { what: 'tread', place: 'front-left' });
    measure(household, '2026-01-01', 6, { what: 'tread', place: 'front-left' });
    expect(told(household)).toEqual([]);
  });

  test('a wheel that is called by its place is said once', () => {
    const household = bare();
    household.must('wheel.add', { id: 'five', car: 'pip', name: 'spare', place: 'spare' });
    measure(household, '2026-11-20', 1.2, { what: 'tread', place: 'spare' });
    expect(told(household)?.map(({ subject }) => subject)).toEqual(['tread, spare']);
  });
});
