import { describe, expect, test } from 'vitest';
import { hasWords, sayRefusal } from '../../../shared-core/result/words/say.ts';
import { PLAN_INSTANCE_WORDS } from '../../../shared-core/result/words/en-plan-instance.ts';
import type { PlanAnswer } from '../../../shared-core/sessions/plan-answer.ts';
import { verifyPlan } from '../../../shared-core/sessions/plan-verify.ts';
import { day } from '../calendar/day.ts';
import { planInstanceOf } from './plan-written.ts';

const [first, second, third, fourth] = [day('2027-01-09'), day('2027-01-16'), day('2027-01-23'), day('2027-01-30')];

/**
 * Everything at once, by hand. Home on the 9th: fluid 40 minutes, pads 30, and the wheels off once 25, make 95 minutes at 2, so 1500 + 190, and
 * what waiting costs, 0 + 100. The garage on the 16th: the test, 4000 + 500. Left: the belt at 900. Total 1790 + 4500 + 900 = 7190.
 */
const instance = planInstanceOf({
  days: [first, second, third, fourth],
  places: [
    { id: 'home', openingMinor: 1500, minutesADay: 100, minutesOn: { [third]: 94 }, minuteMinor: 2, closed: [second] },
    { id: 'garage', openingMinor: 4000, minutesADay: 480 },
  ],
  tasks: [
    { id: 'fluid', car: 'pip', minutes: 40, access: ['wheels'], leftUndoneMinor: 3000, costMinor: { home: [0, 50, 60, 70], garage: [700, 700, 700, 700] } },
    { id: 'pads', car: 'pip', minutes: 30, access: ['wheels'], leftUndoneMinor: 2000, costMinor: { home: [100, 100, 100, 100] } },
    { id: 'test', car: 'alder', minutes: 60, mustDo: true, leftUndoneMinor: 0, costMinor: { garage: [500, 500, null, 500] } },
    { id: 'belt', car: 'alder', minutes: 10, leftUndoneMinor: 900, costMinor: { garage: [2000, 2000, 2000, 2000] } },
  ],
  access: [{ car: 'pip', id: 'wheels', minutes: 25 }],
  cars: [{ id: 'alder', closed: [fourth], away: [fourth] }],
  neverAll: [['pip', 'alder']],
});

const home = { day: first, place: 'home', tasks: ['fluid', 'pads'], minutes: 95 };
const garage = { day: second, place: 'garage', tasks: ['test'], minutes: 60 };
const good: PlanAnswer = { status: 'optimal', totalMinor: 7190, boundMinor: 7190, sessions: [home, garage], left: ['belt'] };

/** A total and a bound that it reaches. */
const sum = (minor: number) => ({ totalMinor: minor, boundMinor: minor });

