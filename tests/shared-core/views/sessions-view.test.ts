import { describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { proposePlan } from '../../../shared-core/views/plan-view.ts';
import type { PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const item = (id: string) => ({ kind: 'item' as const, id });

/** Fluid a year late, filters due on 20 December, 30 minutes each at home, which opens for 10.00. 45 days ahead. */
function household(): MemoryHousehold {
  const made = memoryHousehold();
  made.must('place.set', { name: 'Home', kind: 'home', openingMinor: 1000, minutesADay: 100 });
  made.must('plan-settings.set', { horizonDays: 45 });
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-12-20') });
  const add = (request: RequestOf<'item.add'>) => made.must('item.add', { history: 'never-done', minutes: 30, place: 'home', ...request });
  add({ id: 'fluid', car: 'pip', name: 'brake fluid', harm: 'safety', interval: { repeat: { months: 59, distance: null } } });
  add({ id: 'filter', car: 'pip', name: 'cabin filter', harm: 'comfort', interval: { repeat: { months: 72, distance: null } } });
  return made;
}

const highs = directSolver();

async function laid(made: MemoryHousehold): Promise<PlanView> {
  const reply = await proposePlan(made.facts(), { horizonDays: null, job: null }, { today: day('2026-11-25') }, (instance) => solvePlan(instance, highs));
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  made.must('session.propose', { sessions: reply.value.sessions.map(({ day: on, place, tasks }) => ({ day: on, place, tasks: tasks.map((one) => one.task) })) });
  return reply.value;
}

const shown = (made: MemoryHousehold, plan: PlanView | null): ReplyOf<'sessions.show'> =>
  made.must('sessions.show', { proposed: plan === null ? null : { status: plan.status, totalMinor: plan.totalMinor, boundMinor: plan.boundMinor, basis: plan.basis, choices: plan.choices } });
const codes = (view: ReplyOf<'sessions.show'>) => view.summary.map((one) => one.code);

describe('the sessions that stand', () => {
  test('say of a plan laid on the yard just what the plan said, and that it is proven', async () => {
    const made = household();
    const plan = await laid(made);
    const view = shown(made, plan);
    expect(view).toMatchObject({ totalMinor: plan.totalMinor, summary: plan.summary, notes: plan.notes, currency: 'GBP', horizonDays: 45 });
    expect(view.sessions.map(({ day: on, openingMinor, mostMinutes }) => ({ on, openingMinor, mostMinutes }))).toEqual(plan.sessions.map((one) => ({ on: one.day, openingMinor: 1000, mostMinutes: 100 })));
    expect(view.sessions.flatMap((one) => one.tasks.map((task) => task.planned?.why))).toEqual(plan.sessions.flatMap((one) => one.tasks.map((task) => task.why)));
    expect(view.left).toEqual(plan.left);
    expect(codes(view)).toContain('plan-proven');
  });

  test('keep what was proven when they are kept where they stand', async () => {
    const made = household();
    const plan = await laid(made);
    made.must('session.keep', { sessions: plan.sessions.map(({ day: on, place, tasks }) => ({ day: on, place, tasks: tasks.map((one) => one.task) })) });
    expect(codes(shown(made, plan))).toContain('plan-proven');
    expect(shown(made, plan).sessions[0]?.tasks[0]?.planned?.why.text).toMatch(/^You have kept this session/);
  });

  test('say what a move costs against the plan, and claim no bound of it', async () => {
    const made = household();
    const plan = await laid(made);
    const [first] = made.must('yard.show', {}).sessions;
    made.must('session.move', { session: first?.id ?? '', day: day('2026-12-12'), place: 'home' });
    // By hand: the fluid stood on Saturday 28 November; 14 days at 2.00 more.
    expect(shown(made, plan).summary.at(-1)).toMatchObject({ code: 'stand-above-plan', text: `The plan that was proposed costs ${(plan.totalMinor / 100).toFixed(2)} GBP, 28.00 GBP less.` });
    // A day off one's habit, sooner: cheaper than the plan, which does not use it.
    const [moved] = made.must('yard.show', {}).sessions;
    made.must('session.move', { session: moved?.id ?? '', day: day('2026-11-26'), place: 'home' });
    expect(shown(made, plan).summary.at(-1)).toMatchObject({ code: 'stand-below-plan' });
  });

  test('no longer say that anything is proven once a place, a price or an item has changed', async () => {
    const made = household();
    const plan = await laid(made);
    made.must('place-days.set', { place: 'home', from: day('2026-12-27'), reason: 'holiday' });
    expect(codes(shown(made, plan))).toContain('stand-unproven');
    expect(codes(shown(made, null))).toContain('stand-unproven');
  });

  test('without a plan that holds, say what they count and what is not known, and hold it against nothing', async () => {
    const made = household();
    made.must('session.keep', { sessions: [{ day: day('2026-12-20'), place: 'home', tasks: [item('filter')] }] });
    const { summary, totalMinor } = shown(made, null);
    expect(summary.map((one) => one.text)).toEqual([`What stands counts ${(totalMinor / 100).toFixed(2)} GBP, with all that is left for later. Whether anything costs less is not known: propose sessions to find out.`]);
    // A plan says more, and still does of what is moved against it.
    const plan = await laid(made);
    expect(codes(shown(made, plan))).toHaveLength(2);
    made.must('place-days.set', { place: 'home', from: day('2026-12-27'), reason: 'holiday' });
    expect(codes(shown(made, plan))).toEqual(['stand-unproven']);
  });

  test('what is left by hand though it is worth doing is said to be, and none of the days is called full', () => {
    const made = household();
    made.must('session.keep', { sessions: [{ day: day('2026-12-20'), place: 'home', tasks: [item('filter')] }] });
    const [left] = shown(made, null).left;
    expect(left).toMatchObject({ task: item('fluid'), why: { code: 'left-unplanned' } });
    expect(left?.why.text).toMatch(/^It stands in no session\. Leaving it counts \d+\.\d\d GBP/);
  });

  test('a proposed session joins the kept one of its day and place, and counts no opening of its own', () => {
    const made = household();
    const { sessions: [kept] } = made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('fluid')] }] });
    made.must('session.propose', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('filter')] }] });
    const by = Object.fromEntries(shown(made, null).sessions.map((one) => [one.state, one]));
    expect(by['kept']).toMatchObject({ joins: null, openingMinor: 1000, dayMinutes: 60, minutes: 30 });
    expect(by['proposed']).toMatchObject({ joins: kept?.id, openingMinor: 0, dayMinutes: 60, minutes: 30 });
  });

  test('have no terms for what is done, nor for a day that has passed; nothing at all stands at first', () => {
    const made = household();
    expect(shown(made, null)).toMatchObject({ sessions: [], summary: [] });
    made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('fluid'), item('filter')] }] });
    made.must('record.add', { car: 'pip', lines: [{ item: 'fluid' }] });
    expect(shown(made, null).sessions[0]?.tasks).toMatchObject([{ done: true, planned: null }, { done: false, planned: { minutes: 30 } }]);
    expect(shown(made.on('2026-11-30'), null).sessions[0]).toMatchObject({ passed: true, tasks: [{ planned: null }, { planned: null }] });
  });
});

