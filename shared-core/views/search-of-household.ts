import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { heldQuotes } from '../ledger/held-quote.ts';
import { wishes } from '../ledger/wish.ts';
import { deliveries } from '../parts/delivery.ts';
import { lots } from '../parts/lot.ts';
import { offers } from '../parts/offer.ts';
import { orders } from '../parts/order.ts';
import { formerNumbers, superseded } from '../parts/part-number.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import { tools } from '../parts/tool.ts';
import { standingPlaces } from '../sessions/place.ts';
import { sayTask } from '../sessions/say-task.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { bookings } from '../work/booking.ts';
import { amountField, dayField, textField, type SearchThing } from './search-thing.ts';

/** What belongs to no one car: sessions, parts, orders, the shelf, tools, wishes and quotes. */
export function thingsOfHousehold(facts: Facts, today: LocalDate): readonly SearchThing[] {
  return [...sessionThings(facts, today), ...partThings(facts), ...specificationThings(facts), ...supplierThings(facts), ...offerThings(facts), ...lotThings(facts), ...orderThings(facts), ...toolThings(facts), ...wishThings(facts), ...quoteThings(facts)];
}

/** The sessions that can be looked at: those that stand, and those that were done. */
function sessionThings(facts: Facts, today: LocalDate): readonly SearchThing[] {
  const named = new Map(standingPlaces(facts).map(({ place }) => [place.id, place.name]));
  return facts.all(sessions).filter((one) => stands(one, today) || one.state === 'done').map((session) => {
    const booking = facts.get(bookings, session.id);
    const rounds = booking === null ? [] : [booking, ...(booking.earlier ?? [])];
    const name = named.get(session.place) ?? session.place;
    return {
      kind: 'session', id: session.id, name, car: null, date: session.day, href: stands(session, today) ? `/sessions#session-${session.id}` : `/sessions/${session.id}/sheet`,
      fields: [
        ...textField('place', 'name', name), ...textField('task', 'detail', ...session.tasks.map((task) => sayTask(facts, task))), ...textField('note', 'note', session.note), ...dayField('day', session.day),
        ...rounds.flatMap((round) => [
          ...textField('asked', 'detail', ...round.wanted.map((line) => line.text)), ...textField('reference', 'number', round.booked?.reference), ...textField('note', 'note', round.note, round.contact),
          ...round.quotes.flatMap((quote) => [...textField('quoted-by', 'detail', quote.by), ...textField('quoted', 'note', ...quote.lines.map((line) => line.text), quote.note), ...amountField('quoted-sum', quote.totalMinor), ...dayField('quoted-on', quote.on)]),
          ...(round.cameBack === null ? [] : [...textField('note', 'note', round.cameBack.note), ...amountField('charged', round.cameBack.chargedMinor)]),
        ]),
      ],
    };
  });
}

function stands(session: Session, today: LocalDate): boolean {
  return isPinned(session) || (session.state === 'proposed' && session.day >= today);
}

function partThings(facts: Facts): readonly SearchThing[] {
  const changed = facts.all(superseded);
  return facts.all(parts).map((part) => {
    const meets = part.meets.flatMap((id) => facts.get(specifications, id) ?? []);
    return {
      kind: 'part', id: part.id, name: part.name, car: null, date: null, href: `/parts/offers#part-${part.id}`,
      fields: [
        ...textField('name', 'name', part.name), ...textField('number', 'number', part.number), ...textField('former-number', 'number', ...(part.number === null ? [] : formerNumbers(changed, part.number))),
        ...textField('meets', 'detail', ...meets.map((one) => one.name)), ...textField('asks', 'note', ...meets.flatMap((one) => one.asks.map((ask) => ask.text))),
        ...textField('holds', 'detail', ...part.contains.map((inside) => facts.get(parts, inside.part)?.name)), ...textField('source', 'note', ...part.stated.map((one) => one.source)),
      ],
    };
  });
}

function specificationThings(facts: Facts): readonly SearchThing[] {
  return facts.all(specifications).map((one) => ({
    kind: 'specification', id: one.id, name: one.name, car: null, date: null, href: `/parts/offers#specification-${one.id}`,
    fields: [...textField('name', 'name', one.name), ...textField('asks', 'detail', ...one.asks.map((ask) => ask.text)), ...textField('note', 'note', one.note)],
  }));
}

function supplierThings(facts: Facts): readonly SearchThing[] {
  return facts.all(suppliers).map(({ id, name }) => ({ kind: 'supplier', id, name, car: null, date: null, href: `/parts/offers#supplier-${id}`, fields: textField('name', 'name', name) }));
}

