import { describe, expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from './open-test-host.ts';

/** A car whose oil is due every year in December, four litres of it; one shop has it in cans of 5 and of 3 litres. */
async function enter(host: TestHost, keepsOpenedDays: number | null): Promise<void> {
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2025-12-20'), keptSince: day('2025-12-20') });
  await host.must('specification.set', { id: 'oil', name: 'engine oil', unit: 'litre' });
  await host.must('part.set', { id: 'can', name: 'Fern oil', meets: ['oil'], keepsOpenedDays });
  await host.must('supplier.set', { id: 'north', name: 'North Parts', deliveryMinor: 0, leadDays: 3 });
  await host.must('offer.set', { id: 'large', supplier: 'north', part: 'can', quantity: 5, priceMinor: 3000, seenOn: day('2026-11-01') });
  await host.must('offer.set', { id: 'small', supplier: 'north', part: 'can', quantity: 3, priceMinor: 2400, seenOn: day('2026-11-01') });
  await host.must('item.add', { id: 'pip-oil', car: 'pip', name: 'oil', history: 'never-done', interval: { repeat: { months: 12, distance: null } }, needs: [{ specification: 'oil', quantity: 4 }] });
}

describe('a 5 litre can against 4 litres needed, by the host', () => {
  test.each([
    { case: 'still good next year, it is used and 3 litres are bought', keepsOpenedDays: 730, shelf: [1], lines: [{ offer: 'small', packs: 1 }], totalMinor: 2400 },
    { case: 'no longer good, it is not', keepsOpenedDays: 180, shelf: [], lines: [{ offer: 'large', packs: 1 }], totalMinor: 3000 },
  ])('leaves 1 litre with the day on which it was opened; $case', async ({ keepsOpenedDays, shelf, lines, totalMinor }) => {
    const folder = `${temporaryFolder()}/household`;
    const at = async (on: string, does: (host: TestHost) => Promise<void>) => {
      const host = openTestHost({ folder, on });
      await does(host);
      await host.composed.close();
    };
    await at('2026-11-25', async (host) => {
      await enter(host, keepsOpenedDays);
      const first = await host.must('order.propose', {});
      expect([first.lines, first.left]).toEqual([[{ offer: 'large', packs: 1 }], [{ part: 'can', quantity: 1 }]]);
      await host.must('order.place', { ...must(first.orders[0], 'order').place, id: 'first' });
    });
    await at('2026-11-28', async (host) => {
      const { lots } = await host.must('order.receive', { order: 'first' });
      expect(lots).toMatchObject([{ part: 'can', quantity: 5, openedOn: null }]);
    });
    await at('2026-12-19', async (host) => {
      const [standing] = (await host.must('parts.show', {})).shelf;
      await host.must('record.add', { car: 'pip', lines: [{ item: 'pip-oil' }], lotsUsed: [{ lot: must(standing, 'lot').lot.id, quantity: 4 }] });
      expect((await host.must('parts.show', {})).shelf).toMatchObject([{ left: 1, openedOn: '2026-12-19' }]);
    });
    // By hand: due again on 19 December 2027. Opened on 19 December 2026, it is good for two years, or until 17 June 2027.
    await at('2027-11-25', async (host) => {
      const next = await host.must('order.propose', {});
      const [need] = next.needs;
      expect([need?.neededBy, need?.sources.filter(({ from }) => from === 'shelf').map(({ quantity }) => quantity)]).toEqual(['2027-12-19', shelf]);
      expect([next.status, next.lines, next.totalMinor]).toEqual(['optimal', lines, totalMinor]);
    });
  }, 120_000);
});
