import { beforeAll, describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { lots } from '../../../shared-core/parts/lot.ts';
import { offers } from '../../../shared-core/parts/offer.ts';
import { parts } from '../../../shared-core/parts/part.ts';
import { specifications } from '../../../shared-core/parts/specification.ts';
import { suppliers } from '../../../shared-core/parts/supplier.ts';
import { serviceItems } from '../../../shared-core/care/service-item.ts';
import { goneOfLots } from '../../../shared-core/records/shelf-left.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { must } from '../../../shared-core/result/assert.ts';
import type { PaperStep } from '../../../shared-core/sample/sample-step.ts';
import { proposeOrder } from '../../../shared-core/views/order-view.ts';
import { orderRequestSchema } from '../../../shared-core/views/order-view-schema.ts';
import { standingSample, type StandingSample } from './sample-household.ts';

const CARS = ['pip', 'alder', 'wren', 'ember', 'heron'];

let sample: StandingSample;
let cars: ReplyOf<'car.show'>[];
beforeAll(async () => {
  sample = await standingSample('2026-11-25');
  cars = CARS.map((car) => sample.ask('car.show', { car }));
});

const sum = (amounts: readonly number[]) => amounts.reduce((total, amount) => total + amount, 0);

describe('money', () => {
  test('every printed total is the sum of its lines, but for the two that are kept as printed, a penny off', () => {
    const off = cars.flatMap((car) => car.records).flatMap(({ record }) => {
      const difference = record.printedTotalMinor === null ? 0 : record.printedTotalMinor - sum(record.costs.map((line) => line.amountMinor));
      return difference === 0 ? [] : [{ id: record.id, difference }];
    });
    expect(off).toEqual([{ id: 'pip-service-2', difference: 1 }, { id: 'alder-brakes-2', difference: 1 }]);
  });

  test("each car's years are those of the ledger without fuel, and each year adds up to its kinds", () => {
    const ledger = sample.ask('ledger.show', {});
    for (const car of cars) {
      expect(sum(car.costs.map((year) => year.totalMinor))).toBe(ledger.cars.find((one) => one.car === car.car.id)?.totalMinor);
      for (const year of car.costs) expect(sum(Object.values(year.byKind))).toBe(year.totalMinor);
    }
  });

  test('a receipt shows the lines and the total of its record', () => {
    const receipts = sample.steps.filter((step): step is PaperStep => step.operation === 'paper.keep' && step.request.draw.kind === 'receipt' && !step.label.startsWith('paper:inbox-'));
    expect(receipts.length).toBeGreaterThan(15);
    for (const { label, request } of receipts) {
      const id = label.replace(/^paper:(.*)-\d+$/, '$1');
      const { record } = must(cars.flatMap((car) => car.records).find((one) => one.record.id === id), id);
      expect(request.draw).toMatchObject({ date: record.date, lines: record.costs.map(({ text, amountMinor }) => ({ text, amountMinor })) });
      if (record.printedTotalMinor !== null) expect(request.draw).toMatchObject({ totalMinor: record.printedTotalMinor, number: record.reference });
    }
  });
});

describe('parts and shelf', () => {
  test('four suppliers with unlike terms, offers with breaks and limits, kits of single parts', () => {
    const { facts } = sample.household;
    expect(facts.all(suppliers)).toHaveLength(4);
    expect(new Set(facts.all(suppliers).map((one) => one.leadDays)).size).toBe(4);
    expect(facts.all(suppliers).filter((one) => one.freeFromMinor === null)).toHaveLength(1);
    expect(facts.all(suppliers).filter((one) => one.minimumMinor > 0)).toHaveLength(2);
    expect(facts.all(offers).filter((one) => one.breaks.length > 0).length).toBeGreaterThan(3);
    expect(facts.all(offers).filter((one) => one.most !== null).length).toBeGreaterThan(1);
    expect(facts.all(parts).filter((one) => one.contains.length > 0).map((one) => one.id)).toEqual(['service-kit-alder', 'service-kit-pip']);
  });

  test('whatever an item needs is known, is met by a part, and that part is offered or stands on the shelf', () => {
    const { facts } = sample.household;
    const needed = new Set(facts.all(serviceItems).flatMap((item) => item.needs.map((need) => need.specification)));
    for (const id of needed) {
      expect(facts.get(specifications, id), id).not.toBeNull();
      const meeting = facts.all(parts).filter((part) => part.meets.includes(id)).map((part) => part.id);
      const had = [...facts.all(offers), ...facts.all(lots)].filter((one) => meeting.includes(one.part));
      expect(had.length, id).toBeGreaterThan(0);
    }
    expect(facts.all(serviceItems).filter((item) => item.needs.some((need) => need.specification === 'brake-fluid')).length).toBeGreaterThan(3);
  });

  test('on the shelf: opened and partly used, expired, used up, and untouched', () => {
    const { facts } = sample.household;
    const gone = goneOfLots(facts, facts.all(workRecords));
    const shelf = Object.fromEntries(facts.all(lots).map((lot) => [lot.id, { ...lot, left: Math.round(lot.quantity * 1000 - (gone.get(lot.id) ?? 0)) / 1000 }]));
    expect(shelf['fern-oil-can']).toMatchObject({ openedOn: '2025-12-06', left: 0.9 });
    expect(must(shelf['old-brake-fluid']?.expires, 'expiry') < '2026-11-25').toBe(true);
    expect(shelf['old-brake-fluid']).toMatchObject({ left: 1 });
    expect(shelf['moss-oil-can-1']).toMatchObject({ left: 0 });
    expect(shelf['spare-oil-filter']).toMatchObject({ openedOn: null, left: 1 });
    expect(Object.values(shelf).filter((lot) => lot.left < 0)).toEqual([]);
  });
});

test('buying for all cars together pays: the kit, the shared fluid, the shelf, and nothing that has expired', async () => {
  const order = await proposeOrder(sample.household.facts, orderRequestSchema.parse({}), { today: sample.today }, directSolver());
  if (!order.ok) throw new Error(order.refusal.code);
  const { status, savedMinor, unmet, lines, allocation, perCar, totalMinor } = order.value;
  expect({ status, unmet }).toEqual({ status: 'optimal', unmet: [] });
  expect(perCar.cars.map((one) => one.car).sort()).toEqual(['alder', 'heron', 'pip']);
  expect(savedMinor).toBe(perCar.totalMinor - totalMinor);
  expect(savedMinor).toBeGreaterThan(500);
  expect(lines.map((line) => line.offer)).toContain('copper-sk1');
  expect(allocation.filter((one) => one.from === 'shelf').map((one) => one.part)).toContain('oil-filter-f2');
  expect(allocation.filter((one) => one.part.endsWith('brake-fluid') && one.from === 'shelf')).toEqual([]);
});

test('the parts of the sample show what may become of an order, and what wants to be looked at', () => {
  const view = sample.ask('parts.show', {});
  const states = Object.fromEntries(view.orders.map((one) => [one.order.id, [one.state, one.depositsOpenMinor, one.refundOpenMinor, one.overdueDays !== null]]));
  expect(states).toEqual({ 'battery-order': ['delivered', 1000, 380, false], 'coolant-order': ['part-delivered', 0, 0, true], 'bulb-order': ['on-the-way', 0, 0, false] });
  for (const order of view.orders) expect(sum(order.shares.map((one) => one.minor))).toBe(order.paidMinor);
  expect(view.shelf.filter((one) => one.state === 'expired').map((one) => one.lot.id)).toContain('old-brake-fluid');
  expect(view.offers.filter((one) => one.stale).map((one) => one.offer.id)).toEqual(['copper-l3']);
  expect(view.offers.find((one) => one.offer.id === 'copper-l3')?.numberNow).toBe('CL-L4');
  expect(view.specifications.find((one) => one.specification.id === 'coolant-wren')?.neverWith).toMatchObject([{ specification: 'coolant', rule: 'never' }]);
  expect(view.sessions.flatMap((one) => one.toolsLacking.map((tool) => tool.tool))).toEqual(['battery-tester']);
  expect([...new Set(view.notes.map((one) => one.code))].sort()).toEqual(['parts-note-deposit', 'parts-note-expired', 'parts-note-overdue', 'parts-note-refund']);
});
