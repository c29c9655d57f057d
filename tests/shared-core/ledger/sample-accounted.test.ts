import { beforeAll, describe, expect, test } from 'vitest';
import { obligations } from '../../../shared-core/care/obligation.ts';
import { renewals } from '../../../shared-core/care/renewal.ts';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { yearlyFuels } from '../../../shared-core/ledger/yearly-fuel.ts';
import { lots } from '../../../shared-core/parts/lot.ts';
import { orderReturns } from '../../../shared-core/parts/order-return.ts';
import { orders } from '../../../shared-core/parts/order.ts';
import { tools } from '../../../shared-core/parts/tool.ts';
import { workRecords, type WorkRecord } from '../../../shared-core/records/work-record.ts';
import { standingSample, type StandingSample } from '../sample/sample-household.ts';

const sum = (amounts: readonly number[]) => amounts.reduce((total, amount) => total + amount, 0);

let sample: StandingSample;
let facts: Facts;
let ledger: ReplyOf<'ledger.show'>;
let lines: ReplyOf<'ledger.lines'>;
beforeAll(async () => {
  sample = await standingSample('2026-11-25');
  facts = sample.household.facts;
  ledger = sample.ask('ledger.show', {});
  lines = sample.ask('ledger.lines', {});
});

/** What a record says was paid: the total as printed, else its lines without what came off the shelf. */
const paidByRecord = (record: WorkRecord) => record.printedTotalMinor ?? sum(record.costs.filter((line) => line.kind !== 'shelf').map((line) => line.amountMinor));

/** Everything ever paid, added up from the plain facts, without the ledger. */
function paidByFacts(): number {
  const ordered = facts.all(orders).map((order) => sum(order.lines.map((line) => line.packs * (line.priceMinor + line.depositMinor))) + order.deliveryMinor - order.discountMinor);
  const back = facts.all(orderReturns).flatMap((one) => one.refunds.map(({ minor }) => minor));
  return sum([
    ...facts.all(workRecords).map(paidByRecord), ...facts.all(renewals).map((one) => one.paidMinor ?? 0), ...facts.all(yearlyFuels).map((one) => one.paidMinor),
    ...ordered, -sum(back), ...facts.all(lots).filter((lot) => lot.order === null).map((lot) => lot.paidMinor ?? 0), ...facts.all(tools).map((tool) => tool.paidMinor ?? 0),
  ]);
}

describe("every minor unit of the sample's six years", () => {
  test('what was paid, added up from the plain facts, is what the ledger says was paid: by car, shelf and wishes, none left over', () => {
    const { paidMinor, carsMinor, shelfMinor, wishesMinor } = ledger.paid;
    expect(paidMinor).toBe(paidByFacts());
    expect(carsMinor + shelfMinor + wishesMinor).toBe(paidMinor);
    expect(paidMinor).toBeGreaterThan(2_000_000);
  });

  test("each side is made of what it names: cars of their years and fuel, the shelf of what lies there and what went for nothing, the lines of all that was used", () => {
    expect(sum(ledger.cars.map((car) => car.totalMinor + car.fuelMinor))).toBe(ledger.paid.carsMinor);
    for (const car of ledger.cars) {
      expect(sum(car.years.map((year) => year.totalMinor))).toBe(car.totalMinor);
      expect(sum(car.years.map((year) => year.fuelMinor))).toBe(car.fuelMinor);
      expect(sum(Object.values(car.byKind))).toBe(car.totalMinor);
      for (const year of car.years) expect(sum(Object.values(year.byKind))).toBe(year.totalMinor);
    }
    const aside = ledger.standing.filter((one) => one.kind === 'for-a-wish');
    expect(sum(ledger.standing.map((one) => one.minor)) + sum(ledger.gone.map((one) => one.minor)) - sum(aside.map((one) => one.minor))).toBe(ledger.paid.shelfMinor);
    expect(lines.totalMinor + sum(ledger.standing.map((one) => one.minor))).toBe(ledger.paid.paidMinor);
    expect(sum(lines.lines.map((line) => line.minor))).toBe(lines.totalMinor);
  });

  test('each car bears its own records and duties as they say, and of the lots it used the part that it used, within a minor unit a use', () => {
    for (const car of ledger.cars) {
      const records = facts.ofCar(workRecords, car.car);
      const uses = records.flatMap((record) => record.lotsUsed.map((use) => ({ use, lot: facts.get(lots, use.lot) })));
      const shelf = sum(uses.map(({ use, lot }) => ((lot?.paidMinor ?? 0) * use.quantity) / (lot?.quantity ?? 1)));
      const duties = facts.ofCar(renewals, car.car).map((one) => one.paidMinor ?? 0);
      const tooling = sum(car.years.map((year) => year.byKind.tools ?? 0)) - sum(records.flatMap((record) => record.costs.filter((line) => line.kind === 'tools').map((line) => line.amountMinor)));
      const own = sum(records.map(paidByRecord)) + sum(duties) + tooling;
      const wished = sum(lines.lines.filter((line) => line.wish !== null && records.some((record) => record.id === line.source.id)).map((line) => line.minor));
      expect(Math.abs(car.totalMinor + wished - own - shelf)).toBeLessThanOrEqual(uses.length);
    }
  });

  test('each year takes up what the one before left: stock before + paid - used = stock after, and the last is what stands now', () => {
    const [latest] = ledger.years;
    expect(latest?.stockAfterMinor).toBe(sum(ledger.standing.map((one) => one.minor)));
    for (const [at, year] of ledger.years.entries()) {
      expect(year.stockBeforeMinor + year.paidMinor - year.carsMinor - year.wishesMinor - year.goneMinor).toBe(year.stockAfterMinor);
      expect(year.stockBeforeMinor).toBe(ledger.years[at + 1]?.stockAfterMinor ?? 0);
    }
  });

  test('duties stand under their own kinds', () => {
    const tests = facts.all(renewals).filter((one) => facts.get(obligations, one.obligation)?.kind === 'roadworthiness-test').map((one) => one.paidMinor ?? 0);
    expect(sum(ledger.cars.map((car) => car.byKind['roadworthiness-test'] ?? 0))).toBe(sum(tests));
  });
});
