import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distancePoints, instrumentOn, offsetOf, wholeDistance } from '../../../shared-core/fleet/continuous-distance.ts';
import type { Reading } from '../../../shared-core/fleet/reading.ts';
import { anyDate, day } from '../calendar/day.ts';
import { instrumentFrom, metresOf, readingOn } from './car-examples.ts';

const shown = (readings: readonly Reading[], instruments = [] as Parameters<typeof distancePoints>[1]) =>
  distancePoints(readings, instruments).map((point) => [point.date, point.metres / 1000]);

describe('whole distance', () => {
  const first = instrumentFrom('2022-05-01', 10, 80_000);
  const second = instrumentFrom('2024-05-01', 150_000, 95_000);

  // By hand: 80 000 - 10 = +79 990 km; 95 000 - 150 000 = -55 000 km, for a used instrument that showed more than the car had gone.
  test.each([
    { case: 'the first instrument', instrument: null, shows: 79_999, km: 79_999 },
    { case: 'a new one', instrument: first.id, shows: 15_010, km: 95_000 },
    { case: 'a used one', instrument: second.id, shows: 151_000, km: 96_000 },
    { case: 'an instrument that is not known counts as the first', instrument: 'gone', shows: 7, km: 7 },
  ])('$case', ({ instrument, shows, km }) => {
    expect(wholeDistance({ shown: metresOf(shows), instrument }, [second, first])).toBe(metresOf(km));
    expect(offsetOf([first, second], instrument)).toBe((km - shows) * 1000);
  });

  test.each([
    { on: '2022-04-30', instrument: null }, { on: '2022-05-01', instrument: first.id }, { on: '2024-04-30', instrument: first.id },
    { on: '2024-05-01', instrument: second.id }, { on: '2026-11-25', instrument: second.id },
  ])('the instrument of $on is $instrument', ({ on, instrument }) => {
    expect(instrumentOn([second, first], day(on))?.id ?? null).toBe(instrument);
    expect(instrumentOn([first, second], day(on))?.id ?? null).toBe(instrument);
  });

  test('readings of three instruments make one rising line', () => {
    const readings = [
      readingOn('2024-06-01', 151_000, { instrument: second.id }), readingOn('2021-05-01', 60_000), readingOn('2022-05-01', 10, { instrument: first.id }), readingOn('2023-05-01', 9010, { instrument: first.id }),
    ];
    expect(shown(readings, [first, second])).toEqual([['2021-05-01', 60_000], ['2022-05-01', 80_000], ['2023-05-01', 89_000], ['2024-06-01', 96_000]]);
  });
});

describe('points', () => {
  test.each([
    { case: 'none without readings', readings: [], points: [] },
    { case: 'one that is set aside or dismissed is no point', readings: [readingOn('2026-01-01', 100, { standing: 'set-aside' }), readingOn('2026-01-02', 200, { standing: 'dismissed' }), readingOn('2026-01-03', 300)], points: [['2026-01-03', 300]] },
    { case: 'the highest of a day', readings: [readingOn('2026-01-01', 100), readingOn('2026-01-01', 140), readingOn('2026-01-01', 120)], points: [['2026-01-01', 140]] },
    { case: 'in order of date however they were entered', readings: [readingOn('2026-02-01', 200), readingOn('2026-01-01', 100)], points: [['2026-01-01', 100], ['2026-02-01', 200]] },
    { case: 'the same value twice stays', readings: [readingOn('2026-01-01', 100), readingOn('2026-02-01', 100)], points: [['2026-01-01', 100], ['2026-02-01', 100]] },
    { case: 'of two that contradict, the earlier', readings: [readingOn('2026-01-01', 200), readingOn('2026-02-01', 100)], points: [['2026-01-01', 200]] },
    { case: 'unless the later is vouched for', readings: [readingOn('2026-01-01', 150), readingOn('2026-01-02', 200), readingOn('2026-02-01', 100, { sure: true })], points: [['2026-02-01', 100]] },
    { case: 'only what the vouched one contradicts goes', readings: [readingOn('2026-01-01', 90), readingOn('2026-01-02', 200), readingOn('2026-02-01', 100, { sure: true })], points: [['2026-01-01', 90], ['2026-02-01', 100]] },
    { case: 'of two vouched for, the earlier', readings: [readingOn('2026-01-01', 200, { sure: true }), readingOn('2026-02-01', 100, { sure: true })], points: [['2026-01-01', 200]] },
    {
      case: 'a vouched one that does not stand takes nothing with it',
      readings: [readingOn('2026-01-01', 200, { sure: true }), readingOn('2026-01-15', 210), readingOn('2026-02-01', 100, { sure: true })],
      points: [['2026-01-01', 200], ['2026-01-15', 210]],
    },
    { case: 'a vouched high one holds later lower ones out', readings: [readingOn('2026-01-01', 200, { sure: true }), readingOn('2026-02-01', 190), readingOn('2026-03-01', 260)], points: [['2026-01-01', 200], ['2026-03-01', 260]] },
  ])('$case', ({ readings, points }) => {
    expect(shown(readings)).toEqual(points);
  });

  const anyReading = fc
    .record({ date: anyDate(day('2026-01-01'), day('2026-03-01')), km: fc.integer({ min: 0, max: 400 }), sure: fc.boolean(), standing: fc.constantFrom<Reading['standing']>('accepted', 'accepted', 'accepted', 'set-aside', 'dismissed') })
    .map(({ date, km, sure, standing }) => readingOn(date, km, { sure, standing }));
  const anyReadings = fc.array(anyReading, { maxLength: 14 });

  test('rise day by day and never fall, whatever was entered', () => {
    fc.assert(fc.property(anyReadings, (readings) => {
      const points = distancePoints(readings, []);
      for (const [at, point] of points.entries()) {
        expect(point.reading.standing).toBe('accepted');
        const next = points[at + 1];
        if (next === undefined) continue;
        expect(point.date < next.date).toBe(true);
        expect(point.metres).toBeLessThanOrEqual(next.metres);
      }
    }));
  });

  test('leave out no accepted day without a reason that can be seen', () => {
    fc.assert(fc.property(anyReadings, (readings) => {
      const points = distancePoints(readings, []);
      const accepted = readings.filter((reading) => reading.standing === 'accepted');
      for (const date of new Set(accepted.map((reading) => reading.date))) {
        if (points.some((point) => point.date === date)) continue;
        const highest = Math.max(...accepted.filter((reading) => reading.date === date).map((reading) => reading.shown));
        expect(accepted.some((other) => (other.date < date && other.shown > highest) || (other.date > date && other.sure && other.shown < highest))).toBe(true);
      }
    }));
  });

  test('do not depend on the order of entry', () => {
    fc.assert(fc.property(anyReadings, (readings) => {
      // Of two alike on a day either may stand for both.
      const bare = (list: readonly Reading[]) => distancePoints(list, []).map((point) => [point.date, point.metres]);
      const alike = new Set(readings.map((reading) => `${reading.date} ${reading.shown}`)).size < readings.length;
      if (!alike) expect(bare([...readings].reverse())).toEqual(bare(readings));
    }));
  });
});
