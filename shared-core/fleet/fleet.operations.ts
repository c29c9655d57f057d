import { addCar, changeCar } from './add-car.ts';
import { correctInstrument } from './correct-instrument.ts';
import { moveWheels } from './move-wheels.ts';
import { recordReading } from './record-reading.ts';
import { clearCardFigure, setCardFigure } from './set-card-figure.ts';
import { removeLayUp, setLayUp } from './set-lay-up.ts';
import { removeUseChange, setUseChange } from './set-use-change.ts';
import { addWheel, changeWheel } from './set-wheel.ts';
import { settleReading } from './settle-reading.ts';
import { changeHousehold, startHousehold } from './start-household.ts';

/** What can be asked of the fleet by name. */
export const fleetOperations = {
  'household.start': startHousehold,
  'household.change': changeHousehold,
  'car.add': addCar,
  'car.change': changeCar,
  'card.set': setCardFigure,
  'card.clear': clearCardFigure,
  'reading.record': recordReading,
  'reading.settle': settleReading,
  'instrument.correct': correctInstrument,
  'lay-up.set': setLayUp,
  'lay-up.remove': removeLayUp,
  'use-change.set': setUseChange,
  'use-change.remove': removeUseChange,
  'wheel.add': addWheel,
  'wheel.change': changeWheel,
  'wheel.move': moveWheels,
} as const;
