import type { Refusal } from '../result/result.ts';
import type { OrderAnswer } from './order-answer.ts';
import type { OrderInstance, OrderOffer } from './order-instance.ts';

/** Faults in the money: every sum is reckoned anew from the lines, and no supplier is used below its minimum. */
export function moneyFaults(instance: OrderInstance, answer: OrderAnswer): readonly Refusal[] {
  const goods = goodsBySupplier(instance, answer);
  const used = instance.suppliers.filter(({ id }) => goods.has(id));
  const below = used
    .filter(({ id, minimumMinor }) => (goods.get(id) ?? 0n) < BigInt(minimumMinor))
    .map(({ id, minimumMinor }) => ({ code: 'below-minimum', values: { supplier: id, minimumMinor }, path: ['lines'] }));
  const delivery = used.map(({ id, deliveryMinor, freeFromMinor }) => (freeFromMinor !== null && (goods.get(id) ?? 0n) >= BigInt(freeFromMinor) ? 0n : BigInt(deliveryMinor)));
  const later = instance.needs.map(({ id, laterMinor }) => (answer.later.includes(id) ? BigInt(laterMinor ?? 0) : 0n));
  const sums = { goodsMinor: sum([...goods.values()]), deliveryMinor: sum(delivery), laterMinor: sum(later) };
  return [
    ...below,
    ...wrong('goods-wrong', 'goodsMinor', answer.goodsMinor, sums.goodsMinor),
    ...wrong('delivery-wrong', 'deliveryMinor', answer.deliveryMinor, sums.deliveryMinor),
    ...wrong('later-wrong', 'laterMinor', answer.laterMinor, sums.laterMinor),
    ...wrong('total-wrong', 'totalMinor', answer.totalMinor, sum(Object.values(sums))),
    ...proofFaults(answer),
  ];
}

function goodsBySupplier(instance: OrderInstance, answer: OrderAnswer): ReadonlyMap<string, bigint> {
  const goods = new Map<string, bigint>();
  for (const line of answer.lines) {
    const offer = instance.offers.find(({ id }) => id === line.offer);
    if (offer === undefined) continue;
    goods.set(offer.supplier, (goods.get(offer.supplier) ?? 0n) + BigInt(line.packs) * BigInt(pricePerPack(offer, line.packs)));
  }
  return goods;
}

/** The price of the highest break reached, else the plain price. */
function pricePerPack(offer: OrderOffer, packs: number): number {
  let [price, reached] = [offer.priceMinor, 0];
  for (const step of offer.breaks) if (step.packs <= packs && step.packs > reached) [price, reached] = [step.priceMinor, step.packs];
  return price;
}

/** `optimal` is said exactly when the bound comes within less than one minor unit. */
function proofFaults({ totalMinor, boundMinor, status }: OrderAnswer): readonly Refusal[] {
  if (boundMinor > totalMinor) return [{ code: 'bound-wrong', values: { totalMinor, boundMinor }, path: ['boundMinor'] }];
  const right = totalMinor - boundMinor < 1 ? 'optimal' : 'stopped';
  return status === right ? [] : [{ code: 'status-wrong', values: { totalMinor, boundMinor }, path: ['status'] }];
}

function wrong(code: string, field: string, said: number, is: bigint): readonly Refusal[] {
  return BigInt(said) === is ? [] : [{ code, values: { said, is: Number(is) }, path: [field] }];
}

function sum(values: readonly bigint[]): bigint {
  return values.reduce((total, value) => total + value, 0n);
}
