import { isOnce } from '../care/limit.ts';
import { obligations } from '../care/obligation.ts';
import { recalls } from '../care/recall.ts';
import { renewals } from '../care/renewal.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { cars, type Car } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import { knownFigure } from '../fleet/known-figures.ts';
import { readings } from '../fleet/reading.ts';
import type { Facts } from '../journal/facts.ts';
import { wishes } from '../ledger/wish.ts';
import { specifications } from '../parts/specification.ts';
import { observations } from '../records/observation.ts';
import { workRecords } from '../records/work-record.ts';
import { say } from '../result/words/say.ts';
import { followUps } from '../work/follow-up.ts';
import { valueText } from './figure-text.ts';
import { obligationTitle } from './paper-uses.ts';
import { amountField, dayField, textField, type SearchThing } from './search-thing.ts';

/** The cars, those that left among them, and all that stands under a car. */
export function thingsOfCars(facts: Facts): readonly SearchThing[] {
  return [...facts.all(cars).map((car) => carThing(facts, car)), ...itemThings(facts), ...dutyThings(facts), ...recallThings(facts), ...recordThings(facts), ...seenThings(facts), ...figureThings(facts)];
}

function carThing(facts: Facts, car: Car): SearchThing {
  const left = facts.get(departures, car.id);
  return {
    kind: 'car', id: car.id, name: car.name, car: car.id, date: left?.on ?? null, href: `/car/${car.id}`,
    fields: [
      ...textField('name', 'name', car.name), ...textField('registration', 'number', car.registration), ...textField('vin', 'number', car.vin),
      ...textField('description', 'detail', car.description), ...textField('year', 'detail', car.year === null ? null : String(car.year)), ...textField('power', 'detail', say({ key: `search-power-${car.power}`, values: {} })),
      ...dayField('registered', car.firstRegistered), ...dayField('kept-since', car.keptSince),
      ...(left === null ? [] : [...dayField(`left-${left.how}`, left.on), ...textField('buyer', 'detail', left.buyer), ...textField('note', 'note', left.note), ...amountField('price', left.priceMinor)]),
    ],
  };
}

function itemThings(facts: Facts): readonly SearchThing[] {
  const planned = new Set(facts.all(wishes).map((wish) => wish.item));
  // What a wish is planned by is found as the wish.
  return facts.all(serviceItems).filter((item) => !planned.has(item.id)).map((item) => ({
    kind: 'item', id: item.id, name: item.name, car: item.car, date: null, href: isListed(item) ? `/car/${item.car}#item-${item.id}` : `/car/${item.car}/sheet/${item.id}`,
    fields: [
      ...textField('name', 'name', item.name), ...textField('needs', 'detail', ...item.needs.map((need) => facts.get(specifications, need.specification)?.name)), ...textField('access', 'detail', ...item.access),
      ...textField('measured', 'detail', item.measure?.name), ...textField('source', 'note', item.source), ...dayField('printed-date', item.printedDate), ...amountField('garage-price', item.garagePrice),
    ],
  }));
}

/** What is done once, and has no limit, stands in no window: it has its job sheet alone. */
function isListed({ interval, printedDate, measure }: ServiceItem): boolean {
  return !isOnce(interval) || printedDate !== null || measure !== null;
}

function dutyThings(facts: Facts): readonly SearchThing[] {
  const met = facts.all(renewals);
  return facts.all(obligations).map((duty) => {
    const renewed = met.filter((one) => one.obligation === duty.id);
    return {
      kind: 'obligation', id: duty.id, name: obligationTitle(facts, duty.id), car: duty.car, date: duty.lastValidDay, href: `/car/${duty.car}#obligation-${duty.id}`,
      fields: [
        ...textField('name', 'name', obligationTitle(facts, duty.id)), ...textField('what', 'detail', say({ key: `obligation-${duty.kind}`, values: {} })), ...dayField('last-valid', duty.lastValidDay), ...amountField('price', duty.price),
        ...renewed.flatMap((one) => [...textField('renewal-reference', 'number', one.reference), ...dayField('renewed', one.on), ...amountField('paid', one.paidMinor)]),
      ],
    };
  });
}

function recallThings(facts: Facts): readonly SearchThing[] {
  return facts.all(recalls).map((recall) => ({
    kind: 'recall', id: recall.id, name: recall.what, car: recall.car, date: recall.doneOn ?? recall.nextOn, href: `/car/${recall.car}#recall-${recall.id}`,
    fields: [...textField('name', 'name', recall.what), ...textField('number', 'number', recall.number), ...textField('done-how', 'detail', recall.how), ...textField('done-by', 'detail', recall.doneBy), ...dayField('done', recall.doneOn), ...dayField('next', recall.nextOn)],
  }));
}

function recordThings(facts: Facts): readonly SearchThing[] {
  return facts.all(workRecords).map((record) => {
    const reading = record.reading === null ? null : facts.get(readings, record.reading);
    return {
      kind: 'record', id: record.id, name: record.title, car: record.car, date: record.date, href: `/car/${record.car}/record/${record.id}`,
      fields: [
        ...textField('title', 'name', record.title), ...textField('line', 'detail', ...record.lines.map((line) => line.name)), ...textField('reference', 'number', record.reference),
        ...textField('place', 'detail', record.placeName), ...textField('done-by', 'detail', record.doneBy), ...textField('approved-by', 'detail', record.approvedBy), ...textField('method', 'detail', record.method),
        ...textField('reading', 'detail', reading === null ? null : `${reading.typed.value} ${reading.typed.unit}`), ...textField('cost', 'detail', ...record.costs.map((cost) => cost.text)),
        ...textField('line-note', 'note', ...record.lines.map((line) => line.note)), ...textField('note', 'note', record.note), ...dayField('day', record.date),
        ...amountField('amount', ...record.costs.map((cost) => cost.amountMinor)), ...amountField('printed-total', record.printedTotalMinor),
      ],
    };
  });
}

function seenThings(facts: Facts): readonly SearchThing[] {
  return [
    ...facts.all(observations).map((seen): SearchThing => ({
      kind: 'observation', id: seen.id, name: seen.text, car: seen.car, date: seen.date, href: `/car/${seen.car}#observation-${seen.id}`,
      fields: [...textField('seen', 'name', seen.text), ...dayField('seen-on', seen.date), ...dayField('look-again', seen.recheckOn), ...dayField('settled', seen.closedOn)],
    })),
    ...facts.all(followUps).map((one): SearchThing => ({
      kind: 'follow-up', id: one.id, name: one.text, car: one.car, date: one.doneOn ?? one.dueOn, href: `/car/${one.car}#follow-up-${one.id}`,
      fields: [...textField('look-at', 'name', one.text), ...textField('note', 'note', one.note, ...(one.putOff ?? []).map((off) => off.note)), ...dayField('look-again', one.dueOn), ...dayField('done', one.doneOn)],
    })),
  ];
}

function figureThings(facts: Facts): readonly SearchThing[] {
  return facts.all(cardFigures).map((figure) => {
    const name = figure.name ?? knownFigure(figure.key)?.name ?? figure.key;
    return {
      kind: 'figure', id: figure.id, name, car: figure.car, date: null, href: `/car/${figure.car}/card#figure-${figure.key}`,
      fields: [...textField('name', 'name', name), ...textField('value', 'detail', valueText(figure.value)), ...textField('source', 'note', figure.source), ...textField('note', 'note', figure.note)],
    };
  });
}
