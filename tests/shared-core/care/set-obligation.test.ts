import { describe, expect, test } from 'vitest';
import { obligations } from '../../../shared-core/care/obligation.ts';
import { renewals } from '../../../shared-core/care/renewal.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Pip with one duty, valid until 2026-05-15 unless said otherwise, on 2026-06-30. */
function withDuty(duty: Partial<RequestOf<'obligation.add'>> = {}): MemoryHousehold {
  const household = memoryHousehold().on('2026-06-30');
  household.must('car.add', { id: 'pip', name: 'Pip' });
  household.must('obligation.add', { id: 'duty', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-05-15'), ...duty });
  return household;
}

const validAfter = (household: MemoryHousehold, on: string) => household.must('obligation.renew', { obligation: 'duty', on: day(on) }).obligation.lastValidDay;

test('a second roadworthiness test of a car is refused, and the one there is named; one of another name is another test', () => {
  const household = withDuty();
  const another = { car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2027-05-15') } as const;
  expect(household.call('obligation.add', another)).toMatchObject({ ok: false, refusal: { code: 'obligation-there', values: { id: 'duty', valid: '2026-05-15' }, path: ['kind'] } });
  household.must('obligation.add', { ...another, name: 'gas system' });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  household.must('obligation.add', { ...another, car: 'wren' });
});

describe('renewing a duty', () => {
  // Source: with keep-the-date the published rule (seen); without it our own reading.
  test.each([
    { case: 'in the last month, its date kept', keepsDate: true, on: '2026-04-16', last: '2027-05-15' },
    { case: 'earlier, its date not kept', keepsDate: true, on: '2026-04-14', last: '2027-04-13' },
    { case: 'late', keepsDate: true, on: '2026-06-30', last: '2027-06-29' },
    { case: 'in time, where the term follows the last one', keepsDate: false, on: '2026-05-01', last: '2027-05-15' },
    { case: 'late, where the term follows the last one', keepsDate: false, on: '2026-06-30', last: '2027-06-29' },
    { case: 'before the term in force began, a test entered late', keepsDate: true, on: '2025-04-20', last: '2026-05-15' },
    { case: 'before the term in force began, a payment entered late', keepsDate: false, on: '2025-04-20', last: '2026-05-15' },
    { case: 'years before', keepsDate: false, on: '2023-04-20', last: '2026-05-15' },
  ])('$case: $last', ({ keepsDate, on, last }) => {
    const household = withDuty({ keepsDate });
    expect(validAfter(household, on)).toBe(last);
    expect(household.facts().get(obligations, 'duty')?.lastValidDay).toBe(last);
    expect(household.facts().all(renewals)).toMatchObject([{ obligation: 'duty', on, lastValidDay: last }]);
  });

  test('what is printed goes before what is worked out', () => {
    expect(withDuty().must('obligation.renew', { obligation: 'duty', on: day('2026-05-01'), lastValidDay: day('2027-04-30') }).obligation.lastValidDay).toBe('2027-04-30');
  });

  test.each([
    { case: 'an unknown duty', request: { obligation: 'none' }, code: 'unknown-obligation' },
    { case: 'tomorrow', request: { obligation: 'duty', on: '2026-07-01' }, code: 'date-in-future' },
    { case: 'valid until before it was renewed', request: { obligation: 'duty', on: '2026-06-01', lastValidDay: '2026-05-31' }, code: 'valid-before-renewal' },
    { case: 'a payment with parts of a penny', request: { obligation: 'duty', paidMinor: 1.5 }, code: 'not-an-amount' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withDuty();
    const before = household.entries.length;
    expect(household.call('obligation.renew', request as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('twice on one day is refused, naming the first', () => {
    const household = withDuty();
    household.must('obligation.renew', { obligation: 'duty', on: day('2026-05-01') });
    const before = household.entries.length;
    expect(household.call('obligation.renew', { obligation: 'duty', on: day('2026-05-01'), lastValidDay: day('2028-05-15') })).toMatchObject({ ok: false, refusal: { code: 'renewed-that-day', values: { date: '2026-05-01', valid: '2027-05-15' }, path: ['on'] } });
    expect(household.entries).toHaveLength(before);
    household.must('obligation.add', { id: 'tax', car: 'pip', kind: 'road-tax', lastValidDay: day('2026-05-31') });
    expect([household.call('obligation.renew', { obligation: 'tax', on: day('2026-05-01') }).ok, household.call('obligation.renew', { obligation: 'duty', on: day('2026-05-02') }).ok]).toEqual([true, true]);
  });

  test('one without a term needs its new day', () => {
    const household = withDuty({ kind: 'warranty-end', months: null });
    expect(household.call('obligation.renew', { obligation: 'duty' })).toMatchObject({ ok: false, refusal: { code: 'not-renewed' } });
    expect(household.must('obligation.renew', { obligation: 'duty', lastValidDay: day('2028-01-01') }).obligation.lastValidDay).toBe('2028-01-01');
  });
});

test('a duty at either end of the calendar can still be shown', () => {
  const household = withDuty({ lastValidDay: day('1900-01-01'), keepsDate: true, noticeDays: 365 });
  household.must('obligation.add', { car: 'pip', kind: 'insurance', lastValidDay: day('2199-12-31'), months: 120 });
  expect(household.must('due.show', {}).cars[0]?.obligations).toMatchObject([{ on: '1900-01-01', from: '1900-01-01', late: true }, { on: '2199-12-31', late: false }]);
});
