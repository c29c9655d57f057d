import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { bookings } from '../../../shared-core/work/booking.ts';
import { ASKED, withAsked } from './booking-examples.ts';

const day = (text: string) => text as never;
const BACK = { session: 'visit', doneOn: day('2026-12-16'), lines: [{ wanted: 'wanted-1', as: 'done' as const }, { wanted: 'wanted-2', as: 'not-done' as const }, { wanted: 'wanted-3', as: 'not-done' as const }] };
const show = (household: ReturnType<typeof withAsked>) => household.must('booking.show', { session: 'visit' });

/** Booked at the corner garage for 16 December; of three tasks one was done. */
function withAnswer() {
  const household = withAsked();
  household.must('booking.book', { session: 'visit', day: day('2026-12-16'), reference: 'B1' });
  household.on('2026-12-17').must('booking.came-back', BACK);
  return household;
}

describe('a session that goes to another garage after the first has answered', () => {
  function atHill() {
    const household = withAnswer();
    household.must('session.move', { session: 'visit', day: day('2026-12-21'), place: 'hill' });
    return household;
  }

  test('is not asked there, by a day that the other garage’s notice leaves; what the first did stays told', () => {
    const view = show(atHill());
    // By hand: 21 December less 3 days.
    expect([view.state, view.said.text, view.booking, view.outcome]).toEqual(['not-asked', 'not asked yet, ask by 18 Dec 2026', null, null]);
    expect(view.cars.flatMap((car) => car.wanted.map((one) => one.text))).toEqual(['Timing belt', 'Brake pads and discs']);
    expect(view.earlier).toMatchObject([{ placeName: 'the corner garage', day: '2026-12-16', said: { text: 'done on 16 Dec 2026' }, outcome: { done: [{ text: 'brake fluid' }], notDone: [{ text: 'pads looked at' }, { text: 'timing belt' }] } }]);
    expect(view.notes.map((one) => one.text)).toEqual(['"brake fluid" was done by the garage, and does not stand in the records of Pip yet. Enter it in Car, so that it counts.']);
    const listed = atHill().must('sessions.show', {});
    expect(listed.sessions.find((one) => one.id === 'visit')?.booking?.state).toBe('not-asked');
    expect(listed.bookings).toMatchObject([{ session: 'visit', placeName: 'the corner garage', state: 'done', waits: false }]);
  });

  test.each([
    { operation: 'booking.came-back', request: { session: 'visit', doneOn: '2026-12-16', lines: [] } },
    { operation: 'booking.quote', request: { session: 'visit', quote: { on: '2026-12-17', totalMinor: 1 } } },
    { operation: 'booking.drop', request: { session: 'visit', why: 'cancelled' } },
  ] as const)('$operation leaves what the first garage said as it was', ({ operation, request }) => {
    const household = atHill();
    const before = household.facts().get(bookings, 'visit');
    expect(household.call(operation, request as never)).toMatchObject({ ok: false, refusal: { code: 'booking-not-asked', values: { place: 'the hill garage' } } });
    expect(household.facts().get(bookings, 'visit')).toEqual(before);
  });

  test('is asked there, even by the ids of the lines that were answered, and the answer stays with the first', () => {
    const household = atHill();
    const first = must(household.facts().get(bookings, 'visit'), 'booking');
    const { booking } = household.must('booking.ask', { ...ASKED, askedOn: day('2026-12-17'), wanted: first.wanted.slice(1), unwanted: first.unwanted });
    const { id: _id, ...round } = first;
    expect(booking).toMatchObject({ place: 'hill', quotes: [], booked: null, cameBack: null, dropped: null });
    expect(booking.earlier).toEqual([round]);
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-12-17'), totalMinor: 9000 } });
    household.must('booking.book', { session: 'visit', day: day('2026-12-21') });
    const view = household.on('2026-12-22').must('booking.came-back', { session: 'visit', doneOn: day('2026-12-21'), lines: [{ wanted: 'wanted-1', as: 'done' }] }) && show(household);
    expect([view.state, view.earlier.map((one) => one.placeName), view.outcome?.done.map((one) => one.text)]).toEqual(['done', ['the corner garage'], ['pads looked at']]);
  });

  test('is booked there without a word in writing: for what the first has not done', () => {
    const { booking } = atHill().must('booking.book', { session: 'visit', day: day('2026-12-21') });
    expect(booking).toMatchObject({ place: 'hill', askedOn: '2026-12-17', wanted: [{ text: 'Brake pads and discs' }, { text: 'Timing belt' }], earlier: [{ place: 'corner', booked: { reference: 'B1' } }] });
  });

  test('what was only written there is taken away, and what is over comes back', () => {
    const household = atHill();
    const before = household.facts().get(bookings, 'visit');
    household.must('booking.ask', { ...ASKED, askedOn: null });
    expect(household.facts().get(bookings, 'visit')).toMatchObject({ place: 'hill', earlier: [{ place: 'corner' }] });
    household.must('booking.drop', { session: 'visit', why: 'cancelled' });
    expect(household.facts().get(bookings, 'visit')).toEqual(before);
  });
});

