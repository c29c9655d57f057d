import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { composePlanProblem, taskTerms } from '../../../shared-core/sessions/compose-plan-problem.ts';
import { checkLegalDates } from '../../../shared-core/sessions/check-legal-dates.ts';
import type { HouseholdTask } from '../../../shared-core/sessions/household-task.ts';
import { planAccount } from '../../../shared-core/sessions/plan-account.ts';
import { planBaseline } from '../../../shared-core/sessions/plan-baseline.ts';
import { DEFAULT_PLAN_SETTINGS } from '../../../shared-core/sessions/plan-settings.ts';
import type { PlanInput } from '../../../shared-core/sessions/plan-problem.ts';
import { ASSUMED_GARAGE, ASSUMED_HOME, type Place } from '../../../shared-core/sessions/place.ts';
import type { Session } from '../../../shared-core/sessions/session.ts';
import { day } from '../calendar/day.ts';
import { taskDue } from './task-examples.ts';

const HOME: Place = { ...ASSUMED_HOME, openingMinor: 1000, minutesADay: 120 };
const GARAGE: Place = { ...ASSUMED_GARAGE, id: 'hill', name: 'Hill Works', openingMinor: 2000, noticeDays: 7 };

/** A household's plan from Wednesday 25 November 2026, 30 days ahead, with a home and a garage. */
function input(tasks: readonly HouseholdTask[], more: Partial<PlanInput> = {}): PlanInput {
  const places = [HOME, GARAGE].map((place) => ({ place, assumed: false }));
  return { today: day('2026-11-25'), horizonDays: 30, settings: DEFAULT_PLAN_SETTINGS, places, placeDays: [], carDays: [], accessGroups: [], pairs: [], everyday: [], pinned: [], passed: [], tasks, unknownItems: [], asked: [], ...more };
}

const named = (id: string, due: string, more: Partial<HouseholdTask> = {}) => taskDue(due, { ref: { kind: 'item', id }, key: `item/${id}`, name: id, ...more });
const test1 = (lastDay: string, more: Partial<HouseholdTask> = {}) =>
  taskDue(lastDay, { ref: { kind: 'obligation', id: 'test' }, key: 'obligation/test', name: 'test', prices: new Map([['hill', 5000]]), legal: { lastDay: day(lastDay), opens: null, notBefore: null }, ...more });
const kept = (on: string, place: string, ...ids: readonly string[]): Session => ({ id: 's', day: day(on), place, tasks: ids.map((id) => ({ kind: 'item', id })), state: 'kept', movedFrom: null, madeOn: day('2026-11-25'), note: '' });

/** Days on which a task of the problem may be done at a place. */
function openFor(problem: ReturnType<typeof composePlanProblem>, key: string, place: string): readonly LocalDate[] {
  const task = problem.instance.tasks.find((one) => one.id === key);
  return problem.instance.days.filter((_day, at) => task?.costMinor[place]?.[at] != null);
}

