import { describe, expect, test } from 'vitest';
import { clusterOrTypo } from '../../../shared-core/fleet/cluster-or-typo.ts';
import { mustFit } from './usage-examples.ts';

const about = (value: number) => expect.closeTo(value, 2) as number;

/** 35.592 km a day from 61 500 km. */
const usage = mustFit([{ day: 0, km: 61_500 }], null, 'none');
const decide = (doubtfulKm: number, nextDay: number, nextKm: number) => clusterOrTypo(usage, { day: 30, km: doubtfulKm }, { day: nextDay, km: nextKm });

describe('a doubtful reading, decided at the next one', () => {
  // Source: house method, section 6; rows by hand.
  test.each([
    { case: 'the next follows the old line: a digit was left out', doubtfulKm: 6250, nextDay: 62, nextKm: 63_600, verdict: 'typo' },
    { case: 'the next follows the old line: a digit too many', doubtfulKm: 625_000, nextDay: 62, nextKm: 63_600, verdict: 'typo' },
    { case: 'the next goes on from a new instrument near zero', doubtfulKm: 120, nextDay: 62, nextKm: 1200, verdict: 'replaced' },
    { case: 'the next goes on from a used instrument', doubtfulKm: 142_000, nextDay: 62, nextKm: 143_100, verdict: 'replaced' },
    { case: 'the next falls again: neither line', doubtfulKm: 120, nextDay: 62, nextKm: 50, verdict: 'ask' },
    { case: 'the next is far from both', doubtfulKm: 120, nextDay: 62, nextKm: 40_000, verdict: 'ask' },
    { case: 'both lines could be, the doubtful one\'s better', doubtfulKm: 70_000, nextDay: 60, nextKm: 71_000, verdict: 'ask' },
    { case: 'under the old line, by however little, is not on it', doubtfulKm: 61_000, nextDay: 31, nextKm: 61_030, verdict: 'replaced' },
  ])('$case: $verdict', ({ doubtfulKm, nextDay, nextKm, verdict }) => {
    expect(decide(doubtfulKm, nextDay, nextKm).verdict).toBe(verdict);
  });

  test('a replaced instrument tells what to add, as an estimate', () => {
    // By hand: 61 500 + 30 * 13 000 / 365.25 = 62 567.76.
    expect(decide(120, 62, 1200)).toMatchObject({ verdict: 'replaced', distanceKm: about(62_567.76), offsetKm: about(62_447.76) });
    expect(decide(142_000, 62, 143_100)).toMatchObject({ offsetKm: about(62_567.76 - 142_000) });
  });

  test('both distances from likely are told', () => {
    // By hand: ln((9500 + 106.776) / (63 * 35.592)) / sqrt(0.27); ln((1000 + 106.776) / (33 * 35.592)) / sqrt(0.29333).
    expect(decide(70_000, 60, 71_000)).toEqual({ verdict: 'ask', zOld: about(2.8), zNew: about(0.11) });
    expect(decide(120, 62, 50)).toEqual({ verdict: 'ask', zOld: Infinity, zNew: Infinity });
  });

  test('days in another order are our own bug', () => {
    expect(() => decide(120, 29, 1200)).toThrow(/order/);
  });
});
