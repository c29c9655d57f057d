import type { OperationName, ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Place } from './place.ts';

type Ask = <Name extends OperationName>(name: Name, request: RequestOf<Name>) => Promise<ReplyOf<Name>>;

/** Invented; each as long as a name may be, or as short. */
const NAMES = [
  'The green estate that pulls the boat and the long trailer', 'Pip', 'Grandmother’s saloon in the barn behind the orchard wall', 'Donaudampfschifffahrtswagen', 'Ox',
  'Blue van', 'The one with the dent', 'Runabout of the upper house, second key in the hall drawer', 'Finch', 'Summer car',
  'Camper that goes to the coast each June', 'Nr 12', 'Workshop pickup, borrowed on most weekends by the neighbours', 'Teal', 'Q',
];
const SETS = ['petrol', 'diesel', 'electric', 'hybrid', 'before-1980'] as const;

/** Fills a household that was just started with fifteen cars of long and short names, each with a set of items and three readings. */
export async function addManyCars(ask: Ask): Promise<void> {
  for (const [at, name] of NAMES.entries()) {
    const set = SETS[at % SETS.length] ?? 'petrol';
    const car = `car-${at}`;
    const year = 2008 + at;
    await ask('car.add', { id: car, name, power: set === 'before-1980' ? 'petrol' : set, year: set === 'before-1980' ? 1974 : year, keptSince: `${year + 1}-05-0${1 + (at % 9)}` as never });
    await ask('items.start', { car, set });
    for (const [n, date] of ['2026-01-10', '2026-06-20', '2026-11-15'].entries()) await ask('reading.record', { car, value: 40_000 + at * 9_000 + n * (1_500 + at * 310), unit: 'km', date: date as never, sure: true });
    await ask('obligation.add', { car, kind: 'insurance', name: 'insurance of the whole household with the mutual society', lastValidDay: `2027-0${1 + (at % 9)}-17` as never });
  }
}

/** The screens that change with the number of cars. */
export const MANY_CARS_PLACES: readonly Place[] = [
  { name: 'many-yard', address: '/', wide: true },
  { name: 'many-car', address: '/car/car-0' },
  { name: 'many-car-card', address: '/car/car-2/card' },
  { name: 'many-sessions', address: '/sessions' },
  { name: 'many-parts', address: '/parts' },
  { name: 'many-handover', address: '/handover' },
  { name: 'many-ledger', address: '/ledger' },
  { name: 'many-planning', address: '/settings/planning' },
  { name: 'many-papers', address: '/papers' },
];
