import { addDays, later, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { Session } from '../sessions/session.ts';
import type { ItemCare } from './car-care.ts';
import { needsOfItem } from './needs-of-item.ts';
import type { LeadTimes } from './notice-days.ts';
import { sessionDays, standingSupply, takeSupply, type NeedDays, type Supply } from './supply-taking.ts';

interface PartsSources {
  readonly facts: Facts;
  readonly today: LocalDate;
  readonly leads: LeadTimes;
}

/**
 * By item, the first day on which it can be done at home with its parts there the day before; none where they are on the shelf, or nobody
 * knows how to get them. Each takes of the shelf and of what is on the way before the next: what is fixed in a session first, by its day,
 * then by when it is due. Taken for granted: what is due first is done first, so a plan that turns two round may find a can spoken for.
 */
export function partsAtHome(sources: PartsSources, items: readonly ItemCare[], fixed: readonly Session[], homes: ReadonlySet<string>): ReadonlyMap<string, LocalDate> {
  const sessionOf = new Map(fixed.flatMap((session) => session.tasks.map((task) => [task.id, session] as const)));
  const takers = items.filter(({ item }) => {
    const session = sessionOf.get(item.id);
    return session === undefined ? item.place !== 'garage' : homes.has(session.place);
  });
  const key = ({ item, window }: ItemCare) => [sessionOf.get(item.id)?.day ?? '9', window.likely ?? '9', item.id].join(' ');
  const supply = standingSupply(sources.facts, sources.today);
  return new Map([...takers].sort((a, b) => (key(a) < key(b) ? -1 : 1)).flatMap((one) => {
    const day = sessionOf.get(one.item.id)?.day ?? null;
    const days = needsOfItem(one.item).flatMap((need) => firstDay(sources, need, one.window.likely, day, supply) ?? []);
    const last = days.reduce<LocalDate | null>((latest, each) => (latest === null ? each : later(latest, each)), null);
    return last === null ? [] : [[one.item.id, last] as const];
  }));
}

/** The first day for one need; null where the shelf has it, or where what lacks is offered by nobody. */
function firstDay({ facts, today, leads }: PartsSources, need: { readonly specification: string; readonly quantity: number }, due: LocalDate | null, session: LocalDate | null, supply: Supply): LocalDate | null {
  const lead = leads.get(need.specification) ?? Infinity;
  const bought = Number.isFinite(lead) ? addDays(today, lead) : null;
  const { lacking, comingOn } = takeSupply(facts, need, session === null ? looseDays(today, due, bought) : sessionDays(session), supply);
  const here = lacking > 0 ? (bought === null ? null : later(bought, comingOn ?? bought)) : comingOn;
  return here === null || here < today || (lacking > 0 && lead === 0) ? null : addDays(here, 1);
}

/** Outside a session: used when it is due; what is on the way is waited for where that makes it no later than due, or than buying it anew. */
function looseDays(today: LocalDate, due: LocalDate | null, bought: LocalDate | null): NeedDays {
  const usedOn = later(today, due ?? today);
  return { usedOn, hereBy: bought === null ? addDays(today, 3650) : later(usedOn, bought) };
}
