import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { partsHousehold } from '../parts/parts-household.ts';

const RECEIVED = day('2026-01-10');
const set = (household: ReturnType<typeof partsHousehold>, lot: Partial<RequestOf<'lot.set'>> = {}) => household.call('lot.set', { id: 'l1', part: 'can', quantity: 5, receivedOn: RECEIVED, ...lot });

describe('a lot', () => {
  test.each([
    { case: 'received tomorrow', lot: { receivedOn: day('2026-11-26') }, code: 'date-in-future' },
    { case: 'received today', lot: { receivedOn: day('2026-11-25') }, code: null },
    { case: 'opened tomorrow', lot: { openedOn: day('2026-11-26') }, code: 'date-in-future' },
    { case: 'opened the day before it came', lot: { openedOn: day('2026-01-09') }, code: 'opened-before-received' },
    { case: 'opened on the day it came', lot: { openedOn: RECEIVED }, code: null },
    { case: 'of a kit', lot: { part: 'kit', quantity: 1 }, code: 'kit-is-no-lot' },
    { case: 'of half a filter', lot: { part: 'f1', quantity: 1.5 }, code: 'counted-whole' },
    { case: 'of half a litre', lot: { quantity: 0.5 }, code: null },
    { case: 'of a part that is none', lot: { part: 'none' }, code: 'unknown-part' },
  ])('$case: $code', ({ lot, code }) => {
    const reply = set(partsHousehold(), lot);
    expect(reply.ok ? null : reply.refusal.code).toBe(code);
  });

  test('that had expired when it came is kept, and its note stands', () => {
    const household = partsHousehold();
    expect(set(household, { expires: day('2026-01-09') }).ok).toBe(true);
    expect(household.must('parts.show', {}).notes.map((note) => note.code)).toContain('parts-note-expired');
  });

  test.each([
    { case: 'less than was used', lot: { quantity: 1.999 }, code: 'less-than-used' },
    { case: 'what was used', lot: { quantity: 2 }, code: null },
    { case: 'another part', lot: { part: 'f1' }, code: 'lot-of-its-part' },
    { case: 'received after it was used', lot: { receivedOn: day('2026-06-02') }, code: 'used-before-received' },
    { case: 'received on the day of its use', lot: { receivedOn: day('2026-06-01') }, code: null },
  ])('of which 2 litres were used on 1 June, stated anew as $case: $code', ({ lot, code }) => {
    const household = partsHousehold();
    set(household);
    household.must('lot.use', { lot: 'l1', quantity: 2, on: day('2026-06-01') });
    const reply = set(household, lot);
    expect(reply.ok ? null : reply.refusal.code).toBe(code);
  });

  test('that nobody used may become of another part', () => {
    const household = partsHousehold();
    set(household);
    expect(set(household, { part: 'f1' }).ok).toBe(true);
  });
});
