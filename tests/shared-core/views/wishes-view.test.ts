import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { wishFor, wishHousehold } from '../ledger/wish-household.ts';

const show = (household: MemoryHousehold) => household.must('wishes.show', {});
const one = (household: MemoryHousehold, id: string) => {
  const found = show(household).wishes.find((each) => each.wish.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};
const codes = (said: readonly { readonly code: string }[]) => said.map((each) => each.code);
/** Pip's brake pads on 7 December, behind the wheels (30 minutes), at home or at a garage that charges 1.00 a minute. */
function withSession(place: 'home' | 'garage', minutes = 60): MemoryHousehold {
  const household = wishHousehold();
  household.must('place.set', { id: 'home', name: 'Home', kind: 'home', openingMinor: 1500, minutesADay: 300 });
  household.must('place.set', { id: 'garage', name: 'Corner garage', kind: 'garage', openingMinor: 2500, minuteMinor: 100 });
  household.must('access.set', { car: 'pip', name: 'wheels off', minutes: 30 });
  household.must('item.add', { id: 'pads', car: 'pip', name: 'pads', history: 'never-done', interval: { repeat: { months: 72, distance: null } }, minutes, access: ['wheels off'], place: 'either', garagePrice: 9000 });
  household.must('session.keep', { sessions: [{ id: 's1', day: day('2026-12-07'), place, tasks: [{ kind: 'item', id: 'pads' }] }] });
  return household;
}

describe('what is wished for', () => {
  test('in the order of preference, with what it costs and when it is paid for; what came true and what was let go stand last', () => {
    const household = wishHousehold();
    for (const id of ['gone', 'done', 's', 'r', 'c']) wishFor(household, id, [{ s: 'springs', r: 'radio', c: 'clips' }[id] ?? 'radio']);
    household.must('ledger-settings.set', { monthlyMinor: 1000, savingSince: day('2026-10-25'), savedBefore: 12_000 });
    household.must('wish.let-go', { wish: 'gone' });
    const { item } = household.must('wish.plan', { wish: 'done' });
    household.must('record.add', { car: 'pip', date: day('2026-11-20'), lines: [{ name: 'radio', item: item.id }], costs: [{ kind: 'parts', text: 'radio', amountMinor: 900 }] });
    const view = show(household);
    expect(view.wishes.map((each) => [each.wish.id, each.state, each.paidForOn, each.spentMinor])).toEqual([
      // By hand: 120.00 and one month of 10.00 are 130.00, less 9.00 spent: 121.00. Springs alone are 118.00; with the radio of 85.00 they want 203.00 and 9.00, 9.2 months.
      ['s', 'saving', '2026-11-25', 0], ['r', 'saving', '2027-08-25', 0], ['c', 'saving', null, 0], ['done', 'fulfilled', null, 900], ['gone', 'let-go', null, 0],
    ]);
    expect([view.saving.putByMinor, view.saving.spentMinor, view.saving.leftMinor]).toEqual([13_000, 900, 12_100]);
    expect([codes(view.said), codes(one(household, 's').said), codes(one(household, 'r').said), codes(one(household, 'c').said)]).toEqual([['wishes-saved', 'wishes-waiting', 'wishes-unpriced'], ['wish-paid-for'], ['wish-paid-on'], ['wish-price-unknown']]);
    expect(view.said.map((each) => each.text).join(' ')).toContain('A year of waiting puts by 120.00 GBP more. Nothing is assumed about what prices do meanwhile');
    expect([one(household, 's').cost?.likelyMinor, one(household, 'done').cost, one(household, 'r').savedMinor, one(household, 'r').lacksMinor]).toEqual([11_800, null, 300, 8200]);
  });

  test('at no pace it is never paid for, and says so; more spent than put by is said', () => {
    const household = wishHousehold();
    wishFor(household, 'r', ['radio']);
    expect(codes(one(household, 'r').said)).toEqual(['wish-never-paid']);
    household.must('lot.set', { id: 'lot', part: 'ra', quantity: 1, receivedOn: day('2026-11-20'), paidMinor: 7000 });
    household.must('wish.put-aside', { wish: 'r', lots: ['lot'] });
    expect([codes(show(household).said)[0], one(household, 'r').spentMinor, one(household, 'r').cost?.likelyMinor, one(household, 'r').needs[0]]).toEqual(['wishes-overspent', 7000, 0, expect.objectContaining({ aside: 1, lacking: 0 })]);
  });
});

describe('a session that a wish could join', () => {
  test('saves a day of its own and, at a garage, the minutes of what is open anyway', () => {
    const household = withSession('garage');
    wishFor(household, 'g', ['springs'], { place: 'garage', minutes: 90, access: ['Wheels off'], garagePrice: 15_000 });
    // The opening of 25.00, and 30 minutes at 1.00.
    expect(one(household, 'g').sessions).toEqual([expect.objectContaining({ session: 's1', kept: true, fits: true, savesMinor: 5500, sharedMinutes: 30, paidForByThen: false })]);
    expect(one(household, 'g').sessions[0]?.why.text).toContain('30 minutes, for this is open anyway: Wheels off');
    household.must('ledger-settings.set', { savedBefore: 26_800 });
    expect(one(household, 'g').sessions[0]?.paidForByThen).toBe(true);
  });

  test('planned into it, it joins no other; the view alone moves nothing', () => {
    const household = withSession('home');
    wishFor(household, 'h', ['springs'], { minutes: 90 });
    const before = household.entries.length;
    expect(one(household, 'h').sessions).toEqual([expect.objectContaining({ fits: true, savesMinor: 1500, sharedMinutes: 0, why: expect.objectContaining({ code: 'wish-joins-day' }) as unknown })]);
    expect(household.entries.length).toBe(before);
    household.must('wish.plan', { wish: 'h', session: 's1' });
    expect([one(household, 'h').sessions, one(household, 'h').planned]).toEqual([[], { session: 's1', day: '2026-12-07', placeName: 'Home', kept: true }]);
  });

  test.each([
    { case: 'without room for its minutes', minutes: 200, wish: { minutes: 90 }, why: 'wish-no-room' },
    { case: 'with just enough room', minutes: 180, wish: { minutes: 90, access: ['wheels off'] }, why: 'wish-joins-day-and-access' },
    { case: 'before its parts can be here', minutes: 60, wish: { minutes: 90, needs: [{ specification: 'battery', quantity: 1 }] }, why: 'wish-parts-too-late', on: '2026-12-05' },
  ])('$case: $why', ({ minutes, wish, why, on = '2026-11-25' }) => {
    const household = withSession('home', minutes);
    wishFor(household, 'h', ['radio'], wish);
    expect(one(household.on(on), 'h').sessions.map((each) => each.why.code)).toEqual([why]);
  });

  test('at another kind of place, or of another car alone, is none', () => {
    const household = withSession('home');
    wishFor(household, 'g', ['springs'], { place: 'garage' });
    wishFor(household, 'a', ['springs'], { car: 'alder' });
    expect([one(household, 'g').sessions, one(household, 'a').sessions]).toEqual([[], []]);
  });
});
