import { beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import { standingSample, type StandingSample } from './sample-household.ts';

/** Winter and summer wheels lie in another order on another day: in winter, before and after the turn of the year, and in summer. */
const TODAYS = ['2026-11-25', '2027-01-15', '2027-06-21', '2028-02-29'];

describe.each(TODAYS)('what is measured in the sample, on %s', (today) => {
  let sample: StandingSample;
  const car = (id: string) => sample.ask('car.show', { car: id });
  const series = (id: string, key: string) => must(car(id).measured.find((one) => one.key === key), key);
  const verdict = (one: WearSeriesView) => one.limits[0]?.verdict ?? null;

  beforeAll(async () => {
    sample = await standingSample(today);
  });

  test.each([
    { case: 'tread that wears', id: 'pip', key: 'tread//wheel pip-wheel-b', expected: 'wears' },
    { case: 'measured once', id: 'pip', key: 'pad//rear-left', expected: 'too-few' },
    { case: 'no wear to be seen', id: 'alder', key: 'pad//rear-left', expected: 'flat' },
    { case: 'pads that got thicker', id: 'wren', key: 'pad//front-left', expected: 'contradictory' },
    { case: 'a spare past one law', id: 'heron', key: 'tread//wheel heron-spare', expected: 'past-limit' },
    { case: 'no limit set', id: 'ember', key: 'battery-voltage//', expected: null },
    { case: 'something else, rising with time', id: 'heron', key: 'other/damp below the rear window/', expected: 'wears' },
  ])('$case', ({ id, key, expected }) => {
    expect(verdict(series(id, key))).toBe(expected);
  });

  test('wear governs two windows: one of them before its interval, one alone', () => {
    const governed = ['pip', 'alder', 'wren', 'ember', 'heron'].flatMap((id) => car(id).due.windows).filter((one) => one.limb === 'wear');
    expect(governed.map((one) => [one.item, one.state, one.reason.code])).toEqual([
      ['pip-new-tyres', 'ahead', 'reason-wear'],
      ['alder-new-pads', 'open', 'reason-wear-alone'],
    ]);
  });

  test('the spare passes the one law and fails the other; three digits leave its decade open', () => {
    expect(series('heron', 'tread//wheel heron-spare').laws?.map(({ law, passes }) => [law, passes])).toEqual([['tread-1.6-mm', false], ['tread-2-32-in', true]]);
    expect(series('heron', 'tread//wheel heron-spare').limits[0]?.words.text).toMatch(/^Past its limit of 1\.6 mm: 2\/32 in on /);
    expect(car('heron').wheels[0]?.tyre?.weeks.map((week) => week.year)).toEqual([1987, 1997]);
  });

  test('a rate by time is said for a year', () => {
    expect(series('ember', 'battery-capacity//').limits[0]?.words.text).toBe('It wears by 2 % every year and does not reach 70 % within five years.');
  });

  test('one set of Ember rolls and the other lies by, each with a history of moves in which nothing is moved to where it was', () => {
    const { wheels } = car('ember');
    const on = wheels.filter((one) => one.place !== 'off').map((one) => one.wheel.name);
    expect(new Set(on.map((name) => name.split(' ')[0])).size).toBe(1);
    expect(on).toHaveLength(4);
    expect(new Set(wheels.flatMap((one) => one.tyre?.weeks.length))).toEqual(new Set([1]));
    for (const { moves } of wheels) {
      expect(moves.length).toBeGreaterThanOrEqual(5);
      expect(moves.filter((move, at) => move.place === moves[at - 1]?.place)).toEqual([]);
    }
    expect(new Set(car('ember').measured.filter((one) => one.wheel !== null).map((one) => [one.place === null, verdict(one)].join()))).toEqual(new Set(['true,off-the-road', 'false,wears']));
  });

  test('Pip had its wheels changed round, and their wear went with them', () => {
    const b = must(car('pip').wheels.find((one) => one.wheel.name === 'B'), 'B');
    expect(b.moves.map((move) => move.place)).toEqual(['front-right', 'rear-right']);
    expect(series('pip', 'tread//wheel pip-wheel-b').points.map((one) => one.measurement.place)).toEqual(['front-right', 'front-right', 'front-right', 'rear-right']);
  });

  test("what was measured before Ember's brake fluid was changed counts no more", () => {
    expect(series('ember', 'brake-fluid-moisture//').points.map((one) => one.part)).toEqual(['earlier-part', 'earlier-part', 'counts', 'counts', 'counts']);
  });
});
