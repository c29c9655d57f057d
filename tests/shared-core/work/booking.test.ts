import { describe, expect, test } from 'vitest';
import type { OperationName } from '../../../shared-core/contract/contract.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { bookings, bookingSchema } from '../../../shared-core/work/booking.ts';
import { ASKED, withAsked, withVisit } from './booking-examples.ts';

/** An entry as version 1 wrote it. Frozen: it is never brought up to date, for that is what the program must do. */
const VERSION_1 = {
  id: 'visit', place: 'corner', askedOn: '2026-11-25', digitalRecord: true, note: 'n', contact: 'c',
  wanted: [{ id: 'wanted-1', car: 'pip', task: { kind: 'item', id: 'fluid' }, text: 'brake fluid' }, { id: 'wanted-2', car: 'pip', task: null, text: 'a noise' }],
  unwanted: [{ id: 'unwanted-1', car: 'pip', text: 'no flush' }],
  bring: [{ car: 'pip', part: null, lot: null, text: 'fluid', quantity: 1.5, unit: 'litre' }],
  quotes: [{ id: 'quote-1', by: null, on: '2026-11-25', validUntil: null, lines: [{ text: 'all', covers: ['wanted-1', 'wanted-2'], amountMinor: 100 }], totalMinor: null, paper: null, note: '' }],
  booked: { on: '2026-11-25', day: '2026-12-16', time: '08:30', reference: 'B1', quote: 'quote-1' },
  cameBack: { doneOn: '2026-12-16', lines: [{ wanted: 'wanted-1', unwanted: null, as: 'done', text: 'brake fluid', note: '', chargedMinor: 100 }], chargedMinor: 100, paper: null, note: '' },
  dropped: null,
};

const day = (text: string) => text as never;
const stateOf = (household: ReturnType<typeof withVisit>) => household.must('booking.show', { session: 'visit' }).state;

