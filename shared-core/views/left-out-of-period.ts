import type { LocalDate } from '../calendar/local-date.ts';
import { measurements } from '../care/measurement.ts';
import { recalls, settledOn } from '../care/recall.ts';
import { renewals } from '../care/renewal.ts';
import { readings } from '../fleet/reading.ts';
import type { LeftOut } from '../handover/left-out.ts';
import type { Facts } from '../journal/facts.ts';
import { observations } from '../records/observation.ts';
import { workRecords } from '../records/work-record.ts';
import { followUps } from '../work/follow-up.ts';
import { papersOfCar } from './papers-of-car.ts';

/** How much of a car's history is of days that are not shown. */
export function leftOutOfPeriod(facts: Facts, car: string, isShown: (date: LocalDate) => boolean): LeftOut {
  const hidden = (dates: readonly (LocalDate | null)[]) => dates.filter((date) => date !== null && !isShown(date)).length;
  return {
    records: hidden(facts.ofCar(workRecords, car).map((one) => one.date)),
    readings: hidden(facts.ofCar(readings, car).map((one) => one.date)),
    measurements: hidden(facts.ofCar(measurements, car).map((one) => one.date)),
    observations: hidden(facts.ofCar(observations, car).map((one) => one.date)),
    followUps: hidden(facts.ofCar(followUps, car).map((one) => one.madeOn)),
    renewals: hidden(facts.ofCar(renewals, car).map((one) => one.on)),
    recalls: hidden(facts.ofCar(recalls, car).map(settledOn)),
    papers: papersOfCar(facts, car).length - papersOfCar(facts, car, isShown).length,
  };
}
