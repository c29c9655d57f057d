import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';
import { diceOf, type Dice } from '../parts/order-seeds.ts';

/** The day on which every seeded household plans. */
export const PLAN_TODAY = day('2026-11-25');

/** A household from a seed: two or three cars with items late, due and ahead, tests, places with habits and holidays, access, and now and then a kept session. */
export function seededHousehold(seed: number): MemoryHousehold {
  const dice = diceOf(seed);
  const household = memoryHousehold({ unit: 'km' });
  const cars = Array.from({ length: dice.whole(2, 3) }, (_, at) => `car-${at}`);
  addPlaces(household, dice);
  for (const car of cars) addCar(household, dice, car);
  household.must('plan-settings.set', { horizonDays: dice.whole(25, 45), workWeekdays: dice.one([[6, 7], [6], [3, 6, 7]]), preferredMinutesADay: dice.one([null, 120, 200]) });
  if (dice.chance(50)) household.must('car-days.set', { car: dice.one(cars), from: from(dice, 0, 20), why: dice.one(['needed', 'away']) });
  if (dice.chance(40)) household.call('session.keep', { sessions: [{ day: from(dice, 1, 20), place: 'home', tasks: [{ kind: 'item', id: `${dice.one(cars)}-item-0` }] }] });
  return household;
}

function from(dice: Dice, low: number, high: number): LocalDate {
  return addDays(PLAN_TODAY, dice.whole(low, high));
}

function addPlaces(household: MemoryHousehold, dice: Dice): void {
  household.must('place.set', { name: 'Home', kind: 'home', openingMinor: dice.whole(0, 2500), minutesADay: dice.whole(90, 320), minuteMinor: dice.one([0, 0, 5]) });
  household.must('place.set', { id: 'works', name: 'Works', kind: 'garage', openingMinor: dice.whole(500, 4000), minutesADay: dice.whole(120, 480), noticeDays: dice.whole(0, 10), closedWeekdays: dice.one([[6, 7], [7], [1, 6, 7]]) });
  if (dice.chance(50)) household.must('place-days.set', { place: dice.one(['home', 'works']), from: from(dice, 3, 15), to: from(dice, 15, 18), reason: 'holiday' });
}

function addCar(household: MemoryHousehold, dice: Dice, car: string): void {
  household.must('car.add', { id: car, name: car, firstRegistered: day('2019-03-04'), use: dice.chance(70) ? 'everyday' : 'hobby' });
  for (const [ago, km] of [[700, 0], [400, 9000], [150, 16_000], [20, 20_000]] as const) household.must('reading.record', { car, date: addDays(PLAN_TODAY, -ago), value: 40_000 + km + dice.whole(0, 900), sure: true });
  household.must('access.set', { car, name: 'wheels off', minutes: dice.whole(10, 60) });
  for (let at = 0; at < dice.whole(2, 4); at += 1) addItem(household, dice, car, `${car}-item-${at}`);
  if (dice.chance(60)) household.must('obligation.add', { id: `${car}-test`, car, kind: 'roadworthiness-test', lastValidDay: from(dice, 18, 90), keepsDate: true, price: dice.whole(0, 6000) });
}

/** Done some time ago, so that it is late, due or ahead. */
function addItem(household: MemoryHousehold, dice: Dice, car: string, id: string): void {
  const interval = { repeat: { months: dice.one([6, 12, 24]), distance: dice.chance(40) ? { value: 10_000, unit: 'km' as const } : null } };
  const place = dice.one(['home', 'either', 'either', 'garage'] as const);
  household.must('item.add', { id, car, name: id, harm: dice.one(['safety', 'damage', 'comfort']), interval, minutes: dice.whole(10, 80), place, access: dice.chance(50) ? ['wheels off'] : [], garagePrice: dice.chance(80) ? dice.whole(2000, 30_000) : null });
  household.must('record.add', { id: `${id}-done`, car, date: addDays(PLAN_TODAY, -dice.whole(30 * interval.repeat.months - 60, 30 * interval.repeat.months + 120)), lines: [{ item: id }] });
}
