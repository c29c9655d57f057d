import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { completionsOf } from '../../../shared-core/records/completions-of-records.ts';
import { anyDate, day } from '../calendar/day.ts';
import { every, itemOf, knownFrom } from '../care/limit-examples.ts';
import { metresOf } from '../fleet/car-examples.ts';
import { lineOn, recordOn } from './record-examples.ts';

const known = knownFrom('2020-03-01', ['2024-01-01', 40_000], ['2025-01-01', 50_000]);
const at = new Map([['r-1', { date: day('2024-01-01'), metres: metresOf(40_000) }]]);
const replaced = itemOf(every(12));
const checked = itemOf(every(12), { work: 'check' });

describe('what completes an item', () => {
  // Source: our own definition: a thing to be replaced by being replaced, a thing to be checked by being looked at.
  test.each([
    { item: replaced, line: lineOn(), completes: true },
    { item: replaced, line: lineOn({ outcome: 'acted' }), completes: true },
    { item: replaced, line: lineOn({ outcome: 'not-done' }), completes: false },
    { item: replaced, line: lineOn({ outcome: 'good' }), completes: false },
    { item: replaced, line: lineOn({ outcome: 'watch' }), completes: false },
    { item: replaced, line: lineOn({ work: 'check', outcome: 'good' }), completes: false },
    { item: replaced, line: lineOn({ work: 'check', outcome: 'done' }), completes: false },
    { item: replaced, line: lineOn({ item: 'other' }), completes: false },
    { item: replaced, line: lineOn({ item: null }), completes: false },
    { item: checked, line: lineOn({ work: 'check', outcome: 'good' }), completes: true },
    { item: checked, line: lineOn({ work: 'check', outcome: 'watch' }), completes: true },
    { item: checked, line: lineOn({ work: 'replace', outcome: 'done' }), completes: true },
    { item: checked, line: lineOn({ work: 'check', outcome: 'not-done' }), completes: false },
  ])('$item.work by $line.work, $line.outcome, on $line.item: $completes', ({ item, line, completes }) => {
    expect(completionsOf(item, [recordOn('2024-05-01', { lines: [line] })], at, known)).toHaveLength(completes ? 1 : 0);
  });

  test('one of several lines is enough, and a record counts once', () => {
    expect(completionsOf(replaced, [recordOn('2024-05-01', { lines: [lineOn({ outcome: 'not-done' }), lineOn(), lineOn()] })], at, known)).toHaveLength(1);
  });
});

describe('its odometer', () => {
  // By hand: 2024-04-01 is 91 of 366 days on the way from 40 000 to 50 000 km.
  test.each([
    { case: 'as read with the work', record: recordOn('2024-01-01', { reading: 'r-1' }), km: 40_000, estimated: false },
    { case: 'as read on the day, though not with it', record: recordOn('2025-01-01'), km: 50_000, estimated: false },
    { case: 'on the line between readings', record: recordOn('2024-04-01'), km: 42_486.339, estimated: true },
    { case: 'its own reading not accepted: on the line', record: recordOn('2024-04-01', { reading: 'set-aside' }), km: 42_486.339, estimated: true },
    { case: 'its date amended since: on the line of the new date', record: recordOn('2024-04-01', { reading: 'r-1' }), km: 42_486.339, estimated: true },
    { case: 'not to be known', record: recordOn('2020-01-01'), km: null, estimated: true },
  ])('$case', ({ record, km, estimated }) => {
    expect(completionsOf(replaced, [record], at, known)).toEqual([{ date: record.date, metres: km === null ? null : metresOf(km), estimated }]);
  });
});

test('completions come in order of date, and of two later never at less distance', () => {
  fc.assert(fc.property(fc.array(anyDate(day('2020-03-01'), day('2027-01-01')), { maxLength: 8 }), (dates) => {
    const done = completionsOf(replaced, dates.map((date, n) => recordOn(date, { id: `w-${n}` })), at, known);
    expect(done.map((one) => one.date)).toEqual([...dates].sort());
    for (const [n, one] of done.entries()) expect(one.metres ?? 0).toBeLessThanOrEqual(done[n + 1]?.metres ?? Infinity);
  }));
});
