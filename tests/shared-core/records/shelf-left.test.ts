import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lotSet } from '../../../shared-core/parts/lot.ts';
import { shelfTakings } from '../../../shared-core/parts/shelf-taking.ts';
import { stockTaken } from '../../../shared-core/parts/stocktake.ts';
import { wastes } from '../../../shared-core/parts/waste.ts';
import { pickLots } from '../../../shared-core/records/pick-lots.ts';
import { goodStock, leftOfLots, standingLots } from '../../../shared-core/records/shelf-left.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { day } from '../calendar/day.ts';
import { enterAsBefore } from '../contract/enter-as-before.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

function withCan(more: { readonly expires?: string; readonly keepsOpenedDays?: number } = {}): MemoryHousehold {
  const household = partsHousehold();
  household.must('lot.set', { id: 'can', part: 'can', quantity: 5, receivedOn: day('2026-01-10'), expires: more.expires === undefined ? null : day(more.expires), keepsOpenedDays: more.keepsOpenedDays ?? null });
  return household;
}
const left = (household: MemoryHousehold) => leftOfLots(household.facts()).get('can');
const standing = (household: MemoryHousehold) => must(standingLots(household.facts()).find((one) => one.lot.id === 'can'), 'lot');
const record = (household: MemoryHousehold, quantity: number, date: string) => household.must('record.add', { car: 'pip', date: day(date), lines: [{ name: 'Oil' }], lotsUsed: [{ lot: 'can', quantity }] });

describe('what is left of a lot', () => {
  test('is what came, less records and takings, as last counted', () => {
    const household = withCan();
    record(household, 4, '2026-06-01');
    household.must('lot.use', { lot: 'can', quantity: 0.25, car: 'pip', note: 'topped up' });
    expect(left(household)).toBe(0.75);
    const { stocktake } = household.must('stock.take', { lines: [{ lot: 'can', counted: 0.6, note: 'spilt' }] });
    expect([stocktake.lines, left(household)]).toEqual([[{ lot: 'can', counted: 0.6, difference: -0.15, note: 'spilt', sameDay: { used: 0.25, counts: 0 } }], 0.6]);
    household.must('lot.use', { lot: 'can', quantity: 0.1, why: 'lost' });
    expect(left(household)).toBe(0.5);
    household.must('stock.take', { lines: [{ lot: 'can', counted: 0 }] });
    expect(left(household)).toBe(0);
  });

  test.each([
    { case: 'more than is left', ask: { quantity: 1.001 }, code: 'lot-used-up' },
    { case: 'before it came', ask: { quantity: 1, on: '2026-01-09' }, code: 'before-received' },
    { case: 'tomorrow', ask: { quantity: 1, on: '2026-11-26' }, code: 'date-in-future' },
    { case: 'for a car that is none', ask: { quantity: 1, car: 'none' }, code: 'unknown-car' },
  ])('$case is not taken: $code', ({ ask, code }) => {
    const household = withCan();
    record(household, 4, '2026-06-01');
    expect(household.call('lot.use', { lot: 'can', ...ask } as never)).toMatchObject({ refusal: { code } });
  });

  test('binds records too, what was taken by hand and counted included', () => {
    const household = withCan();
    household.must('lot.use', { lot: 'can', quantity: 2 });
    const use = (quantity: number) => household.call('record.add', { car: 'pip', lines: [{ name: 'Oil' }], lotsUsed: [{ lot: 'can', quantity }] });
    expect(use(3.001)).toMatchObject({ refusal: { code: 'lot-used-up' } });
    household.must('stock.take', { lines: [{ lot: 'can', counted: 4 }] });
    expect(use(4).ok).toBe(true);
  });

  test('as of the day of counting: what was used before is in it, what was used after is taken from it', () => {
    const household = withCan();
    record(household, 1, '2026-03-01');
    record(household, 1, '2026-09-01');
    const { stocktake } = household.must('stock.take', { on: day('2026-06-01'), lines: [{ lot: 'can', counted: 3.5 }] });
    // By hand: 4 by the books on 1 June, so half a litre had gone; a litre was used in September.
    expect([stocktake.lines[0]?.difference, left(household)]).toEqual([-0.5, 2.5]);
    record(household, 0.5, '2026-04-01');
    expect(left(household)).toBe(2.5);
    household.must('lot.use', { lot: 'can', quantity: 0.5, on: day('2026-07-01') });
    expect(left(household)).toBe(2);
    expect(household.call('lot.use', { lot: 'can', quantity: 3.6, on: day('2026-04-02') })).toMatchObject({ refusal: { code: 'lot-used-up' } });
    expect(household.call('stock.take', { on: day('2026-01-09'), lines: [{ lot: 'can', counted: 1 }] })).toMatchObject({ refusal: { code: 'before-received' } });
  });

  test('a count stands whatever the books were short of; of two on one day the second', () => {
    const household = withCan();
    record(household, 4, '2026-03-01');
    enterAsBefore(household, lotSet, { ...standing(household).lot, quantity: 1 });
    household.must('stock.take', { lines: [{ lot: 'can', counted: 0.7 }] });
    expect(left(household)).toBe(0.7);
    household.must('stock.take', { lines: [{ lot: 'can', counted: 0.9 }] });
    expect(left(household)).toBe(0.9);
  });

  test('a count of before it was written down what its day holds goes by its difference', () => {
    const household = withCan();
    enterAsBefore(household, stockTaken, { id: 'old', on: day('2026-06-01'), where: null, note: '', lines: [{ lot: 'can', counted: 4, difference: -1, note: '', sameDay: null }] });
    record(household, 1, '2026-09-01');
    expect(left(household)).toBe(3);
  });

  test('after any life is what was last counted, less what was taken since, and never below nothing', () => {
    const step = fc.record({ kind: fc.constantFrom('use', 'record', 'count'), amount: fc.integer({ min: 0, max: 5000 }).map((n) => n / 1000) });
    fc.assert(fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
      const household = withCan();
      let expected = 5000;
      for (const { kind, amount } of steps) {
        const thousandths = Math.round(amount * 1000);
        if (kind === 'count') household.must('stock.take', { lines: [{ lot: 'can', counted: amount }] });
        const taken = kind === 'use' ? household.call('lot.use', { lot: 'can', quantity: amount }) : kind === 'record' ? household.call('record.add', { car: 'pip', lines: [{ name: 'Oil' }], lotsUsed: [{ lot: 'can', quantity: amount }] }) : null;
        if (taken !== null) expect(taken.ok).toBe(thousandths > 0 && thousandths <= expected);
        expected = kind === 'count' ? thousandths : taken?.ok === true ? expected - thousandths : expected;
        expect(left(household)).toBe(expected / 1000);
      }
    }), { numRuns: 40 });
  });
});

