import { expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { householdWords } from '../../../renderer/ui/household-words.ts';
import { laneRemark } from '../../../renderer/yard/lane-remark.ts';

const day = (text: string): LocalDate => {
  const date = localDate(text);
  return must(date.ok ? date.value : null, 'date');
};
const WORDS = householdWords('en-GB', 'GBP');
const LANE = { laidUpMonths: [], layUps: [], lastReadOn: day('2026-11-12'), instrumentReplacedOn: null };

/** Source for all: worked by hand from the stated rule. */
test.each([
  { case: 'only read', lane: LANE, remark: 'last read 12 Nov' },
  { case: 'in its months', lane: { ...LANE, laidUpMonths: [11, 12, 1] }, remark: 'last read 12 Nov, laid up to Jan' },
  { case: 'in a lay-up that goes on', lane: { ...LANE, laidUpMonths: [11, 12, 1], layUps: [{ from: day('2026-11-20'), to: null }] }, remark: 'last read 12 Nov, laid up' },
  { case: 'on the last day of a lay-up', lane: { ...LANE, layUps: [{ from: day('2026-11-20'), to: day('2026-11-25') }] }, remark: 'last read 12 Nov, laid up to 25 Nov' },
  { case: 'after a lay-up', lane: { ...LANE, layUps: [{ from: day('2026-11-20'), to: day('2026-11-24') }] }, remark: 'last read 12 Nov' },
  { case: 'before a lay-up', lane: { ...LANE, layUps: [{ from: day('2026-11-26'), to: null }] }, remark: 'last read 12 Nov' },
  { case: 'with a replaced instrument', lane: { ...LANE, instrumentReplacedOn: day('2019-06-25') }, remark: 'last read 12 Nov, instrument replaced 2019' },
  { case: 'never read', lane: { ...LANE, lastReadOn: null }, remark: '' },
])('beside the odometer of a car $case', ({ lane, remark }) => expect(laneRemark(lane, day('2026-11-25'), WORDS)).toBe(remark));
