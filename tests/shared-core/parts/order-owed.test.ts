import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from './parts-household.ts';

const shown = (household: MemoryHousehold) => household.must('parts.show', {}).orders[0];
const notes = (household: MemoryHousehold) => household.must('parts.show', {}).notes.map((one) => one.text);
function placed(lines: RequestOf<'order.place'>['lines'], more: Partial<RequestOf<'order.place'>> = {}): MemoryHousehold {
  const household = partsHousehold();
  household.must('order.place', { id: 'o', supplier: 'north', lines, ...more });
  return household;
}

describe('an order of which something never comes', () => {
  test('falls on the cars as it came, and names what comes back', () => {
    const forPip = [{ car: 'pip', item: null, specification: 'filter-pip', part: 'f1', quantity: 1 }];
    const household = placed([{ offer: 'n-f1', packs: 1, for: forPip }, { offer: 'n-b1', packs: 1 }]);
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }, { line: 'line-2', packs: 1, found: 'not-coming' }] });
    // By hand: 8.00 and all of the 5.00 delivery fall on Pip; 70.00 and the deposit of 10.00 come back.
    expect(shown(household)).toMatchObject({ goodsMinor: 800, paidMinor: 1300, depositsMinor: 0, owedBackMinor: 8000, shares: [{ car: 'pip', minor: 1300 }] });
    expect(notes(household)).toEqual(['80.00 GBP comes back from North Parts for what never came, if it was paid. Claim it; expect 0 if it was not.']);
    household.must('order.return', { id: 'c', order: 'o', lines: [{ line: 'line-2', packs: 1, what: 'claim' }] });
    expect(shown(household)).toMatchObject({ owedBackMinor: 0, refundOpenMinor: 8000 });
    household.must('order.refund', { return: 'c', minor: 8000 });
    expect(notes(household)).toEqual([]);
  });

  test('cancelled before anything came costs nothing, and delivery comes back as well', () => {
    const household = placed([{ offer: 'n-f1', packs: 2 }]);
    expect(shown(household)).toMatchObject({ paidMinor: 2100, owedBackMinor: 0 });
    household.must('order.cancel', { order: 'o' });
    expect(shown(household)).toMatchObject({ goodsMinor: 0, paidMinor: 0, owedBackMinor: 2100, shares: [] });
    expect(household.must('order.return', { order: 'o', lines: [{ line: 'line-1', packs: 2, what: 'claim' }] }).return.refundExpectedMinor).toBe(2100);
    expect(shown(household)?.owedBackMinor).toBe(0);
  });

  test('that was not paid is settled by expecting nothing', () => {
    const household = placed([{ offer: 'n-f1', packs: 2 }]);
    household.must('order.cancel', { order: 'o' });
    household.must('order.return', { order: 'o', lines: [{ line: 'line-1', packs: 2, what: 'claim' }], refundExpectedMinor: 0 });
    expect(notes(household)).toEqual([]);
  });

  test('what came and what comes back are together what was agreed', () => {
    // By hand: 3 * 8.00 less 10.00, with 5.00 delivery: 19.00.
    const household = placed([{ offer: 'n-f1', packs: 3 }], { deliveryMinor: 500, discountMinor: 1000 });
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }] });
    household.must('order.cancel', { order: 'o' });
    const order = shown(household);
    expect([(order?.paidMinor ?? 0) + (order?.owedBackMinor ?? 0), order?.paidMinor]).toEqual([1900, 967]);
    expect(order?.shares.reduce((sum, one) => sum + one.minor, 0)).toBe(967);
  });
});

describe('what came wrong is named until it is settled', () => {
  const wrong = (returnBy: string | null) => {
    const household = placed([{ offer: 'n-f1', packs: 2 }], { returnBy: returnBy === null ? null : day(returnBy) });
    household.must('order.receive', { order: 'o', lines: [{ line: 'line-1', packs: 1 }, { line: 'line-1', packs: 1, found: 'wrong' }] });
    return household.on('2026-11-30');
  };

  test.each([
    { returnBy: null, text: 'Something came wrong or damaged from North Parts. Send it back, or claim the money.' },
    { returnBy: '2026-12-10', text: 'What came wrong or damaged from North Parts can be sent back until 10 Dec 2026.' },
    { returnBy: '2026-11-29', text: 'What came wrong or damaged from North Parts was to go back by 29 Nov 2026. Ask whether they still take it, or claim the money.' },
  ])('with its last day $returnBy', ({ returnBy, text }) => {
    expect(notes(wrong(returnBy))).toEqual([text]);
  });

  test('and no more once it went back or was claimed', () => {
    for (const what of ['goods', 'claim'] as const) {
      const household = wrong(null);
      household.must('order.return', { id: 'r', order: 'o', lines: [{ line: 'line-1', packs: 1, what }] });
      household.must('order.refund', { return: 'r', minor: 800 });
      expect(notes(household)).toEqual([]);
    }
  });
});

describe('a line that contradicts itself is refused', () => {
  const forCar = (more: object) => ({ for: [{ car: 'pip', item: null, specification: null, part: 'can', quantity: 4, ...more }] });
  test.each([
    { case: 'a part that the offer is not of', line: { part: 'f1' }, code: 'offer-of-another-part' },
    { case: 'another pack than the offer has', line: { quantity: 4 }, code: 'offer-of-another-pack' },
    { case: 'more for cars than is bought', line: forCar({ quantity: 5.001 }), code: 'takers-beyond-bought' },
    { case: 'a part for a car that is not in it', line: forCar({ part: 'f1', quantity: 1 }), code: 'taker-of-another-part' },
    { case: "another car's item", line: forCar({ item: 'alder-oil' }), code: 'taker-of-another-car' },
  ])('$case: $code', ({ line, code }) => {
    const household = partsHousehold();
    household.must('item.add', { id: 'alder-oil', car: 'alder', name: 'oil', history: 'never-done', interval: { repeat: { months: 12, distance: null } } });
    expect(household.call('order.place', { supplier: 'north', lines: [{ offer: 'n-can', packs: 1, ...line }] })).toMatchObject({ refusal: { code } });
  });

  test('what agrees is taken: the same part and pack, a part of a kit, all of what is bought', () => {
    const household = partsHousehold();
    const lines = [{ offer: 'n-can', packs: 1, part: 'can', quantity: 5, ...forCar({ quantity: 5 }) }, { offer: 'n-kit', packs: 1, ...forCar({ part: 'w1', quantity: 2 }) }];
    expect(household.call('order.place', { supplier: 'north', lines })).toMatchObject({ ok: true });
  });
});
