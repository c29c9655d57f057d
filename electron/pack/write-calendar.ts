import { createHash } from 'node:crypto';
import ical, { ICalAlarmRelatesTo, ICalAlarmType, ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import { addDays, daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { CalendarEvent, CalendarView } from '../../shared-core/views/calendar-schema.ts';

/** What a calendar file needs beside its events. */
export interface CalendarStamp {
  /** Fingerprint of the household's key: the same events of another household are other ones. */
  readonly household: string;
  /** The present instant, as the journal writes it. */
  readonly now: string;
  /** Never falling, and higher with every entry and every day: what is late moves with the day, and a later file replaces an earlier one. */
  readonly revision: number;
}

const HOURS_ON_THE_DAY = 9;
const SECONDS_A_DAY = 86_400;
const SECONDS_AN_HOUR = 3600;

/**
 * A calendar file of whole days, in UTF-8 with lines of 75 octets at most. An event keeps its UID for as long as what it
 * stands for, and a reminder rings at nine in the morning. What an earlier file held and is called off is told as cancelled.
 *
 * Source: RFC 5545 s3.6.1 (the end is the day after the last), s3.6.6, s3.8.1.11, s3.8.4.7, s3.8.7.4; RFC 7986 s5.3 (from memory).
 */
export function calendarText({ name, events }: CalendarView, stamp: CalendarStamp, calledOff: readonly CalendarEvent[] = []): string {
  // The writer escapes the text of events and not the calendar's own name.
  const calendar = ical({ name: name.replace(/[\\;,]/g, '\\$&'), prodId: { company: 'Trunnion', product: 'Trunnion', language: 'EN' }, method: ICalCalendarMethod.PUBLISH });
  for (const event of [...events, ...calledOff]) {
    const made = calendar.createEvent({
      id: uidOf(stamp.household, event),
      stamp: new Date(stamp.now),
      sequence: stamp.revision,
      start: midnight(event.from),
      end: midnight(addDays(event.to, 1)),
      allDay: true,
      summary: event.title,
      description: event.text,
      ...(calledOff.includes(event) ? { status: ICalEventStatus.CANCELLED } : {}),
      transparency: event.busy ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
    });
    // Said by its method: the option of that name is not heeded.
    if (event.remindOn !== null) made.createAlarm({ type: ICalAlarmType.display, trigger: secondsBefore(event.from, event.remindOn), description: event.title }).relatesTo(ICalAlarmRelatesTo.start);
  }
  return `${calendar.toString()}\r\n`;
}

/** A UUID of the household, the kind and the id: version 8, made of a digest. Source: RFC 9562 s5.8 (from memory). */
function uidOf(household: string, { kind, id }: CalendarEvent): string {
  const bytes = createHash('sha256').update(`${household}\0${kind}\0${id}`).digest().subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x80, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/** Days of a calendar have no zone; the writer takes their date in UTC. */
function midnight(date: LocalDate): Date {
  return new Date(`${date}T00:00:00Z`);
}

/** From nine in the morning of the day of the reminder to the first midnight of the event; below nothing on the day itself. */
function secondsBefore(from: LocalDate, remindOn: LocalDate): number {
  return daysBetween(remindOn, from) * SECONDS_A_DAY - HOURS_ON_THE_DAY * SECONDS_AN_HOUR;
}