describe('until when a lot is good', () => {
  test.each([
    { case: 'whole, and nothing printed on it', expires: undefined, keeps: 365, used: null, good: null },
    { case: 'whole: as printed', expires: '2028-01-01', keeps: 365, used: null, good: '2028-01-01' },
    { case: 'opened by its first use', expires: '2028-01-01', keeps: 365, used: '2026-06-01', good: '2027-06-01' },
    { case: 'opened, and printed on it is sooner', expires: '2026-12-01', keeps: 365, used: '2026-06-01', good: '2026-12-01' },
    { case: 'opened, and it keeps', expires: undefined, keeps: undefined, used: '2026-06-01', good: null },
  ])('$case: $good', ({ expires, keeps, used, good }) => {
    const household = withCan({ ...(expires === undefined ? {} : { expires }), ...(keeps === undefined ? {} : { keepsOpenedDays: keeps }) });
    if (used !== null) record(household, 4, used);
    expect([standing(household).openedOn, standing(household).goodUntil]).toEqual([used, good]);
  });

  test('a day entered as the day of opening goes before the first use', () => {
    const household = withCan({ keepsOpenedDays: 10 });
    record(household, 1, '2026-06-01');
    household.must('lot.open', { lot: 'can', on: day('2026-05-01') });
    expect(standing(household)).toMatchObject({ openedOn: '2026-05-01', goodUntil: '2026-05-11' });
    household.must('lot.move', { lot: 'can', where: 'garden shed' });
    expect(standing(household).lot).toMatchObject({ where: 'garden shed', openedOn: '2026-05-01' });
    expect(household.call('lot.open', { lot: 'can', on: day('2026-01-09') })).toMatchObject({ refusal: { code: 'before-received' } });
  });

  test('a part says how long it keeps for lots that do not', () => {
    const household = withCan();
    household.must('part.set', { id: 'can', name: 'Fern oil', meets: ['oil'], keepsOpenedDays: 30 });
    record(household, 1, '2026-11-01');
    expect(standing(household).goodUntil).toBe('2026-12-01');
  });
});

