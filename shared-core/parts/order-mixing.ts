import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { mixRuleOf } from './mix-rule.ts';
import { MOST_DECIMALS, toUnits } from './order-quantity.ts';
import type { OrderedLine, Taker } from './order.ts';
import { parts } from './part.ts';
import { specifications } from './specification.ts';

/**
 * Refuses an order whose parts do not meet what they are bought for, or would be mixed in one car though they do not bear each other;
 * where that only is to be asked, `sure` lets it pass.
 */
export function checkTakers(facts: Facts, lines: readonly OrderedLine[], sure: boolean): Result<unknown> {
  const takers = lines.flatMap((line) => line.for);
  for (const [at, line] of lines.entries()) {
    const shared = checkShared(facts, line, at);
    if (!shared.ok) return shared;
  }
  for (const taker of takers) {
    const part = facts.get(parts, taker.part);
    if (part === null) return refuse('unknown-part', { id: taker.part }, ['lines']);
    if (taker.specification !== null && !part.meets.includes(taker.specification)) return refuse('taker-not-met', { part: part.name, specification: facts.get(specifications, taker.specification)?.name ?? taker.specification }, ['lines']);
  }
  for (const [at, taker] of takers.entries()) {
    for (const other of takers.slice(at + 1)) {
      const mixed = checkTwo(facts, taker, other, sure);
      if (!mixed.ok) return mixed;
    }
  }
  return ok(null);
}

function checkTwo(facts: Facts, a: Taker, b: Taker, sure: boolean): Result<unknown> {
  if (a.car !== b.car || a.part === b.part) return ok(null);
  const [one, other] = [must(facts.get(parts, a.part), 'part'), must(facts.get(parts, b.part), 'part')];
  const rule = mixRuleOf(facts, one, other);
  if (rule === null || (rule.rule === 'ask' && sure)) return ok(null);
  const values = { a: one.name, b: other.name, car: facts.get(cars, a.car)?.name ?? a.car, why: say(rule.why) };
  return refuse(rule.rule === 'never' ? 'order-mixes' : 'order-may-mix', values, ['lines']);
}

/** What a line is bought for comes out of that line, no more of it than is bought, and each item is one of its own car. */
function checkShared(facts: Facts, line: OrderedLine, at: number): Result<unknown> {
  const path = ['lines', at, 'for'];
  const named = (id: string) => facts.get(parts, id)?.name ?? id;
  const contents = facts.get(parts, line.part)?.contains ?? [];
  const bought = new Map((contents.length > 0 ? contents : [{ part: line.part, quantity: 1 }]).map(({ part, quantity }) => [part, toUnits(quantity * line.quantity * line.packs, MOST_DECIMALS)]));
  for (const { car, item, part } of line.for) {
    const own = item === null ? null : facts.get(serviceItems, item);
    if (own !== null && own.car !== car) return refuse('taker-of-another-car', { item: own.name, car: facts.get(cars, car)?.name ?? car }, path);
    if (!bought.has(part)) return refuse('taker-of-another-part', { part: named(part), bought: named(line.part) }, path);
    const taken = line.for.filter((other) => other.part === part).reduce((sum, other) => sum + toUnits(other.quantity, MOST_DECIMALS), 0);
    if (taken > (bought.get(part) ?? 0)) return refuse('takers-beyond-bought', { part: named(part) }, path);
  }
  return ok(null);
}
