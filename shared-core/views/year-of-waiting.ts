import type { LocalDate } from '../calendar/local-date.ts';
import { carsHere } from '../fleet/departure.ts';
import type { Facts } from '../journal/facts.ts';
import { planSettings } from '../sessions/plan-settings.ts';
import { careOf } from './car-care.ts';
import type { LedgerView } from './ledger-view-schema.ts';
import { leadTimes } from './notice-days.ts';

const DAYS_A_YEAR = 365;

/**
 * What a further year of waiting counts for each thing that is late, by what a day late counts for the household: the plan's own rates, and
 * no money that anybody pays. The dearest first.
 */
export function yearOfWaiting(facts: Facts, today: LocalDate): LedgerView['waiting'] {
  const { lateMinorADay } = planSettings(facts).settings;
  const leads = leadTimes(facts);
  const late = carsHere(facts).flatMap((car) => careOf(facts, car, today, leads).items.filter((one) => one.window.state === 'late').map(({ item }) => ({
    car: car.id, carName: car.name, item: item.id, name: item.name, harm: item.harm, aYearMinor: lateMinorADay[item.harm] * DAYS_A_YEAR,
  })));
  return late.sort((a, b) => b.aYearMinor - a.aYearMinor || (a.carName === b.carName ? (a.name < b.name ? -1 : 1) : a.carName < b.carName ? -1 : 1));
}
