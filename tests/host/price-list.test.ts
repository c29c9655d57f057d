import { expect, test } from 'vitest';
import { openTestHost } from './open-test-host.ts';

test('a price list is looked at, kept as one whole, and taken back; nothing is stored before', async () => {
  const host = openTestHost();
  await host.must('household.start', {});
  await host.must('specification.set', { id: 'oil', name: 'engine oil', unit: 'litre' });
  await host.must('part.set', { id: 'can', name: 'Fern oil', number: 'F-5', meets: ['oil'] });
  await host.must('supplier.set', { id: 'north', name: 'North Parts', leadDays: 3 });
  const text = 'number;pack;price\nF5;5 l;31,50\nZ1;1;2,00\n';
  const request = { text, supplier: 'north', name: 'list.csv' };
  const view = await host.must('prices.preview', request);
  expect([view.ready, view.counts['new-offer'], view.counts['no-part']]).toEqual([true, 1, 1]);
  expect((await host.must('parts.show', {})).offers).toEqual([]);

  // Something entered since the preview changes what it comes to.
  const offer = await host.must('offer.set', { supplier: 'north', part: 'can', quantity: 5, priceMinor: 3000, seenOn: view.rows[0]?.seenOn ?? '' } as never);
  expect(await host.call('prices.keep', { ...request, outcome: view.outcome })).toMatchObject({ ok: false, refusal: { code: 'import-outcome-changed' } });
  await host.must('entry.withdraw', { entries: [...offer.undo] });
  expect(await host.call('prices.keep', { ...request, digest: '0'.repeat(64) })).toMatchObject({ ok: false, refusal: { code: 'import-file-changed' } });
  expect(await host.call('prices.keep', { text })).toMatchObject({ ok: false, refusal: { code: 'prices-questions-open' } });

  const kept = await host.must('prices.keep', { ...request, digest: view.digest, outcome: view.outcome });
  expect((await host.must('parts.show', {})).offers.map((one) => [one.offer.quantity, one.offer.priceMinor])).toEqual([[5, 3150]]);
  expect(await host.call('prices.keep', request)).toMatchObject({ ok: false, refusal: { code: 'prices-nothing-new' } });
  await host.must('entry.withdraw', { entries: [...kept.undo] });
  expect((await host.must('parts.show', {})).offers).toEqual([]);
  expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
});
