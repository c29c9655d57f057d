import { addDays, later, type LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { comingId, comingSupply, isComing } from '../parts/coming-supply.ts';
import type { OrderAnswer } from '../parts/order-answer.ts';
import { FROM_SHELF } from '../parts/order-instance.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { must } from '../result/assert.ts';
import type { ProposedOrder } from './order-lines.ts';
import type { NeedView } from './order-view-schema.ts';
import type { HouseholdNeed } from './household-needs.ts';

/** The needs of a proposal: whether each is met, from where, and from which day on its parts are here. */
export function needViews(proposed: ProposedOrder): NeedView[] {
  const coming = new Map(comingSupply(proposed.facts, proposed.today).map((line) => [comingId(line), line]));
  const sourceOf = (row: OrderAnswer['allocation'][number]): NeedView['sources'][number] => {
    const part = { part: row.part, partName: proposed.facts.get(parts, row.part)?.name ?? row.part, quantity: row.quantity };
    if (row.from === FROM_SHELF) return { from: 'shelf', ...part, offer: null, order: null, on: proposed.today };
    const line = coming.get(row.from);
    if (line !== undefined) return { from: 'coming', ...part, offer: null, order: line.order, on: line.on };
    return { from: 'offer', ...part, offer: row.from, order: null, on: arrival(proposed, row.from) };
  };
  return proposed.needs.map((one) => needView(proposed, one, proposed.answer.allocation.filter((row) => row.need === one.need.id).map(sourceOf)));
}

function arrival({ instance, today }: ProposedOrder, offer: string): LocalDate {
  const supplier = must(instance.offers.find((one) => one.id === offer), 'offer').supplier;
  return addDays(today, must(instance.suppliers.find((one) => one.id === supplier), 'supplier').leadDays);
}

function needView({ facts, answer, today }: ProposedOrder, { need, item, itemName, wish, session }: HouseholdNeed, sources: NeedView['sources']): NeedView {
  const specification = must(facts.get(specifications, need.spec), 'specification of a need');
  const unmet = answer.unmet.find((one) => one.need === need.id)?.code;
  const state = unmet ?? (answer.later.includes(need.id) ? 'later' : 'met');
  const readyOn = state === 'met' ? sources.reduce((last, { on }) => later(last, on), today) : null;
  return {
    need: need.id, car: need.car, carName: must(facts.get(cars, need.car), 'car of a need').name, item, itemName, wish,
    specification: need.spec, specificationName: specification.name, unit: specification.unit, quantity: need.quantity, neededBy: need.neededBy,
    state, sources, readyOn,
    session: session === null ? null : { id: session.id, day: session.day },
    tooLateForSession: session !== null && (readyOn === null || readyOn > session.ready),
  };
}

/** The lines of an answer that are bought; what is on the way is bought already. */
export function boughtLines(answer: OrderAnswer): OrderAnswer['lines'] {
  return answer.lines.filter((line) => !isComing(line.offer));
}