function offerThings(facts: Facts): readonly SearchThing[] {
  return facts.all(offers).map((offer) => {
    const name = facts.get(parts, offer.part)?.name ?? offer.part;
    return {
      kind: 'offer', id: offer.id, name, car: null, date: offer.seenOn, href: `/parts/offers#offer-${offer.id}`,
      fields: [...textField('name', 'name', name), ...textField('number', 'number', offer.number), ...textField('supplier', 'detail', facts.get(suppliers, offer.supplier)?.name), ...amountField('price', offer.priceMinor, ...offer.breaks.map((step) => step.priceMinor)), ...dayField('price-seen', offer.seenOn)],
    };
  });
}

function lotThings(facts: Facts): readonly SearchThing[] {
  return facts.all(lots).map((lot) => {
    const part = facts.get(parts, lot.part);
    const name = part?.name ?? lot.part;
    return {
      kind: 'lot', id: lot.id, name, car: null, date: lot.receivedOn, href: `/parts/shelf#lot-${lot.id}`,
      fields: [...textField('name', 'name', name), ...textField('number', 'number', part?.number), ...textField('where', 'detail', lot.where), ...dayField('came', lot.receivedOn), ...dayField('opened', lot.openedOn), ...dayField('expires', lot.expires), ...amountField('paid', lot.paidMinor)],
    };
  });
}

function orderThings(facts: Facts): readonly SearchThing[] {
  const came = facts.all(deliveries);
  return facts.all(orders).map((order) => {
    const name = facts.get(suppliers, order.supplier)?.name ?? order.supplier;
    const arrived = came.filter((one) => one.order === order.id);
    return {
      kind: 'order', id: order.id, name, car: null, date: order.placedOn, href: `/parts/placed#order-${order.id}`,
      fields: [
        ...textField('supplier', 'name', name), ...textField('order-number', 'number', order.number), ...textField('number', 'number', ...order.lines.map((line) => line.number)), ...textField('part', 'detail', ...order.lines.map((line) => facts.get(parts, line.part)?.name)),
        ...textField('note', 'note', order.note, ...arrived.map((one) => one.note)), ...dayField('placed', order.placedOn), ...dayField('expected', order.expectedOn), ...dayField('came', ...arrived.map((one) => one.on)), ...amountField('price', ...order.lines.map((line) => line.priceMinor)),
      ],
    };
  });
}

function toolThings(facts: Facts): readonly SearchThing[] {
  return facts.all(tools).map((tool) => ({
    kind: 'tool', id: tool.id, name: tool.name, car: null, date: tool.boughtOn ?? null, href: `/parts/tools#tool-${tool.id}`,
    fields: [...textField('name', 'name', tool.name), ...textField('where', 'detail', tool.where), ...textField('lender', 'detail', tool.lender), ...textField('note', 'note', tool.note), ...dayField('back-by', tool.until), ...dayField('bought', tool.boughtOn), ...amountField('paid', tool.paidMinor)],
  }));
}

function wishThings(facts: Facts): readonly SearchThing[] {
  return facts.all(wishes).map((wish) => ({
    kind: 'wish', id: wish.id, name: wish.name, car: wish.car, date: wish.addedOn, href: `/ledger/wishes#wish-${wish.id}`,
    fields: [
      ...textField('name', 'name', wish.name), ...textField('part', 'detail', ...wish.others.map((one) => one.text), ...wish.needs.map((need) => facts.get(specifications, need.specification)?.name)), ...textField('access', 'detail', ...wish.access),
      ...textField('note', 'note', wish.note), ...dayField('wished-on', wish.addedOn), ...dayField('let-go', wish.letGoOn), ...amountField('garage-price', wish.garagePrice), ...amountField('price', ...wish.others.map((one) => one.priceMinor)),
    ],
  }));
}

function quoteThings(facts: Facts): readonly SearchThing[] {
  return facts.all(heldQuotes).map((quote) => ({
    kind: 'quote', id: quote.id, name: quote.by, car: quote.car, date: quote.on, href: `/ledger/quotes#quote-${quote.id}`,
    fields: [
      ...textField('quoted-by', 'name', quote.by), ...textField('quoted', 'detail', ...quote.things.map((one) => one.text)), ...textField('line', 'note', ...quote.lines.map((line) => line.text)), ...textField('note', 'note', quote.note),
      ...dayField('quoted-on', quote.on), ...dayField('valid-until', quote.validUntil), ...amountField('quoted-sum', quote.totalMinor), ...amountField('amount', ...quote.lines.map((line) => line.amountMinor)),
    ],
  }));
}
