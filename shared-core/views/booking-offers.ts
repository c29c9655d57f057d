import type { LocalDate } from '../calendar/local-date.ts';
import { addMonths } from '../calendar/add-months.ts';
import type { Facts } from '../journal/facts.ts';
import type { Session } from '../sessions/session.ts';
import type { BroughtPart } from '../work/booking.ts';
import type { RequestCar } from './booking-view-schema.ts';
import type { CarCare, ItemCare } from './car-care.ts';
import { partsOfItem, sessionParts } from './parts-sessions.ts';
import { said } from './plan-said.ts';
import { sayWindow } from './say-window.ts';
import { standingSupply } from './supply-taking.ts';

/** What falls due so soon after a session that a garage may do it unasked. Common practice, no source. */
const SOON_MONTHS = 6;

/** The items of a car that are done at home, or fall due soon after the session, and are no tasks of it: what falls due first stands first. */
export function offersUnwanted({ items }: CarCare, session: Session): RequestCar['offersUnwanted'] {
  const held = new Set(session.tasks.flatMap((task) => (task.kind === 'item' ? [task.id] : [])));
  const until = addMonths(session.day, SOON_MONTHS);
  const others = items.filter(({ item }) => !held.has(item.id));
  const soon = others.filter(({ window }) => window.state === 'late' || (window.likely !== null && window.likely <= until));
  const home = others.filter((one) => one.item.place === 'home' && !soon.includes(one));
  const byDay = [...soon].sort((a, b) => (likelyOf(a) < likelyOf(b) ? -1 : likelyOf(a) > likelyOf(b) ? 1 : 0));
  return [...byDay, ...home].map((one) => ({ text: one.item.name, why: said(whyOffered(one)) }));
}

function likelyOf({ window }: ItemCare): string {
  return window.likely ?? window.earliest ?? '9999';
}

function whyOffered({ item, window }: ItemCare) {
  if (item.place === 'home') return { key: 'booking-offer-home', values: {} };
  return window.state === 'late' ? { key: 'booking-offer-late', values: {} } : { key: 'booking-offer-due', values: { when: sayWindow(window) } };
}

/** What the shelf still holds, or an order brings in time, for the items of a session on one car: what sessions at home take is theirs. */
export function offersBring(facts: Facts, session: Session, car: string, today: LocalDate): RequestCar['offersBring'] {
  const supply = standingSupply(facts, today);
  sessionParts(facts, today, supply);
  const day = session.day < today ? today : session.day;
  const needs = session.tasks.flatMap((task) => (task.kind === 'item' ? partsOfItem(facts, task.id, day, supply) : [])).filter((one) => one.car === car);
  return needs.flatMap((need) => {
    const plain = { car, unit: need.unit === 'each' || need.unit === '' ? null : need.unit } satisfies Partial<BroughtPart>;
    const shelf = need.taken.map((lot) => ({ ...plain, part: lot.part, lot: lot.lot, text: lot.partName, quantity: lot.quantity, why: said({ key: lot.where === null ? 'booking-offer-shelf' : 'booking-offer-shelf-where', values: { where: lot.where } }) }));
    const coming = need.coming <= 0 ? [] : [{ ...plain, part: null, lot: null, text: need.specificationName, quantity: need.coming, why: said({ key: 'booking-offer-coming', values: { on: need.comingOn } }) }];
    return [...shelf, ...coming];
  });
}
