import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import type { YardView } from '../../../shared-core/views/yard-view.ts';
import { householdWords } from '../../../renderer/ui/household-words.ts';
import { layLane } from '../../../renderer/yard/lane-layout.ts';
import { marksOfLane } from '../../../renderer/yard/marks-of-lane.ts';
import { timeScale } from '../../../renderer/yard/time-scale.ts';
import { waitingGroups } from '../../../renderer/yard/waiting-groups.ts';
import type { YardMark } from '../../../renderer/yard/yard-mark.ts';
import { day } from '../../shared-core/calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../../shared-core/contract/memory-household.ts';

const WORDS = householdWords('en-GB', 'GBP');

/** Pip, in miles, at about 20 miles a day, read to 40 980 on 2026-11-01; asked on 2026-11-25. */
function pip(): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none', unit: 'mi' });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-01') });
  for (const [date, value] of [['2025-05-01', 30_000], ['2025-11-01', 33_680], ['2026-05-01', 37_300], ['2026-08-01', 39_140], ['2026-11-01', 40_980]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

function marksOf({ lanes, today }: YardView): readonly YardMark[] {
  return marksOfLane(must(lanes[0], 'a lane'), today, WORDS);
}

/** Words: our own. Dates by hand. */
describe('a recall in the yard', () => {
  const recall = { id: 'r', car: 'pip', number: 'P-1', what: 'A bolt may work loose' } as const;
  const done = { how: 'bolt replaced', doneOn: day('2026-06-01') } as const;

  test.each([
    { case: 'not booked waits on today', next: {}, mark: { shape: 'pin', filled: true, state: 'open', rest: ', not done', when: 'not done: book it', likely: '2026-11-25' }, listed: 'obligations' },
    { case: 'booked within two weeks', next: { nextOn: day('2026-12-02') }, mark: { shape: 'pin', filled: true, state: 'open', rest: ', booked for 2 Dec', when: 'booked for 2 Dec 2026' }, listed: 'obligations' },
    { case: 'booked later', next: { nextOn: day('2027-01-20') }, mark: { shape: 'pin', filled: false, state: 'ahead', likely: '2027-01-20' }, listed: 'obligations' },
    { case: 'booked for a day that has passed', next: { nextOn: day('2026-11-22') }, mark: { shape: 'flag', state: 'late', late: '3 days past its booking', rest: ', 3 days past its booking' }, listed: 'late' },
    { case: 'done and due again far ahead', next: { ...done, nextOn: day('2028-06-01') }, mark: { shape: 'pin', filled: false, state: 'ahead', standing: 'due again', when: 'due again by 1 Jun 2028' }, listed: null },
    { case: 'done and again late', next: { ...done, nextOn: day('2026-11-24') }, mark: { shape: 'flag', state: 'late', late: '1 day late' }, listed: 'late' },
  ] as const)('$case', ({ next, mark, listed }) => {
    const household = pip();
    household.must('recall.set', { ...recall, ...next });
    const view = household.must('yard.show', {});
    const marks = marksOf(view);
    expect(marks).toMatchObject([{ kind: 'recall', name: 'recall P-1', href: '/car/pip/recall/r', why: 'A bolt may work loose', ...mark }]);
    const groups = waitingGroups([{ lane: must(view.lanes[0], 'a lane'), marks }], view.today);
    expect({ late: groups.late.length, obligations: groups.obligations.length }).toEqual({ late: listed === 'late' ? 1 : 0, obligations: listed === 'obligations' ? 1 : 0 });
    expect(view.ahead.recalls).toBe(listed === null ? 0 : 1);
  });

  test('that is done is no mark', () => {
    const household = pip();
    household.must('recall.set', { ...recall, ...done });
    expect(marksOf(household.must('yard.show', {}))).toEqual([]);
  });
});

/** Words: our own. By hand: 20 miles a day from 1 August 2026, so some 2320 by 25 November and 3600 by the end of January. */
describe('a distance allowance in the yard', () => {
  const allowance = { id: 'a', car: 'pip', kind: 'insurance', from: day('2026-08-01') } as const;
  const miles = (value: number) => ({ distance: { value, unit: 'mi' } }) as const;

  test.each([
    { case: 'to be passed far ahead', more: miles(6000), mark: { shape: 'bar', filled: false, state: 'ahead', name: 'insured distance used up' }, counted: 0 },
    { case: 'to be passed within 90 days', more: miles(3400), mark: { shape: 'bar', name: 'insured distance used up' }, counted: 1 },
    { case: 'probably passed', more: miles(2200), mark: { shape: 'bar', filled: true, state: 'probably-due', standing: 'probably passed', rest: ', probably passed' }, counted: 1 },
    { case: 'passed by a reading', more: miles(1000), mark: { shape: 'flag', state: 'late', when: 'passed in Sep 2026' }, counted: 1 },
    { case: 'a warranty that ends by distance', more: { ...miles(3400), kind: 'warranty', every: 'term', to: day('2027-10-31') }, mark: { shape: 'bar', name: 'warranty by distance ends' }, counted: 1 },
    { case: 'a warranty that ends on its day', more: { ...miles(9000), kind: 'warranty', every: 'term', to: day('2026-12-31') }, mark: { shape: 'pin', filled: false, name: 'warranty by distance ends', rest: ', 31 Dec', when: 'by 31 Dec 2026' }, counted: 1 },
  ] as const)('$case', ({ more, mark, counted }) => {
    const household = pip();
    household.must('allowance.set', { ...allowance, ...more });
    const view = household.must('yard.show', {});
    const marks = marksOf(view);
    expect(marks).toMatchObject([{ kind: 'allowance', href: '/car/pip/allowance/a', ...mark }]);
    const { late, obligations } = waitingGroups([{ lane: must(view.lanes[0], 'a lane'), marks }], view.today);
    expect(late.length + obligations.length).toBe(counted);
    expect(view.ahead.allowances).toBe(counted);
  });

  test.each([
    { case: 'a year in which it will do', more: miles(12_000) },
    { case: 'a year in which it only may be passed', more: miles(8000) },
    { case: 'a warranty that is over by distance', more: { ...miles(1000), kind: 'warranty', every: 'term' } },
    { case: 'one that has ended', more: { ...miles(6000), to: day('2026-10-31') } },
  ] as const)('$case is no mark', ({ more }) => {
    const household = pip();
    household.must('allowance.set', { ...allowance, ...more });
    expect(marksOf(household.must('yard.show', {}))).toEqual([]);
  });

  test('is passed by about so much', () => {
    const household = pip();
    household.must('allowance.set', { ...allowance, ...miles(1000) });
    expect(marksOf(household.must('yard.show', {}))[0]?.late).toMatch(/^passed by about 13\d\d mi$/);
  });
});

/** Source: DESIGN section 4: late only after the day itself; an exact date is not made surer by a reading. */
describe('an item on its exact day', () => {
  test('is due today, not probably due', () => {
    const household = pip();
    household.must('item.add', { id: 'it', car: 'pip', name: 'air filter', interval: { repeat: { months: 12, distance: null } }, anchor: { kind: 'calendar', firstDate: day('2026-11-25') } });
    const view = household.must('yard.show', {});
    const marks = marksOf(view);
    expect(marks).toMatchObject([{ state: 'probably-due', standing: 'due today', rest: ', due today' }]);
    const groups = waitingGroups([{ lane: must(view.lanes[0], 'a lane'), marks }], view.today);
    expect([groups.today.length, groups.probably.length]).toEqual([1, 0]);
  });
});

/** Dates by hand: 25 November is today; 20 miles a day. */
describe('a follow-up in the yard', () => {
  test.each([
    { case: 'dated ahead', when: { days: 10 }, mark: { kind: 'follow-up', shape: 'eye', filled: false, state: 'ahead', name: 'look again: Bolts', rest: ', 5 Dec', standing: 'later', when: 'by 5 Dec 2026' } },
    { case: 'dated today', when: { days: 0 }, mark: { shape: 'eye', filled: true, state: 'probably-due', rest: ', due today', standing: 'due today' } },
    { case: 'past its day', when: { madeOn: day('2026-11-01'), dueOn: day('2026-11-20') }, mark: { shape: 'flag', state: 'late', late: '5 days late', rest: ', 5 days late' } },
    { case: 'by distance', when: { after: { value: 2000, unit: 'mi' } }, mark: { shape: 'bar', filled: false, state: 'ahead' } },
    { case: 'by distance, reached', when: { madeOn: day('2026-08-01'), after: { value: 1840, unit: 'mi' } }, mark: { shape: 'flag', state: 'late' } },
  ] as const)('$case', ({ when, mark }) => {
    const household = pip();
    household.must('follow-up.add', { id: 'f', car: 'pip', text: 'Bolts', ...when });
    const view = household.must('yard.show', {});
    expect(marksOf(view)).toMatchObject([{ ...mark, id: 'pip/follow-up/f', href: '/car/pip/follow-up/f' }]);
    const lanes = view.lanes.map((lane) => ({ lane, marks: marksOfLane(lane, view.today, WORDS) }));
    const groups = waitingGroups(lanes, view.today);
    expect([groups.followUps.map((one) => one.followUp.id), groups.late, groups.obligations, groups.probably]).toEqual([['f'], [], [], []]);
  });

  test('of which nobody knows how far the car had gone is listed, and not among items of unknown history', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip' });
    household.must('follow-up.add', { id: 'f', car: 'pip', text: 'Bolts', after: { value: 50, unit: 'km' } });
    const view = household.must('yard.show', {});
    const marks = marksOf(view);
    expect(marks).toMatchObject([{ shape: 'question', state: 'unknown', when: '' }]);
    expect(layLane(marks, timeScale(view.today, { span: 12, shift: 0 }, 900), { rows: 4, marks: 9 }, (text) => text.length * 7)).toMatchObject({ placed: [], unknown: [] });
    expect(waitingGroups(view.lanes.map((lane) => ({ lane, marks })), view.today).followUps.length).toBe(1);
  });
});
