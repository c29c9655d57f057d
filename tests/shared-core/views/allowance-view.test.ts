import { describe, expect, test } from 'vitest';
import { distanceAllowances } from '../../../shared-core/care/distance-allowance.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { hasWords } from '../../../shared-core/result/words/say.ts';
import { roughly } from '../../../shared-core/views/allowance-words.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Pip, in miles, at about 20 miles a day, read to 40 920 on 2026-11-01. */
function withPip(): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none', unit: 'mi' });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-01') });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  for (const [date, value] of [['2025-05-01', 30_000], ['2025-11-01', 33_680], ['2026-05-01', 37_300], ['2026-08-01', 39_140], ['2026-11-01', 40_980]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

type Request = Partial<RequestOf<'allowance.set'>>;
const insurance = { car: 'Pip', kind: 'insurance', distance: { value: 6000, unit: 'mi' }, from: day('2026-08-01') } as const;
const set = (household: MemoryHousehold, more: Request = {}) => household.must('allowance.set', { ...insurance, ...more }).allowance;
const views = (household: MemoryHousehold) => household.must('car.show', { car: 'pip' }).allowances;
const due = (household: MemoryHousehold) => household.must('due.show', {}).cars.find((car) => car.id === 'pip')?.allowances;

describe('an allowance', () => {
  test('stands in its own unit, in the due and the car view alike', () => {
    const household = withPip();
    const allowance = set(household);
    const [view] = views(household);
    // By hand: 20 miles a day from 1 August, so 2320 by 25 November, 6000 after 300 days: 28 May 2027.
    expect(view).toMatchObject({ id: allowance.id, kind: 'insurance', name: 'insured distance', state: 'will-pass', from: '2026-08-01', to: '2027-07-31', unit: 'mi', allowed: 6000, estimated: false });
    expect(Math.abs((view?.used ?? 0) - 2320)).toBeLessThan(60);
    expect((view?.used ?? 0) + (view?.left ?? 0)).toBe(6000);
    expect((view?.passes.likely ?? '').slice(0, 7)).toMatch(/2027-0[56]/);
    expect(view?.text).toMatch(/^As the car is used now, the 6000 mi allowed will be passed about (May|June) 2027, before 31 Jul 2027: by about 1\d+0 mi on that day\.$/);
    expect(household.must('car.show', { car: 'pip' }).due.allowances).toEqual(views(household));
    expect(due(household)).toEqual(views(household));
  });

  test.each([
    { more: { distance: { value: 12_000, unit: 'mi' } }, state: 'within', text: /^The 12\u202f000 mi allowed will do until 31 Jul 2027; about [\d\u202f]+ mi will be left\.$/ },
    { more: { distance: { value: 8000, unit: 'mi' } }, state: 'may-pass', text: /^The 8000 mi allowed will likely do until 31 Jul 2027\. With more use than now they may be passed before it, though not before \w+ 2027\.$/ },
    { more: { distance: { value: 1000, unit: 'mi' } }, state: 'passed', text: /^The 1000 mi allowed were passed in the week of 14 Sep 2026\.$/ },
    { more: { distance: { value: 2200, unit: 'mi' } }, state: 'probably-passed', text: /^As the car is used now, the 2200 mi allowed have probably been passed, in the week of 16 Nov 2026\. Enter a reading\.$/ },
    { more: { kind: 'warranty', every: 'term' }, state: 'will-pass', text: /^As the car is used now, it ends about (May|June) 2027, at 6000 mi\.$/ },
    { more: { kind: 'warranty', every: 'term', to: day('2027-10-31') }, state: 'will-pass', text: /^As the car is used now, it ends by distance about (May|June) 2027, at 6000 mi, before its last day 31 Oct 2027\.$/ },
    { more: { kind: 'warranty', every: 'term', to: day('2027-04-30') }, state: 'may-pass', text: /^It likely ends on 30 Apr 2027\. With more use than now it may end by distance before it, though not before \w+ 2027\.$/ },
    { more: { kind: 'warranty', every: 'term', to: day('2026-12-31') }, state: 'within', text: /^It ends on 31 Dec 2026; about 2\d00 of its 6000 mi will be left\.$/ },
    { more: { kind: 'warranty', every: 'term', distance: { value: 1000, unit: 'mi' } }, state: 'passed', text: /^It ended in the week of 14 Sep 2026, at 1000 mi\.$/ },
    { more: { kind: 'warranty', every: 'term', to: day('2026-10-31') }, state: 'ended', text: /^It ended on 31 Oct 2026\.$/ },
    { more: { from: day('2026-12-01') }, state: 'not-begun', text: /^It begins on 1 Dec 2026\.$/ },
    { more: { to: day('2026-10-31') }, state: 'ended', text: /^It ended on 31 Oct 2026\.$/ },
    { more: { every: 'term', distance: { value: 6000, unit: 'mi' } }, state: 'will-pass', text: /^As the car is used now, the 6000 mi allowed will be passed about (May|June) 2027\.$/ },
    { more: { every: 'term', distance: { value: 200_000, unit: 'mi' } }, state: 'within', text: /^The 200\u202f000 mi allowed will not be passed within five years\.$/ },
    { more: { every: 'term', distance: { value: 41_000, unit: 'mi' } }, state: 'may-pass', text: /^The 41\u202f000 mi allowed may be passed within five years, though not before \w+ 20(30|31)\.$/ },
  ] as const)('$state: $text', ({ more, state, text }) => {
    const household = withPip();
    set(household, more);
    expect(views(household)[0]?.state).toBe(state);
    expect(views(household)[0]?.text).toMatch(text);
  });

  // Source: by hand. 20 miles a day from 1 August to 29 November are 2400; last read on 1 November at 1840. With more use the
  // 2480 allowed until 30 November may be passed on 25 November already.
  test.each([
    { kind: 'insurance', text: 'With more use than the readings say, the 2480 mi allowed may be passed already. Enter a reading.' },
    { kind: 'warranty', text: 'With more use than the readings say, it may have ended at 2480 mi already. Enter a reading.' },
  ] as const)('that may be passed by today is not said to be safe until a month gone by: $kind', ({ kind, text }) => {
    const household = withPip();
    set(household, { kind, every: 'term', distance: { value: 2480, unit: 'mi' }, to: day('2026-11-30') });
    const [view] = views(household);
    expect([view?.state, (view?.passes.earliest ?? '9999') <= '2026-11-25', view?.passes.likely, view?.text]).toEqual(['may-pass', true, null, text]);
  });

  test('without a reading says what is missing', () => {
    const household = withPip();
    household.must('allowance.set', { ...insurance, car: 'wren' });
    expect(household.must('due.show', {}).cars.find((car) => car.id === 'wren')?.allowances).toMatchObject([{ state: 'unknown', used: null, left: null, over: null, text: 'Enter a reading: without one nothing can be said of the 6000 mi allowed.' }]);
  });

  test('of a warranty ends by date or distance, whichever comes first; the soonest passed comes first', () => {
    const household = withPip();
    const warranty = { kind: 'warranty', name: 'Five years or 60 000 miles', every: 'term', from: day('2022-11-01'), to: day('2027-10-31'), startReading: { value: 0, unit: 'mi' }, distance: { value: 60_000, unit: 'mi' } } as const;
    set(household, warranty);
    set(household);
    expect(views(household).map((view) => view.kind)).toEqual(['insurance', 'warranty']);
    expect(views(household)[1]).toMatchObject({ name: 'Five years or 60 000 miles', state: 'within', estimated: false, ends: { likely: '2027-10-31' } });
    household.must('allowance.set', { ...insurance, ...warranty, id: views(household)[1]?.id ?? '', distance: { value: 42_000, unit: 'mi' } });
    const shorter = views(household).find((view) => view.kind === 'warranty');
    expect([shorter?.state, shorter?.ends.likely]).toEqual(['will-pass', shorter?.passes.likely]);
    expect(views(household).map((view) => view.kind)).toEqual(['warranty', 'insurance']);
  });

  test('that has ended is not due any more, and has no other end than its last day', () => {
    const household = withPip();
    set(household, { to: day('2026-10-31'), distance: { value: 1000, unit: 'mi' } });
    expect(views(household)[0]?.ends).toEqual({ earliest: '2026-10-31', likely: '2026-10-31', latest: '2026-10-31' });
    expect(due(household)).toEqual([]);
  });

  // Source: DESIGN section 4, "arrange from": the early edge, or the last day less 14 days, whichever comes first.
  test.each([
    { case: 'passed in all likelihood', more: {}, from: 'the early edge' },
    { case: 'enough for the year, the next year to follow', more: { distance: { value: 12_000, unit: 'mi' } }, from: null },
    { case: 'enough for the year, which is the last', more: { distance: { value: 12_000, unit: 'mi' }, to: day('2027-07-31') }, from: '2027-07-17' },
    { case: 'its last day before the early edge', more: { every: 'term', to: day('2027-01-10') }, from: '2026-12-27' },
    { case: 'passed', more: { distance: { value: 1000, unit: 'mi' } }, from: '2026-09-20' },
    { case: 'ended', more: { to: day('2026-10-31') }, from: null },
    { case: 'not begun', more: { from: day('2026-12-01'), to: day('2027-11-30') }, from: '2027-11-16' },
  ] as const)('$case: to be arranged from $from', ({ more, from }) => {
    const household = withPip();
    set(household, more);
    const [view] = views(household);
    if (from === 'the early edge') expect([view?.arrangeFrom, (view?.arrangeFrom ?? '') < (view?.passes.likely ?? '')]).toEqual([view?.passes.earliest, true]);
    else expect(view?.arrangeFrom).toBe(from);
  });

  test('taken away it is gone', () => {
    const household = withPip();
    const { id } = set(household);
    expect(household.must('allowance.remove', { id }).allowance.id).toBe(id);
    expect([views(household), due(household), household.facts().all(distanceAllowances)]).toEqual([[], [], []]);
    expect(household.call('allowance.remove', { id })).toMatchObject({ ok: false, refusal: { code: 'unknown-allowance' } });
  });

  // Source: by hand. Read 37 300 on 1 May, 39 140 on 1 August, 40 980 on 1 November: 38 200 on 15 June is on the line.
  test.each([
    { case: 'less than was read before', start: 37_000, values: { given: 37_000, value: 37_300, date: '2026-05-01' } },
    { case: 'more than was read after', start: 39_500, values: { given: 39_500, value: 39_140, date: '2026-08-01' } },
    { case: 'far more than the readings before lead to', start: 382_000, from: day('2026-11-15'), values: { given: 382_000, value: 40_980, date: '2026-11-01' } },
  ])('a first reading that cannot be is refused, naming the one it contradicts: $case', ({ start, from = day('2026-06-15'), values }) => {
    const household = withPip();
    const before = household.entries.length;
    const request = { ...insurance, from, startReading: { value: start, unit: 'mi' } } as const;
    expect(household.call('allowance.set', request)).toMatchObject({ ok: false, refusal: { code: 'start-reading-doubtful', values: { ...values, givenUnit: 'mi', unit: 'mi', on: from }, path: ['startReading'] } });
    expect(household.entries).toHaveLength(before);
    // A reading that the keeper vouches for settles it.
    household.must('reading.record', { car: 'pip', value: start, date: from, sure: true });
    expect(household.call('allowance.set', request).ok).toBe(true);
  });

  test.each([
    { case: 'on the line', car: 'pip', startReading: { value: 38_200, unit: 'mi' } },
    { case: 'in the other unit', car: 'pip', startReading: { value: 61_477, unit: 'km' } },
    { case: 'of a car that was never read', car: 'wren', startReading: { value: 500_000, unit: 'km' } },
  ] as const)('a first reading that fits is taken: $case', ({ car, startReading }) => {
    expect(withPip().call('allowance.set', { ...insurance, car, from: day('2026-06-15'), startReading }).ok).toBe(true);
  });

  test.each([
    { case: 'an unknown car', more: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'no distance', more: { distance: { value: 0, unit: 'mi' } }, code: 'not-a-distance' },
    { case: 'an end before its beginning', more: { to: '2026-07-31' }, code: 'allowance-ends-before' },
    { case: 'a beginning before the car was there', more: { from: '2022-10-31' }, code: 'before-registration' },
    { case: 'an id of another car\'s', more: { id: 'of-wren' }, code: 'id-taken' },
  ])('$case is refused: $code', ({ more, code }) => {
    const household = withPip();
    household.must('allowance.set', { ...insurance, id: 'of-wren', car: 'wren' });
    const before = household.entries.length;
    expect(household.call('allowance.set', { ...insurance, ...more } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });
});

test('every kind and state has its words', () => {
  const states = ['may-pass-already', 'not-begun', 'ended', 'passed', 'probably-passed', 'will-pass', 'will-pass-endless', 'may-pass', 'may-pass-endless', 'within', 'within-endless', 'unknown'];
  expect(['insurance', 'lease', 'warranty', 'other', ...states].filter((key) => !hasWords(`allowance-${key}`))).toEqual([]);
});

test.each([[0, 0], [4, 0], [6, 10], [838, 840], [1994, 1990], [2049, 2000], [2951, 3000], [19_949, 19_900], [23_400, 23_000]])('%d is said as %d (own rule)', (distance, said) => {
  expect(roughly(distance)).toBe(said);
});
