import { addDays } from '../calendar/local-date.ts';
import { must } from '../result/assert.ts';
import type { SampleCar } from './sample-car.ts';
import { call, LABEL_PREFIX, type SampleRequest, type SampleStep } from './sample-step.ts';

/** The data card of a sample car is filled in on one evening: when its sheet came, else the day after the car was added. */
export function cardSteps(car: SampleCar): readonly SampleStep[] {
  const on = car.cardSheet?.on ?? addDays(car.addedOn, 1);
  const figures = car.card.map(({ sheet, ...fields }) => {
    const paper = sheet ? sheetLabel(car) : null;
    return call(on, 'card.set', { ...(fields as unknown as SampleRequest), car: car.car.id, paper });
  });
  return [...sheetSteps(car), ...figures];
}

/** The services that the keeper of a sample car named. */
export function serviceSteps(car: SampleCar): readonly SampleStep[] {
  return car.services.map(({ on, ...fields }) => call(on, 'service-plan.set', { ...(fields as SampleRequest), car: car.car.id }));
}

function sheetSteps({ car, cardSheet }: SampleCar): readonly SampleStep[] {
  if (cardSheet === undefined) return [];
  const { on, ...sheet } = cardSheet;
  return [{
    on,
    operation: 'paper.keep',
    label: labelOf(car.id),
    request: { name: `${sheet.heading}, ${car.name}.pdf`, draw: { kind: 'certificate', ...sheet, date: on, car: car.name, odometer: null } },
  }];
}

function sheetLabel({ car, cardSheet }: SampleCar): string {
  must(cardSheet, `sheet of ${car.id}`);
  return labelOf(car.id);
}

function labelOf(car: string): string {
  return `${LABEL_PREFIX}${car}-sheet`;
}
