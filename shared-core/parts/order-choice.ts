import { must } from '../result/assert.ts';
import type { OrderLine } from './order-answer.ts';
import type { OrderFacts, TakenUnits } from './order-facts.ts';
import type { OrderModel } from './order-model.ts';
import type { GroupVariables } from './order-model-needs.ts';

/** What a solution of the program decides, in whole numbers: the rest of the answer follows from it exactly. */
export interface OrderChoice {
  readonly lines: readonly OrderLine[];
  readonly met: ReadonlySet<string>;
  readonly later: ReadonlySet<string>;
  /** The one part of a need whose parts may not be mixed, where there was a choice. */
  readonly parts: ReadonlyMap<string, string>;
  /** What needs with a step take. */
  readonly stepped: readonly TakenUnits[];
}

/** Reads a solution. The solver's own fractions and sums are not used. */
export function readChoice(facts: OrderFacts, model: OrderModel, values: readonly number[]): OrderChoice {
  const whole = (variable: number) => Math.round(must(values[variable], 'value'));
  const lines = facts.offers.map(({ offer }) => ({
    offer: offer.id,
    packs: (model.packs.get(offer.id)?.packs ?? []).reduce((sum, variable) => sum + whole(variable), 0),
  }));
  const groups = model.groups.map((group) => readGroup(group, whole));
  return {
    lines: lines.filter(({ packs }) => packs > 0),
    met: new Set(groups.flatMap(({ met }) => met)),
    later: new Set(groups.flatMap(({ later }) => later)),
    parts: new Map(groups.flatMap(({ parts }) => parts)),
    stepped: groups.flatMap(({ stepped }) => stepped),
  };
}

interface GroupChoice {
  readonly met: readonly string[];
  readonly later: readonly string[];
  readonly parts: readonly (readonly [string, string])[];
  readonly stepped: readonly TakenUnits[];
}

/** Alike needs are met in their order; the last ones wait, or go without. */
function readGroup({ group, met, later, parts, takes }: GroupVariables, whole: (variable: number) => number): GroupChoice {
  const ids = group.members.map(({ need }) => need.id);
  const waiting = later === null ? 0 : whole(later);
  const count = group.count === 1 && whole(met) === 1 && waiting === 0 ? ids.length : whole(met) - waiting;
  const meeting = group.members.slice(0, count);
  const byPart = parts.flatMap(({ part, chosen }) => Array.from({ length: whole(chosen) }, () => part));
  const chosen = meeting.flatMap(({ need }, at): (readonly [string, string])[] => (byPart[at] === undefined ? [] : [[need.id, byPart[at]]]));
  const heaps = takes.map(({ part, from, each, variable }) => ({ part, from, units: each * whole(variable) }));
  const stepped = group.members[0]?.step === null ? [] : shareSteps(meeting, new Map(chosen), heaps);
  return { met: meeting.map(({ need }) => need.id), later: ids.slice(count, count + waiting), parts: chosen, stepped };
}

/** Everything here is a multiple of the step, so needs may help themselves one after another. */
function shareSteps(
  members: GroupVariables['group']['members'],
  parts: ReadonlyMap<string, string>,
  heaps: { readonly part: string; readonly from: string; units: number }[],
): readonly TakenUnits[] {
  return members.flatMap(({ need, units }) => {
    let wanted = units;
    return heaps.flatMap((heap): TakenUnits[] => {
      const part = parts.get(need.id) ?? heap.part;
      const taken = part === heap.part ? Math.min(wanted, heap.units) : 0;
      wanted -= taken;
      heap.units -= taken;
      return taken === 0 ? [] : [{ need: need.id, part, from: heap.from, units: taken }];
    });
  });
}