describe('the verifier of plans', () => {
  test('has nothing to say to a plan that keeps every rule and adds up, proven or not', () => {
    expect(verifyPlan(instance, good)).toEqual([]);
    for (const boundMinor of [7189, 0]) expect(verifyPlan(instance, { ...good, status: 'stopped', boundMinor })).toEqual([]);
  });

  // The other figures of each answer are right by hand, so that nothing but the fault itself gives it away.
  const tampered: { readonly case: string; readonly code: string; readonly change: Partial<PlanAnswer> }[] = [
    { case: 'a total one too low', code: 'total-wrong', change: sum(7189) },
    { case: 'a total that forgets what is left', code: 'total-wrong', change: sum(7190 - 900) },
    { case: 'a total that forgets an opening', code: 'total-wrong', change: sum(7190 - 1500) },
    { case: 'a total that forgets what minutes cost', code: 'total-wrong', change: sum(7190 - 190) },
    { case: 'a total that pays for the access of each task', code: 'total-wrong', change: sum(7190 + 50) },
    { case: 'a bound above the total', code: 'bound-wrong', change: { boundMinor: 7191 } },
    { case: 'a bound below nothing', code: 'bound-wrong', change: { status: 'stopped', boundMinor: -1 } },
    { case: 'optimal without a proof', code: 'status-wrong', change: { boundMinor: 7189 } },
    { case: 'stopped with a proof', code: 'status-wrong', change: { status: 'stopped' } },
    { case: 'minutes without the access', code: 'plan-minutes-wrong', change: { sessions: [{ ...home, minutes: 70 }, garage] } },
    { case: 'minutes with the access of each task', code: 'plan-minutes-wrong', change: { sessions: [{ ...home, minutes: 120 }, garage] } },
    { case: 'minutes one too many', code: 'plan-minutes-wrong', change: { sessions: [home, { ...garage, minutes: 61 }] } },
    // 60 more for the fluid on that day.
    { case: 'a day one minute over its own minutes', code: 'plan-day-too-full', change: { ...sum(7250), sessions: [garage, { ...home, day: third }] } },
    { case: 'a task in two sessions', code: 'plan-task-not-once', change: { ...sum(7190 + 4000 + 700), sessions: [home, garage, { day: third, place: 'garage', tasks: ['fluid'], minutes: 65 }] } },
    // The verifier counts a task once in a session, whatever is listed.
    { case: 'a task twice in a session', code: 'plan-task-not-once', change: { sessions: [{ ...home, tasks: ['fluid', 'pads', 'pads'] }, garage] } },
    { case: 'a task done and left', code: 'plan-task-not-once', change: { ...sum(7190 + 3000), left: ['belt', 'fluid'] } },
    { case: 'a task left twice', code: 'plan-task-not-once', change: { left: ['belt', 'belt'] } },
    { case: 'a task forgotten', code: 'plan-task-not-once', change: { ...sum(7190 - 900), left: [] } },
    { case: 'what must be done, left', code: 'plan-must-do-left', change: { ...sum(1790 + 900), sessions: [home], left: ['test', 'belt'] } },
    // 50 more for the fluid; the garage a week sooner keeps a car free.
    { case: 'a closed day', code: 'plan-place-closed', change: { ...sum(7240), sessions: [{ ...garage, day: first }, { ...home, day: second }] } },
    { case: 'a car that is away', code: 'plan-car-away', change: { sessions: [home, { ...garage, day: fourth }] } },
    // Nothing is counted for what is not allowed.
    { case: 'a day that is not allowed', code: 'plan-not-allowed-then', change: { ...sum(7190 - 500), sessions: [home, { ...garage, day: third }] } },
    { case: 'a place that is not allowed', code: 'plan-not-allowed-then', change: { ...sum(1500 + 2 * 10 + 4500 + 5000), sessions: [{ day: third, place: 'home', tasks: ['belt'], minutes: 10 }, garage], left: ['fluid', 'pads'] } },
    { case: 'both cars apart on one day', code: 'plan-all-at-once', change: { sessions: [home, { ...garage, day: first }] } },
    // 70 more for the fluid.
    { case: 'a car apart while the other is away', code: 'plan-all-at-once', change: { ...sum(7260), sessions: [garage, { ...home, day: fourth }] } },
    { case: 'an unknown task', code: 'plan-unknown-task', change: { sessions: [{ ...home, tasks: ['fluid', 'pads', 'wash'] }, garage] } },
    { case: 'an unknown task left', code: 'plan-unknown-task', change: { left: ['belt', 'wash'] } },
    { case: 'an unknown day', code: 'plan-unknown-day', change: { sessions: [home, { ...garage, day: day('2027-01-17') }] } },
    { case: 'an unknown place', code: 'plan-unknown-place', change: { sessions: [home, { ...garage, place: 'hill' }] } },
    { case: 'a session of nothing', code: 'plan-session-empty', change: { sessions: [home, garage, { day: third, place: 'garage', tasks: [], minutes: 0 }] } },
    { case: 'a session split in two', code: 'row-twice', change: { sessions: [{ ...home, tasks: ['fluid'], minutes: 65 }, { ...home, tasks: ['pads'], minutes: 55 }, garage] } },
  ];

  test('does not mind that no car is there where none is worked on', () => {
    const allAway = planInstanceOf({ ...instance, cars: [{ id: 'alder', closed: [], away: [third] }, { id: 'pip', closed: [], away: [third] }] });
    expect(verifyPlan(allAway, good)).toEqual([]);
  });

  test.each(tampered)('refuses $case, and nothing else: $code', ({ code, change }) => {
    const faults = verifyPlan(instance, { ...good, ...change });
    expect([...new Set(faults.map((fault) => fault.code))]).toEqual([code]);
    for (const fault of faults) expect(hasWords(fault.code) && !sayRefusal(fault).includes('{')).toBe(true);
  });

  test('every code of the verifier has its tampered answer here', () => {
    const ofVerifier = Object.keys(PLAN_INSTANCE_WORDS).filter((code) => code.startsWith('plan-') && !/^plan-must-do-(no|too|not)/.test(code));
    expect([...new Set(tampered.map(({ code }) => code))].sort()).toEqual([...ofVerifier, 'bound-wrong', 'row-twice', 'status-wrong', 'total-wrong'].sort());
  });

  test('a day with minutes of its own is held against those', () => {
    const wide = { ...instance, places: instance.places.map((place) => (place.id === 'home' ? { ...place, minutesADay: 0, minutesOn: { [first]: 95 } } : place)) };
    expect(verifyPlan(wide, good)).toEqual([]);
    expect(verifyPlan({ ...wide, places: wide.places.map((place) => (place.id === 'home' ? { ...place, minutesOn: { [first]: 94 } } : place)) }, good)).toMatchObject([{ code: 'plan-day-too-full', values: { minutes: 95, most: 94 } }]);
  });

  test('an access of another car under the same name is another access', () => {
    const two = planInstanceOf({
      ...{ days: [first], places: [{ id: 'home', openingMinor: 0, minutesADay: 100 }] },
      tasks: ['pip', 'alder'].map((car) => ({ id: car, car, minutes: 10, access: ['wheels'], leftUndoneMinor: 50, costMinor: { home: [1] } })),
      access: [{ car: 'pip', id: 'wheels', minutes: 5 }, { car: 'alder', id: 'wheels', minutes: 7 }],
    });
    const answer = (minutes: number): PlanAnswer => ({ status: 'optimal', ...sum(2), sessions: [{ day: first, place: 'home', tasks: ['pip', 'alder'], minutes }], left: [] });
    expect(verifyPlan(two, answer(32))).toEqual([]);
    expect(verifyPlan(two, answer(27))).toMatchObject([{ code: 'plan-minutes-wrong', values: { is: 32 } }]);
  });
});