describe('what to take first', () => {
  const lot = (household: MemoryHousehold, id: string, quantity: number, expires: string | null, part = 'can') => household.must('lot.set', { id, part, quantity, receivedOn: day('2026-02-01'), expires: expires === null ? null : day(expires) });

  test('is what expires first; what has expired is left', () => {
    const household = withCan();
    lot(household, 'later', 2, '2028-01-01');
    lot(household, 'sooner', 1, '2027-01-01');
    lot(household, 'gone', 9, '2026-11-24');
    const { facts } = household;
    expect(goodStock(standingLots(facts()), day('2026-11-25')).map((one) => one.lot.id)).toEqual(['sooner', 'later', 'can']);
    expect(pickLots(facts(), standingLots(facts()), { specification: 'oil', quantity: 4 }, day('2026-11-25'))).toEqual({ taken: [{ lot: 'sooner', part: 'can', quantity: 1 }, { lot: 'later', part: 'can', quantity: 2 }, { lot: 'can', part: 'can', quantity: 1 }], lacking: 0 });
    expect(pickLots(facts(), standingLots(facts()), { specification: 'oil', quantity: 9.5 }, day('2026-11-25')).lacking).toBe(1.5);
  });

  test('is of one part alone, unless the specification may be mixed', () => {
    const household = withCan();
    household.must('part.set', { id: 'moss', name: 'Moss oil', meets: ['oil'] });
    lot(household, 'moss-1', 2, '2027-01-01', 'moss');
    const pick = (quantity: number) => pickLots(household.facts(), standingLots(household.facts()), { specification: 'oil', quantity }, day('2026-11-25'));
    expect(pick(2).taken.map((one) => one.lot)).toEqual(['moss-1']);
    expect(pick(4).taken.map((one) => one.lot)).toEqual(['can']);
    expect(pick(6)).toMatchObject({ taken: [{ lot: 'can', quantity: 5 }], lacking: 1 });
    household.must('specification.set', { id: 'oil', name: 'engine oil', unit: 'litre', mix: true });
    expect(pick(6)).toMatchObject({ taken: [{ lot: 'moss-1', quantity: 2 }, { lot: 'can', quantity: 4 }], lacking: 0 });
  });
});

describe('waste', () => {
  test('what is discarded leaves the shelf and is kept at its place until it is disposed of', () => {
    const household = withCan();
    record(household, 4, '2026-06-01');
    const { waste } = household.must('lot.discard', { lot: 'can', where: 'drum by the gate' });
    expect(waste).toMatchObject({ what: 'Fern oil', quantity: 1, unit: 'litre', where: 'drum by the gate', disposed: null, lot: 'can' });
    expect([left(household), household.facts().all(shelfTakings)[0]?.why]).toEqual([0, 'waste']);
    expect(household.call('lot.discard', { lot: 'can' })).toMatchObject({ refusal: { code: 'lot-used-up' } });
    household.must('waste.dispose', { waste: waste.id, how: 'taken to the collecting point' });
    expect(household.facts().get(wastes, waste.id)?.disposed).toMatchObject({ on: '2026-11-25', how: 'taken to the collecting point' });
    expect(household.call('waste.dispose', { waste: waste.id, how: 'again' })).toMatchObject({ refusal: { code: 'waste-gone' } });
  });

  test('of other origin is kept too, and is not disposed of before it was there', () => {
    const household = partsHousehold();
    const { waste } = household.must('waste.keep', { what: 'old engine oil', quantity: 4.1, unit: 'litre', where: 'drum', since: day('2026-11-20') });
    expect(household.call('waste.dispose', { waste: waste.id, how: 'x', on: day('2026-11-19') })).toMatchObject({ refusal: { code: 'disposed-before-kept' } });
    expect(household.call('waste.dispose', { waste: 'none', how: 'x' })).toMatchObject({ refusal: { code: 'unknown-waste' } });
  });
});

describe('a stocktake', () => {
  test('counts each lot once, and only lots that are there', () => {
    expect(withCan().call('stock.take', { lines: [{ lot: 'can', counted: 1 }, { lot: 'can', counted: 2 }] })).toMatchObject({ refusal: { code: 'counted-twice' } });
    expect(withCan().call('stock.take', { lines: [{ lot: 'none', counted: 1 }] })).toMatchObject({ refusal: { code: 'unknown-lot' } });
  });
});
