import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { chartScale, HEIGHT, MARGIN, roundValues } from '../../../renderer/car/distance/chart-scale.ts';

const day = (text: string): LocalDate => {
  const date = localDate(text);
  return must(date.ok ? date.value : null, 'date');
};
const TODAY = day('2026-11-25');
const CURVE = {
  unit: 'km' as const,
  points: [['2020-01-01', 1000], ['2024-11-01', 41_000], ['2026-11-01', 60_000]].map(([date, value]) => ({ date: day(String(date)), value: Number(value) })),
  doubtful: [{ date: day('2026-11-10'), value: 900_000 }],
  fan: [{ date: day('2026-11-01'), low: 60_000, likely: 60_000, high: 60_000 }, { date: day('2027-11-25'), low: 68_000, likely: 70_000, high: 74_000 }],
  replaced: [], resting: [], foreseen: [],
};

/** Source for all: worked by hand from the stated rule. */
describe('the measures of a drawing', () => {
  test.each([
    { low: 120, high: 890, values: [200, 400, 600, 800] },
    { low: 0, high: 5, values: [0, 1, 2, 3, 4, 5] },
    { low: 41_000, high: 74_000, values: [50_000, 60_000, 70_000] },
    { low: 49_532, high: 49_540, values: [49_532, 49_534, 49_536, 49_538, 49_540] },
  ])('round distances from $low to $high', ({ low, high, values }) => expect(roundValues(low, high)).toEqual(values));

  test('two years back, to the end of the fan; a reading in doubt lies at the edge and squeezes nothing', () => {
    const scale = must(chartScale(CURVE, TODAY, 24, 700), 'scale');
    expect([scale.from, scale.to]).toEqual(['2024-11-25', '2027-11-25']);
    expect([scale.x(scale.from), scale.x(scale.to)]).toEqual([MARGIN.left, 700 - MARGIN.right]);
    expect([scale.y(41_000), scale.y(74_000), scale.y(900_000)]).toEqual([HEIGHT - MARGIN.bottom, MARGIN.top, MARGIN.top]);
  });

  test('all of it begins with the first reading', () => {
    const scale = must(chartScale(CURVE, TODAY, null, 700), 'scale');
    expect([scale.from, scale.y(1000)]).toEqual(['2020-01-01', HEIGHT - MARGIN.bottom]);
  });

  test('names of months lie so far apart that they do not touch', () => {
    for (const width of [300, 700, 1400]) {
      const { dates, x } = must(chartScale(CURVE, TODAY, 24, width), 'scale');
      const gaps = dates.slice(1).map((date, at) => x(date) - x(must(dates[at] ?? null, 'date')));
      expect(Math.min(...gaps), `at ${width}`).toBeGreaterThan(40);
    }
  });

  test('nothing is drawn without a reading or without room', () => {
    expect(chartScale({ ...CURVE, points: [] }, TODAY, 24, 700)).toBeNull();
    expect(chartScale(CURVE, TODAY, 24, 60)).toBeNull();
  });
});
