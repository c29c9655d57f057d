import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { composeInstance } from '../../../shared-core/parts/compose-instance.ts';
import { packPaidMinor, withTax } from '../../../shared-core/parts/offer-price.ts';
import { offers, standingOffers } from '../../../shared-core/parts/offer.ts';
import { DEFAULT_PARTS_SETTINGS, isStale, partsSettings } from '../../../shared-core/parts/parts-settings.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

describe('tax on top of a price', () => {
  test.each([
    { price: 1045, rate: 2000, paid: 1254, source: 'by hand: 1045 * 1.2' },
    { price: 99, rate: 1900, paid: 118, source: 'by hand: 117.81' },
    { price: 50, rate: 1900, paid: 60, source: 'by hand: 59.5, halves up' },
    { price: 1045, rate: 0, paid: 1045, source: 'by hand' },
    { price: 1045, rate: null, paid: 1045, source: 'it is in the price' },
    { price: 999_999_999_999, rate: 2000, paid: 1_199_999_999_999, source: 'by hand: 1199999999998.8' },
  ])('$price at $rate is $paid ($source)', ({ price, rate, paid }) => expect(withTax(price, rate)).toBe(paid));

  test('never takes off, and is never half a minor unit or more away from the exact sum', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 10_000_000 }), fc.integer({ min: 0, max: 10_000 }), (price, rate) => {
      const paid = withTax(price, rate);
      expect(paid).toBeGreaterThanOrEqual(price);
      expect(Math.abs(paid * 10_000 - price * (10_000 + rate))).toBeLessThanOrEqual(5000);
    }));
  });

  test('comes on the price of the break reached', () => {
    const offer = { priceMinor: 1000, taxAdded: 2000, breaks: [{ packs: 3, priceMinor: 900 }, { packs: 10, priceMinor: 800 }] };
    expect([1, 2, 3, 9, 10].map((packs) => packPaidMinor(offer, packs))).toEqual([1200, 1200, 1080, 1080, 960]);
  });
});

function withOffer() {
  const household = memoryHousehold();
  household.must('specification.set', { id: 'oil', name: 'oil', unit: 'litre' });
  household.must('part.set', { id: 'can', name: 'can', meets: ['oil'] });
  household.must('supplier.set', { id: 'north', name: 'North', leadDays: 2 });
  household.must('offer.set', { id: 'o1', supplier: 'north', part: 'can', quantity: 5, priceMinor: 3000, taxAdded: 2000, depositMinor: 500, breaks: [{ packs: 2, priceMinor: 2800 }], seenOn: day('2026-05-01') });
  return household;
}

