import type { Car } from '../fleet/car.ts';
import { yearOf } from '../calendar/local-date.ts';
import { disposalsInOrder, type Disposal } from './disposal.ts';
import { inOrder, type Hazard } from './hazard.ts';
import { sheetFor, type StartingSheet } from './starting-sheet.ts';
import type { TaskSheet } from './task-sheet.ts';

/** A car from before this year may have asbestos in linings that were never changed: a bound of ours; bans fell before it in most of Europe (from memory). */
const FIRST_YEAR_WITHOUT_ASBESTOS = 2000;

/** What of a car says which hazards it adds. */
export type HazardCar = Pick<Car, 'power' | 'year' | 'firstRegistered'>;

/**
 * The hazards of a task, the gravest first: those of its sheet and its steps, and those of the starting sheet that its name calls for,
 * so that a sheet of the keeper's own takes no caution away. An older car's brakes count as having old linings.
 */
export function hazardsOf(car: HazardCar, name: string, sheet: TaskSheet | null): readonly Hazard[] {
  const hazards = sheetsOf(car, name, sheet).flatMap((from) => [...from.hazards, ...from.steps.flatMap((step) => step.hazards)]);
  const year = car.year ?? (car.firstRegistered === null ? null : yearOf(car.firstRegistered));
  const isOld = year !== null && year < FIRST_YEAR_WITHOUT_ASBESTOS;
  return inOrder(isOld && hazards.includes('brakes') ? [...hazards, 'old-linings'] : hazards);
}

/** What is left over of a task and belongs to an authorised place: as its own steps have it, and those of the starting sheet that its name calls for. */
export function disposalOf(car: HazardCar, name: string, sheet: TaskSheet | null): readonly Disposal[] {
  return disposalsInOrder(sheetsOf(car, name, sheet).flatMap((from) => from.steps.flatMap((step) => step.disposal)));
}

function sheetsOf(car: HazardCar, name: string, sheet: TaskSheet | null): readonly (TaskSheet | StartingSheet)[] {
  return [sheet, sheetFor(name, car)].filter((one) => one !== null);
}

/** Whether a car has high voltage, whatever is done on it. */
export function hasHighVoltage(car: HazardCar): boolean {
  return car.power === 'electric' || car.power === 'hybrid';
}