describe('trying a move says beforehand what keeping it would answer', () => {
  test.each([
    { case: 'a day off one’s habit may be kept', on: '2026-11-26', refusal: null, faults: ['not-a-work-day'] },
    { case: 'a closed day may not', on: '2026-12-26', refusal: 'place-closed-then', faults: ['place-closed-then'] },
    { case: 'nor one on which the car is away', on: '2026-12-12', refusal: 'car-away-then', faults: ['car-away-then'] },
  ])('$case', ({ on, refusal, faults }) => {
    const made = household();
    made.must('place-days.set', { place: 'home', from: day('2026-12-26'), reason: 'holiday' });
    made.must('car-days.set', { car: 'pip', from: day('2026-12-12'), why: 'away' });
    const { sessions: [session] } = made.must('session.propose', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('fluid')] }] });
    const tried = made.must('plan.try', { tasks: [item('fluid')], to: { day: day(on), place: 'home' } });
    expect({ refusal: tried.refusal?.code ?? null, faults: tried.faults.map((one) => one.code) }).toEqual({ refusal, faults });
    const moved = made.call('session.move', { session: session?.id ?? '', day: day(on) });
    expect(moved.ok ? null : moved.refusal.code).toBe(refusal);
  });

  test('two everyday cars kept apart on one day are refused as they would be', () => {
    const made = household();
    made.must('car.add', { id: 'alder', name: 'Alder', firstRegistered: day('2020-12-20') });
    made.must('item.add', { id: 'oil', car: 'alder', name: 'engine oil', history: 'never-done', minutes: 30, place: 'home', interval: { repeat: { months: 72, distance: null } } });
    made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('oil')] }] });
    expect(made.must('plan.try', { tasks: [item('fluid')], to: { day: day('2026-11-28'), place: 'home' } })).toMatchObject({ refusal: { code: 'all-cars-apart' } });
    expect(made.must('plan.try', { tasks: [item('fluid')], to: { day: day('2026-11-29'), place: 'home' } })).toMatchObject({ refusal: null });
  });
});
