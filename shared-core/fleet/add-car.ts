import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { LAST_DATE } from '../calendar/local-date.ts';
import { carSchema, carSet, cars, type Car } from './car.ts';
import { instrumentOn } from './continuous-distance.ts';
import { findCar, findHousehold, sameName } from './find-car.ts';
import { instruments } from './instrument.ts';

const shape = carSchema.shape;
const addRequest = z.strictObject({
  id: shape.id.optional(),
  name: shape.name,
  description: shape.description.default(null),
  power: shape.power.default('petrol'),
  year: shape.year.default(null),
  firstRegistered: shape.firstRegistered.default(null),
  keptSince: shape.keptSince.default(null),
  unit: shape.unit.optional(),
  vin: shape.vin.default(null),
  registration: shape.registration.default(null),
  use: shape.use.default('everyday'),
  declaredAYear: shape.declaredAYear.default(null),
  laidUpMonths: shape.laidUpMonths.default([]),
  severeUse: shape.severeUse.default(1),
});

/** Adds a car; its unit is the household's unless given. */
export const addCar = change({
  request: addRequest,
  reply: z.object({ car: carSchema }),
  decide: (facts, request, moment) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const car: Car = { ...request, id: request.id ?? moment.newId(), unit: request.unit ?? household.value.unit };
    if (facts.get(cars, car.id) !== null) return refuse('id-taken', { id: car.id }, ['id']);
    const sound = checkCar(facts, car, moment.today);
    return sound.ok ? ok({ entries: [newEntry(carSet, car)], reply: { car } }) : sound;
  },
});

const changeRequest = z.strictObject({ ...carSchema.partial().shape, id: shape.id });

/** Changes what is known of a car: only the fields given. */
export const changeCar = change({
  request: changeRequest,
  reply: z.object({ car: carSchema }),
  decide: (facts, request, moment) => {
    const now = findCar(facts, request.id);
    if (!now.ok) return now;
    // A car may be found by its name: the id stays its own.
    const car = carSchema.parse({ ...now.value, ...request, id: now.value.id });
    const shown = checkUnit(facts, car, now.value);
    const sound = shown.ok ? checkCar(facts, car, moment.today) : shown;
    return sound.ok ? ok({ entries: [newEntry(carSet, car)], reply: { car } }) : sound;
  },
});

/** A car is told of in what its odometer shows: once an instrument was replaced, that is the unit of the present one. */
function checkUnit(facts: Facts, car: Car, before: Car): Result<Car> {
  const present = instrumentOn(facts.ofCar(instruments, car.id), LAST_DATE);
  if (present === null || car.unit === before.unit || car.unit === present.unit) return ok(car);
  return refuse('unit-of-instrument', { date: present.date, unit: present.unit }, ['unit']);
}

/** What must hold between the fields of a car, and between cars. */
function checkCar(facts: Facts, car: Car, today: string): Result<Car> {
  const { firstRegistered, keptSince } = car;
  if (firstRegistered !== null && firstRegistered > today) return refuse('date-in-future', { date: firstRegistered }, ['firstRegistered']);
  if (keptSince !== null && firstRegistered !== null && keptSince < firstRegistered) return refuse('kept-before-registered', { date: keptSince }, ['keptSince']);
  const twin = facts.all(cars).find((other) => other.id !== car.id && sameName(other.name, car.name));
  return twin === undefined ? ok(car) : refuse('car-name-taken', { name: car.name }, ['name']);
}