test('what was declined at one garage does not stand in the way of the next', () => {
  const household = withAsked();
  household.must('booking.drop', { session: 'visit', why: 'declined' });
  household.must('session.move', { session: 'visit', day: day('2026-12-16'), place: 'hill' });
  expect(show(household)).toMatchObject({ state: 'not-asked', earlier: [{ placeName: 'the corner garage', state: 'dropped', outcome: null }] });
  expect(household.must('booking.book', { session: 'visit', day: day('2026-12-16') }).booking).toMatchObject({ place: 'hill', dropped: null, earlier: [{ place: 'corner', dropped: { why: 'declined' } }] });
});

describe('what one garage has left undone', () => {
  test('is said, and is booked there for another day: another appointment beside the first', () => {
    const household = withAnswer();
    expect(show(household).notes.filter((one) => one.code === 'booking-note-left-undone').map((one) => one.values['text'])).toEqual(['pads looked at', 'timing belt']);
    household.must('session.move', { session: 'visit', day: day('2026-12-22') });
    const { booking } = household.must('booking.book', { session: 'visit', day: day('2026-12-22') });
    expect([booking.wanted.map((one) => one.text), booking.askedOn, booking.cameBack, booking.booked?.reference]).toEqual([['pads looked at', 'timing belt'], '2026-12-17', null, '']);
    const view = show(household);
    expect([view.state, view.said.text, view.earlier.map((one) => one.said.text)]).toEqual(['booked', 'booked', ['done on 16 Dec 2026']]);
    expect(view.notes.map((one) => one.code)).toEqual(['booking-note-not-recorded']);
    expect(household.must('sessions.show', {}).sessions.find((one) => one.id === 'visit')?.booking?.state).toBe('booked');
    household.on('2026-12-22').must('booking.came-back', { session: 'visit', doneOn: day('2026-12-22'), lines: [{ wanted: 'wanted-2', as: 'done' }, { wanted: 'wanted-3', as: 'done' }] });
    expect(household.call('booking.book', { session: 'visit', day: day('2026-12-29'), moveSession: true })).toMatchObject({ ok: false, refusal: { code: 'booking-all-done', values: { day: '2026-12-22' } } });
  });

  test('is asked anew; on the day of the answer only where something is left out, else where that is meant', () => {
    const household = withAnswer();
    const { wanted, unwanted } = must(household.facts().get(bookings, 'visit'), 'booking');
    const asked = (more: object) => household.call('booking.ask', { ...ASKED, wanted, unwanted, ...more } as never);
    expect(asked({ wanted: wanted.slice(1) })).toMatchObject({ ok: false, refusal: { code: 'booking-line-answered' } });
    expect(asked({ askedOn: null })).toMatchObject({ ok: false, refusal: { code: 'booking-was-asked' } });
    expect(asked({ askedOn: '2026-12-01' })).toMatchObject({ ok: false, refusal: { code: 'booking-asked-after', values: { said: '2026-11-25' } } });
    expect(asked({ contact: 'by telephone' })).toMatchObject({ ok: true, value: { booking: { contact: 'by telephone', cameBack: { doneOn: '2026-12-16' } } } });
    expect(asked({ askedOn: '2026-12-16', wanted: wanted.slice(1) })).toMatchObject({ ok: true, value: { booking: { cameBack: null, quotes: [], booked: null, earlier: [{ contact: 'by telephone', cameBack: { doneOn: '2026-12-16' } }] } } });
    expect(show(household)).toMatchObject({ state: 'asked', earlier: [{ state: 'done' }] });
  });

  test('asked anew on paper only is asked by the garage’s notice', () => {
    const household = withAnswer();
    household.must('session.move', { session: 'visit', day: day('2026-12-29') });
    household.must('booking.ask', { ...ASKED, wanted: ASKED.wanted.slice(1), askedOn: null, anew: true });
    // By hand: 29 December less 10 days.
    expect(show(household)).toMatchObject({ state: 'not-asked', askBy: { day: '2026-12-19' }, booking: { askedOn: null }, earlier: [{ state: 'done' }] });
  });

  test('the day that was booked is put right without another appointment', () => {
    const household = withAnswer();
    const { booking } = household.must('booking.book', { session: 'visit', on: day('2026-11-25'), day: day('2026-12-16'), time: '08:30' });
    expect(booking).toMatchObject({ booked: { time: '08:30' }, cameBack: { doneOn: '2026-12-16' } });
    expect(booking.earlier).toBeUndefined();
  });
});

describe('before it was asked nothing', () => {
  test.each([
    { operation: 'booking.book', request: { session: 'visit', day: '2026-12-16', on: '2026-11-24' }, code: 'booked-before-asked' },
    { operation: 'booking.quote', request: { session: 'visit', quote: { on: '2026-11-24', totalMinor: 1 } }, code: 'quote-before-asked' },
  ] as const)('$operation', ({ operation, request, code }) => {
    const household = withAsked();
    const before = household.entries.length;
    expect(household.call(operation, request as never)).toMatchObject({ ok: false, refusal: { code, values: { day: '2026-11-24', asked: '2026-11-25' } } });
    expect(household.entries.length).toBe(before);
  });
});
