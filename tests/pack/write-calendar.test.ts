import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { calendarText, type CalendarStamp } from '../../electron/pack/write-calendar.ts';
import type { CalendarEvent } from '../../shared-core/views/calendar-schema.ts';
import { day } from '../shared-core/calendar/day.ts';

const STAMP: CalendarStamp = { household: 'ab'.repeat(32), now: '2026-11-25T08:30:00.000Z', revision: 7 };
const event = (over: Partial<CalendarEvent> = {}): CalendarEvent => ({ kind: 'item', id: 'oil', from: day('2026-12-11'), to: day('2026-12-11'), title: 'Pip: oil', text: 'Because.', remindOn: null, busy: false, ...over });
const written = (...events: readonly CalendarEvent[]) => calendarText({ name: 'Cars', events: [...events] }, STAMP);
/** Read by another library than the one that wrote it. */
const read = (text: string) => new ICAL.Component(ICAL.parse(text) as unknown[]);
const only = (text: string) => {
  const [one] = read(text).getAllSubcomponents('vevent');
  if (one === undefined) throw new Error('no event');
  return one;
};
const value = (component: ICAL.Component, name: string) => String(component.getFirstPropertyValue(name));

describe('a calendar file', () => {
  // Source: RFC 5545 s3.4, s3.6, s3.6.1 (from memory): what each component must have.
  test('has what a calendar and its events must have', () => {
    const text = written(event(), event({ id: 'plugs' }));
    expect(text.startsWith('BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:')).toBe(true);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const events = read(text).getAllSubcomponents('vevent');
    expect(events.map((one) => [value(one, 'dtstamp'), value(one, 'sequence')])).toEqual([['2026-11-25T08:30:00Z', '7'], ['2026-11-25T08:30:00Z', '7']]);
    expect(new Set(events.map((one) => value(one, 'uid'))).size).toBe(2);
  });

  // Source: RFC 5545 s3.3.11 (from memory): a name is text and its commas and semicolons are escaped.
  test('bears its name whole', () => {
    const text = calendarText({ name: 'Ours, theirs; all \\ cars', events: [] }, STAMP);
    expect(text).toContain('NAME:Ours\\, theirs\\; all \\\\ cars\r\n');
  });

  // Source: RFC 5545 s3.8.1.11 (from memory).
  test('tells what is called off as cancelled, under the same UID', () => {
    const off = event({ kind: 'session', id: 'visit' });
    const [before] = read(written(off)).getAllSubcomponents('vevent').map((one) => value(one, 'uid'));
    const after = only(calendarText({ name: 'Cars', events: [] }, STAMP, [off]));
    expect([value(after, 'uid'), value(after, 'status')]).toEqual([before, 'CANCELLED']);
    expect(only(written(off)).getFirstPropertyValue('status')).toBeNull();
  });

  // Source: RFC 5545 s3.6.1, the example of 28 June to 8 July 2007 (seen); the others by the calendar.
  test.each([
    { from: '2007-06-28', to: '2007-07-08', start: '20070628', end: '20070709' },
    { from: '2028-02-29', to: '2028-02-29', start: '20280229', end: '20280301' },
    { from: '2026-12-31', to: '2026-12-31', start: '20261231', end: '20270101' },
  ])('$from to $to ends before $end', ({ from, to, start, end }) => {
    const text = written(event({ from: day(from), to: day(to) }));
    expect(text).toContain(`DTSTART;VALUE=DATE:${start}\r\nDTEND;VALUE=DATE:${end}\r\n`);
    const one = new ICAL.Event(only(text));
    expect([one.startDate.isDate, one.duration.toSeconds() / 86_400]).toEqual([true, (Date.parse(to) - Date.parse(from)) / 86_400_000 + 1]);
  });

  // Source: RFC 5545 s3.3.11 and s3.1 (vectors of the reference: recomputed there; lines of at most 75 octets, no character split).
  test.each([
    { case: 'semicolon, comma, backslash', text: 'a;b,c\\d', raw: 'a\\;b\\,c\\\\d' },
    { case: 'three lines', text: 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.', raw: 'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.' },
    { case: 'two octets a letter', text: 'é'.repeat(60), raw: null },
    { case: 'four octets a letter', text: '\u{1F602}'.repeat(40), raw: null },
    { case: 'long', text: 'x'.repeat(1000), raw: null },
    { case: 'a colon and a quotation mark stay', text: 'a: "b"', raw: 'a: "b"' },
  ])('$case comes back as it was', ({ text, raw }) => {
    const file = written(event({ text, title: text }));
    expect([value(only(file), 'description'), value(only(file), 'summary')]).toEqual([text, text]);
    for (const line of file.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(Buffer.from(file).toString()).not.toContain('\uFFFD');
    if (raw !== null) expect(file.replaceAll('\r\n ', '')).toContain(`DESCRIPTION:${raw}\r\n`);
  });

  // Source: RFC 5545 s3.8.6.3: relative to the first midnight (from memory); hours by hand.
  test.each([
    { remindOn: '2026-12-10', trigger: '-PT15H' },
    { remindOn: '2026-12-11', trigger: 'PT9H' },
    { remindOn: '2026-11-27', trigger: '-P13DT15H' },
  ])('rings at nine on $remindOn: $trigger before the first midnight', ({ remindOn, trigger }) => {
    const [alarm] = only(written(event({ remindOn: day(remindOn), to: day('2026-12-20') }))).getAllSubcomponents('valarm');
    if (alarm === undefined) throw new Error('no alarm');
    expect([value(alarm, 'action'), value(alarm, 'trigger'), value(alarm, 'description')]).toEqual(['DISPLAY', trigger, 'Pip: oil']);
    expect(alarm.getFirstProperty('trigger')?.getFirstParameter('related') ?? 'START').toBe('START');
  });

  test('without a day to be reminded on nothing rings; a session takes the day, a forecast does not', () => {
    const [forecast, session] = read(written(event(), event({ kind: 'session', busy: true }))).getAllSubcomponents('vevent');
    expect(forecast?.getAllSubcomponents('valarm')).toEqual([]);
    expect([forecast, session].map((one) => (one === undefined ? '' : value(one, 'transp')))).toEqual(['TRANSPARENT', 'OPAQUE']);
  });

  // Source: RFC 5545 s3.8.4.7, RFC 7986 s5.3 and RFC 9562 s5.8 (from memory): kept for life, a UUID, no name of a machine.
  test('an event keeps its UID from file to file; another kind, id or household has another', () => {
    const uid = (one: CalendarEvent, household = STAMP.household) => value(only(calendarText({ name: 'Cars', events: [one] }, { ...STAMP, household, revision: 900, now: '2027-01-01T00:00:00.000Z' })), 'uid');
    const first = value(only(written(event())), 'uid');
    expect(first).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(uid(event({ from: day('2027-12-11'), to: day('2027-12-11'), title: 'Pip: oil and filter' }))).toBe(first);
    expect(new Set([first, uid(event({ id: 'plugs' })), uid(event({ kind: 'session' })), uid(event(), 'cd'.repeat(32))]).size).toBe(4);
  });
});