describe('candidate days', () => {
  const home = (more: Partial<PlanInput>, task = named('oil', '2026-12-05')) => openFor(composePlanProblem(input([task], { horizonDays: 14, ...more })), task.key, 'home');
  const hill = (more: Partial<PlanInput>, task = named('oil', '2026-12-05', { prices: new Map([['hill', 5000]]) })) => openFor(composePlanProblem(input([task], { horizonDays: 14, ...more })), task.key, 'hill');

  test.each([
    { case: 'home: the weekends', days: home({}), expected: ['2026-11-28', '2026-11-29', '2026-12-05', '2026-12-06'] },
    { case: 'home: the weekdays one works', days: home({ settings: { ...DEFAULT_PLAN_SETTINGS, workWeekdays: [3] } }), expected: ['2026-11-25', '2026-12-02', '2026-12-09'] },
    { case: 'home: closed for a stretch, opened for a day', days: home({ placeDays: [{ id: 'a', place: 'home', from: day('2026-11-28'), to: day('2026-12-05'), open: false, reason: 'away' }, { id: 'b', place: 'home', from: day('2026-12-08'), to: day('2026-12-08'), open: true, reason: 'day off' }] }), expected: ['2026-12-06', '2026-12-08'] },
    { case: 'home: a day of work that is pinned is open to all', days: home({ pinned: [kept('2026-11-26', 'home', 'other')] }), expected: ['2026-11-26', '2026-11-28', '2026-11-29', '2026-12-05', '2026-12-06'] },
    { case: 'home: when the car is needed, no', days: home({ carDays: [{ id: 'n', car: 'pip', from: day('2026-11-28'), to: day('2026-11-29'), why: 'needed', note: '' }] }), expected: ['2026-12-05', '2026-12-06'] },
    { case: 'home: another car\'s days do not bind', days: home({ carDays: [{ id: 'n', car: 'alder', from: day('2026-11-28'), to: day('2026-11-29'), why: 'away', note: '' }] }), expected: ['2026-11-28', '2026-11-29', '2026-12-05', '2026-12-06'] },
    { case: 'home: while the other everyday car is away, no', days: home({ everyday: ['pip', 'alder'], carDays: [{ id: 'n', car: 'alder', from: day('2026-11-28'), to: day('2026-11-29'), why: 'away', note: '' }] }), expected: ['2026-12-05', '2026-12-06'] },
    { case: 'home: while it is needed, or a third is there, yes', days: home({ everyday: ['pip', 'alder', 'wren'], carDays: [{ id: 'n', car: 'alder', from: day('2026-11-28'), to: day('2026-11-29'), why: 'away', note: '' }, { id: 'm', car: 'wren', from: day('2026-11-28'), to: day('2026-11-29'), why: 'needed', note: '' }] }), expected: ['2026-11-28', '2026-11-29', '2026-12-05', '2026-12-06'] },
    { case: 'home: before its parts are here, no', days: home({}, named('oil', '2026-12-05', { partsFrom: day('2026-11-29') })), expected: ['2026-11-29', '2026-12-05', '2026-12-06'] },
    { case: 'home: longer than the day there', days: home({}, named('oil', '2026-12-05', { minutes: 121 })), expected: [] },
    { case: 'garage: weekdays, after its notice', days: hill({}), expected: ['2026-12-02', '2026-12-03', '2026-12-04', '2026-12-07', '2026-12-08', '2026-12-09'] },
    { case: 'garage: a booking within the notice takes more of the same car', days: hill({ tasks: [named('oil', '2026-12-05', { prices: new Map([['hill', 5000]]) }), named('belt', '2026-12-05')], pinned: [kept('2026-11-27', 'hill', 'belt')], horizonDays: 8, asked: ['item/oil'] }), expected: ['2026-11-27', '2026-12-02', '2026-12-03'] },
    { case: 'garage: but not of another', days: hill({ tasks: [named('oil', '2026-12-05', { prices: new Map([['hill', 5000]]) }), named('belt', '2026-12-05', { car: 'alder' })], pinned: [kept('2026-11-27', 'hill', 'belt')], horizonDays: 8, asked: ['item/oil'] }), expected: ['2026-12-02', '2026-12-03'] },
  ])('$case', ({ days, expected }) => {
    expect(days).toEqual(expected);
  });

  test('a pinned task stands on its own day and place alone, and must', () => {
    const { instance } = composePlanProblem(input([named('oil', '2026-12-05')], { pinned: [kept('2026-12-26', 'home', 'oil')], horizonDays: 14 }));
    expect(instance.days.at(-1)).toBe('2026-12-26');
    expect(instance.tasks[0]).toMatchObject({ mustDo: true });
    expect(Object.values(instance.tasks[0]?.costMinor ?? {}).flat().filter((cost) => cost !== null)).toEqual([60 * 21]);
  });

  test('a pinned session longer than the day has the minutes it takes', () => {
    const tasks = [named('oil', '2026-12-05', { minutes: 100, access: ['wheels off'] }), named('pads', '2026-12-05', { minutes: 90, access: ['Wheels off'] })];
    const { instance } = composePlanProblem(input(tasks, { pinned: [kept('2026-11-28', 'home', 'oil', 'pads')], accessGroups: [{ id: 'w', car: 'pip', name: 'wheels off', minutes: 30 }] }));
    expect(instance.places[0]).toMatchObject({ minutesADay: 120, minutesOn: { '2026-11-28': 220 } });
  });

  test('one works no longer at home than one likes, but on the days on which a task can be done that is longer by itself', () => {
    const settings = { ...DEFAULT_PLAN_SETTINGS, preferredMinutesADay: 60 };
    const home = (tasks: readonly HouseholdTask[], more: Partial<PlanInput> = {}) => composePlanProblem(input(tasks, { settings, horizonDays: 8, ...more })).instance.places[0];
    const usual = { minutesADay: 60, minutesOn: {} };
    expect(home([named('oil', '2026-11-30')])).toMatchObject(usual);
    expect(home([named('oil', '2026-11-30', { minutes: 90, partsFrom: day('2026-11-29') })])).toMatchObject({ minutesADay: 60, minutesOn: { '2026-11-29': 90 } });
    expect(home([named('oil', '2026-11-30', { minutes: 90 })], { carDays: [{ id: 'n', car: 'pip', from: day('2026-11-28'), to: day('2026-11-28'), why: 'needed', note: '' }] })?.minutesOn).toEqual({ '2026-11-29': 90 });
    expect(home([named('oil', '2026-11-30', { minutes: 121 })])?.minutesOn).toEqual({});
    // Neither what is due long after the plan nor what is pinned to one day makes another day longer.
    expect(home([named('oil', '2026-12-01'), named('belt', '2028-06-01', { minutes: 90 })])?.minutesOn).toEqual({});
    expect(home([named('oil', '2026-12-01', { minutes: 90 })], { pinned: [kept('2026-11-28', 'home', 'oil')] })?.minutesOn).toEqual({ '2026-11-28': 90 });
  });

  test('an access named twice, or in two spellings, is opened once', () => {
    const task = named('oil', '2026-11-30', { minutes: 100, access: ['wheels off', 'Wheels off', 'wheels off'] });
    const problem = composePlanProblem(input([task], { horizonDays: 5, accessGroups: [{ id: 'w', car: 'pip', name: 'wheels off', minutes: 20 }, { id: 'x', car: 'alder', name: 'wheels off', minutes: 90 }] }));
    expect(openFor(problem, task.key, 'home')).toEqual(['2026-11-28', '2026-11-29']);
  });
});

