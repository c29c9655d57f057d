import { beforeAll, describe, expect, test } from 'vitest';
import { chartShape, type ChartShape } from '../../../../renderer/car/wear/chart-shape.ts';
import { must } from '../../../../shared-core/result/assert.ts';
import type { WearSeriesView } from '../../../../shared-core/views/wear-view.ts';
import { day } from '../../../shared-core/calendar/day.ts';
import { measure, measuredHousehold, padItem, seriesOf } from '../../../shared-core/care/measured-household.ts';

const TODAY = day('2026-11-25');
const [WIDTH, HEIGHT] = [300, 100];

/** Pads that wear evenly: 10, 9, 7 and 5.5 mm at 10 000, 20 000, 30 000 and 38 333 km, towards 3 mm. */
function wornPads(): WearSeriesView {
  const household = measuredHousehold();
  padItem(household);
  for (const [date, value] of [['2024-01-01', 10], ['2025-01-01', 9], ['2026-01-01', 7], ['2026-11-01', 5.5]] as const) measure(household, date, value);
  return must(seriesOf(household)[0], 'series');
}

describe('the chart of a series', () => {
  let series: WearSeriesView;
  let shape: ChartShape;
  beforeAll(() => {
    series = wornPads();
    shape = must(chartShape(series, TODAY, WIDTH, HEIGHT), 'shape');
  });

  test('holds all that it draws, later to the right and less lower down', () => {
    const { dots, limits, ahead, todayX } = shape;
    expect(dots).toHaveLength(4);
    expect(dots.map((dot) => dot.x)).toEqual(dots.map((dot) => dot.x).sort((a, b) => a - b));
    expect(dots.map((dot) => dot.y)).toEqual(dots.map((dot) => dot.y).sort((a, b) => a - b));
    const spots = [...dots, must(ahead, 'ahead').likely[1]];
    for (const { x, y } of spots) expect(x >= 0 && x <= WIDTH && y >= 0 && y <= HEIGHT, `${x},${y}`).toBe(true);
    expect(must(limits[0], 'limit').y).toBeGreaterThan(must(dots.at(-1), 'last').y);
    expect(todayX).toBeGreaterThan(must(dots.at(-1), 'last').x);
  });

  test('draws the line at the values that the core gives for its ends, and on to the limit at the likely day', () => {
    const { line } = series;
    const perMillimetre = (must(shape.limits[0], 'limit').y - must(shape.dots[0], 'dot').y) / (10 - 3);
    const yOf = (value: number) => must(shape.dots[0], 'dot').y + (10 - value) * perMillimetre;
    expect(must(shape.line[0], 'start').y).toBeCloseTo(yOf(must(line, 'line').from.value), 0);
    expect(must(shape.line.at(-1), 'end').y).toBeCloseTo(yOf(must(line, 'line').to.value), 0);
    expect(must(shape.ahead, 'ahead').likely[0]).toEqual(shape.line.at(-1));
    expect(must(shape.ahead, 'ahead').likely[1].y).toBe(must(shape.limits[0], 'limit').y);
  });

  test('lays a line that is straight by distance over the days: a car that stood still does not wear', () => {
    const still: WearSeriesView = { ...series, points: series.points.map((point, at) => (at === 2 ? { ...point, along: must(series.points[1], 'point').along } : point)) };
    const { line } = must(chartShape(still, TODAY, WIDTH, HEIGHT), 'shape');
    expect(must(line[2], 'third').y).toBe(must(line[1], 'second').y);
    expect(must(line[3], 'fourth').y).toBeGreaterThan(must(line[2], 'third').y);
  });

  test('marks what does not count, and what the odometer was worked out for', () => {
    const marked: WearSeriesView = { ...series, points: series.points.map((point, at) => (at === 1 ? { ...point, estimated: true } : at === 2 ? { ...point, part: 'dismissed' } : point)) };
    expect(must(chartShape(marked, TODAY, WIDTH, HEIGHT), 'shape').dots.map((dot) => dot.kind)).toEqual(['read', 'worked-out', 'left-out', 'read']);
  });

  test('without a latest day the ground reaches the edge; without a forecast there is none', () => {
    const limit = must(series.limits[0], 'limit');
    const open = must(chartShape({ ...series, limits: [{ ...limit, latest: null }] }, TODAY, WIDTH, HEIGHT), 'shape');
    expect(must(open.ahead, 'ahead').ground.filter((spot) => spot.x === WIDTH)).toHaveLength(2);
    for (const other of [{ ...limit, verdict: 'flat' as const }, { ...limit, likely: null }]) expect(must(chartShape({ ...series, limits: [other] }, TODAY, WIDTH, HEIGHT), 'shape').ahead).toBeNull();
  });

  test('nothing that counts: no chart', () => {
    expect(chartShape({ ...series, points: series.points.map((point) => ({ ...point, part: 'dismissed' as const })) }, TODAY, WIDTH, HEIGHT)).toBeNull();
  });
});
