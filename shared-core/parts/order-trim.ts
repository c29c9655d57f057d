import type { OrderLine } from './order-answer.ts';
import { shareOrder } from './order-allocation.ts';
import type { OrderChoice } from './order-choice.ts';
import type { OrderFacts } from './order-facts.ts';
import { orderCharges, paidMinor } from './order-money.ts';

/** How many packs of a line are tried less, one by one: enough for a shelf, few enough for a moment. */
const MOST_TRIES = 20;

/**
 * Leaves out packs that nobody needs where the order then costs no more: the solver does not mind what costs nothing.
 * Packs that earn free delivery, a break or a minimum stay.
 */
export function trimOrder(facts: OrderFacts, choice: OrderChoice): OrderChoice {
  const idle = idlePacks(facts, choice);
  return choice.lines.reduce((trimmed, line) => trimLine(facts, trimmed, line, idle.get(line.offer) ?? 0), choice);
}

/** Packs of each offer that what is taken from it does not reach into. */
function idlePacks(facts: OrderFacts, choice: OrderChoice): ReadonlyMap<string, number> {
  const taken = new Map<string, number>();
  for (const { from, part, units } of shareOrder(facts, choice)?.taken ?? []) {
    const key = JSON.stringify([from, part]);
    taken.set(key, (taken.get(key) ?? 0) + units);
  }
  const packs = new Map(choice.lines.map((line) => [line.offer, line.packs]));
  return new Map(
    facts.offers.map(({ offer, gives }) => {
      const reached = [...gives].map(([part, units]) => Math.ceil((taken.get(JSON.stringify([offer.id, part])) ?? 0) / units));
      return [offer.id, (packs.get(offer.id) ?? 0) - Math.max(0, ...reached)];
    }),
  );
}

function trimLine(facts: OrderFacts, choice: OrderChoice, line: OrderLine, idle: number): OrderChoice {
  const tries = [idle, ...Array.from({ length: Math.min(idle, MOST_TRIES) }, (_, i) => Math.min(idle, MOST_TRIES) - i)];
  for (const less of tries.filter((each) => each > 0)) {
    const lines = choice.lines.map((each) => (each.offer === line.offer ? { ...each, packs: each.packs - less } : each)).filter(({ packs }) => packs > 0);
    if (isNoWorse(facts, choice.lines, lines)) return { ...choice, lines };
  }
  return choice;
}

function isNoWorse(facts: OrderFacts, before: readonly OrderLine[], after: readonly OrderLine[]): boolean {
  const charges = orderCharges(facts, after);
  return paidMinor(charges) <= paidMinor(orderCharges(facts, before)) && charges.every(({ reachesMinimum }) => reachesMinimum);
}
