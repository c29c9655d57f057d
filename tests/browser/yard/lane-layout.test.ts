import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { laneSize, openHeight } from '../../../renderer/yard/lane-height.ts';
import { layLane } from '../../../renderer/yard/lane-layout.ts';
import { nearMark } from '../../../renderer/yard/near-mark.ts';
import { timeScale } from '../../../renderer/yard/time-scale.ts';
import type { YardMark } from '../../../renderer/yard/yard-mark.ts';

const day = (text: string): LocalDate => {
  const date = localDate(text);
  return must(date.ok ? date.value : null, 'date');
};
const SCALE = timeScale(day('2026-11-25'), { span: 12, shift: 0 }, 1000);
const measure = (text: string) => text.length * 7;
const ROOM = { rows: 4, marks: 100 };

function mark(change: Partial<YardMark>): YardMark {
  return {
    kind: 'item', shape: 'bar', filled: false, tone: 'later', standing: 'later', id: 'a', car: 'pip', carName: 'Pip', href: '/car/pip', name: 'oil', rest: '', state: 'ahead', late: null,
    when: '', why: '', effort: [], work: [], from: day('2027-01-10'), likely: day('2027-02-10'), to: day('2027-03-10'), ...change,
  };
}

/** Source for all: worked by hand from DESIGN section 3. */
describe('a lane', () => {
  test('draws a forecast from its earliest to its latest edge', () => {
    const [placed] = layLane([mark({})], SCALE, ROOM, measure).placed;
    expect(placed).toMatchObject({ fromX: SCALE.x(day('2027-01-10')), likelyX: SCALE.x(day('2027-02-10')), toX: SCALE.x(day('2027-03-10')) });
  });

  test('lets a forecast without a last edge run off the paper', () => {
    const [placed] = layLane([mark({ to: null })], SCALE, ROOM, measure).placed;
    expect(placed?.right).toBe(1000);
    expect(placed?.toX).toBeGreaterThan(1000);
  });

  test('flies a flag at today for what is late, whatever its date', () => {
    const [placed] = layLane([mark({ shape: 'flag', state: 'late', from: day('2020-01-01') })], SCALE, ROOM, measure).placed;
    expect(placed).toMatchObject({ toX: SCALE.todayX, right: SCALE.todayX });
  });

  test.each([
    { case: 'what lies past the span', change: { from: day('2028-01-01'), likely: day('2028-02-01'), to: day('2028-03-01') } },
    { case: 'what is not foreseeable', change: { from: null, likely: null, to: null } },
  ])('folds $case', ({ change }) => {
    const { placed, folded } = layLane([mark(change)], SCALE, ROOM, measure);
    expect([placed.length, folded.length]).toEqual([0, 1]);
  });

  test('counts what is not known apart', () => expect(layLane([mark({ state: 'unknown' })], SCALE, ROOM, measure)).toMatchObject({ placed: [], folded: [], unknown: [{ id: 'a' }] }));

  test('that is low shows the first mark and folds the others', () => {
    const { placed, folded } = layLane([mark({ id: 'a' }), mark({ id: 'b', shape: 'pin', from: day('2027-06-10'), likely: day('2027-06-10'), to: day('2027-06-10') }), mark({ id: 'c' })], SCALE, { rows: 1, marks: 1 }, measure);
    expect([placed.map((one) => one.mark.id), folded.map((one) => one.id)]).toEqual([['a'], ['b', 'c']]);
  });
});

test.each([[1, 96], [4, 96], [5, 56], [8, 56], [9, 32], [15, 32]])('with %i cars a lane is %i px high', (cars, height) => expect(laneSize(cars).height).toBe(height));

test('an opened lane is as high as its rows', () => expect([openHeight(2, laneSize(9)), openHeight(7, laneSize(9))]).toEqual([96, 168]));

test('the nearest mark is that under the point, else that with the nearest edge', () => {
  const marks = [{ id: 'a', left: 0, right: 100 }, { id: 'b', left: 140, right: 150 }];
  expect([nearMark(marks, 50)?.id, nearMark(marks, 119)?.id, nearMark(marks, 121)?.id, nearMark([], 5)]).toEqual(['a', 'a', 'b', null]);
});
