import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromDayNumber } from '../../../../shared-core/calendar/local-date.ts';
import { recordReading } from '../../../../shared-core/fleet/record-reading.ts';
import { readings } from '../../../../shared-core/fleet/reading.ts';
import { entryKinds } from '../../../../shared-core/contract/entry-kinds.ts';
import { overlayFacts } from '../../../../shared-core/journal/overlay-facts.ts';
import { must } from '../../../../shared-core/result/assert.ts';
import { importFacts } from '../../../../shared-core/views/import/import-facts.ts';
import type { Facts } from '../../../../shared-core/journal/facts.ts';
import type { Put } from '../../../../shared-core/journal/entry-kind.ts';
import { day } from '../../calendar/day.ts';
import { withPip } from './take-in.ts';

const TODAY = day('2026-11-25');
const FIRST_DAY = 17_000;

/** What is said of each reading in turn, by facts of one kind or the other. */
function doubts(facts: Facts & { lay(puts: readonly Put[]): void }, look: (date: string) => void, values: readonly number[], gap: number): readonly (string | null)[] {
  let ids = 0;
  return values.map((value, at) => {
    const date = fromDayNumber(FIRST_DAY + at * gap);
    look(date);
    const decided = recordReading.decide(facts, recordReading.request.parse({ car: 'pip', value, unit: 'mi', date, source: 'import' }), { today: TODAY, now: `${TODAY}T12:00:00.000Z`, newId: () => `r-${(ids += 1)}` });
    if (!decided.ok) throw new Error(decided.refusal.code);
    for (const entry of decided.value.entries) facts.lay(must(entryKinds.get(entry.kind), 'kind').apply(entry.values));
    return decided.value.reply.code;
  });
}

describe('facts for many rows', () => {
  test('judge as all readings together do', () => {
    const steps = fc.array(fc.record({ step: fc.integer({ min: 0, max: 60 }), slip: fc.constantFrom(0, 0, 0, 0, 0, 0, 0, 0, 9000, -4000, 90_000) }), { minLength: 150, maxLength: 220 });
    fc.assert(fc.property(steps, fc.constantFrom(1, 5), (drawn, gap) => {
      let miles = 5000;
      const values = drawn.map(({ step, slip }) => Math.max(0, (miles += step * gap) + slip));
      const below = withPip().facts();
      const windowed = importFacts(below);
      const whole = overlayFacts(below);
      expect(doubts(windowed, (date) => windowed.look(day(date)), values, gap)).toEqual(doubts(whole, () => {}, values, gap));
      // As long as both say the same, both hold the same readings; and fewer are looked at.
      expect(windowed.ofCar(readings, 'pip').length).toBeLessThanOrEqual(260);
    }), { seed: 20_261_125, numRuns: 8 });
  });

  test('give the readings around a day in order, one a month before the nearest hundred', () => {
    const household = withPip();
    const facts = importFacts(household.facts());
    doubts(facts, (date) => facts.look(day(date)), Array.from({ length: 400 }, (_, at) => 1000 + at * 10), 1);
    facts.look(fromDayNumber(FIRST_DAY + 299));
    const around = facts.ofCar(readings, 'pip').map(({ date }) => date);
    expect(around).toEqual([...around].sort());
    // 100 up to the day and 40 after it; before them lie 200 days, 18 July 2016 to 2 February 2017, in which seven months end.
    expect(fromDayNumber(FIRST_DAY)).toBe('2016-07-18');
    expect(around).toHaveLength(100 + 40 + 7);
    expect(around.slice(0, 7)).toEqual(['2016-07-31', '2016-08-31', '2016-09-30', '2016-10-31', '2016-11-30', '2016-12-31', '2017-01-31']);
  });
});
