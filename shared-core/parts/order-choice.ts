import { must } from '../result/assert.ts';
import type { OrderLine } from './order-answer.ts';
import type { OrderFacts } from './order-facts.ts';
import type { OrderModel } from './order-model.ts';

/** What a solution of the program decides, in whole numbers: the rest of the answer follows from it exactly. */
export interface OrderChoice {
  readonly lines: readonly OrderLine[];
  readonly met: ReadonlySet<string>;
  readonly later: ReadonlySet<string>;
  /** The one part of a need whose parts may not be mixed, where there was a choice. */
  readonly parts: ReadonlyMap<string, string>;
  /** Of needs with a step: units of a part from a source. */
  readonly stepped: readonly { readonly need: string; readonly part: string; readonly from: string; readonly units: number }[];
}

/** Reads a solution. The solver's own fractions and sums are not used. */
export function readChoice(facts: OrderFacts, model: OrderModel, values: readonly number[]): OrderChoice {
  const whole = (variable: number) => Math.round(must(values[variable], 'value'));
  const lines = facts.offers.map(({ offer }) => ({
    offer: offer.id,
    packs: (model.packs.get(offer.id)?.packs ?? []).reduce((sum, variable) => sum + whole(variable), 0),
  }));
  const needs = [...model.needs];
  const later = new Set(needs.filter(([, { later }]) => later !== null && whole(later) === 1).map(([id]) => id));
  const met = new Set(needs.filter(([id, variables]) => whole(variables.met) === 1 && !later.has(id)).map(([id]) => id));
  const parts = new Map(
    needs.flatMap(([id, variables]) => variables.parts.filter(({ chosen }) => whole(chosen) === 1).map(({ part }): [string, string] => [id, part])),
  );
  const stepped = model.takes
    .filter(({ need }) => need.step !== null)
    .map(({ need, part, from, each, variable }) => ({ need: need.need.id, part, from, units: each * whole(variable) }))
    .filter(({ units }) => units > 0);
  return { lines: lines.filter(({ packs }) => packs > 0), met, later, parts, stepped };
}
