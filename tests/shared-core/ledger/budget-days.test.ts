import { describe, expect, test } from 'vitest';
import { dayNumber, fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { dueDayAt } from '../../../shared-core/fleet/odometer-forecast.ts';
import { timesOf, type DueCase } from '../../../shared-core/ledger/budget-days.ts';
import type { BudgetTask } from '../../../shared-core/ledger/budget-input.ts';
import { distancePath, monthsAfter } from '../../../shared-core/ledger/budget-path.ts';
import { day } from '../calendar/day.ts';
import { due, task, TODAY, usage } from './budget-fixture.ts';

const END = dayNumber(day('2028-11-25'));
const oneCase = (more: Partial<DueCase> = {}): DueCase => ({ today: dayNumber(TODAY), end: END, z: 0, path: null, monthsAfter: monthsAfter(), lag: () => 0, ...more });
const days = (made: BudgetTask, more: Partial<DueCase> = {}) => timesOf(made, oneCase(more)).map((time) => fromDayNumber(time.day));
const item = (more: Partial<BudgetTask>) => task('x', { kind: 'item', punctual: false, ...more });

describe('when a thing comes again', () => {
  test.each([
    { case: 'a date and months: from the day it is done', made: item({ first: due(day('2027-01-31')), next: { kind: 'completion', months: 12, km: null } }), on: ['2027-01-31', '2028-01-31'], source: 'by hand' },
    { case: 'late: today, and then from today', made: item({ first: due(day('2025-06-01')), next: { kind: 'completion', months: 12, km: null } }), on: ['2026-11-25', '2027-11-25'], source: 'by hand' },
    { case: 'the last day before the end counts, the end itself does not', made: item({ first: due(day('2028-11-24')), next: { kind: 'never' } }), on: ['2028-11-24'], source: 'by hand' },
    { case: 'on the end: not in it', made: item({ first: due(day('2028-11-25')), next: { kind: 'never' } }), on: [], source: 'by hand' },
    { case: 'a printed date first, then the interval', made: item({ first: { ...due(day('2027-08-01')), printedDate: day('2027-01-05') }, next: { kind: 'completion', months: 18, km: null } }), on: ['2027-01-05', '2028-07-05'], source: 'by hand' },
    { case: 'a calendar keeps its steps, done late or not', made: item({ first: due(day('2026-10-15')), next: { kind: 'calendar', firstDate: day('2026-10-15'), months: 6 } }), on: ['2026-11-25', '2027-04-15', '2027-10-15', '2028-04-15', '2028-10-15'], source: 'by hand' },
    { case: 'a certificate keeps its day', made: task('mot', { first: due(day('2027-05-15')) }), on: ['2027-05-15', '2028-05-15'], source: 'by hand' },
    { case: 'a certificate run out counts from the day it is renewed', made: task('mot', { first: due(day('2026-11-01')) }), on: ['2026-11-25', '2027-11-24', '2028-11-24'], source: '25 November passed gives 24 November: REFERENCE 1c' },
    { case: 'a session in its last month keeps the day', made: task('mot', { first: due(day('2027-05-15')), sessionOn: day('2027-04-16') }), on: ['2027-04-16', '2028-05-15'], source: 'REFERENCE 1c: 16 April keeps 15 May' },
    { case: 'a session before that does not', made: task('mot', { first: due(day('2027-05-15')), sessionOn: day('2027-04-14') }), on: ['2027-04-14', '2028-04-13'], source: 'REFERENCE 1c: 14 April gives 13 April' },
    { case: 'a kept session comes before what is due', made: item({ first: due(day('2027-01-31')), sessionOn: day('2027-03-06'), next: { kind: 'completion', months: 12, km: null } }), on: ['2027-03-06', '2028-03-06'], source: 'by hand' },
    { case: 'no limb: nothing', made: item({ first: due(null), next: { kind: 'completion', months: 12, km: null } }), on: [], source: 'by hand' },
    { case: 'what wears lasts as long again', made: item({ first: { ...due(null), wear: { earliest: day('2027-01-10'), likely: day('2027-02-01'), latest: day('2027-03-01') } }, lastDone: day('2026-02-01'), next: { kind: 'completion', months: null, km: 1e6 } }), on: ['2027-02-01', '2028-02-01'], source: '365 days worn from 1 Feb 2026 to 1 Feb 2027, by hand' },
  ])('$case', ({ made, on }) => expect(days(made)).toEqual(on));

  test('habit moves what is ahead and never what is late or must be punctual', () => {
    const lag = () => 20;
    expect(days(item({ first: due(day('2027-01-31')), next: { kind: 'completion', months: 12, km: null } }), { lag })).toEqual(['2027-02-20', '2028-03-11']);
    expect(days(item({ first: due(day('2026-11-01')), next: { kind: 'never' } }), { lag })).toEqual(['2026-11-25']);
    expect(days(task('mot', { first: due(day('2027-05-15')) }), { lag })).toEqual(['2027-05-15', '2028-05-15']);
    expect(days(item({ first: due(day('2026-12-01')), next: { kind: 'never' } }), { lag: () => -60 })).toEqual(['2026-11-25']);
  });

  test('a slip of an interval does not go on for ever', () => {
    expect(days(item({ first: due(day('2026-11-25')), next: { kind: 'completion', months: null, km: 0 } }), { path: distancePath(usage(), 0, END) }).length).toBeLessThanOrEqual(400);
  });
});

describe('by distance', () => {
  const use = usage();
  const at = (z: number) => ({ z, path: distancePath(use, z, END) });

  test.each([-1.2816, 0, 1.2816])('the first time is the due window\'s own edge, z %d', (z) => {
    const first = timesOf(item({ first: { ...due(null), km: 55_000 }, next: { kind: 'never' } }), oneCase(at(z)))[0]?.day;
    expect(first).toBe(dueDayAt(use, 55_000, z));
  });

  test('who drives more pays more often', () => {
    const made = item({ first: { ...due(null), km: 52_000 }, next: { kind: 'completion', months: null, km: 5000 } });
    const counts = [-1.2816, 0, 1.2816].map((z) => days(made, at(z)).length);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts[2]).toBeGreaterThan(counts[0] ?? 0);
    // About 12 000 km a year: 24 000 in all, 2000 to the first and 5000 to each of the next.
    expect(counts[1]).toBe(5);
  });

  test('what a reading has passed is done today', () => {
    expect(days(item({ first: { ...due(null), km: 49_000, reachedOn: day('2026-10-20') }, next: { kind: 'never' } }), at(0))).toEqual(['2026-11-25']);
  });

  test('a path never falls, and reaches what it shows', () => {
    const path = distancePath(use, 2, END);
    for (let now = dayNumber(TODAY); now < END; now += 1) expect(path.kmOn(now)).toBeGreaterThanOrEqual(path.kmOn(now - 1));
    const reached = path.reaches(60_000) ?? 0;
    expect([path.kmOn(reached) >= 60_000, path.kmOn(reached - 1) < 60_000, path.reaches(1e9)]).toEqual([true, true, null]);
  });
});
