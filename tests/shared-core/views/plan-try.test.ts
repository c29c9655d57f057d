import { describe, expect, test } from 'vitest';
import type { ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

const item = (id: string) => ({ kind: 'item' as const, id });

/** Fluid a year late and filters due on 20 December, 30 minutes each at home; a garage takes 60.00 for the fluid. 45 days ahead. */
function household(): MemoryHousehold {
  const made = memoryHousehold();
  made.must('place.set', { name: 'Home', kind: 'home', openingMinor: 1000, minutesADay: 100 });
  made.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage', openingMinor: 2000, noticeDays: 7 });
  made.must('plan-settings.set', { horizonDays: 45 });
  for (const car of ['pip', 'alder']) made.must('car.add', { id: car, name: car === 'pip' ? 'Pip' : 'Alder', firstRegistered: day('2020-12-20') });
  const add = (request: RequestOf<'item.add'>) => made.must('item.add', { history: 'never-done', minutes: 30, ...request });
  add({ id: 'fluid', car: 'pip', name: 'brake fluid', harm: 'safety', interval: { repeat: { months: 59, distance: null } }, garagePrice: 6000 });
  add({ id: 'filter', car: 'pip', name: 'cabin filter', harm: 'comfort', place: 'home', interval: { repeat: { months: 72, distance: null } } });
  add({ id: 'oil', car: 'alder', name: 'engine oil', interval: { repeat: { months: 72, distance: null } }, place: 'home' });
  return made;
}

const propose = (made: MemoryHousehold, ...list: RequestOf<'session.propose'>['sessions']) => made.must('session.propose', { sessions: list }).sessions;
const attempt = (made: MemoryHousehold, request: RequestOf<'plan.try'>): ReplyOf<'plan.try'> => made.must('plan.try', request);

describe('trying a move', () => {
  test.each([
    { case: 'a week later: seven days at 2.00', to: { day: '2026-12-05', place: 'home' }, delta: 1400, late: 7, text: 'It costs 14.00 GBP more, and adds 7 days of being late.', source: 'by hand' },
    { case: 'a day sooner than it stood', to: { day: '2026-11-28', place: 'home' }, delta: 0, late: 0, text: 'It costs the same.', source: 'by hand' },
    { case: 'into another session: its opening is spared', to: { day: '2026-12-20', place: 'home' }, delta: 22 * 200 - 1000, late: 22, text: 'It costs 34.00 GBP more, and adds 22 days of being late.', source: 'by hand: 22 days at 2.00 less an opening of 10.00' },
    { case: 'to the garage: its price and its opening more', to: { day: '2026-12-02', place: 'hill' }, delta: 6000 + 1000 + 800, late: 4, text: 'It costs 78.00 GBP more, and adds 4 days of being late.', source: 'by hand: 60.00 and 20.00 less 10.00, four days at 2.00' },
    { case: 'left undone: lateness just past the horizon and the cheapest opening later, less what it cost', to: null, delta: (46 - 3) * 200, late: 43, text: 'It costs 86.00 GBP more, and adds 43 days of being late.', source: 'by hand: the 46th day is 10 January; an opening now against an opening then' },
  ])('$case ($source)', ({ to, delta, late, text }) => {
    const made = household();
    propose(made, { day: day('2026-11-28'), place: 'home', tasks: [item('fluid')] }, { day: day('2026-12-20'), place: 'home', tasks: [item('filter')] });
    const reply = attempt(made, { tasks: [item('fluid')], to: to === null ? null : { ...to, day: day(to.day) } });
    expect(reply).toMatchObject({ allowed: true, faults: [], deltaMinor: delta, deltaLateDays: late, text });
    expect(reply.after.totalMinor - reply.before.totalMinor).toBe(delta);
    expect(reply.tasks).toMatchObject([{ name: 'brake fluid', before: { totalMinor: 600, lateDays: 3 } }]);
  });

  test('a whole session moves with all that is in it; what is kept may be tried too', () => {
    const made = household();
    made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('fluid'), item('filter')] }] });
    // By hand: the fluid is a day later at 2.00; the filter costs nothing early, for it has no parts.
    expect(attempt(made, { tasks: [item('fluid'), item('filter')], to: { day: day('2026-11-29'), place: 'home' } })).toMatchObject({ allowed: true, deltaMinor: 200, deltaLateDays: 1, text: 'It costs 2.00 GBP more, and adds a day of being late.' });
  });

  test('a plan that is not laid on the yard is tried as it is given; what is kept stays where it is', () => {
    const made = household();
    made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('filter')] }] });
    const plan = [{ day: day('2026-11-29'), place: 'home', tasks: [item('fluid'), item('filter')] }];
    expect(attempt(made, { tasks: [item('fluid')], to: { day: day('2026-11-28'), place: 'home' }, plan })).toMatchObject({ deltaMinor: -1200, text: 'It costs 12.00 GBP less, and takes a day of being late away.' });
  });

  test.each([
    { case: 'a day that has passed', to: { day: '2026-11-24', place: 'home' }, code: 'day-has-passed' },
    { case: 'a weekday at home', to: { day: '2026-11-26', place: 'home' }, code: 'not-a-work-day' },
    { case: 'a holiday', to: { day: '2026-12-26', place: 'home' }, code: 'place-closed-then' },
    { case: 'within the notice', to: { day: '2026-12-01', place: 'hill' }, code: 'place-needs-notice' },
    { case: 'a weekend at the garage', to: { day: '2026-12-05', place: 'hill' }, code: 'place-closed-weekday' },
    { case: 'a day on which the car is away', to: { day: '2026-12-12', place: 'home' }, code: 'car-away-then' },
    { case: 'beyond the horizon', to: { day: '2027-01-10', place: 'home' }, code: 'after-horizon' },
    { case: 'a day that is too full', to: { day: '2026-12-06', place: 'home' }, code: 'day-too-full' },
    { case: 'a day that leaves no car', to: { day: '2026-11-29', place: 'home' }, code: 'all-cars-apart' },
  ])('$case is told with its cost: $code', ({ to, code }) => {
    const made = household();
    made.must('place-days.set', { place: 'home', from: day('2026-12-26'), reason: 'holiday' });
    made.must('car-days.set', { car: 'pip', from: day('2026-12-12'), why: 'away' });
    made.must('item.add', { id: 'long', car: 'pip', name: 'valves', history: 'never-done', minutes: 80, place: 'home', interval: { repeat: { months: 70, distance: null } } });
    propose(made, { day: day('2026-12-06'), place: 'home', tasks: [item('long')] }, { day: day('2026-11-29'), place: 'home', tasks: [item('oil')] });
    const reply = attempt(made, { tasks: [item('fluid')], to: { ...to, day: day(to.day) } });
    expect(reply).toMatchObject({ allowed: false, faults: [{ code }] });
    expect(reply.faults[0]?.text).toMatch(/^[A-Z0-9].*\.$/);
    expect(Number.isInteger(reply.deltaMinor)).toBe(true);
  });

  test('leaving out what must be done by law is told', () => {
    const made = household();
    made.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-12-17'), price: 5000 });
    expect(attempt(made, { tasks: [{ kind: 'obligation', id: 'test' }], to: null })).toMatchObject({ allowed: false, faults: [{ code: 'must-be-done', text: 'roadworthiness test must be done within the plan. Give it a day.' }] });
    expect(attempt(made, { tasks: [{ kind: 'obligation', id: 'test' }], to: { day: day('2026-12-18'), place: 'hill' } })).toMatchObject({ allowed: false, faults: [{ code: 'after-legal-date' }] });
  });

  test.each([
    { case: 'an item that is none', request: { tasks: [item('nothing')], to: null }, code: 'unknown-task' },
    { case: 'a place that is none', request: { tasks: [item('fluid')], to: { day: day('2026-12-05'), place: 'moon' } }, code: 'unknown-place' },
  ])('$case is refused: $code', ({ request, code }) => {
    expect(household().call('plan.try', request)).toMatchObject({ refusal: { code } });
  });

  test('what it says is kept by moving the session', () => {
    const made = household();
    const [session] = propose(made, { day: day('2026-11-28'), place: 'home', tasks: [item('fluid')] });
    const before = attempt(made, { tasks: [item('fluid')], to: { day: day('2026-12-05'), place: 'home' } });
    made.must('session.move', { session: session?.id ?? '', day: day('2026-12-05') });
    const after = attempt(made, { tasks: [item('fluid')], to: { day: day('2026-12-05'), place: 'home' } });
    expect(after).toMatchObject({ deltaMinor: 0, before: before.after });
  });
});