describe('what is worth planning', () => {
  const keys = (tasks: readonly HouseholdTask[], more: Partial<PlanInput> = {}) => composePlanProblem(input(tasks, more)).instance.tasks.map((task) => task.id);
  const leaving = (task: HouseholdTask, more: Partial<PlanInput> = {}) => composePlanProblem(input([task], more)).left.get(task.key);

  test('what is surely due long after the horizon is not, unless asked about, pinned, or paired with what is', () => {
    const [oil, belt] = [named('oil', '2026-12-05'), named('belt', '2027-06-01')];
    const pair = { id: 'p', car: 'pip', when: oil.ref, also: belt.ref, savesMinor: null };
    expect(keys([oil, belt])).toEqual(['item/oil']);
    expect(keys([oil, belt], { asked: [belt.key] })).toEqual(['item/oil', 'item/belt']);
    expect(keys([oil, belt], { pinned: [kept('2026-12-05', 'home', 'belt')] })).toEqual(['item/oil', 'item/belt']);
    expect(keys([oil, belt], { pairs: [pair] })).toEqual(['item/oil', 'item/belt']);
    expect(keys([{ ...oil, likely: day('2027-06-01'), dueDays: belt.dueDays }, belt], { pairs: [pair] })).toEqual([]);
  });

  test('leaving it counts lateness just past the horizon, and the cheapest opening where it is likely due within', () => {
    // By hand: the horizon ends on 25 December; on the 26th it is 21 days late at 60.
    expect(leaving(named('oil', '2026-12-05'))).toMatchObject({ lateMinor: 1260, openingMinor: 1000, totalMinor: 2260 });
    expect(leaving(named('oil', '2026-12-05', { prices: new Map([['hill', 1]]) }))).toMatchObject({ openingMinor: 2000 });
    const maybe = named('oil', '2027-01-10', { dueDays: [daysBetween(day('1970-01-01'), day('2026-12-20')), ...named('x', '2027-01-10').dueDays.slice(1)] });
    // By hand: one case in nine, six days late at 60.
    expect(leaving(maybe)).toMatchObject({ lateMinor: 40, openingMinor: 0 });
  });

  test('minutes that a garage charges for must be paid one day: what is late is not left because they are dear', () => {
    const places = [{ place: { ...GARAGE, minuteMinor: 90 }, assumed: false }];
    const late = named('arms', '2026-11-01', { late: true, minutes: 240, prices: new Map([['hill', 30_000]]) });
    const problem = composePlanProblem(input([late], { places }));
    // By hand: 2000 to open and 240 minutes at 90.
    expect(problem.left.get(late.key)).toMatchObject({ openingMinor: 23_600 });
    const [task] = problem.instance.tasks;
    const cheapest = Math.min(...(task?.costMinor['hill'] ?? []).flatMap((cost) => cost ?? []));
    expect(task?.leftUndoneMinor).toBeGreaterThan(cheapest + 23_600);
  });

  test('a pair makes leaving the other cost what beginning again will', () => {
    const belt = named('belt', '2027-06-01');
    const left = (savesMinor: number | null) => composePlanProblem(input([named('oil', '2026-12-05'), belt], { pairs: [{ id: 'p', car: 'pip', when: belt.ref, also: { kind: 'item', id: 'oil' }, savesMinor }] })).left.get(belt.key);
    expect(left(null)).toMatchObject({ lateMinor: 0, openingMinor: 1000 });
    expect(left(30_000)).toMatchObject({ openingMinor: 30_000 });
  });
});

