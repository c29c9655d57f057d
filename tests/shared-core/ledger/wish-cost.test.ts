import { describe, expect, test } from 'vitest';
import { boughtAlone } from '../../../shared-core/ledger/bought-alone.ts';
import { wishCost } from '../../../shared-core/ledger/wish-cost.ts';
import { priceBook } from '../../../shared-core/views/price-book.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { standing, wishFor, wishHousehold } from './wish-household.ts';

const costOf = (household: MemoryHousehold, id: string) => wishCost(household.facts(), standing(household, id), { unitMinor: priceBook(household.facts(), day('2026-11-25')).unitMinor, ownHourMinor: 1200 });

describe('bought alone', () => {
  // By hand. North delivers for 5.00, free from 100.00; south for nothing, but sends no less than 20.00.
  test.each([
    { case: 'nothing costs nothing', wanted: [] as [string, number][], minor: 0 },
    { case: 'one thing, with its delivery: 80.00 + 5.00', wanted: [['radio', 1]], minor: 8500 },
    { case: 'the dearer pack without delivery loses: south 118.00, north 120.00', wanted: [['springs', 1]], minor: 11_800 },
    // South's springs and north's radio: 118.00 + 85.00 = 203.00; all of north: 200.00, delivered free.
    { case: 'all of one supplier, where that saves delivery', wanted: [['springs', 1], ['radio', 1]], minor: 20_000 },
    // 4 litres are one can: north 35.00 + 5.00, south 30.00.
    { case: 'whole packs', wanted: [['oil', 4]], minor: 3000 },
    { case: 'two packs: 6 litres of south', wanted: [['oil', 6]], minor: 6000 },
    { case: 'nobody offers it', wanted: [['clips', 1]], minor: null },
    { case: 'nor all together, where one of them is offered by nobody', wanted: [['radio', 1], ['clips', 1]], minor: null },
  ])('$case', ({ wanted, minor }) => {
    expect(boughtAlone(wishHousehold().facts(), (wanted as [string, number][]).map(([specification, quantity]) => ({ specification, quantity })))).toBe(minor);
  });

  test('not below the sum that a supplier asks for', () => {
    const household = wishHousehold();
    household.must('supplier.set', { id: 'south', name: 'South Stores', deliveryMinor: 0, minimumMinor: 11_900, leadDays: 10 });
    expect(boughtAlone(household.facts(), [{ specification: 'springs', quantity: 1 }])).toBe(12_000);
  });
});

describe('what a wish still costs', () => {
  test('parts, things of its own and the garage; nothing of one’s own time', () => {
    const household = wishHousehold();
    wishFor(household, 'w', ['radio'], { others: [{ text: 'a wiring loom', priceMinor: 1550 }], place: 'garage', garagePrice: 6000, minutes: 90 });
    // At the least the radio without delivery: 80.00 + 15.50 + 60.00.
    expect(costOf(household, 'w')).toEqual({ partsLowMinor: 9550, partsMinor: 10_050, workMinor: 6000, lowMinor: 15_550, likelyMinor: 16_050, ownMinutes: null, ownTimeMinor: null, unpriced: [] });
  });

  test('at home the minutes stand beside it, and in no sum', () => {
    const household = wishHousehold();
    wishFor(household, 'w', ['radio'], { minutes: 90 });
    // 90 minutes at 12.00 an hour.
    expect(costOf(household, 'w')).toMatchObject({ likelyMinor: 8500, workMinor: 0, ownMinutes: 90, ownTimeMinor: 1800 });
  });

  test('what nobody prices is named, and the rest still counts', () => {
    const household = wishHousehold();
    wishFor(household, 'w', ['radio', 'clips'], { others: [{ text: 'a bracket', priceMinor: null }], place: 'garage' });
    expect(costOf(household, 'w')).toMatchObject({ likelyMinor: 8500, unpriced: [{ kind: 'part', name: 'clips' }, { kind: 'part', name: 'a bracket' }, { kind: 'work' }] });
  });

  test('what is put aside is not bought again', () => {
    const household = wishHousehold();
    wishFor(household, 'w', ['radio', 'springs']);
    household.must('lot.set', { id: 'lot', part: 'sp', quantity: 1, receivedOn: day('2026-11-20'), paidMinor: 11_000 });
    expect(costOf(household, 'w').partsMinor).toBe(20_000);
    household.must('wish.put-aside', { wish: 'w', lots: ['lot'] });
    expect(costOf(household, 'w').partsMinor).toBe(8500);
  });

  test('of what is put aside in part, only the rest is bought', () => {
    const household = wishHousehold();
    household.must('wish.set', { id: 'w', car: 'pip', name: 'w', needs: [{ specification: 'oil', quantity: 6 }] });
    household.must('lot.set', { id: 'lot', part: 'can', quantity: 5, receivedOn: day('2026-11-20'), paidMinor: 3000 });
    // 6 litres are two cans of 30.00; with 5 put aside the last litre is one.
    expect(costOf(household, 'w').partsMinor).toBe(6000);
    household.must('wish.put-aside', { wish: 'w', lots: ['lot'] });
    expect(costOf(household, 'w').partsMinor).toBe(3000);
  });

  test('what nobody sells now is priced by what a lot of it cost', () => {
    const household = wishHousehold();
    household.must('part.set', { id: 'cl', name: 'Clips', meets: ['clips'] });
    household.must('lot.set', { id: 'lot', part: 'cl', quantity: 4, receivedOn: day('2026-11-20'), paidMinor: 400 });
    wishFor(household, 'w', ['clips']);
    expect(costOf(household, 'w')).toMatchObject({ partsLowMinor: 100, partsMinor: 100, unpriced: [] });
  });
});
