import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { bookings } from '../../../shared-core/work/booking.ts';
import { withAsked, withVisit } from './booking-examples.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';

const day = (text: string) => text as never;
const ids = (household: MemoryHousehold) => household.facts().all(bookings).map((one) => one.id);
const keepOther = (household: MemoryHousehold, place = 'corner') => household.must('session.keep', { sessions: [{ id: 'other', day: day('2026-12-21'), place, tasks: [{ kind: 'item', id: 'oil' }] }] });
const join = (household: MemoryHousehold, place?: string) => household.must('session.move', { session: 'visit', day: day('2026-12-21'), ...(place === undefined ? {} : { place }) });
const askOther = (household: MemoryHousehold, askedOn: string | null) => household.must('booking.ask', { session: 'other', askedOn: askedOn as never, wanted: [{ car: 'pip', text: 'oil', task: { kind: 'item', id: 'oil' } }] });

describe('the booking of a session that joins another', () => {
  test('goes along in the same change, and is not lost as that is closed', () => {
    const household = withAsked();
    household.must('booking.book', { session: 'visit', day: day('2026-12-16'), reference: 'B1' });
    keepOther(household);
    const before = household.entries.length;
    expect(join(household).notes).toEqual(['The session joined another one. Tell the corner garage if that changes anything.']);
    expect(household.entries.slice(before).map((one) => one.kind).filter((kind) => kind.startsWith('booking'))).toEqual(['booking-removed', 'booking-set']);
    expect(ids(household)).toEqual(['other']);
    household.on('2026-12-22').must('session.end', { session: 'other', as: 'done' });
    expect(household.must('sessions.show', {}).bookings).toMatchObject([{ session: 'other', gone: false, day: '2026-12-16', waits: true }]);
    household.must('booking.came-back', { session: 'other', doneOn: day('2026-12-21'), lines: [] });
    expect(household.must('booking.show', { session: 'other' }).booking).toMatchObject({ booked: { reference: 'B1' }, cameBack: { doneOn: '2026-12-21' } });
  });

  test('at another garage is told there, to be dropped first', () => {
    const household = withAsked();
    keepOther(household, 'hill');
    join(household, 'hill');
    expect(household.must('booking.show', { session: 'other' })).toMatchObject({ state: 'not-asked', booking: null, elsewhere: { placeName: 'the corner garage', underway: true } });
    household.must('booking.drop', { session: 'other', why: 'cancelled' });
    expect(askOther(household, '2026-11-25').booking).toMatchObject({ place: 'hill', earlier: [{ place: 'corner', dropped: { why: 'cancelled' } }] });
  });

  test('stays with its session where a part of the tasks goes', () => {
    const household = withAsked();
    keepOther(household);
    household.must('session.move', { session: 'visit', day: day('2026-12-21'), tasks: [{ kind: 'item', id: 'belt' }] });
    expect(ids(household)).toEqual(['visit']);
    expect(household.must('booking.show', { session: 'other' }).booking).toBeNull();
  });

  test('where both count on the keeper, the one without a session is told in the answer', () => {
    const household = withAsked();
    keepOther(household);
    askOther(household, '2026-11-25');
    expect(join(household).notes).toEqual(['The session that it joins has a booking of its own. Tell the corner garage if it still counts on you for the other day, and take that off on Sessions.']);
    expect(household.must('sessions.show', {}).bookings).toMatchObject([{ session: 'visit', gone: true, waits: true }]);
    expect(household.must('booking.show', { session: 'other' }).booking?.wanted.map((one) => one.text)).toEqual(['oil']);
  });

  test.each([
    { case: 'what was only written gives way to what was asked', going: null, there: '2026-11-25', wanted: ['oil'], earlier: 0 },
    { case: 'and the other way round', going: '2026-11-25', there: null, wanted: ['brake fluid'], earlier: 0 },
  ])('$case', ({ going, there, wanted, earlier }) => {
    const household = withVisit();
    household.must('booking.ask', { session: 'visit', askedOn: going as never, wanted: [{ car: 'pip', text: 'brake fluid' }] });
    keepOther(household);
    askOther(household, there);
    expect(join(household).notes).toContain('What was written for the corner garage, and not asked yet, is taken off: two bookings have met.');
    const all = household.facts().all(bookings);
    expect(all.map((one) => [one.id, one.wanted.map((line) => line.text), one.earlier?.length ?? 0])).toEqual([['other', wanted, earlier]]);
  });

  test.each(['visit', 'other'] as const)('what is over of %s becomes history of the other', (over) => {
    const household = withAsked();
    keepOther(household);
    askOther(household, '2026-11-25');
    household.must('booking.drop', { session: over, why: 'declined' });
    join(household);
    const all = household.facts().all(bookings);
    expect(all.map((one) => [one.id, one.dropped, one.earlier?.map((round) => round.dropped?.why)])).toEqual([['other', null, ['declined']]]);
  });

  test('booked for the day of a session whose own booking came to nothing, it goes there', () => {
    const household = withAsked();
    keepOther(household);
    askOther(household, '2026-11-25');
    household.must('booking.drop', { session: 'other', why: 'declined' });
    const { booking } = household.must('booking.book', { session: 'visit', day: day('2026-12-21'), moveSession: true });
    expect([ids(household), booking.id, booking.dropped, booking.earlier?.length]).toEqual([['other'], 'other', null, 1]);
  });
});

describe('a booking that was left without its session, as it was written before', () => {
  /** The visit joined the other session, and its booking stayed behind. */
  function leftBehind(): MemoryHousehold {
    const household = withAsked();
    household.must('booking.book', { session: 'visit', day: day('2026-12-16') });
    keepOther(household);
    join(household);
    const entries = household.entries as Entry[];
    entries.splice(0, entries.length, ...entries.filter((one) => one.kind !== 'booking-removed' && !(one.kind === 'booking-set' && one.values['id'] === 'other')));
    return household;
  }

  test('is of the session that it joined, and not of one a year later for the same work', () => {
    const household = leftBehind();
    household.on('2026-12-22').must('session.end', { session: 'other', as: 'done' });
    household.on('2027-11-01').must('session.keep', { sessions: [{ id: 'next', day: day('2027-12-15'), place: 'corner', tasks: [{ kind: 'item', id: 'fluid' }] }] });
    expect(household.must('booking.show', { session: 'next' })).toMatchObject({ state: 'not-asked', booking: null, elsewhere: null });
    expect(household.must('booking.show', { session: 'other' }).booking?.booked?.day).toBe('2026-12-16');
    expect(household.must('sessions.show', {}).bookings).toMatchObject([{ session: 'other', gone: false, waits: true }]);
  });

  test('after a split is of one session alone: that nearest to its day', () => {
    const household = leftBehind();
    household.must('session.move', { session: 'other', day: day('2026-12-23'), tasks: [{ kind: 'item', id: 'belt' }] });
    const held = household.must('sessions.show', {}).sessions.filter((one) => household.must('booking.show', { session: one.id }).booking !== null);
    expect(held.map((one) => one.day)).toEqual(['2026-12-21']);
  });
});
