import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { localDate, type LocalDate } from '../calendar/local-date.ts';

/** The tags of a picture that say when it was taken, as they stand in it. */
export interface CaptureTags {
  readonly original: string | null;
  readonly offsetOriginal: string | null;
  readonly digitized: string | null;
  readonly offsetDigitized: string | null;
  readonly changed: string | null;
  readonly offsetChanged: string | null;
  readonly gpsDate: string | null;
  /** Hours, minutes, seconds. */
  readonly gpsTime: readonly number[] | null;
}

/** When a picture says that it was taken: a claim of the camera's clock, no proof. */
export const captureSchema = z.strictObject({
  /** The day on the camera's own clock; for `gps`, the day in UTC. */
  day: dateSchema,
  /** The time of that day, `HH:MM:SS`. */
  time: z.string().regex(/^\d{2}:\d{2}:\d{2}$/),
  /** How far the camera's clock was from UTC; null where it does not say: then nothing is assumed. */
  offset: z.string().regex(/^[+-]\d{2}:\d{2}$/).nullable(),
  /** The instant in UTC; null without an offset. */
  instant: z.string().nullable(),
  /** The tag it stands in: taken, digitized, last changed, or the time of the satellites. */
  source: z.enum(['original', 'digitized', 'changed', 'gps']),
});
export type Capture = z.infer<typeof captureSchema>;

/**
 * When a picture was taken, by its tags: taken before digitized before last changed before satellites. A time without an offset is the
 * camera's wall clock as read and never shifted; the time of satellites is UTC. A tag that holds no possible time is passed over.
 *
 * Source: CIPA DC-008 (Exif 3.0), DateTimeOriginal, OffsetTimeOriginal, GPSDateStamp; the order is common practice.
 * @example captureTime({ original: '2024:02:29 13:37:43', offsetOriginal: '+02:00', ... })?.instant //=> '2024-02-29T11:37:43Z'
 */
export function captureTime(tags: CaptureTags): Capture | null {
  return (
    clockTime(tags.original, tags.offsetOriginal, 'original') ??
    clockTime(tags.digitized, tags.offsetDigitized, 'digitized') ??
    clockTime(tags.changed, tags.offsetChanged, 'changed') ??
    satelliteTime(tags.gpsDate, tags.gpsTime)
  );
}

/** The day a picture was taken; null where its clock was set to a day that is still to come. */
export function captureDay(capture: Capture | null, today: LocalDate): LocalDate | null {
  return capture === null || capture.day > today ? null : capture.day;
}

function clockTime(stamp: string | null, offset: string | null, source: Capture['source']): Capture | null {
  const parts = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}):(\d{2}):(\d{2})\0*$/.exec(stamp ?? '');
  if (parts === null) return null;
  const [, year, month, day, hour, minute, second] = parts;
  return timeOf(`${year}-${month}-${day}`, [Number(hour), Number(minute), Number(second)], readOffset(offset), source);
}

function satelliteTime(stamp: string | null, time: readonly number[] | null): Capture | null {
  const parts = /^(\d{4}):(\d{2}):(\d{2})\0*$/.exec(stamp ?? '');
  return parts === null || time === null ? null : timeOf(`${parts[1]}-${parts[2]}-${parts[3]}`, time.map(Math.floor), '+00:00', 'gps');
}

function timeOf(dayText: string, [hour = -1, minute = -1, second = -1]: readonly number[], offset: string | null, source: Capture['source']): Capture | null {
  const day = localDate(dayText);
  if (!day.ok || hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 60) return null;
  const time = [hour, minute, Math.min(second, 59)].map((part) => String(part).padStart(2, '0')).join(':');
  const instant = offset === null ? null : new Date(Date.parse(`${day.value}T${time}Z`) - minutesOf(offset) * 60_000).toISOString().replace('.000Z', 'Z');
  return { day: day.value, time, offset, instant, source };
}

/** Clocks on earth are at most 14 hours ahead of UTC and 12 behind; anything else is none. Source: the tz database (from memory). */
function readOffset(text: string | null): string | null {
  const parts = /^([+-])(\d{2}):(\d{2})\0*$/.exec(text ?? '');
  if (parts === null || Number(parts[3]) > 59) return null;
  const offset = `${parts[1]}${parts[2]}:${parts[3]}`;
  const minutes = minutesOf(offset);
  return minutes > 14 * 60 || minutes < -12 * 60 ? null : offset;
}

function minutesOf(offset: string): number {
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4, 6));
  return offset.startsWith('-') ? -minutes : minutes;
}
