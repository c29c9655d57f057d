import { addMeasurement } from './add-measurement.ts';
import { addMeasurements } from './add-measurements.ts';
import { changeObligation } from './change-obligation.ts';
import { confirmItem } from './confirm-item.ts';
import { addFirstTest } from './first-test.ts';
import { removeDistanceAllowance, setDistanceAllowance } from './set-distance-allowance.ts';
import { correctMeasurement } from './correct-measurement.ts';
import { addItem, changeItem } from './set-item.ts';
import { addObligation, renewObligation } from './set-obligation.ts';
import { setWearLimit } from './set-wear-limit.ts';
import { setRecall } from './set-recall.ts';
import { removeServicePlan, setServicePlan } from './set-service-plan.ts';
import { showStartingSets } from './show-starting-sets.ts';
import { startCar } from './start-car.ts';
import { startItems } from './start-items.ts';

/** What can be asked of the care by name. */
export const careOperations = {
  'item.add': addItem,
  'item.change': changeItem,
  'item.confirm': confirmItem,
  'car.start': startCar,
  'items.start': startItems,
  'starting-sets.show': showStartingSets,
  'service-plan.set': setServicePlan,
  'service-plan.remove': removeServicePlan,
  'obligation.add': addObligation,
  'obligation.change': changeObligation,
  'obligation.renew': renewObligation,
  'first-test.add': addFirstTest,
  'recall.set': setRecall,
  'allowance.set': setDistanceAllowance,
  'allowance.remove': removeDistanceAllowance,
  'measurement.add': addMeasurement,
  'measurements.add': addMeasurements,
  'measurement.correct': correctMeasurement,
  'wear-limit.set': setWearLimit,
} as const;
