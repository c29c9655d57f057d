import { yearOf } from '../calendar/local-date.ts';
import { cardSteps, serviceSteps } from './card-steps.ts';
import { dutySteps } from './duty-steps.ts';
import { obligationSteps } from './obligation-steps.ts';
import { readingSteps } from './reading-steps.ts';
import { followUpSteps, observationSteps, recordSteps } from './record-steps.ts';
import type { SampleCar } from './sample-car.ts';
import { sampleInstrument } from './sample-instrument.ts';
import { call, type SampleRequest, type SampleStep } from './sample-step.ts';
import { wearSteps } from './wear-steps.ts';

/** What every interval of the sample says of where it comes from: nothing here is claimed of a real car. */
const SOURCE = 'sample figure';

/** Everything done for one car of the sample; steps of one day stand in the order in which they must be done. */
export function carSteps(car: SampleCar, currency: string): readonly SampleStep[] {
  const instrument = sampleInstrument(car);
  const about = { year: yearOf(car.car.firstRegistered), ...(car.car as unknown as SampleRequest) };
  const items = car.items.map((item) => call(car.addedOn, 'item.add', { source: SOURCE, ...(item as SampleRequest), car: car.car.id }));
  return [
    call(car.addedOn, 'car.add', about),
    ...items,
    ...readingSteps(car, instrument),
    ...useSteps(car),
    ...wearSteps(car),
    ...obligationSteps(car, instrument),
    ...dutySteps(car),
    ...recordSteps(car, currency, instrument),
    ...observationSteps(car),
    ...followUpSteps(car),
    ...cardSteps(car),
    ...serviceSteps(car),
  ];
}

/** When the car rests outside its months of rest, and from when it is used otherwise. */
function useSteps({ car, layUps, useChanges }: SampleCar): readonly SampleStep[] {
  const step = (operation: 'lay-up.set' | 'use-change.set') => ({ on, ...fields }: SampleCar['layUps'][number]) => call(on, operation, { ...(fields as SampleRequest), car: car.id });
  return [...layUps.map(step('lay-up.set')), ...useChanges.map(step('use-change.set'))];
}
