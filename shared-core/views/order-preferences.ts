import type { Solver } from '../integer-program/solver.ts';
import type { Facts } from '../journal/facts.ts';
import type { BuyingTerms } from '../parts/compose-instance.ts';
import { offers } from '../parts/offer.ts';
import type { OrderAnswer } from '../parts/order-answer.ts';
import type { OrderInstance } from '../parts/order-instance.ts';
import { solveOrder, type OrderOptions } from '../parts/order-solve.ts';
import { preferences } from '../parts/part-preference.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';
import { ok, refuse, type Refusal, type Result } from '../result/result.ts';

/** A preference that was tried: whether it was taken, and by how much it makes the order dearer; null where it meets less. */
export interface TriedPreference {
  readonly specification: string;
  readonly part: string;
  readonly taken: boolean;
  readonly moreMinor: number | null;
}

/** An order under terms that hold the preferences taken. */
export interface PreferredOrder {
  readonly instance: OrderInstance;
  readonly answer: OrderAnswer;
  readonly terms: BuyingTerms;
  readonly tried: readonly TriedPreference[];
}

/**
 * The cheapest order with the parts one would rather have: each preference in its turn, its best part first, is taken where the order then
 * meets as much and costs no more than was said. One after another, so together they are not proven the cheapest way to please all.
 */
export async function preferredOrder(facts: Facts, compose: (terms: BuyingTerms) => OrderInstance, plain: BuyingTerms, solver: Solver, options: OrderOptions): Promise<Result<PreferredOrder>> {
  const first = compose(plain);
  const cheapest = await solveOrder(first, solver, options);
  if (!cheapest.ok) return refuse(cheapest.refusal.code, named(facts, cheapest.refusal.values), cheapest.refusal.path);
  let best = { instance: first, answer: cheapest.value, terms: plain };
  const tried: TriedPreference[] = [];
  const needed = new Set(first.needs.map((need) => need.spec));
  for (const preference of facts.all(preferences).filter((one) => needed.has(one.id))) {
    for (const part of preference.parts) {
      const terms = { ...best.terms, onlyParts: new Map(best.terms.onlyParts).set(preference.id, part) };
      const instance = compose(terms);
      const answer = await solveOrder(instance, solver, options);
      if (!answer.ok) return answer;
      const meets = answer.value.unmet.length === best.answer.unmet.length && answer.value.unmet.every((one) => best.answer.unmet.some((other) => other.need === one.need));
      const moreMinor = meets ? answer.value.totalMinor - best.answer.totalMinor : null;
      const taken = moreMinor !== null && moreMinor <= (preference.mostMoreMinor ?? Infinity);
      tried.push({ specification: preference.id, part, taken, moreMinor });
      if (!taken) continue;
      best = { instance, answer: answer.value, terms };
      break;
    }
  }
  return ok({ ...best, tried });
}

/** An offer that is refused, by its part and who sells it rather than by its id. */
function named(facts: Facts, values: Refusal['values']): Refusal['values'] {
  const id = values['offer'];
  const offer = typeof id === 'string' ? facts.get(offers, id) : null;
  if (offer === null) return values;
  return { ...values, offer: `${facts.get(parts, offer.part)?.name ?? offer.part}, ${facts.get(suppliers, offer.supplier)?.name ?? offer.supplier}` };
}
