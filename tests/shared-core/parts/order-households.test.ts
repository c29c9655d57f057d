import { describe, expect, test } from 'vitest';
import { proposeOrder } from '../../../shared-core/views/order-view.ts';
import { orderRequestSchema, type OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { day } from '../calendar/day.ts';
import { orderHousehold } from './order-households.ts';
import { testSolver } from './order-written.ts';

/** A fifth of the storm's households with every test run; any number by STORM_ORDER_HOUSEHOLDS. */
const SEEDS = Number(process.env['STORM_ORDER_HOUSEHOLDS'] ?? 10);

describe('what households buy together', () => {
  const views: OrderView[] = [];

  // Source: own property: all that the cars buy one by one could be bought together; and what is paid falls on somebody.
  test.each(Array.from({ length: SEEDS }, (_, at) => at + 1))('costs no more than for each car alone, and is shared to the last minor unit: seed %i', { timeout: 120_000 }, async (seed) => {
    const reply = await proposeOrder(orderHousehold(seed).facts(), orderRequestSchema.parse({}), { today: day('2026-11-25') }, testSolver);
    if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
    const view = reply.value;
    views.push(view);
    expect(view).toMatchObject({ status: 'optimal', unmet: [], later: [], perCar: { met: view.needs.length } });
    expect(view.totalMinor).toBeLessThanOrEqual(view.perCar.totalMinor);
    expect(view.savedMinor).toBe(view.perCar.totalMinor - view.totalMinor);
    const paid = view.orders.reduce((sum, order) => sum + order.goodsMinor + order.deliveryMinor, 0);
    expect([view.totalMinor, view.shares.reduce((sum, { minor }) => sum + minor, 0), view.orders.flatMap(({ lines }) => lines).reduce((sum, { landedMinor }) => sum + landedMinor, 0)]).toEqual([paid, paid, paid]);
  });

  test('costs less in three of five of them at least', () => {
    expect(views.filter(({ savedMinor }) => (savedMinor ?? 0) > 0).length).toBeGreaterThanOrEqual(SEEDS * 0.6);
    expect(views.filter(({ orders }) => orders.length > 1).length).toBeGreaterThan(0);
    expect(views.filter(({ shares }) => shares.some(({ car }) => car === null)).length).toBeGreaterThan(0);
  });
});
