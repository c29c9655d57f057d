import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

/** A lot of 10 litres of each of two brake fluids, two coolants and an oil; Pip's item asks for the glycol one. */
function withFluids(asks = 'glycol'): MemoryHousehold {
  const household = partsHousehold();
  for (const [id, use, base] of [['glycol', 'brake-fluid', 'glycol'], ['silicone', 'brake-fluid', 'silicone'], ['organic', 'coolant', 'organic-acid'], ['inorganic', 'coolant', 'inorganic-acid']] as const) {
    household.must('specification.set', { id, name: `${id} fluid`, unit: 'litre', fluid: { use, base } });
    household.must('part.set', { id, name: id, meets: [id] });
    household.must('lot.set', { id, part: id, quantity: 10, receivedOn: day('2024-01-01') });
  }
  household.must('lot.set', { id: 'oil', part: 'can', quantity: 10, receivedOn: day('2024-01-01'), expires: day('2026-06-01') });
  household.must('item.add', { id: 'brakes', car: 'pip', name: 'brake fluid', history: 'never-done', interval: { repeat: { months: 24, distance: null } }, needs: [{ specification: asks, quantity: 1 }] });
  return household;
}
const record = (household: MemoryHousehold, date: string, lots: readonly string[], more: Partial<RequestOf<'record.add'>> = {}) =>
  household.call('record.add', { car: 'pip', date: day(date), lines: [{ name: 'Topped up', work: 'check' }], lotsUsed: lots.map((lot) => ({ lot, quantity: 0.5 })), ...more });
const code = (reply: { readonly ok: boolean; readonly refusal?: { readonly code: string } }) => (reply.ok ? null : (reply.refusal?.code ?? null));
const brakesDone = { lines: [{ item: 'brakes' }] };

describe('what is used on a car', () => {
  test.each([
    { case: 'two brake fluids in one go', before: [], now: ['glycol', 'silicone'], more: {}, code: 'use-mixes', sure: 'use-mixes' },
    { case: 'silicone onto glycol', before: ['glycol'], now: ['silicone'], more: {}, code: 'use-mixes', sure: 'use-mixes' },
    { case: 'glycol onto glycol', before: ['glycol'], now: ['glycol'], more: {}, code: null, sure: null },
    { case: 'two coolants', before: ['organic'], now: ['inorganic'], more: {}, code: 'use-may-mix', sure: null },
    { case: 'a coolant after a brake fluid', before: ['glycol'], now: ['inorganic'], more: {}, code: null, sure: null },
  ])('$case: $code, and once sure $sure', ({ before, now, more, code: expected, sure }) => {
    for (const [said, answer] of [[false, expected], [true, sure]] as const) {
      const household = withFluids();
      for (const lot of before) expect(record(household, '2025-01-01', [lot]).ok).toBe(true);
      expect(code(record(household, '2026-01-01', now, { ...more, sure: said }))).toBe(answer);
    }
  });

  test('the whole changed over to what the item now asks for is asked about; it is not refused', () => {
    const household = withFluids('silicone');
    record(household, '2025-01-01', ['glycol']);
    expect(code(record(household, '2026-01-01', ['silicone'], brakesDone))).toBe('use-may-mix');
    expect(code(record(household, '2026-01-01', ['silicone'], { ...brakesDone, sure: true }))).toBeNull();
    expect(code(record(withFluids('glycol'), '2026-01-01', ['glycol', 'silicone'], { ...brakesDone, sure: true }))).toBe('use-mixes');
  });

  test('only the last one counts: what was changed over before is gone', () => {
    const household = withFluids('silicone');
    record(household, '2024-06-01', ['glycol']);
    record(household, '2025-01-01', ['silicone'], { ...brakesDone, sure: true });
    expect(code(record(household, '2026-01-01', ['silicone']))).toBeNull();
  });

  test('by hand it is the same, for a car and for using alone', () => {
    const household = withFluids();
    household.must('lot.use', { lot: 'glycol', quantity: 0.1, car: 'pip', on: day('2026-01-01') });
    expect(code(household.call('lot.use', { lot: 'silicone', quantity: 0.1, car: 'pip', sure: true }))).toBe('use-mixes');
    expect(code(household.call('lot.use', { lot: 'silicone', quantity: 0.1, car: 'alder' }))).toBeNull();
    expect(code(household.call('lot.use', { lot: 'silicone', quantity: 0.1, why: 'lost', car: 'pip' }))).toBeNull();
  });

  test('what is past its date is asked about', () => {
    const household = withFluids();
    expect(code(record(household, '2026-06-01', ['oil']))).toBeNull();
    expect(code(record(household, '2026-06-02', ['oil']))).toBe('lot-past-its-date');
    expect(code(record(household, '2026-06-02', ['oil'], { sure: true }))).toBeNull();
    expect(household.facts().all(workRecords).some((one) => 'sure' in one)).toBe(false);
  });
});
