import type { Refusal } from '../result/result.ts';
import type { OrderAnswer } from './order-answer.ts';
import type { OrderInstance } from './order-instance.ts';
import { moneyFaults } from './order-verify-money.ts';
import { needFaults } from './order-verify-needs.ts';
import { supplyFaults } from './order-verify-supply.ts';

/**
 * What is wrong with an answer to an instance, each fault with a code, the values of its sentence and the path into the answer; empty
 * where every rule of the order is kept and every figure is right. It holds no solver and shares no reckoning with one. That no cheaper
 * order exists it cannot see.
 *
 * @example verifyOrder(instance, answer) //=> []
 */
export function verifyOrder(instance: OrderInstance, answer: OrderAnswer): readonly Refusal[] {
  const names = nameFaults(instance, answer);
  return names.length > 0 ? names : [...needFaults(instance, answer), ...supplyFaults(instance, answer), ...moneyFaults(instance, answer)];
}

/** Names that stand for nothing, and rows that stand twice: with these the rest would make no sense. */
function nameFaults(instance: OrderInstance, answer: OrderAnswer): readonly Refusal[] {
  const offers = new Set(instance.offers.map(({ id }) => id));
  const needs = new Set(instance.needs.map(({ id }) => id));
  const parts = new Set(instance.parts.map(({ id }) => id));
  return [
    ...unknown('unknown-offer', 'lines', 'offer', answer.lines.map(({ offer }) => offer), offers),
    ...twice('lines', answer.lines.map(({ offer }) => offer)),
    ...unknown('unknown-need', 'allocation', 'need', answer.allocation.map(({ need }) => need), needs),
    ...unknown('unknown-part', 'allocation', 'part', answer.allocation.map(({ part }) => part), parts),
    ...unknown('unknown-source', 'allocation', 'from', answer.allocation.map(({ from }) => from), new Set([...offers, 'shelf'])),
    ...twice('allocation', answer.allocation.map(({ need, part, from }) => JSON.stringify([need, part, from]))),
    ...unknown('unknown-part', 'left', 'part', answer.left.map(({ part }) => part), parts),
    ...twice('left', answer.left.map(({ part }) => part)),
    ...unknown('unknown-need', 'later', null, answer.later, needs),
    ...unknown('unknown-need', 'unmet', 'need', answer.unmet.map(({ need }) => need), needs),
  ];
}

function unknown(code: string, list: string, field: string | null, ids: readonly string[], known: ReadonlySet<string>): readonly Refusal[] {
  return ids.flatMap((id, at) => (known.has(id) ? [] : [{ code, values: { id }, path: field === null ? [list, at] : [list, at, field] }]));
}

function twice(list: string, keys: readonly string[]): readonly Refusal[] {
  return keys.flatMap((key, at) => (keys.indexOf(key) === at ? [] : [{ code: 'row-twice', values: { list }, path: [list, at] }]));
}
