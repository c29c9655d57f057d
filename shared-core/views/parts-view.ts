import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { ask } from '../journal/operation.ts';
import { neverMixes } from '../parts/never-mix.ts';
import { superseded } from '../parts/part-number.ts';
import { partsSettings } from '../parts/parts-settings.ts';
import { stocktakes } from '../parts/stocktake.ts';
import { suppliers } from '../parts/supplier.ts';
import { taskTools, tools } from '../parts/tool.ts';
import { wastes } from '../parts/waste.ts';
import { ok, type Message } from '../result/result.ts';
import { money } from '../sessions/plan-why.ts';
import { amountSaid } from './amount-said.ts';
import { offerViews, partViews, specificationViews } from './parts-catalogue.ts';
import { placedOrderViews } from './parts-orders.ts';
import { sessionParts } from './parts-sessions.ts';
import { shelfView } from './parts-shelf.ts';
import { partsViewSchema, type PartsView } from './parts-view-schema.ts';
import { said } from './plan-said.ts';

/** All that the Parts screen shows, but for the proposal, which takes solving. */
export const showParts = ask({
  request: z.strictObject({}),
  reply: partsViewSchema,
  answer: (standing, _request, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const { currency } = household.value;
    const view = {
      today, currency,
      settings: partsSettings(facts),
      specifications: specificationViews(facts, today),
      parts: partViews(facts, today),
      suppliers: [...facts.all(suppliers)],
      offers: offerViews(facts, today),
      neverMix: [...facts.all(neverMixes)],
      superseded: [...facts.all(superseded)],
      shelf: shelfView(facts, today),
      stocktakes: [...facts.all(stocktakes)].sort((a, b) => (a.on < b.on ? 1 : -1)),
      orders: placedOrderViews(facts, today, currency),
      sessions: sessionParts(facts, today),
      tools: toolViews(facts, today),
      waste: [...facts.all(wastes)],
    };
    return ok({ ...view, notes: partsNotes(view).map(said) });
  },
});

function toolViews(facts: Facts, today: LocalDate): PartsView['tools'] {
  return facts.all(tools).map((tool) => ({
    ...tool,
    takenBy: facts.all(taskTools).filter((task) => task.tools.includes(tool.id)).map((task) => ({ car: task.car, item: task.id, itemName: facts.get(serviceItems, task.id)?.name ?? task.id })),
    overdue: tool.until !== null && tool.until < today,
  }));
}

/** What wants to be looked at, the most pressing first. */
function partsNotes({ orders, sessions, shelf, tools: all, currency }: Omit<PartsView, 'notes'>): readonly Message[] {
  const lacking = sessions.flatMap(({ day, daysAhead, needs }) => needs.filter((need) => need.lacking > 0).map((need): Message => ({
    key: 'parts-note-session-lacks', values: { day, days: daysAhead, quantity: amountSaid(need.lacking, need.unit), specification: need.specificationName, item: need.itemName, car: need.carName },
  })));
  const overdue = orders.flatMap((one): Message[] => (one.overdueDays === null ? [] : [{ key: 'parts-note-overdue', values: { supplier: one.supplierName, date: one.order.expectedOn } }]));
  const aside = orders.flatMap((one): Message[] => (one.lines.some((line) => line.asideLeft > 0) ? [asideNote(one)] : []));
  const owed = orders.flatMap((one): Message[] => (one.owedBackMinor === 0 ? [] : [{ key: 'parts-note-never-came', values: { supplier: one.supplierName, sum: money(one.owedBackMinor, currency) } }]));
  const refunds = orders.flatMap((one): Message[] => (one.refundOpenMinor === 0 ? [] : [{ key: 'parts-note-refund', values: { supplier: one.supplierName, sum: money(one.refundOpenMinor, currency) } }]));
  const deposits = orders.flatMap((one): Message[] => (one.depositsOpenMinor === 0 ? [] : [{ key: 'parts-note-deposit', values: { supplier: one.supplierName, sum: money(one.depositsOpenMinor, currency) } }]));
  const expired = shelf.filter((one) => one.state === 'expired').map((one): Message => ({ key: 'parts-note-expired', values: { part: one.partName, left: amountSaid(one.left, one.unit), date: one.goodUntil } }));
  const back = all.filter((tool) => tool.overdue).map((tool): Message => ({ key: 'parts-note-give-back', values: { tool: tool.name, lender: tool.lender, date: tool.until } }));
  return [...lacking, ...overdue, ...aside, ...owed, ...refunds, ...deposits, ...expired, ...back];
}

/** What came wrong is named until it is settled: with the last day for sending it back, or that the day has passed or was never said. */
function asideNote({ supplierName: supplier, order, returnDaysLeft }: PartsView['orders'][number]): Message {
  if (order.returnBy === null) return { key: 'parts-note-return', values: { supplier } };
  return { key: returnDaysLeft === null ? 'parts-note-return-was-by' : 'parts-note-return-by', values: { supplier, date: order.returnBy } };
}