describe('legal dates', () => {
  const refusal = (task: HouseholdTask, more: Partial<PlanInput> = {}) => {
    const checked = checkLegalDates(composePlanProblem(input([task], more)));
    return checked.ok ? null : checked.refusal;
  };

  test('it may be done up to its date, must be, and its date binds no day after', () => {
    const { instance } = composePlanProblem(input([test1('2026-12-04')]));
    expect(instance.tasks[0]?.mustDo).toBe(true);
    expect(openFor(composePlanProblem(input([test1('2026-12-04')])), 'obligation/test', 'hill')).toEqual(['2026-12-02', '2026-12-03', '2026-12-04']);
    expect(composePlanProblem(input([test1('2026-12-26')], { asked: ['obligation/test'] })).instance.tasks[0]?.mustDo).toBe(false);
  });

  test.each([
    { case: 'none open: the garage wants notice', task: test1('2026-12-01'), more: {}, code: 'plan-legal-needs-notice', values: { date: '2026-12-01', place: 'Hill Works', notice: 7 } },
    { case: 'none open at all', task: test1('2026-12-04'), more: { placeDays: [{ id: 'x', place: 'hill', from: day('2026-12-01'), to: day('2026-12-04'), open: false, reason: 'inventory' }] }, code: 'plan-legal-no-day', values: { car: 'Pip', task: 'test', date: '2026-12-04' } },
    { case: 'the car needed on the days that are open', task: test1('2026-12-03'), more: { carDays: [{ id: 'n', car: 'pip', from: day('2026-12-02'), to: day('2026-12-03'), why: 'needed' as const, note: '' }] }, code: 'plan-legal-car-taken', values: { date: '2026-12-03', why: 'Pip is needed on 2 Dec 2026. Choose another day, or free the car.' } },
    { case: 'no price where a day is open', task: test1('2026-12-03', { prices: new Map([['home', 0]]), unpriced: ['hill'] }), more: { placeDays: [{ id: 'x', place: 'home', from: day('2026-11-26'), to: day('2026-12-04'), open: false, reason: 'away' }] }, code: 'plan-legal-not-priced', values: { why: 'Hill Works could do it, but nobody has said what it asks: enter what a garage asks for test.' } },
    { case: 'kept in a session after it', task: test1('2026-12-04'), more: { pinned: [{ ...kept('2026-12-08', 'hill'), tasks: [{ kind: 'obligation' as const, id: 'test' }] }] }, code: 'plan-kept-after-legal', values: { date: '2026-12-04', day: '2026-12-08' } },
  ])('$case is refused with the date: $code', ({ task, more, code, values }) => {
    expect(refusal(task, more)).toMatchObject({ code, values });
  });

  test('kept in time, or late already, it is no reason to refuse', () => {
    expect(refusal(test1('2026-12-04'))).toBeNull();
    expect(refusal(test1('2026-12-01'), { pinned: [{ ...kept('2026-11-30', 'hill'), tasks: [{ kind: 'obligation', id: 'test' }] }] })).toBeNull();
    const late = test1('2026-11-20', { late: true });
    expect(refusal(late)).toBeNull();
    expect(openFor(composePlanProblem(input([late])), late.key, 'hill')[0]).toBe('2026-12-02');
  });
});

