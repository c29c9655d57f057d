import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { FollowUpView } from '../../../shared-core/views/follow-ups.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/**
 * Pip does 100 km a day: so it is declared (36 525 km a year of 365.25 days), and so say the readings, with no season; the last is
 * of ten days ago. Whatever lies between two readings is then exactly 100 km a day, and so is the likely distance after the last.
 */
function withPip(): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none', unit: 'km' });
  household.must('car.add', { id: 'pip', name: 'Pip', declaredAYear: { value: 36_525, unit: 'km' } });
  household.must('car.add', { id: 'wren', name: 'Wren', unit: 'mi' });
  for (const [date, value] of [['2026-08-07', 40_000], ['2026-11-15', 50_000]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

type When = Omit<RequestOf<'follow-up.add'>, 'car' | 'text'>;
const add = (household: MemoryHousehold, when: When, car = 'pip') => household.must('follow-up.add', { car, text: 'Wheel bolts', ...when }).followUp;
const views = (household: MemoryHousehold, car = 'pip'): readonly FollowUpView[] => household.must('due.show', {}).cars.find((one) => one.id === car)?.followUps ?? [];
function viewOf(when: When, household = withPip(), car = 'pip'): FollowUpView {
  const { id } = add(household, when, car);
  const found = views(household, car).find((one) => one.followUp.id === id);
  if (found === undefined) throw new Error('not shown');
  return found;
}
const km = (value: number) => ({ value, unit: 'km' }) as const;

describe('a follow-up by date', () => {
  test.each([
    { case: 'the day before', dueOn: '2026-11-26', state: 'ahead', lateBy: null, text: 'On 26 Nov 2026.' },
    { case: 'on the day', dueOn: '2026-11-25', state: 'due', lateBy: null, text: 'Today, 25 Nov 2026, is its day.' },
    { case: 'the day after', dueOn: '2026-11-24', state: 'late', lateBy: { days: 1, months: 0, distance: null }, text: 'Its day was 24 Nov 2026: 1 day late.' },
    { case: 'a year after', dueOn: '2025-11-25', state: 'late', lateBy: { days: 365, months: 12, distance: null }, text: 'Its day was 25 Nov 2025: 12 months late.' },
    { case: 'more than five years ahead', dueOn: '2032-01-01', state: 'ahead', lateBy: null, text: 'On 1 Jan 2032.' },
  ])('$case is $state', ({ dueOn, state, lateBy, text }) => {
    const shown = dueOn > '2031-12-01' ? null : dueOn;
    expect(viewOf({ madeOn: day('2025-11-01'), dueOn: day(dueOn) })).toMatchObject({ state, lateBy, text, limb: 'time', from: shown, earliest: shown, likely: shown, latest: shown, target: null, estimated: false });
  });
});

describe('a follow-up that was put off', () => {
  const putOff = (household: MemoryHousehold, request: Omit<RequestOf<'follow-up.put-off'>, 'followUp'>) => {
    household.must('follow-up.put-off', { followUp: views(household)[0]?.followUp.id ?? '', ...request });
    return views(household)[0];
  };

  test('is late by its new day alone, and says from when to when', () => {
    const household = withPip();
    add(household, { madeOn: day('2026-11-01'), dueOn: day('2026-11-24') });
    expect(putOff(household, { dueOn: day('2026-12-05') })).toMatchObject({ state: 'ahead', lateBy: null, text: 'On 5 Dec 2026.', putOff: 'Put off from 24 Nov 2026 to 5 Dec 2026.' });
    household.on('2026-12-06');
    expect(views(household)[0]).toMatchObject({ state: 'late', lateBy: { days: 1, months: 0, distance: null }, text: 'Its day was 5 Dec 2026: 1 day late.' });
    expect(putOff(household, { dueOn: day('2026-12-08'), note: 'snow' })).toMatchObject({ state: 'ahead', putOff: 'Put off from 24 Nov 2026 to 5 Dec 2026. Put off from 5 Dec 2026 to 8 Dec 2026: snow.' });
  });

  test('by a distance counts it from the day on which that was decided', () => {
    const household = withPip();
    add(household, { madeOn: day('2026-11-15'), dueOn: day('2026-11-30'), after: km(500) });
    household.must('reading.record', { car: 'pip', value: 51_000, date: day('2026-11-25') });
    // By hand: 500 km after the 15th were at 50 500; 300 from today's 51 000 are 51 300.
    expect(putOff(household, { after: km(300) })).toMatchObject({ state: 'ahead', target: { value: 51_300, unit: 'km' }, putOff: 'Put off from 30 Nov 2026 or 500 km after 15 Nov 2026 to 300 km after 25 Nov 2026.' });
    expect(views(household)[0]?.text).toMatch(/^300 km after 25 Nov 2026, at 51\u202f300 km: /);
  });

  test('that never was says nothing of it', () => {
    expect(viewOf({ days: 3 }).putOff).toBe('');
  });
});

describe('a follow-up by distance', () => {
  test('counts from the reading of its day', () => {
    // By hand: read at 50 000 that day, so 52 500, and 2500 km at 100 a day are 25 days: 15 November and 25 days is 10 December.
    const view = viewOf({ madeOn: day('2026-11-15'), after: km(2500) });
    expect(view).toMatchObject({ state: 'ahead', limb: 'distance', target: { value: 52_500, unit: 'km' }, estimated: false, likely: '2026-12-10', lateBy: null });
    expect(view.text).toBe('2500 km after 15 Nov 2026, at 52\u202f500 km: in the week of 7 Dec 2026.');
    expect([view.from, (view.earliest ?? '') < '2026-12-10', (view.latest ?? '') > '2026-12-10']).toEqual([view.earliest, true, true]);
  });

  test('counts from the line between two readings, and says that it is estimated', () => {
    // By hand: 50 days after the first reading 45 000, and 8000 more are 53 000: 3000 km after the last reading, 30 days, 15 December.
    expect(viewOf({ madeOn: day('2026-09-26'), after: km(8000) })).toMatchObject({ state: 'ahead', target: { value: 53_000 }, estimated: true, likely: '2026-12-15', text: '8000 km after 26 Sep 2026, at about 53\u202f000 km: in the week of 14 Dec 2026.' });
  });

  test('made after the last reading counts what is driven from that day on, and not how unsure the odometer is by then', () => {
    // By hand: 51 000 today as forecast; 1000 km more are 10 days. FORECAST section 5 with h from today: one interval of 100 days has
    // W = 180/ln 2 (1 - 2^(-100/180)) = 83.0, so 0.15 (60/143)^2 = 0.026 and 0.035 x 100/365 = 0.010 stand in the variance beside
    // 0.05 and 8.4/(60 + h). Early: (100h + 300) e^(1.2816 s) >= 1300 at h = 4 gives 700 x 1.82 = 1272, at h = 5 800 x 1.81 = 1450: 5 days.
    // Late: (100h + 300) >= 1300 e^(1.2816 s): at h = 19 2200 against 2280, at h = 20 2300 against 2276: 20 days.
    expect(viewOf({ after: km(1000) })).toMatchObject({ state: 'ahead', target: { value: 51_000 + 1000 }, estimated: true, earliest: '2026-11-30', from: '2026-11-30', likely: '2026-12-05', latest: '2026-12-15' });
  });

  test('is due once it is likely reached, and late only once a reading is at or past it', () => {
    const household = withPip();
    // By hand: 1000 km after 50 000 of 15 November are 10 days: today.
    expect(viewOf({ madeOn: day('2026-11-15'), after: km(1000) }, household)).toMatchObject({ state: 'due', likely: '2026-11-25', lateBy: null, text: '1000 km after 15 Nov 2026, at 51\u202f000 km: probably reached by now. A reading would tell.' });
    household.must('reading.record', { car: 'pip', value: 50_999 });
    expect(views(household)[0]?.state).not.toBe('late');
    household.on('2026-11-26').must('reading.record', { car: 'pip', value: 51_200 });
    // By hand: from 50 999 to 51 200 in a day, 51 000 within that day: it was reached on the 26th.
    expect(views(household)[0]).toMatchObject({ state: 'late', likely: '2026-11-26', lateBy: { days: 0, months: 0, distance: { value: 200, unit: 'km' } }, text: 'It was for 51\u202f000 km, 1000 km after 15 Nov 2026; a reading is 200 km past that.' });
  });

  test('at the very distance a reading passes it', () => {
    const household = withPip();
    household.must('reading.record', { car: 'pip', value: 51_000 });
    expect(viewOf({ madeOn: day('2026-11-15'), after: km(1000) }, household)).toMatchObject({ state: 'late', lateBy: { distance: { value: 0 } }, text: 'It was for 51\u202f000 km, 1000 km after 15 Nov 2026, and that was reached.' });
  });

  test('may be reached ahead of its likely day, and says so', () => {
    const view = viewOf({ madeOn: day('2026-11-15'), after: km(1300) });
    expect(view).toMatchObject({ state: 'ahead', likely: '2026-11-28' });
    expect((view.from ?? '9') <= '2026-11-25').toBe(true);
    expect(view.text).toBe('1300 km after 15 Nov 2026, at 51\u202f300 km: in the week of 23 Nov 2026, but it may be reached by now.');
  });

  test('in miles of a car read in km is told in what its odometer shows', () => {
    // By hand: 50 miles are 80.467 km.
    expect(viewOf({ madeOn: day('2026-11-15'), after: { value: 50, unit: 'mi' } })).toMatchObject({ target: { value: 50_080, unit: 'km' }, text: '50 mi after 15 Nov 2026, at 50\u202f080 km: probably reached by now. A reading would tell.' });
  });

  test('on a new instrument is told in what that one shows', () => {
    const household = withPip();
    household.must('reading.record', { car: 'pip', value: 10, date: day('2026-11-25'), replaced: { lastShown: { value: 51_000, unit: 'km' } } });
    expect(viewOf({ after: km(500) }, household)).toMatchObject({ target: { value: 510, unit: 'km' }, estimated: false });
  });

  test('is unknown where nobody ever read the odometer', () => {
    const view = viewOf({ after: { value: 50, unit: 'mi' } }, withPip(), 'wren');
    expect(view).toMatchObject({ state: 'unknown', limb: null, from: null, likely: null, target: null, text: '50 mi after 25 Nov 2026, and no reading tells how far the car had gone then. Enter one.' });
  });
});

describe('a follow-up by date or distance', () => {
  test.each([
    { case: 'the day comes first', when: { dueOn: '2026-11-28', after: km(2000) }, is: { state: 'ahead', limb: 'time', likely: '2026-11-28' }, text: 'On 28 Nov 2026. Or at 52\u202f000 km, if that comes first.' },
    { case: 'the distance comes first', when: { dueOn: '2026-12-24', after: km(2500) }, is: { state: 'ahead', limb: 'distance', likely: '2026-12-10' }, text: '2500 km after 15 Nov 2026, at 52\u202f500 km: in the week of 7 Dec 2026. At the latest on 24 Dec 2026.' },
    { case: 'the day has passed', when: { dueOn: '2026-11-20', after: km(2000) }, is: { state: 'late', limb: 'time', lateBy: { days: 5, months: 0, distance: null } }, text: 'Its day was 20 Nov 2026: 5 days late.' },
    { case: 'both are equal', when: { dueOn: '2026-12-05', after: km(2000) }, is: { limb: 'time' }, text: 'On 5 Dec 2026. Or at 52\u202f000 km, if that comes first.' },
  ])('$case', ({ when, is, text }) => {
    const view = viewOf({ madeOn: day('2026-11-15'), dueOn: day(when.dueOn), after: when.after });
    expect(view).toMatchObject(is);
    expect(view.text).toBe(text);
  });

  test('late by both says both', () => {
    const household = withPip();
    household.must('reading.record', { car: 'pip', value: 51_000 });
    expect(viewOf({ madeOn: day('2026-11-15'), dueOn: day('2026-11-20'), after: km(900) }, household)).toMatchObject({
      state: 'late', lateBy: { days: 5, months: 0, distance: { value: 100, unit: 'km' } },
      text: 'Its day was 20 Nov 2026: 5 days late. It was for 50\u202f900 km, 900 km after 15 Nov 2026; a reading is 100 km past that.',
    });
  });

  test('with a distance that nobody can place has its day', () => {
    expect(viewOf({ dueOn: day('2026-12-01'), after: km(50) }, withPip(), 'wren')).toMatchObject({ state: 'ahead', limb: 'time', likely: '2026-12-01', text: 'On 1 Dec 2026. 50 km after 25 Nov 2026, and no reading tells how far the car had gone then. Enter one.' });
  });
});

describe('the follow-ups of a car', () => {
  test('stand late first, then the soonest, without those ticked, in the due, the yard and the car alike', () => {
    const household = withPip();
    household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } } });
    const later = add(household, { dueOn: day('2026-12-24') });
    const done = add(household, { dueOn: day('2026-11-30') });
    const late = add(household, { madeOn: day('2026-11-01'), dueOn: day('2026-11-20'), item: 'oil' });
    const soon = add(household, { dueOn: day('2026-11-27') });
    const today = add(household, { days: 0 });
    household.must('follow-up.done', { followUp: done.id });
    expect(views(household).map((one) => one.followUp.id)).toEqual([late.id, today.id, soon.id, later.id]);
    expect(views(household).map((one) => one.itemName)).toEqual(['Engine oil', null, null, null]);
    const car = household.must('car.show', { car: 'pip' });
    expect(car.due.followUps).toEqual(views(household));
    expect(car.followUpsDone).toEqual([{ ...done, doneOn: '2026-11-25' }]);
    expect(household.must('yard.show', {}).lanes.find((lane) => lane.id === 'pip')?.followUps).toEqual(views(household));
  });
});
