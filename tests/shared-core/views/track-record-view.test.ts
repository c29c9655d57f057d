import { describe, expect, test } from 'vitest';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import type { Metres } from '../../../shared-core/units/distance.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

/** A car read every 40 days up to 2026-11-25, so much of its unit on each day. */
function trackOf(count: number, distance: (days: number) => number, unit: 'km' | 'mi' = 'km') {
  const household = memoryHousehold({ hemisphere: 'none' });
  household.must('car.add', { id: 'pip', name: 'Pip', unit });
  for (let at = 0; at < count; at += 1) household.must('reading.record', { car: 'pip', value: Math.round(distance(at * 40)), date: addDays(day('2026-11-25'), (at + 1 - count) * 40), sure: true });
  return household.must('car.show', { car: 'pip' }).trackRecord;
}

const steady = (days: number) => days * 36;
const wild = (days: number) => 36 * Math.floor(days / 200) * 200 + (days % 200 === 0 ? 0 : 3600);

describe('how well a car was foreseen, in words', () => {
  test.each([
    { case: 'nothing yet', count: 2, distance: steady, verdict: 'none', text: /^Nothing that was foreseen/ },
    { case: 'one', count: 4, distance: steady, verdict: 'too-few', text: /^1 of 1 reading fell inside the range foreseen 3 months before\. That is too few/ },
    { case: 'a few', count: 7, distance: steady, verdict: 'too-few', text: /^4 of 4 readings fell inside/ },
    { case: 'enough', count: 12, distance: steady, verdict: 'as-meant', text: /^9 of 9 readings fell inside the range foreseen 3 months before\. About 8 in 10 should, so/ },
    // By hand: 0.8 to the power 14 is 0.044.
    { case: 'never missed in fourteen', count: 17, distance: steady, verdict: 'rarely-missed', text: /^14 of 14 .* wider than need be/ },
    { case: 'missed too often', count: 25, distance: wild, verdict: 'missed-often', text: /^\d+ of 22 readings .* harder to foresee/ },
  ])('$case: $verdict', ({ count, distance, verdict, text }) => {
    const { readings } = trackOf(count, distance);
    expect(readings.verdict).toBe(verdict);
    expect(readings.text).toMatch(text);
    expect([readings.n, readings.inside]).toEqual([readings.rows.length, readings.rows.filter(({ inside }) => inside).length]);
  });

  test('dates too, by 5000 km', () => {
    const { dates } = trackOf(15, (days) => days * 40);
    expect(dates).toMatchObject({ n: 3, inside: 3, verdict: 'too-few', distance: 5000, text: '3 of 3 times, a further 5000 km were reached within the dates foreseen. That is too few to judge by.' });
    expect(dates.rows.map(({ from }) => from)).toEqual([...dates.rows.map(({ from }) => from)].sort().reverse());
  });

  test('in miles by 3000 mi, and as the instrument of the day showed it', () => {
    const { unit, readings, dates } = trackOf(12, (days) => 10_000 + days * 24, 'mi');
    expect([unit, dates.distance]).toEqual(['mi', 3000]);
    expect(readings.rows[0]).toMatchObject({ on: '2026-11-25', foreseenOn: '2026-08-25', value: 20_560, inside: true });
    expect(readings.rows[0]?.likely).toBeGreaterThan(20_000);
    expect(readings.rows[0]?.high).toBeLessThan(22_500);
  });

  test('a replaced instrument: each row on the instrument it was read from', () => {
    const household = memoryHousehold({ hemisphere: 'none' });
    household.must('car.add', { id: 'pip', name: 'Pip' });
    for (const [date, value] of [['2025-01-10', 90_000], ['2025-06-10', 96_000], ['2025-12-10', 103_000]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
    household.must('reading.record', { car: 'pip', value: 0, date: day('2026-01-10'), replaced: { lastShown: { value: 104_200, unit: 'km' } } });
    household.must('reading.record', { car: 'pip', value: 5000, date: day('2026-06-10') });
    const { rows } = household.must('car.show', { car: 'pip' }).trackRecord.readings;
    expect(rows.map(({ on, value }) => [on, value])).toEqual([['2026-06-10', 5000], ['2026-01-10', 0], ['2025-12-10', 103_000], ['2025-06-10', 96_000]]);
    expect(household.facts().ofCar({ name: 'instrument', stage: 'fleet', schema: null as never }, 'pip')).toMatchObject([{ distance: 104_200_000 as Metres }]);
  });

  test('a car without readings has none', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'pip', name: 'Pip' });
    expect(household.must('car.show', { car: 'pip' }).trackRecord).toMatchObject({ readings: { n: 0, verdict: 'none', rows: [] }, dates: { n: 0, verdict: 'none', rows: [] } });
  });
});
