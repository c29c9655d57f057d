import { expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { day, type TestHost } from '../host/open-test-host.ts';
import { handedOver, keeper, nextKeeper, readPack } from './keepers.ts';

/** A car in a household that counts in a currency: a service of 42.00 at a garage, and what it asks for the next. */
async function firstKeeper(currency: string): Promise<TestHost> {
  const host = await keeper('2026-03-02', currency);
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'oil', interval: { repeat: { months: 12, distance: null } }, history: 'never-done', place: 'garage', garagePrice: 5000 });
  await host.must('record.add', { car: 'pip', date: day('2026-03-01'), place: 'garage', placeName: 'The garage', title: 'First', lines: [{ name: 'oil', item: 'oil' }], costs: [{ kind: 'labour', text: 'work', amountMinor: 4200 }] });
  return host;
}

test('a pack names its currency, and a record taken in tells the one it is in', async () => {
  const path = await handedOver(await firstKeeper('EUR'));
  expect(readPack(path).history.currency).toBe('EUR');
  const { host, car, notes } = await nextKeeper(path, '2026-06-01', 'GBP');
  expect(notes.join('\n')).toMatch(/amounts are in EUR.*none of your sums/);
  expect(notes.join('\n')).toMatch(/Prices asked for 1 items/);
  const view = await host.must('car.show', { car });
  expect(view.records.map(({ record, totalMinor, earlier }) => [record.costs[0]?.amountMinor, totalMinor, earlier?.currency])).toEqual([[4200, 4200, 'EUR']]);
  expect(view.items[0]?.item.garagePrice).toBeNull();
  expect((await host.must('record.show', { record: must(view.records[0], 'record').record.id })).earlier).toEqual({ currency: 'EUR', withheld: [] });
});

test('what an earlier keeper paid is no cost of the next one, in whatever currency; the next one’s own is', async () => {
  for (const currency of ['EUR', 'GBP']) {
    const { host, car } = await nextKeeper(await handedOver(await firstKeeper(currency)), '2026-06-01', 'GBP');
    expect((await host.must('car.show', { car })).costs).toEqual([]);
    await host.must('record.add', { car, date: day('2026-06-01'), place: 'home', title: 'Own', lines: [{ name: 'wash' }], costs: [{ kind: 'other', text: 'soap', amountMinor: 700 }] });
    expect((await host.must('car.show', { car })).costs).toEqual([{ year: 2026, totalMinor: 700, byKind: { other: 700 } }]);
  }
});

test('a price asked is taken in the same currency alone', async () => {
  const asked = async (currency: string) => {
    const { host, car } = await nextKeeper(await handedOver(await firstKeeper(currency)), '2026-06-01', 'GBP');
    return must((await host.must('car.show', { car })).items[0], 'item').item.garagePrice;
  };
  expect([await asked('GBP'), await asked('EUR')]).toEqual([5000, null]);
});

test('handed on by a second keeper, each amount stands in its own currency, in the document and in the table', async () => {
  const { host, car } = await nextKeeper(await handedOver(await firstKeeper('JPY')), '2026-06-01', 'GBP');
  await host.must('record.add', { car, date: day('2026-06-01'), place: 'home', title: 'Second', lines: [{ name: 'wash' }], costs: [{ kind: 'other', text: 'soap', amountMinor: 4200 }] });
  const second = await handedOver(host);
  const { costs, said } = readPack(second);
  expect(costs).toMatch(/"First","labour","work","?4200"?,"JPY"/);
  expect(costs).toMatch(/"Second","other","soap","?42.00"?,"GBP"/);
  expect(said).toContain('Cost in JPY');
  const third = await nextKeeper(second, '2026-09-01', 'EUR');
  const shown = (await third.host.must('car.show', { car: third.car })).records.map(({ record, earlier }) => [record.title, earlier?.currency]);
  expect(shown).toEqual([['Second', 'GBP'], ['First', 'JPY']]);
});