describe('a booking', () => {
  test('goes from not asked to done, and its state is nowhere written', () => {
    const household = withVisit();
    expect(stateOf(household)).toBe('not-asked');
    const { wanted, unwanted } = household.must('booking.ask', { ...ASKED, askedOn: null }).booking;
    expect(stateOf(household)).toBe('not-asked');
    household.must('booking.ask', { ...ASKED, wanted, unwanted });
    expect(stateOf(household)).toBe('asked');
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), totalMinor: 9000 } });
    expect(stateOf(household)).toBe('quoted');
    household.must('booking.book', { session: 'visit', day: day('2026-12-16'), time: '08:30', quote: 'quote-1' });
    expect(stateOf(household)).toBe('booked');
    household.on('2026-12-17').must('booking.came-back', { session: 'visit', doneOn: day('2026-12-16'), lines: [{ wanted: 'wanted-1', as: 'done' }] });
    expect(stateOf(household)).toBe('done');
    expect(JSON.stringify(household.entries)).not.toContain('"state":"booked"');
  });

  test('keeps the ids of its lines, and gives no number twice', () => {
    const household = withVisit();
    const first = household.must('booking.ask', ASKED).booking;
    expect(first.wanted.map((one) => one.id)).toEqual(['wanted-1', 'wanted-2', 'wanted-3']);
    const again = household.must('booking.ask', { ...ASKED, wanted: [...first.wanted.slice(1), { car: 'pip', text: 'a noise' }], unwanted: first.unwanted }).booking;
    expect(again.wanted.map((one) => [one.id, one.text])).toEqual([['wanted-2', 'pads looked at'], ['wanted-3', 'timing belt'], ['wanted-4', 'a noise']]);
    expect(again.unwanted[0]?.id).toBe('unwanted-1');
  });

  test('booked without anything written is asked for all its tasks, on that day', () => {
    const household = withVisit();
    const { booking } = household.must('booking.book', { session: 'visit', day: day('2026-12-16') });
    expect(booking).toMatchObject({ askedOn: '2026-11-25', wanted: [{ text: 'Brake fluid' }, { text: 'Brake pads and discs' }, { text: 'Timing belt' }], booked: { day: '2026-12-16', quote: null } });
  });

  test('for another day moves the session only where that is meant, by the rules of every move', () => {
    const household = withAsked();
    expect(household.call('booking.book', { session: 'visit', day: day('2026-12-18') })).toMatchObject({ ok: false, refusal: { code: 'booking-other-day', path: ['day'], values: { day: '2026-12-18', session: '2026-12-16' } } });
    // 19 December 2026 is a Saturday.
    household.must('place.set', { id: 'corner', name: 'the corner garage', kind: 'garage', noticeDays: 10, closedWeekdays: [6, 7] });
    expect(household.call('booking.book', { session: 'visit', day: day('2026-12-19'), moveSession: true })).toMatchObject({ ok: false, refusal: { code: 'place-closed-weekday' } });
    const { session, booking } = household.must('booking.book', { session: 'visit', day: day('2026-12-18'), moveSession: true });
    expect([session.id, session.day, session.state, booking.booked?.day]).toEqual(['visit', '2026-12-18', 'moved', '2026-12-18']);
  });

  test('stays with a session that is moved, says that the days differ, and goes with one that joins another', () => {
    const household = withAsked();
    household.must('booking.book', { session: 'visit', day: day('2026-12-16') });
    household.must('session.move', { session: 'visit', day: day('2026-12-17') });
    expect(household.must('booking.show', { session: 'visit' }).notes.map((one) => one.code)).toEqual(['booking-note-other-day']);
    household.must('session.keep', { sessions: [{ id: 'other', day: day('2026-12-21'), place: 'corner', tasks: [{ kind: 'item', id: 'oil' }] }] });
    household.must('session.move', { session: 'visit', day: day('2026-12-21') });
    const joined = household.must('booking.show', { session: 'other' });
    expect(joined.booking?.booked?.day).toBe('2026-12-16');
    expect(joined.notes.map((one) => one.code)).toEqual(['booking-note-other-day', 'booking-note-new-task']);
    household.must('booking.book', { session: 'other', day: day('2026-12-21') });
    expect(household.facts().all(bookings).map((one) => one.id)).toEqual(['other']);
  });

  test('whose session joined one with a booking of its own is told apart, until the garage knows', () => {
    const household = withAsked();
    household.must('session.keep', { sessions: [{ id: 'other', day: day('2026-12-22'), place: 'corner', tasks: [{ kind: 'item', id: 'oil' }] }] });
    household.must('booking.ask', { session: 'other', askedOn: day('2026-11-25'), wanted: [{ car: 'pip', text: 'oil', task: { kind: 'item', id: 'oil' } }] });
    household.must('booking.book', { session: 'other', day: day('2026-12-22') });
    household.must('booking.book', { session: 'visit', day: day('2026-12-16') });
    expect(household.must('sessions.show', {}).bookings).toEqual([]);
    household.must('session.move', { session: 'visit', day: day('2026-12-22') });
    expect(household.must('sessions.show', {}).bookings).toMatchObject([{ session: 'visit', gone: true, day: '2026-12-16', waits: true, notes: [{ code: 'booking-note-session-gone' }] }]);
    household.must('booking.drop', { session: 'visit', why: 'cancelled' });
    expect(household.must('sessions.show', {}).bookings).toEqual([]);
    expect(household.must('booking.show', { session: 'other' }).booking?.booked?.day).toBe('2026-12-22');
  });

  test('of a session that went to another garage is not asked there, and the first garage is to be told', () => {
    const household = withAsked();
    household.must('session.move', { session: 'visit', day: day('2026-12-16'), place: 'hill' });
    const view = household.must('booking.show', { session: 'visit' });
    expect([view.state, view.booking, view.elsewhere, view.askBy?.day]).toEqual(['not-asked', null, { placeName: 'the corner garage', underway: true }, '2026-12-13']);
    expect(household.call('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), totalMinor: 1 } })).toMatchObject({ ok: false, refusal: { code: 'booking-not-asked' } });
    const listed = household.must('sessions.show', {}).bookings;
    expect(listed).toMatchObject([{ session: 'visit', placeName: 'the corner garage', waits: true, state: 'asked' }]);
    expect(household.call('booking.ask', ASKED)).toMatchObject({ ok: false, refusal: { code: 'booking-stands-elsewhere', values: { asked: 'the corner garage' } } });
    household.must('booking.drop', { session: 'visit', why: 'cancelled' });
    expect(household.must('booking.ask', ASKED).booking).toMatchObject({ place: 'hill', quotes: [] });
  });

  test('of a session that was dropped waits to be told to the garage, until it is dropped as well', () => {
    const household = withAsked();
    household.must('session.end', { session: 'visit', as: 'cancelled' });
    expect(household.must('sessions.show', {}).bookings).toMatchObject([{ waits: true, notes: [{ code: 'booking-note-session-cancelled' }] }]);
    household.must('booking.drop', { session: 'visit', why: 'cancelled', reason: 'sold' });
    expect(household.must('sessions.show', {}).bookings).toMatchObject([{ waits: false, state: 'dropped' }]);
  });

  test('that came to nothing begins afresh; one that was only written is gone', () => {
    const household = withVisit();
    household.must('booking.ask', { ...ASKED, askedOn: null });
    expect(household.must('booking.drop', { session: 'visit', why: 'cancelled' }).booking).toBeNull();
    expect(household.facts().all(bookings)).toEqual([]);
    household.must('booking.ask', ASKED);
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), totalMinor: 5 } });
    household.must('booking.drop', { session: 'visit', why: 'declined', reason: 'no lift free' });
    expect(stateOf(household)).toBe('dropped');
    expect(household.must('booking.ask', ASKED).booking).toMatchObject({ dropped: null, quotes: [] });
  });

  test('is read from an entry as version 1 wrote it', () => {
    const facts = memoryFacts(entryKinds, [{ kind: 'booking-set', version: 1, subject: 'household', values: VERSION_1, seq: 0, at: '2026-12-17T12:00:00.000Z' } as Entry]);
    expect(bookingSchema.parse(facts.get(bookings, 'visit'))).toEqual(VERSION_1);
  });
});

