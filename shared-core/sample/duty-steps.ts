import type { LocalDate } from '../calendar/local-date.ts';
import type { SampleCar } from './sample-car.ts';
import type { SampleRecall } from './sample-duties.ts';
import { call, LABEL_PREFIX, type PaperStep, type SampleRequest, type SampleStep } from './sample-step.ts';

/** The distance allowances and recalls of a sample car; of each recall the letter is kept, and the sheet of what was done. */
export function dutySteps(car: SampleCar): readonly SampleStep[] {
  const allowances = car.allowances.map(({ on, ...fields }) => call(on, 'allowance.set', { ...(fields as SampleRequest), car: car.car.id }));
  return [...allowances, ...car.recalls.flatMap((recall) => recallSteps(car, recall))];
}

function recallSteps({ car }: SampleCar, { on, done, nextOn, ...about }: SampleRecall): readonly SampleStep[] {
  const letter = paperStep(car.name, on, 'letter', about.id, about.number, [`${about.what}.`, 'Please have your car seen to, free of charge.']);
  const stated = { ...about, car: car.id, papers: [letter.label] };
  if (done === undefined) return [letter, call(on, 'recall.set', { ...stated, nextOn })];
  const { on: doneOn, ...how } = done;
  const sheet = paperStep(car.name, doneOn, 'sheet', about.id, about.number, [`${how.how}.`]);
  return [letter, call(on, 'recall.set', stated), sheet, call(doneOn, 'recall.set', { ...stated, ...how, doneOn, nextOn, papers: [letter.label, sheet.label] })];
}

function paperStep(car: string, on: LocalDate, kind: 'letter' | 'sheet', recall: string, number: string, statements: readonly string[]): PaperStep {
  return {
    on,
    operation: 'paper.keep',
    label: `${LABEL_PREFIX}${recall}-${kind}`,
    request: { name: `${on} recall ${number}, ${kind}, ${car}.pdf`, draw: { kind: 'certificate', heading: `Recall ${number}`, number: `${number}-${kind}`, date: on, car, odometer: null, statements } },
  };
}