describe('the yard and what is due', () => {
  test('show the sessions that stand, with what is done in them', () => {
    const made = household();
    made.must('access.set', { car: 'pip', name: 'wheels off', minutes: 20 });
    made.must('item.change', { id: 'fluid', access: ['wheels off'] });
    made.must('session.keep', { sessions: [{ day: day('2026-11-28'), place: 'home', tasks: [item('fluid'), item('filter')], note: 'with a friend' }] });
    propose(made, { day: day('2026-12-05'), place: 'home', tasks: [item('oil')] });
    const [kept, proposed] = made.must('yard.show', {}).sessions;
    expect(kept).toMatchObject({ day: '2026-11-28', placeName: 'Home', placeKind: 'home', state: 'kept', note: 'with a friend', passed: false, cars: ['pip'], minutes: 80, withoutMinutes: 0 });
    expect(proposed).toMatchObject({ day: '2026-12-05', state: 'proposed', cars: ['alder'], tasks: [{ name: 'engine oil', carName: 'Alder', done: false }] });
    expect(made.must('due.show', {}).sessions).toEqual([kept, proposed]);
    made.must('record.add', { car: 'pip', lines: [{ item: 'fluid' }] });
    expect(made.must('yard.show', {}).sessions[0]).toMatchObject({ tasks: [{ done: true }, { done: false }], minutes: 30 });
    // Its day has passed: the proposal is gone, the kept session still asks how it went.
    expect(made.on('2026-12-06').must('yard.show', {}).sessions).toMatchObject([{ state: 'kept', passed: true }]);
  });
});
