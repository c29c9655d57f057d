import { describe, expect, test } from 'vitest';
import { historyGaps } from '../../../shared-core/care/history-gaps.ts';
import { pip as PIP } from '../fleet/car-examples.ts';
import { doneOn, every, itemOf } from './limit-examples.ts';

const yearly = itemOf(every(12));
const byDistance = itemOf(every(null, 10_000));
const pip = { ...PIP, firstRegistered: doneOn('2018-11-25').date };

// Counted by hand; what a gap is, is our own rule.
describe('the time from the last time to now', () => {
  test.each([
    { case: '72 months late', item: yearly, done: doneOn('2019-11-25'), now: doneOn('2026-11-25'), gaps: [{ kind: 'months', from: '2019-11-25', to: '2026-11-25', months: 84, limit: 12 }] },
    { case: 'late by distance', item: byDistance, done: doneOn('2025-11-25', 40_000), now: doneOn('2026-11-25', 52_000), gaps: [{ kind: 'distance', from: '2025-11-25', to: '2026-11-25', metres: 12_000_000, limit: 10_000_000 }] },
    { case: 'within its interval', item: yearly, done: doneOn('2026-01-25'), now: doneOn('2026-11-25'), gaps: [] },
    { case: 'on the very day', item: yearly, done: doneOn('2025-11-25'), now: doneOn('2026-11-25'), gaps: [] },
    { case: 'not looked at', item: yearly, done: doneOn('2019-11-25'), now: null, gaps: [] },
    { case: 'now before the last time: a car that left', item: yearly, done: doneOn('2019-11-25'), now: doneOn('2019-11-20'), gaps: [] },
  ])('$case', ({ item, done, now, gaps }) => {
    expect(historyGaps(item, pip, [done], now).filter((gap) => 'from' in gap && gap.from === done.date)).toEqual(gaps);
  });
});

test('without a first registration nobody knows what was before the first time', () => {
  expect(historyGaps(yearly, { ...pip, firstRegistered: null }, [doneOn('2026-01-25')], null)).toEqual([{ kind: 'unknown-before', date: '2026-01-25' }]);
  expect(historyGaps(yearly, { ...pip, firstRegistered: doneOn('2025-06-01').date }, [doneOn('2026-01-25')], null)).toEqual([]);
});
