import { describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { solvePlan } from '../../../shared-core/sessions/plan-solve.ts';
import { proposePlan } from '../../../shared-core/views/plan-view.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const highs = directSolver();

/** Pip with brake fluid a year late, to be done at home, and a test; a garage with a notice of 7 days. */
function household(lastValidDay: string): MemoryHousehold {
  const made = memoryHousehold();
  made.must('place.set', { name: 'Home', kind: 'home', openingMinor: 1000, minutesADay: 100 });
  made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', openingMinor: 2000, noticeDays: 7 });
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-12-20') });
  made.must('item.add', { id: 'fluid', car: 'pip', name: 'brake fluid', harm: 'safety', history: 'never-done', interval: { repeat: { months: 59, distance: null } }, minutes: 30, place: 'home' });
  made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day(lastValidDay), price: 5000 });
  return made;
}

const ask = (made: MemoryHousehold, horizonDays = 30, today = '2026-11-28') => proposePlan(made.facts(), { horizonDays, job: null }, { today: day(today) }, (instance) => solvePlan(instance, highs));
const tightGarage = (made: MemoryHousehold) => made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', minutesADay: 30, noticeDays: 7 });
const shutGarage = (made: MemoryHousehold) => made.must('place-days.set', { place: 'hill', from: day('2026-11-20'), to: day('2027-11-20'), reason: 'rebuilding' });

describe('a test that has lapsed', () => {
  test.each([
    { case: 'the plan ends before the garage takes anyone', horizon: 1, alter: () => undefined, why: 'Hill Works wants 7 days of notice' },
    { case: 'the garage is shut', horizon: 30, alter: shutGarage, why: 'Hill Works is closed on' },
    { case: 'the garage has no day that long', horizon: 30, alter: tightGarage, why: 'roadworthiness test takes 60 minutes, and a day at Hill Works has 30' },
  ])('does not stop the plan of the rest, and its true reason is said: $case', async ({ horizon, alter, why }) => {
    const made = household('2026-11-10');
    alter(made);
    const reply = await ask(made, horizon);
    if (!reply.ok) throw new Error(sayRefusal(reply.refusal));
    expect(reply.value.sessions.map((one) => [one.day, one.tasks.map((task) => task.task.id)])).toEqual([['2026-11-28', ['fluid']]]);
    const note = reply.value.notes.find((one) => one.code === 'plan-legal-late-left');
    expect(note?.text).toContain('Pip: roadworthiness test has not held since 10 Nov 2026');
    expect(note?.text).toContain(why);
    expect(reply.value.left).toMatchObject([{ task: { id: 'test' }, late: true }]);
    expect(reply.value.left[0]?.why.text).toContain(why);
  });
});

test('a test that has not lapsed and is longer than any day there is refused for that, with what would help', async () => {
  const made = household('2026-12-17');
  tightGarage(made);
  const reply = await ask(made);
  expect(reply).toMatchObject({ ok: false, refusal: { code: 'plan-legal-too-long', values: { date: '2026-12-17', minutes: 60, most: 30 } } });
  expect(reply.ok ? '' : sayRefusal(reply.refusal)).toMatch(/takes 60 minutes.*Allow more minutes a day/);
});