describe('the baseline', () => {
  const baseline = (tasks: readonly HouseholdTask[], more: Partial<PlanInput> = {}) => {
    const problem = composePlanProblem(input(tasks, more));
    const chosen = planBaseline(problem);
    return chosen === null ? null : [...chosen].map((one) => `${one.task.replace(/.*\//, '')} ${one.day} ${one.place}`).sort();
  };

  test.each([
    { case: 'on the first open day at or after likely', of: baseline([named('oil', '2026-12-01')]), expected: ['oil 2026-12-05 home'] },
    { case: 'late: from today', of: baseline([named('oil', '2025-12-01', { late: true, likely: day('2025-12-01') })]), expected: ['oil 2026-11-28 home'] },
    { case: 'late by its wear, though likely later: from today too', of: baseline([named('oil', '2026-12-10', { late: true })]), expected: ['oil 2026-11-28 home'] },
    { case: 'at the cheaper place', of: baseline([named('oil', '2026-12-01', { prices: new Map([['home', 5000], ['hill', 4999]]) })]), expected: ['oil 2026-12-02 hill'] },
    { case: 'due after the horizon: left', of: baseline([named('oil', '2026-12-26')], { asked: ['item/oil'] }), expected: [] },
    { case: 'a full day is not open', of: baseline([named('oil', '2026-12-01', { minutes: 80 }), named('pads', '2026-12-01', { minutes: 80 })]), expected: ['oil 2026-12-05 home', 'pads 2026-12-06 home'] },
    { case: 'nor one that leaves no everyday car', of: baseline([named('oil', '2026-12-01'), named('pads', '2026-12-01', { car: 'alder' })], { everyday: ['pip', 'alder'] }), expected: ['oil 2026-12-05 home', 'pads 2026-12-06 home'] },
    { case: 'nor one on which the third is away', of: baseline([named('oil', '2026-12-01'), named('pads', '2026-12-01', { car: 'alder' })], { everyday: ['pip', 'alder', 'wren'], carDays: [{ id: 'n', car: 'wren', from: day('2026-12-05'), to: day('2026-12-05'), why: 'away', note: '' }] }), expected: ['oil 2026-12-05 home', 'pads 2026-12-06 home'] },
    { case: 'a legal one on the last day it has', of: baseline([test1('2026-12-06')]), expected: ['test 2026-12-04 hill'] },
    { case: 'what is pinned stays', of: baseline([named('oil', '2026-12-01')], { pinned: [kept('2026-12-12', 'home', 'oil')] }), expected: ['oil 2026-12-12 home'] },
    { case: 'what must be done and finds no room', of: baseline([test1('2026-12-02'), test1('2026-12-02', { key: 'obligation/other', car: 'alder' })], { everyday: ['pip', 'alder'] }), expected: null },
  ])('$case', ({ of, expected }) => {
    expect(of).toEqual(expected);
  });

  test('tasks that coincide share opening and access', () => {
    const tasks = [named('oil', '2026-12-01', { access: ['wheels off'] }), named('pads', '2026-12-01', { access: ['wheels off'], minutes: 10 })];
    const problem = composePlanProblem(input(tasks, { accessGroups: [{ id: 'w', car: 'pip', name: 'wheels off', minutes: 30 }], places: [{ place: { ...HOME, minuteMinor: 2 }, assumed: false }] }));
    // By hand: an opening of 1000, (50 + 10 + 30) minutes at 2, and each four days late at 60.
    expect(planAccount(problem, planBaseline(problem) ?? [])).toMatchObject({ openingMinor: 1000, minutesMinor: 180, lateMinor: 480, totalMinor: 1660, sessions: [{ minutes: 90 }] });
  });
});

describe('the account of a choice', () => {
  test('adds up to what its terms, openings and minutes are, whatever is chosen', () => {
    const anyTask = fc.record({ due: fc.integer({ min: -50, max: 80 }), home: fc.integer({ min: 0, max: 9000 }), hill: fc.integer({ min: 0, max: 9000 }), minutes: fc.integer({ min: 5, max: 100 }), at: fc.option(fc.integer({ min: 0, max: 40 })), where: fc.constantFrom('home', 'hill') });
    fc.assert(fc.property(fc.array(anyTask, { maxLength: 6 }), (list) => {
      const tasks = list.map((one, at) => named(`t${at}`, addDays(day('2026-11-25'), one.due), { minutes: one.minutes, prices: new Map([['home', one.home], ['hill', one.hill]]), valueMinor: Math.min(one.home, one.hill) }));
      const problem = composePlanProblem(input(tasks, { asked: tasks.map((task) => task.key) }));
      const chosen = list.flatMap((one, at) => (one.at === null ? [] : [{ task: `item/t${at}`, day: addDays(day('2026-11-25'), one.at), place: one.where }]));
      const account = planAccount(problem, chosen);
      const slots = new Set(chosen.map((one) => `${one.day} ${one.place}`));
      const openings = [...slots].reduce((sum, slot) => sum + (slot.endsWith('home') ? 1000 : 2000), 0);
      const own = chosen.reduce((sum, one) => sum + taskTerms(problem.input, tasks.find((task) => task.key === one.task) ?? tasks[0] as HouseholdTask, one.day, one.place).totalMinor, 0);
      const left = tasks.filter((task) => !chosen.some((one) => one.task === task.key)).reduce((sum, task) => sum + (problem.left.get(task.key)?.totalMinor ?? NaN), 0);
      expect(account.totalMinor).toBe(openings + own + left);
      expect(account.sessions.map((one) => one.minutes).reduce((a, b) => a + b, 0)).toBe(list.filter((one) => one.at !== null).reduce((sum, one) => sum + one.minutes, 0));
    }));
  });
});
