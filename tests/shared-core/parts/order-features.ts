import { must } from '../../../shared-core/result/assert.ts';
import type { OrderAnswer } from '../../../shared-core/parts/order-answer.ts';
import type { OrderInstance } from '../../../shared-core/parts/order-instance.ts';

/** A problem and what was answered. */
export interface AnsweredOrder {
  readonly instance: OrderInstance;
  readonly answer: OrderAnswer;
}

/** How many of the answers make use of each feature of orders. */
export function orderFeatures(orders: readonly AnsweredOrder[]): Readonly<Record<string, number>> {
  const used = (feature: (order: AnsweredOrder) => boolean) => orders.filter(feature).length;
  return {
    kit: used((one) => bought(one).some(({ offer }) => one.instance.parts.some(({ id, contains }) => id === offer.part && contains.length > 0))),
    breaks: used((one) => bought(one).some(({ offer, packs }) => offer.breaks.some((each) => each.packs <= packs))),
    free: used((one) => terms(one).some(({ deliveryMinor, freeFromMinor, goods }) => deliveryMinor > 0 && freeFromMinor !== null && goods >= freeFromMinor)),
    'not free': used((one) => one.answer.deliveryMinor > 0),
    minimum: used((one) => terms(one).some(({ minimumMinor }) => minimumMinor > 0)),
    unmixed: used((one) => met(one).some(({ mix }) => !mix)),
    step: used((one) => met(one).some(({ step }) => step !== null)),
    shelf: used((one) => one.answer.allocation.some(({ from }) => from === 'shelf')),
    expired: used(({ instance }) => instance.shelf.some(({ expires }) => expires !== null && instance.needs.some(({ neededBy }) => neededBy > expires))),
    'not enough': used((one) => one.answer.unmet.some(({ code }) => code === 'not-enough')),
    later: used((one) => one.answer.later.length > 0),
    suppliers: used((one) => terms(one).length > 1),
  };
}

function bought({ instance, answer }: AnsweredOrder) {
  return answer.lines.map(({ offer, packs }) => ({ offer: must(instance.offers.find(({ id }) => id === offer), 'offer'), packs }));
}

/** The suppliers bought from, with the sum of goods. */
function terms(one: AnsweredOrder) {
  const lines = bought(one);
  return one.instance.suppliers.flatMap((supplier) => {
    const ours = lines.filter(({ offer }) => offer.supplier === supplier.id);
    const priceOf = ({ offer, packs }: (typeof ours)[number]) => offer.breaks.filter((each) => each.packs <= packs).sort((a, b) => b.packs - a.packs)[0]?.priceMinor ?? offer.priceMinor;
    return ours.length === 0 ? [] : [{ ...supplier, goods: ours.reduce((sum, line) => sum + line.packs * priceOf(line), 0) }];
  });
}

function met({ instance, answer }: AnsweredOrder) {
  const ids = new Set(answer.allocation.map(({ need }) => need));
  return instance.needs.filter(({ id }) => ids.has(id));
}
