import { describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { proposePlan } from '../../../shared-core/views/plan-view.ts';
import type { PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const highs = directSolver();

async function plan(made: MemoryHousehold): Promise<PlanView> {
  const reply = await proposePlan(made.facts(), { horizonDays: 30, job: null }, { today: day('2026-11-25') }, (instance) => solvePlan(instance, highs));
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  return reply.value;
}

/** Pip, with a home that opens for 10.00. */
function household(): MemoryHousehold {
  const made = memoryHousehold();
  made.must('place.set', { name: 'Home', kind: 'home', openingMinor: 1000, minutesADay: 100 });
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-12-20') });
  return made;
}

const add = (made: MemoryHousehold, id: string, more: object) =>
  made.must('item.add', { id, car: 'pip', name: id, place: 'home', minutes: 30, harm: 'safety', history: 'never-done', interval: { repeat: { months: 59, distance: null } }, ...more });

describe('what a plan says where little is in it', () => {
  test('with nothing to do it names the last day, and says nothing of costs', async () => {
    expect((await plan(household())).summary.map((one) => one.text)).toEqual(['Nothing is worth a session up to 25 Dec 2026.', 'No plan costs less: it is proven.']);
  });

  test('what is not known is not said to be worth nothing: it is counted, and the intake is named', async () => {
    const made = household();
    for (const id of ['fluid', 'pads']) add(made, id, { history: 'unknown' });
    const view = await plan(made);
    expect(view.summary[0]?.text).toBe('Of what is known, nothing is worth a session up to 25 Dec 2026.');
    expect(view.notes.map((one) => one.text)).toContain('Not planned, because nobody knows when it is due: 2 items on the list of Pip. The intake of the car asks for it.');
  });

  test('a late item for which no day is open is not said to be worth nothing', async () => {
    const made = household();
    add(made, 'fluid', {});
    made.must('place-days.set', { place: 'home', from: day('2026-11-20'), to: day('2027-11-20'), reason: 'building' });
    const view = await plan(made);
    expect(view.summary[0]?.text).toBe('No session is planned up to 25 Dec 2026, for 1 of what is left has no day that is open. What is left says why.');
    expect(view.left[0]?.why.text).toMatch(/^No day up to 25 Dec 2026 is open for it\. Home is closed on 25 Nov 2026: building/);
  });

  test.each([
    { case: 'home is shut', alter: (made: MemoryHousehold) => made.must('place-days.set', { place: 'home', from: day('2026-11-20'), to: day('2027-11-20'), reason: 'building' }), text: /^No day up to 25 Dec 2026 is open for it\. Home is closed on 25 Nov 2026: building.*, or take the closing back\. A garage could do it, but nobody has said what it asks: enter what a garage asks for fluid\.$/ },
    { case: 'home takes another car only', alter: (made: MemoryHousehold) => (made.must('car.add', { id: 'wren', name: 'Wren' }), made.must('place.set', { name: 'Home', kind: 'home', cars: ['wren'] })), text: /^No place is known at which it can be done for a known price\. A garage could do it, but nobody has said what it asks: enter what a garage asks for fluid\.$/ },
  ])('where a garage is not thought of for want of a price, that is said: $case', async ({ alter, text }) => {
    const made = household();
    add(made, 'fluid', { place: 'either' });
    alter(made);
    expect((await plan(made)).left[0]?.why.text).toMatch(text);
    made.must('item.change', { id: 'fluid', garagePrice: 100 });
    expect((await plan(made)).left).toEqual([]);
  });

  test('one task of unknown length is spoken of as one, two as two', async () => {
    const made = household();
    add(made, 'fluid', { minutes: null, needs: [] });
    const assumed = async () => (await plan(made)).notes.filter((one) => one.code.startsWith('plan-minutes-assumed')).map((one) => one.text);
    expect(await assumed()).toEqual(['Nobody has said how long Pip: fluid takes; 60 minutes are assumed.']);
    add(made, 'pads', { minutes: null });
    expect(await assumed()).toEqual(['Nobody has said how long these take, so 60 minutes are assumed for each: Pip: fluid, Pip: pads.']);
  });

  test('beside kept sessions it says what they are held against', async () => {
    const made = household();
    add(made, 'fluid', {});
    made.must('session.keep', { sessions: [{ day: day('2026-12-12'), place: 'home', tasks: [{ kind: 'item', id: 'fluid' }] }] });
    const view = await plan(made);
    expect(view.notes.map((one) => one.code)).toContain('plan-baseline-keeps');
    expect(view.summary[0]?.text).toMatch(/^It costs \d+\.00 GBP, and so does each task by itself on its first open day, the sessions you have kept staying where they are: it saves nothing\.$/);
  });
});
