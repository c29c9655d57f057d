import { beforeAll, describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import type { OperationName } from '../../../shared-core/contract/contract.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { carDays } from '../../../shared-core/sessions/car-days.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { proposePlan, type SolvesPlans } from '../../../shared-core/views/plan-view.ts';
import { planViewSchema, type PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';
import { standingSample, type StandingSample } from '../sample/sample-household.ts';

const highs = directSolver();
const solve: SolvesPlans = (instance) => solvePlan(instance, highs);
/** Four weeks: proven in less than a second. */
const HORIZON = 28;
let sample: StandingSample;
let view: PlanView;

async function plan(facts: Facts, today = sample.today): Promise<PlanView> {
  const reply = await proposePlan(facts, { horizonDays: HORIZON, job: null }, { today }, solve);
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  return reply.value;
}

const change = (operation: OperationName, request: unknown) => {
  const reply = sample.household.call(operation, request, sample.today);
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  return reply.value;
};
const standing = (one: PlanView) => one.sessions.flatMap((session) => session.tasks.map((task) => ({ ...task, day: session.day, place: session.place })));
const task = (one: PlanView, id: string) => standing(one).find((placed) => placed.task.id === id);

beforeAll(async () => {
  sample = await standingSample('2026-11-25');
  view = await plan(sample.household.facts);
}, 300_000);

describe('the plan of the sample', () => {
  test('is proven, adds up, and is what the contract says', () => {
    expect(planViewSchema.parse(view)).toEqual(view);
    expect(view).toMatchObject({ status: 'optimal', boundMinor: view.totalMinor, horizonDays: HORIZON, currency: 'GBP' });
    expect(Object.values(view.cost).reduce((sum, minor) => sum + minor, 0)).toBe(view.totalMinor);
    const terms = standing(view).flatMap((placed) => [placed.terms.priceMinor + placed.terms.earlyMinor + placed.terms.lateMinor - placed.terms.totalMinor]);
    expect(new Set(terms)).toEqual(new Set([0]));
  });

  test('saves against each task by itself, and says so', () => {
    expect(view.savingMinor).toBe((view.baselineMinor ?? NaN) - view.totalMinor);
    expect(view.savingMinor).toBeGreaterThan(0);
    expect(view.summary.map((one) => one.code)).toEqual(['plan-saves', 'plan-proven']);
  });

  test('leaves the kept sessions where they are', () => {
    const kept = view.sessions.filter((session) => session.state === 'kept');
    expect(kept.map(({ day, place }) => `${day} ${place}`)).toEqual(['2026-12-05 home', '2027-01-13 van-hill']);
    expect(task(view, 'heron-test')).toMatchObject({ legalBy: '2027-02-03', why: { reasons: [{ code: 'kept' }, { code: 'opening' }], text: 'You have kept this session for 13 Jan 2027, and it shares the opening with damp check of the body, which saves 35.00 GBP.' } });
  });

  test('never takes all everyday cars apart at once, nor a car that is needed', () => {
    for (const day of new Set(view.sessions.map((session) => session.day))) {
      const cars = new Set(standing(view).filter((placed) => placed.day === day).map((placed) => placed.car));
      expect(['pip', 'alder', 'ember'].every((car) => cars.has(car))).toBe(false);
      if (day >= '2026-12-19' && day <= '2026-12-21') expect(cars.has('alder')).toBe(false);
    }
  });

  test('the missed brake fluid stands, with the reason that it is late; once it is done it is gone, and its reason with it', async () => {
    expect(task(view, 'pip-brake-fluid')).toMatchObject({ late: true, why: { reasons: expect.arrayContaining([expect.objectContaining({ code: 'late' })]) as unknown } });
    expect(task(view, 'pip-brake-fluid')?.why.text).toContain('It is late and counts 2.00 GBP a day');
    const done = change('record.add', { id: 'fluid-done', car: 'pip', date: sample.today, lines: [{ item: 'pip-brake-fluid' }] });
    expect(done).toMatchObject({ record: { id: 'fluid-done' } });
    const after = await plan(sample.household.facts);
    expect(task(after, 'pip-brake-fluid')).toBeUndefined();
    expect(after.left.some((one) => one.task.id === 'pip-brake-fluid')).toBe(false);
    expect(JSON.stringify(after.sessions)).not.toContain('Pip: brake fluid');
    sample.household.entries.pop();
  }, 300_000);

  test('is the same for the same household', async () => {
    expect(await plan(sample.household.facts)).toEqual(view);
  }, 300_000);
});

/** Pip with a test due on 17 December and brake fluid a year late; Alder with oil due on 20 December. Places of its own. */
function small(): MemoryHousehold {
  const made = memoryHousehold();
  made.must('place.set', { name: 'Home', kind: 'home', openingMinor: 1000, minutesADay: 100 });
  made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', openingMinor: 2000, noticeDays: 7 });
  made.must('plan-settings.set', { horizonDays: 30 });
  for (const car of ['pip', 'alder']) made.must('car.add', { id: car, name: car === 'pip' ? 'Pip' : 'Alder', firstRegistered: day('2020-12-20') });
  made.must('specification.set', { id: 'oil', name: 'engine oil', unit: 'litre' });
  made.must('part.set', { id: 'oil-5', name: 'oil', meets: ['oil'] });
  made.must('supplier.set', { id: 'north', name: 'North Parts', leadDays: 3 });
  made.must('offer.set', { supplier: 'north', part: 'oil-5', quantity: 5, priceMinor: 5000, seenOn: day('2026-11-01') });
  const months = (n: number) => ({ repeat: { months: n, distance: null } });
  made.must('item.add', { id: 'fluid', car: 'pip', name: 'brake fluid', harm: 'safety', history: 'never-done', interval: months(59), minutes: 30, garagePrice: 6000, access: ['wheels off'] });
  made.must('item.add', { id: 'pads', car: 'pip', name: 'brake pads', work: 'check', harm: 'safety', history: 'never-done', interval: months(71), minutes: 20, place: 'home', access: ['wheels off'] });
  made.must('item.add', { id: 'oil', car: 'alder', name: 'engine oil', history: 'never-done', interval: months(72), minutes: 30, place: 'home', needs: [{ specification: 'oil', quantity: 4 }] });
  made.must('access.set', { car: 'pip', name: 'wheels off', minutes: 25 });
  made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-12-17'), keepsDate: true, price: 5000 });
  return made;
}

const ask = (made: MemoryHousehold, today = '2026-11-25') => proposePlan(made.facts(), { horizonDays: null, job: null }, { today: day(today) }, solve);
async function must(made: MemoryHousehold, today?: string): Promise<PlanView> {
  const reply = await ask(made, today);
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  return reply.value;
}

describe('the plan of a small household', () => {
  test('by hand: the late fluid with the pads on the first Saturday, the test within the days that keep its date, the oil on its own day', async () => {
    const plan = await must(small());
    expect(plan.sessions.map((session) => [session.day, session.place, session.minutes, session.tasks.map((one) => one.task.id)])).toEqual([
      ['2026-11-28', 'home', 75, ['fluid', 'pads']],
      [expect.stringMatching(/^2026-12-(0[2-9]|1[0-7])$/) as string, 'hill', 60, ['test']],
      ['2026-12-20', 'home', 30, ['oil']],
    ]);
    // By hand: openings of 10, 20 and 10; the fluid and the pads are three days late at 2.00 each.
    expect(plan).toMatchObject({ totalMinor: 5200, cost: { openingMinor: 4000, lateMinor: 1200, earlyMinor: 0, leftMinor: 0 }, lateDays: 6, status: 'optimal' });
  });

  test('every reason is of its own terms', async () => {
    const plan = await must(small());
    const why = (id: string) => task(plan, id)?.why;
    expect(why('fluid')?.text).toBe('It is late and counts 2.00 GBP a day: waiting past 25 Dec 2026 would count 56.00 GBP more, and it shares the opening with brake pads, which saves 10.00 GBP.');
    expect(why('fluid')?.reasons.map((one) => [one.code, one.worthMinor])).toEqual([['late', 5600], ['opening', 1000], ['access', 0], ['cheaper', 6000]]);
    expect(why('pads')?.reasons[2]).toMatchObject({ code: 'access', values: { access: 'wheels off', others: 'brake fluid', minutes: 25 } });
    expect(why('test')?.text).toBe('It must be done by 17 Dec 2026, and from 18 Nov 2026 on a new one keeps that day.');
    expect(why('oil')?.text).toBe('Waiting past 25 Dec 2026 would count 3.60 GBP more for being late.');
  });

  test('where nothing can be saved it says so', async () => {
    const plan = await must(small());
    expect(plan).toMatchObject({ baselineMinor: 5200, savingMinor: 0 });
    expect(plan.summary.map((one) => one.text)).toEqual(['It costs 52.00 GBP, and so does each task by itself on its first open day: it saves nothing.', 'No plan costs less: it is proven.']);
  });

  test('what is not done is said with what leaving it counts', async () => {
    const made = small();
    made.must('plan-settings.set', { lateMinorADay: { damage: 0 } });
    made.must('item.change', { id: 'oil', place: 'garage', garagePrice: 9000, needs: [] });
    made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', openingMinor: 2000, noticeDays: 7, cars: ['pip'] });
    const [left] = (await must(made)).left;
    expect(left).toMatchObject({ task: { id: 'oil' }, why: { code: 'left-no-place', text: 'No place is known at which it can be done. Name a garage, or enter what one asks for it.' } });
  });

  test.each([
    { case: 'a test before any garage could take it', change: (made: MemoryHousehold) => made.must('obligation.change', { id: 'test', lastValidDay: day('2026-11-30') }), code: 'plan-legal-needs-notice', date: '2026-11-30' },
    { case: 'a test with no garage open', change: (made: MemoryHousehold) => made.must('place-days.set', { place: 'hill', from: day('2026-11-26'), to: day('2026-12-17'), reason: 'rebuilding' }), code: 'plan-legal-no-day', date: '2026-12-17' },
    {
      case: 'two tests for one hour', code: 'plan-legal-no-room', date: '2026-12-02',
      change: (made: MemoryHousehold) => {
        made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', minutesADay: 100, noticeDays: 7 });
        made.must('car.change', { id: 'alder', use: 'hobby' });
        made.must('obligation.change', { id: 'test', lastValidDay: day('2026-12-02') });
        made.must('obligation.add', { id: 'other', car: 'alder', kind: 'roadworthiness-test', lastValidDay: day('2026-12-02') });
      },
    },
  ])('$case is refused with the date and a remedy: $code', async ({ change: alter, code, date }) => {
    const made = small();
    alter(made);
    const reply = await ask(made);
    expect(reply).toMatchObject({ ok: false, refusal: { code, values: { date } } });
    expect(reply.ok ? '' : sayRefusal(reply.refusal)).toMatch(/(Open|Ask|keep)/);
  });

  test('a booking that the garage takes sooner settles it, and what has been closed since is said', async () => {
    const made = small();
    made.must('obligation.change', { id: 'test', lastValidDay: day('2026-11-30') });
    made.must('session.keep', { sessions: [{ day: day('2026-11-30'), place: 'hill', tasks: [{ kind: 'obligation', id: 'test' }] }] });
    made.must('place-days.set', { place: 'hill', from: day('2026-11-30'), reason: 'rebuilding' });
    const plan = await must(made);
    expect(task(plan, 'test')).toMatchObject({ day: '2026-11-30', place: 'hill' });
    expect(plan.notes.map((one) => one.code)).toContain('plan-kept-on-shut-day');
  });

  test('a test that is late by law is planned as soon as can be, and said', async () => {
    const plan = await must(small(), '2026-12-18');
    expect(task(plan, 'test')).toMatchObject({ late: true, day: '2026-12-25', why: { text: 'It has not held since 17 Dec 2026, so it comes as soon as can be.' } });
    expect(plan.notes.map((one) => one.text)).toContain('Pip: roadworthiness test has not held since 17 Dec 2026.');
  });

  test('an empty household has an empty plan, at assumed places', async () => {
    const made = memoryHousehold();
    expect(await must(made)).toMatchObject({ sessions: [], left: [], totalMinor: 0, savingMinor: 0, notes: [{ code: 'plan-places-assumed' }, { code: 'plan-places-assumed' }] });
  });

  test('while the other everyday car is away nothing is planned, and of what is left that is the reason', async () => {
    const made = small();
    made.must('obligation.change', { id: 'test', lastValidDay: day('2027-06-17') });
    made.must('car-days.set', { car: 'alder', from: day('2026-11-25'), to: day('2027-01-10'), why: 'away' });
    const plan = await must(made);
    expect(standing(plan)).toEqual([]);
    expect(plan.left.find((one) => one.task.id === 'fluid')?.why.text).toBe('No day up to 25 Dec 2026 is open for it. On 28 Nov 2026 every everyday car would be apart or away. Leave one of them to drive.');
    made.must('car-days.set', { car: 'alder', from: day('2026-11-25'), to: day('2026-12-05'), why: 'away', id: 'soon' });
    made.must('car-days.remove', { id: made.facts().all(carDays).find((one) => one.id !== 'soon')?.id ?? '' });
    expect(task(await must(made), 'fluid')?.day).toBe('2026-12-06');
  });

  test('three everyday cars, one of them away: the other two are not apart on one day', async () => {
    const made = small();
    made.must('car.add', { id: 'wren', name: 'Wren', firstRegistered: day('2020-12-20') });
    made.must('item.add', { id: 'belt', car: 'wren', name: 'belt', harm: 'safety', history: 'never-done', interval: { repeat: { months: 59, distance: null } }, minutes: 20, place: 'home' });
    expect(task(await must(made), 'belt')?.day).toBe('2026-11-28');
    made.must('car-days.set', { car: 'alder', from: day('2026-11-28'), why: 'away' });
    const plan = await must(made);
    expect([task(plan, 'belt')?.day, task(plan, 'fluid')?.day].sort()).toEqual(['2026-11-28', '2026-11-29']);
    expect(made.call('plan.try', { tasks: [{ kind: 'item', id: 'belt' }], to: { day: day('2026-11-28'), place: 'home' }, plan: [{ day: day('2026-11-28'), place: 'home', tasks: [{ kind: 'item', id: 'fluid' }] }] })).toMatchObject({ value: { allowed: false, faults: [{ code: 'all-cars-apart' }, { code: 'must-be-done' }] } });
  });

  test('a session whose keeping has come to leave no car is refused', async () => {
    const made = small();
    made.must('car.change', { id: 'alder', use: 'hobby' });
    made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [{ kind: 'item', id: 'fluid' }, { kind: 'item', id: 'oil' }] }] });
    expect((await ask(made)).ok).toBe(true);
    made.must('car.change', { id: 'alder', use: 'everyday' });
    expect(await ask(made)).toMatchObject({ ok: false, refusal: { code: 'all-cars-apart', values: { day: '2026-11-28' } } });
  });
});
