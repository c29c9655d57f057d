import { fromDayNumber, dayNumber } from '../../../shared-core/calendar/local-date.ts';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { obligationSet } from '../../../shared-core/care/obligation.ts';
import { renewalRecorded } from '../../../shared-core/care/renewal.ts';
import { serviceItemSet } from '../../../shared-core/care/service-item.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { carSet } from '../../../shared-core/fleet/car.ts';
import { householdSet } from '../../../shared-core/fleet/household.ts';
import { readingRecorded } from '../../../shared-core/fleet/reading.ts';
import { newEntry, type NewEntry } from '../../../shared-core/journal/entry-kind.ts';
import type { Facts } from '../../../shared-core/journal/facts.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { offerSet } from '../../../shared-core/parts/offer.ts';
import { partSet } from '../../../shared-core/parts/part.ts';
import { specificationSet } from '../../../shared-core/parts/specification.ts';
import { supplierSet } from '../../../shared-core/parts/supplier.ts';
import { workRecorded } from '../../../shared-core/records/work-record.ts';
import { metresFromKilometres } from '../../../shared-core/units/distance.ts';
import { ASKED_ON, WRITTEN_FROM, type SimulatedLife, type SimulatedThing } from './simulated-life.ts';

/** What a simulated household has written down by the day on which it asks: cars, readings, what is due, records and renewals with what was paid. */
export function factsOf(life: SimulatedLife): Facts {
  const asked = dayNumber(ASKED_ON);
  const entries: NewEntry[] = [
    newEntry(householdSet, { id: 'household', name: 'Simulated', currency: 'GBP', unit: 'km', hemisphere: 'north', locale: 'en-GB', sample: false }),
    newEntry(supplierSet, { id: 'shop', name: 'A shop', deliveryMinor: 0, freeFromMinor: null, minimumMinor: 0, leadDays: 3 }),
    ...life.cars.map(({ id, registered }) => newEntry(carSet, { id, name: id, description: null, power: 'petrol', year: null, firstRegistered: fromDayNumber(registered), keptSince: null, unit: 'km', vin: null, registration: null, use: 'everyday', declaredAYear: null, laidUpMonths: [], severeUse: 1 })),
    ...life.seen.map(({ car, day: on, km }, at) => newEntry(readingRecorded, { id: `r${at}`, car, date: fromDayNumber(on), typed: { value: km, unit: 'km' }, shown: metresFromKilometres(km), instrument: null, source: 'keeper', paper: null, note: '', standing: 'accepted', doubt: null, sure: false })),
    ...life.things.flatMap((thing) => (thing.duty ? dutyEntries(life, thing, asked) : itemEntries(thing))),
    ...recordEntries(life, asked),
  ];
  return memoryFacts(entryKinds, entries.map((entry, seq) => ({ ...entry, seq, at: `${ASKED_ON}T12:00:00.000Z` })));
}

function itemEntries({ id, car, months, km, place, parts, enteredMinor }: SimulatedThing): readonly NewEntry[] {
  const limit = { months, distance: km === null ? null : { value: km, unit: 'km' as const } };
  const item = newEntry(serviceItemSet, {
    id, car, name: id, work: 'replace', harm: 'damage', interval: { first: limit, repeat: limit }, anchor: { kind: 'completion' }, history: 'never-done', printedDate: null, source: null, confirmed: true, minutes: null,
    access: [], needs: parts ? [{ specification: id, quantity: 1 }] : [], place, garagePrice: place === 'garage' ? enteredMinor : null, measure: null,
  });
  if (!parts || enteredMinor === null) return [item];
  return [
    newEntry(specificationSet, { id, name: id, asks: [], fluid: null, mix: false, unit: 'each', step: 1, note: '' }),
    newEntry(partSet, { id, name: id, number: null, meets: [id], stated: [], keepsOpenedDays: null, contains: [] }),
    newEntry(offerSet, { id, supplier: 'shop', part: id, number: null, quantity: 1, priceMinor: enteredMinor, taxAdded: null, depositMinor: 0, most: null, breaks: [], seenOn: ASKED_ON, withdrawnOn: null }),
    item,
  ];
}

/** A duty as its last renewal left it, with what each renewal since the household began cost. */
function dutyEntries({ paid }: SimulatedLife, { id, car, months, enteredMinor }: SimulatedThing, asked: number): readonly NewEntry[] {
  const term = months ?? 12;
  const mine = paid.filter((one) => one.things.includes(id));
  const next = fromDayNumber(mine.find((one) => one.day >= asked)?.day ?? asked);
  return [
    newEntry(obligationSet, { id, car, kind: id.endsWith('test') ? 'roadworthiness-test' : id.endsWith('tax') ? 'road-tax' : 'insurance', name: null, lastValidDay: next, months: term, keepsDate: true, noticeDays: 30, price: enteredMinor }),
    ...mine.filter((one) => one.day < asked && one.day >= WRITTEN_FROM).map((one, at) => newEntry(renewalRecorded, { id: `${id}-${at}`, car, obligation: id, on: fromDayNumber(one.day), lastValidDay: addMonths(fromDayNumber(one.day), term), paidMinor: one.minor, reference: null, papers: [] })),
  ];
}

/** What was done before the household began stands as written from memory, without what it cost; repairs from then nobody remembers. */
function recordEntries({ paid, things }: SimulatedLife, asked: number): readonly NewEntry[] {
  const items = new Map(things.filter((one) => !one.duty).map((one) => [one.id, one]));
  return paid.filter((one) => one.day < asked && one.things.every((id) => items.has(id)) && (one.day >= WRITTEN_FROM || one.things.length > 0)).map((one, at) => {
    const written = one.day >= WRITTEN_FROM;
    const lines = one.things.length === 0 ? [{ item: null, name: 'a repair' }] : one.things.map((id) => ({ item: id, name: id }));
    const place = one.things.length === 0 ? 'garage' : (items.get(one.things[0] ?? '')?.place ?? 'garage');
    return newEntry(workRecorded, {
      id: `w${at}`, car: one.car, date: fromDayNumber(one.day), title: one.things[0] ?? 'a repair', place, placeName: null, doneBy: null, approvedBy: null, reference: null, method: null, reading: null,
      lines: lines.map((line) => ({ ...line, work: 'replace' as const, outcome: 'done' as const, minutes: null, note: '' })),
      costs: written ? [{ kind: 'parts' as const, text: 'paid', amountMinor: one.minor }] : [], printedTotalMinor: null, lotsUsed: [], papers: [], note: '', reconstructed: !written,
    });
  });
}

