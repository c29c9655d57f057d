import { addCar, changeCar } from './add-car.ts';
import { recordReading } from './record-reading.ts';
import { settleReading } from './settle-reading.ts';
import { changeHousehold, startHousehold } from './start-household.ts';

/** What can be asked of the fleet by name. */
export const fleetOperations = {
  'household.start': startHousehold,
  'household.change': changeHousehold,
  'car.add': addCar,
  'car.change': changeCar,
  'reading.record': recordReading,
  'reading.settle': settleReading,
} as const;