describe('an offer', () => {
  test('goes into a proposal with tax, and without its deposit, which comes back', () => {
    const need = { id: 'n', car: 'c', spec: 'oil', quantity: 4, neededBy: day('2027-01-01'), mix: false, step: null, rank: 1 as const, laterMinor: null };
    const instance = composeInstance(withOffer().facts(), [need], [], day('2026-11-25'));
    expect(instance.offers).toMatchObject([{ id: 'o1', priceMinor: 3600, breaks: [{ packs: 2, priceMinor: 3360 }] }]);
  });

  test('withdrawn is not to be had, until it is seen again', () => {
    const household = withOffer();
    household.must('offer.withdraw', { id: 'o1' });
    expect([standingOffers(household.facts()), household.facts().get(offers, 'o1')?.withdrawnOn]).toEqual([[], '2026-11-25']);
    const { set } = household.must('offer.see', { id: 'o1', priceMinor: 3100 });
    expect(set).toMatchObject({ seenOn: '2026-11-25', withdrawnOn: null, priceMinor: 3100, taxAdded: 2000, depositMinor: 500 });
    expect(standingOffers(household.facts())).toHaveLength(1);
  });

  test.each([
    { case: 'a step dearer than one pack', offer: { breaks: [{ packs: 3, priceMinor: 1001 }] }, code: 'break-dearer' },
    { case: 'a step dearer than the one before', offer: { breaks: [{ packs: 5, priceMinor: 901 }, { packs: 3, priceMinor: 900 }] }, code: 'break-dearer' },
    { case: 'a step beyond what can be had', offer: { most: 4, breaks: [{ packs: 5, priceMinor: 900 }] }, code: 'break-beyond-most' },
    { case: 'a step at the most that can be had', offer: { most: 5, breaks: [{ packs: 5, priceMinor: 900 }] }, code: null },
    { case: 'a step at the same price', offer: { breaks: [{ packs: 5, priceMinor: 1000 }] }, code: null },
  ])('$case: $code', ({ offer, code }) => {
    const reply = withOffer().call('offer.set', { supplier: 'north', part: 'can', quantity: 5, priceMinor: 1000, seenOn: day('2026-11-01'), ...offer });
    expect(reply.ok ? null : reply.refusal.code).toBe(code);
  });

  test('seen cheaper, it loses the steps that are no cheaper now', () => {
    expect(withOffer().must('offer.see', { id: 'o1', priceMinor: 2800 }).set.breaks).toEqual([]);
    expect(withOffer().must('offer.see', { id: 'o1', priceMinor: 2900 }).set.breaks).toHaveLength(1);
  });

  test.each([
    { case: 'a price of all its packs that cannot be true', offer: { priceMinor: 20_000_001, breaks: [{ packs: 100_000, priceMinor: 20_000_000 }] }, code: 'offer-sum-too-large', source: 'by hand: 100 000 at 20 000 000 are 2 * 10^12, the most is 10^12' },
    { case: 'one pack with its tax that cannot', offer: { priceMinor: 900_000_000_000, taxAdded: 2000 }, code: 'offer-sum-too-large', source: 'by hand: 1.08 * 10^12' },
    { case: 'a pack of kits that holds too much', offer: { part: 'set', quantity: 1000 }, code: 'pack-holds-too-much', source: 'by hand: 1000 times 2000 are more than a million' },
    { case: 'the largest that can', offer: { priceMinor: 1_000_000_000_000 }, code: null, source: 'by hand: 10^12' },
  ])('$case: $code ($source)', ({ offer, code }) => {
    const household = withOffer();
    household.must('part.set', { id: 'set', name: 'set', contains: [{ part: 'can', quantity: 2000 }] });
    const reply = household.call('offer.set', { supplier: 'north', part: 'can', quantity: 5, priceMinor: 1, seenOn: day('2026-11-01'), ...offer });
    expect(reply.ok ? null : reply.refusal.code).toBe(code);
  });

  test.each([
    { case: 'seen tomorrow', call: () => withOffer().call('offer.see', { id: 'o1', on: day('2026-11-26') }), code: 'date-in-future' },
    { case: 'withdrawn tomorrow', call: () => withOffer().call('offer.withdraw', { id: 'o1', on: day('2026-11-26') }), code: 'date-in-future' },
    { case: 'not there', call: () => withOffer().call('offer.withdraw', { id: 'o2' }), code: 'unknown-offer' },
    { case: 'two prices from one number of packs on', call: () => withOffer().call('offer.see', { id: 'o1', breaks: [{ packs: 2, priceMinor: 1 }, { packs: 2, priceMinor: 2 }] }), code: 'break-twice' },
    { case: 'a rate of tax that is none', call: () => withOffer().call('offer.set', { supplier: 'north', part: 'can', quantity: 1, priceMinor: 1, taxAdded: 10_001, seenOn: day('2026-05-01') }), code: 'not-a-tax-rate' },
  ])('$case is refused: $code', ({ call, code }) => expect(call()).toMatchObject({ refusal: { code } }));

  test('is stale after the days that the household says, ours until it does', () => {
    const household = withOffer();
    const stale = (seenOn: string) => isStale({ seenOn: day(seenOn) }, day('2026-11-25'), partsSettings(household.facts()));
    expect(DEFAULT_PARTS_SETTINGS.staleAfterDays).toBe(180);
    // By hand: 29 May is 180 days before 25 November (2 + 30 + 31 + 31 + 30 + 31 + 25).
    expect([stale('2026-05-29'), stale('2026-05-28')]).toEqual([false, true]);
    household.must('parts-settings.set', { staleAfterDays: 30 });
    expect([stale('2026-10-26'), stale('2026-10-25')]).toEqual([false, true]);
    expect(household.call('parts-settings.set', { staleAfterDays: 0 })).toMatchObject({ refusal: { code: 'not-days-of-a-price' } });
  });
});
