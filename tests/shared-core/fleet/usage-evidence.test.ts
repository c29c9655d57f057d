import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { evidenceOf, withReading, type DayKm } from '../../../shared-core/fleet/usage-evidence.ts';
import { makeSeason, seasonDays, type Season } from '../../../shared-core/fleet/usage-season.ts';
import { anyReadings, anySeason } from './usage-examples.ts';

const even = makeSeason('none');

/** Source: house method, section 5, the sums written out as they stand there. */
function plainSums(readings: readonly DayKm[], season: Season): { km: number; exposure: number } {
  const end = must(readings.at(-1), 'last').day;
  let [km, exposure] = [0, 0];
  for (let at = 1; at < readings.length; at += 1) {
    const [from, to] = [must(readings[at - 1], 'from'), must(readings[at], 'to')];
    const decayed = (180 / Math.log(2)) * (2 ** (-(end - to.day) / 180) - 2 ** (-(end - from.day) / 180));
    km += (decayed / (to.day - from.day)) * (to.km - from.km);
    exposure += (decayed / (to.day - from.day)) * seasonDays(season, from.day, to.day);
  }
  return { km, exposure };
}

describe('evidence of use', () => {
  test('the running sums equal the written ones', () => {
    fc.assert(fc.property(anyReadings, anySeason, (readings, season) => {
      const [running, plain] = [must(evidenceOf(readings, season), 'evidence'), plainSums(readings, season)];
      expect(Math.abs(running.km - plain.km)).toBeLessThanOrEqual(1e-9 * (1 + plain.km));
      expect(Math.abs(running.exposure - plain.exposure)).toBeLessThanOrEqual(1e-9 * (1 + plain.exposure));
    }));
  });

  test('one half-life of steady driving weighs 129.84 days', () => {
    // By hand: 180 / ln 2 * (1 - 1/2) = 129.8426.
    const evidence = must(evidenceOf([{ day: 0, km: 0 }, { day: 180, km: 1800 }], even), 'evidence');
    expect(evidence.exposure).toBeCloseTo(129.8426, 4);
    expect(evidence.km).toBeCloseTo(1298.426, 3);
    expect(evidence).toMatchObject({ firstDay: 0, lastDay: 180, lastKm: 1800, gapDays: 180, readingDays: 2 });
  });

  test('no reading, no evidence; one reading weighs nothing', () => {
    expect(evidenceOf([], even)).toBeNull();
    expect(evidenceOf([{ day: 3, km: 7 }], even)).toEqual({ firstDay: 3, lastDay: 3, lastKm: 7, gapDays: 0, readingDays: 1, km: 0, exposure: 0 });
  });
});

describe('several readings on one day', () => {
  const alone = evidenceOf([{ day: 0, km: 100 }, { day: 40, km: 900 }], even);

  test.each([
    { case: 'lower first', pair: [850, 900] },
    { case: 'higher first', pair: [900, 850] },
    { case: 'twice the same', pair: [900, 900] },
    { case: 'even lower than the day before', pair: [900, 20] },
  ])('$case: the highest counts, as if alone', ({ pair }) => {
    const both = must(evidenceOf([{ day: 0, km: 100 }, ...pair.map((km) => ({ day: 40, km }))], even), 'evidence');
    expect(both.km).toBeCloseTo(must(alone, 'evidence').km, 9);
    expect({ ...both, km: 0 }).toEqual({ ...must(alone, 'evidence'), km: 0 });
  });

  test('on the first day too', () => {
    expect(evidenceOf([{ day: 0, km: 100 }, { day: 0, km: 130 }], even)).toEqual(evidenceOf([{ day: 0, km: 130 }], even));
  });
});

describe('what is our own bug', () => {
  test.each([
    { case: 'days that go back', next: { day: 9, km: 500 }, says: /sorted/ },
    { case: 'distance that falls', next: { day: 11, km: 499 }, says: /fall/ },
  ])('$case', ({ next, says }) => {
    expect(() => withReading(evidenceOf([{ day: 10, km: 500 }], even), next, even)).toThrow(says);
  });
});