const quote = (more: object) => ({ session: 'visit', quote: { on: '2026-11-25', ...more } });
const back = (...lines: object[]) => ({ session: 'visit', doneOn: '2026-11-25', lines });
const asking = (more: object) => ({ ...ASKED, ...more });

describe('is refused, and nothing is written:', () => {
  test.each<{ readonly operation: OperationName; readonly request: object; readonly code: string }>([
    { operation: 'booking.ask', request: asking({ askedOn: '2026-11-26' }), code: 'booking-asked-ahead' },
    { operation: 'booking.ask', request: asking({ wanted: [] }), code: 'booking-nothing-wanted' },
    { operation: 'booking.ask', request: asking({ wanted: [{ car: 'pip', text: 'a' }, { car: 'pip', text: ' A ' }] }), code: 'booking-line-twice' },
    { operation: 'booking.ask', request: asking({ wanted: [...ASKED.wanted, { ...ASKED.wanted[0], text: 'again' }] }), code: 'booking-line-twice' },
    { operation: 'booking.ask', request: asking({ unwanted: [{ car: 'pip', text: 'Brake fluid' }] }), code: 'booking-wanted-and-not' },
    { operation: 'booking.ask', request: asking({ wanted: [{ car: 'pip', task: { kind: 'item', id: 'oil' }, text: 'oil' }] }), code: 'task-not-in-session' },
    { operation: 'booking.ask', request: asking({ wanted: [{ car: 'moss', task: { kind: 'item', id: 'fluid' }, text: 'x' }] }), code: 'booking-car-not-there' },
    { operation: 'booking.ask', request: asking({ bring: [{ car: 'pip', part: 'none', text: 'x' }] }), code: 'unknown-part' },
    { operation: 'booking.ask', request: asking({ session: 'none' }), code: 'unknown-session' },
    { operation: 'booking.quote', request: quote({}), code: 'quote-without-amount' },
    { operation: 'booking.quote', request: quote({ on: '2026-11-26', totalMinor: 1 }), code: 'quote-ahead' },
    { operation: 'booking.quote', request: quote({ validUntil: '2026-11-24', totalMinor: 1 }), code: 'quote-ends-before' },
    { operation: 'booking.quote', request: quote({ lines: [{ text: 'x', covers: ['wanted-9'], amountMinor: 1 }] }), code: 'quote-covers-nothing' },
    { operation: 'booking.quote', request: quote({ lines: [{ text: 'x', covers: ['wanted-1', 'wanted-1'], amountMinor: 1 }] }), code: 'quote-covers-twice' },
    { operation: 'booking.quote', request: quote({ lines: [1, 2].map((n) => ({ text: `x${n}`, amountMinor: 1_000_000_000_000 })) }), code: 'not-an-amount' },
    { operation: 'booking.quote-remove', request: { session: 'visit', quote: 'quote-1' }, code: 'unknown-quote' },
    { operation: 'booking.book', request: { session: 'visit', day: '2026-12-16', on: '2026-11-26' }, code: 'booked-ahead' },
    { operation: 'booking.book', request: { session: 'visit', day: '2026-12-16', quote: 'quote-1' }, code: 'unknown-quote' },
    { operation: 'booking.came-back', request: { session: 'visit', doneOn: '2026-11-26' }, code: 'came-back-ahead' },
    { operation: 'booking.came-back', request: { session: 'visit', doneOn: '2026-11-24' }, code: 'came-back-before-asked' },
    { operation: 'booking.came-back', request: back({ as: 'done' }), code: 'came-back-not-so' },
    { operation: 'booking.came-back', request: back({ wanted: 'wanted-1', as: 'not-done', chargedMinor: 5 }), code: 'came-back-not-so' },
    { operation: 'booking.came-back', request: back({ unwanted: 'unwanted-1', as: 'done-unasked', text: 'x' }), code: 'came-back-not-so' },
    { operation: 'booking.came-back', request: back({ wanted: 'wanted-9', as: 'done' }), code: 'came-back-unknown-line' },
    { operation: 'booking.came-back', request: back({ as: 'done-unasked' }), code: 'text-empty' },
    { operation: 'booking.came-back', request: back({ wanted: 'wanted-1', as: 'done' }, { wanted: 'wanted-1', as: 'not-done' }), code: 'came-back-twice' },
  ])('$operation, $code', ({ operation, request, code }) => {
    const household = withAsked();
    const before = household.entries.length;
    expect(household.call(operation, request as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries.length).toBe(before);
  });

  test('a time that is none', () => {
    expect(withAsked().call('booking.book', { session: 'visit', day: day('2026-12-16'), time: '25:00' })).toMatchObject({ ok: false, refusal: { code: 'not-a-time' } });
  });

  test('a place that is no garage, a session that is only proposed, and one that has ended', () => {
    const household = withVisit();
    household.must('session.keep', { sessions: [{ id: 'drive', day: day('2026-12-01'), place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] });
    household.must('session.propose', { sessions: [{ id: 'maybe', day: day('2026-12-22'), place: 'corner', tasks: [{ kind: 'item', id: 'wipers' }] }] });
    const wanted = [{ car: 'pip', text: 'x' }];
    expect(household.call('booking.ask', { session: 'drive', wanted })).toMatchObject({ ok: false, refusal: { code: 'booking-not-garage' } });
    expect(household.call('booking.show', { session: 'drive' })).toMatchObject({ ok: false, refusal: { code: 'booking-not-garage' } });
    expect(household.call('booking.ask', { session: 'maybe', wanted })).toMatchObject({ ok: false, refusal: { code: 'booking-not-kept' } });
    household.must('session.end', { session: 'visit', as: 'cancelled' });
    expect(household.call('booking.ask', ASKED)).toMatchObject({ ok: false, refusal: { code: 'session-ended' } });
    expect(household.call('session.keep', { sessions: [{ id: 'visit', day: day('2026-12-23'), place: 'corner', tasks: [{ kind: 'item', id: 'fluid' }] }] })).toMatchObject({ ok: false, refusal: { code: 'id-taken' } });
  });

  test('a line that a price covers taken out, the quote it is booked by, an asking that is unsaid again', () => {
    const household = withAsked();
    household.must('booking.quote', { session: 'visit', quote: { on: day('2026-11-25'), lines: [{ text: 'both', covers: ['wanted-1', 'wanted-2'], amountMinor: 100 }] } });
    const { booking } = household.must('booking.book', { session: 'visit', day: day('2026-12-16'), quote: 'quote-1' });
    expect(household.call('booking.ask', { ...ASKED, wanted: booking.wanted.slice(1) })).toMatchObject({ ok: false, refusal: { code: 'booking-line-quoted', values: { text: 'brake fluid' } } });
    expect(household.call('booking.quote-remove', { session: 'visit', quote: 'quote-1' })).toMatchObject({ ok: false, refusal: { code: 'quote-booked' } });
    expect(household.call('booking.ask', { ...ASKED, wanted: booking.wanted, unwanted: booking.unwanted, askedOn: null })).toMatchObject({ ok: false, refusal: { code: 'booking-was-asked' } });
    household.must('booking.book', { session: 'visit', day: day('2026-12-16') });
    expect(household.must('booking.quote-remove', { session: 'visit', quote: 'quote-1' }).booking.quotes).toEqual([]);
  });
});
