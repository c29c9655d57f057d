import { describe, expect, test } from 'vitest';
import { captureDay, captureTime, type CaptureTags } from '../../../shared-core/records/capture-time.ts';
import { day } from '../calendar/day.ts';

const NONE: CaptureTags = { original: null, offsetOriginal: null, digitized: null, offsetDigitized: null, changed: null, offsetChanged: null, gpsDate: null, gpsTime: null };

// Source: CIPA DC-008 (Exif 3.0) for the forms of the tags; instants by hand: the local time less its offset.
describe('when a picture was taken', () => {
  test.each([
    { case: 'a time with its offset is an instant', tags: { original: '2024:02:29 13:37:43', offsetOriginal: '+02:00' }, is: { day: '2024-02-29', time: '13:37:43', offset: '+02:00', instant: '2024-02-29T11:37:43Z', source: 'original' } },
    { case: 'the day is the camera\'s, though in UTC it was the day before', tags: { original: '2024:03:01 01:10:00', offsetOriginal: '+05:30' }, is: { day: '2024-03-01', time: '01:10:00', offset: '+05:30', instant: '2024-02-29T19:40:00Z', source: 'original' } },
    { case: 'behind UTC', tags: { original: '2023:12:31 22:00:00', offsetOriginal: '-08:00' }, is: { day: '2023-12-31', time: '22:00:00', offset: '-08:00', instant: '2024-01-01T06:00:00Z', source: 'original' } },
    { case: 'without an offset it is the wall clock, and no instant', tags: { original: '2026:03:14 09:12:05' }, is: { day: '2026-03-14', time: '09:12:05', offset: null, instant: null, source: 'original' } },
    { case: 'the offset of another tag does not count', tags: { original: '2026:03:14 09:12:05', offsetChanged: '+02:00', offsetDigitized: '+02:00' }, is: { day: '2026-03-14', time: '09:12:05', offset: null, instant: null, source: 'original' } },
    { case: 'an offset of blanks is none', tags: { original: '2026:03:14 09:12:05', offsetOriginal: '   :  ' }, is: { day: '2026-03-14', time: '09:12:05', offset: null, instant: null, source: 'original' } },
    { case: 'an offset no clock has is none', tags: { original: '2026:03:14 09:12:05', offsetOriginal: '+15:00' }, is: { day: '2026-03-14', time: '09:12:05', offset: null, instant: null, source: 'original' } },
    { case: 'the time of digitizing where that of taking is unknown', tags: { original: '    :  :     :  :  ', digitized: '2020:01:02 03:04:05', changed: '2021:01:01 00:00:00' }, is: { day: '2020-01-02', time: '03:04:05', offset: null, instant: null, source: 'digitized' } },
    { case: 'the last change where nothing else is', tags: { original: '0000:00:00 00:00:00', changed: '2021:01:01 00:00:00', offsetChanged: '+00:00' }, is: { day: '2021-01-01', time: '00:00:00', offset: '+00:00', instant: '2021-01-01T00:00:00Z', source: 'changed' } },
    { case: 'the satellites\' time is UTC', tags: { gpsDate: '2024:02:29', gpsTime: [23, 59, 12.5] }, is: { day: '2024-02-29', time: '23:59:12', offset: '+00:00', instant: '2024-02-29T23:59:12Z', source: 'gps' } },
    { case: 'a leap second is the last of its minute', tags: { original: '2016:12:31 23:59:60' }, is: { day: '2016-12-31', time: '23:59:59', offset: null, instant: null, source: 'original' } },
    { case: 'a NUL at its end is let be', tags: { original: '2024:02:29 13:37:43\0' }, is: { day: '2024-02-29', time: '13:37:43', offset: null, instant: null, source: 'original' } },
  ])('$case', ({ tags, is }) => {
    expect(captureTime({ ...NONE, ...tags })).toEqual(is);
  });

  test.each([
    { case: 'zeros', original: '0000:00:00 00:00:00' },
    { case: 'blanks', original: '    :  :     :  :  ' },
    { case: 'no such day', original: '2023:02:29 10:00:00' },
    { case: 'no such month', original: '2023:13:01 10:00:00' },
    { case: 'no such hour', original: '2023:01:01 24:00:00' },
    { case: 'no such minute', original: '2023:01:01 10:60:00' },
    { case: 'before there were cars', original: '1899:12:31 10:00:00' },
    { case: 'hyphens', original: '2023-01-01 10:00:00' },
    { case: 'more than a time', original: '2023:01:01 10:00:00 or so' },
  ])('$case is none', ({ original }) => {
    expect(captureTime({ ...NONE, original })).toBeNull();
  });

  test('a time of satellites without its date is none', () => {
    expect(captureTime({ ...NONE, gpsTime: [1, 2, 3] })).toBeNull();
    expect(captureTime({ ...NONE, gpsDate: '2024:01:01' })).toBeNull();
  });

  test('a day still to come is that of a wrong clock', () => {
    const capture = captureTime({ ...NONE, original: '2026:11:26 00:00:00' });
    expect(captureDay(capture, day('2026-11-25'))).toBeNull();
    expect(captureDay(capture, day('2026-11-26'))).toBe('2026-11-26');
    expect(captureDay(null, day('2026-11-26'))).toBeNull();
  });
});
