import { describe, expect, test } from 'vitest';
import { NINE_Z, nineDueDays, type DueLimbDays } from '../../../shared-core/care/nine-due-days.ts';
import { dayNumber, fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { normalProbability } from '../../../shared-core/fleet/normal-probability.ts';
import { day } from '../calendar/day.ts';

const NONE: DueLimbDays = { time: null, printedDate: null, distanceAt: null, wear: null, unforeseen: dayNumber(day('2031-11-25')) };
const dates = (limbs: Partial<DueLimbDays>) => nineDueDays({ ...NONE, ...limbs })?.map((number) => fromDayNumber(number));
const nine = (date: string) => Array.from({ length: 9 }, () => date);

describe('nine equally likely due days', () => {
  test('are read at the quantiles (k - 1/2)/9, the earliest at the highest odometer', () => {
    expect(NINE_Z).toHaveLength(9);
    NINE_Z.forEach((z, at) => expect(normalProbability(-z)).toBeCloseTo((at + 0.5) / 9, 6));
  });

  test.each([
    { case: 'a time limit alone is exact', limbs: { time: day('2026-12-01') }, nine: nine('2026-12-01'), source: 'by hand' },
    { case: 'the earlier of time and printed date', limbs: { time: day('2026-12-01'), printedDate: day('2026-11-30') }, nine: nine('2026-11-30'), source: 'by hand' },
    { case: 'distance a day for each tenth of z, cut by time', limbs: { time: day('2027-01-11'), distanceAt: (z: number) => dayNumber(day('2027-01-10')) - Math.round(10 * z) }, nine: ['2026-12-25', '2026-12-31', '2027-01-04', '2027-01-07', '2027-01-10', '2027-01-11', '2027-01-11', '2027-01-11', '2027-01-11'], source: 'by hand: 10 January less 16, 10, 6, 3 and 0 days, then time' },
    { case: 'distance never foreseen', limbs: { distanceAt: () => null }, nine: nine('2031-11-25'), source: 'by hand' },
    { case: 'wear past its limit', limbs: { wear: { earliest: day('2026-11-20'), likely: day('2026-11-20'), latest: day('2026-11-20') } }, nine: nine('2026-11-20'), source: 'by hand' },
    { case: 'wear that may never come', limbs: { wear: { earliest: day('2027-01-01'), likely: day('2027-01-31'), latest: null } }, nine: ['2026-12-25', '2027-01-08', '2027-01-17', '2027-01-24', '2027-01-31', ...nine('2031-11-25').slice(0, 4)], source: 'by hand: 30 days earlier for each 1.2816 of z' },
    { case: 'wear of which only the early edge is known', limbs: { wear: { earliest: day('2027-01-01'), likely: null, latest: null } }, nine: ['2027-01-01', ...nine('2031-11-25').slice(0, 8)], source: 'by hand: one case in nine lies before the edge' },
  ])('$case ($source)', ({ limbs, nine: expected }) => {
    expect(dates(limbs)).toEqual(expected);
  });

  test('nothing to count by is no date', () => {
    expect(nineDueDays(NONE)).toBeNull();
  });
});
