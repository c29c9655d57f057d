import { METRES_IN } from '../../shared-core/units/distance.ts';
import type { CarView } from '../../shared-core/views/car-view.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { tell } from '../ui/words/tell.ts';

/** What is known of a car, as short facts. */
export function carFacts({ car, vinChecks }: Pick<CarView, 'car' | 'vinChecks'>, words: HouseholdWords): readonly string[] {
  const facts: (string | null)[] = [
    [car.description, car.year].filter((part) => part !== null).join(', ') || null,
    tell(`power.${car.power}`),
    tell(`use.${car.use}`),
    car.registration,
    car.vin === null ? null : tell('car.vin', { vin: car.vin }) + (vinChecks === false ? ` (${tell('car.vin-odd')})` : ''),
    car.firstRegistered === null ? null : tell('car.first-registered', { date: words.date(car.firstRegistered) }),
    car.keptSince === null ? null : tell('car.kept-since', { date: words.date(car.keptSince) }),
    car.laidUpMonths.length === 0 ? null : tell('car.laid-up', { months: monthRuns(car.laidUpMonths, words) }),
    car.severeUse === 1 ? null : tell('car.severe', { percent: Math.round(car.severeUse * 100) }),
  ];
  return facts.filter((fact) => fact !== null);
}

/** Months as runs: 'Nov to Mar'. */
export function monthRuns(months: readonly number[], words: HouseholdWords): string {
  const before = (month: number) => (month === 1 ? 12 : month - 1);
  const after = (month: number) => (month === 12 ? 1 : month + 1);
  const starts = months.filter((month) => !months.includes(before(month)));
  const name = (month: number) => words.monthName(`2026-${String(month).padStart(2, '0')}-01`);
  return starts
    .map((start) => {
      let end = start;
      while (months.includes(after(end)) && after(end) !== start) end = after(end);
      return start === end ? name(start) : tell('due.months', { from: name(start), to: name(end) });
    })
    .join(', ');
}

/** How far the car goes in a year, in its own unit; null while nothing was read. */
export function usageWords({ usage, car }: Pick<CarView, 'usage' | 'car'>, words: HouseholdWords): string | null {
  if (usage === null) return null;
  const value = Math.round((usage.kmAYear * 1000) / METRES_IN[car.unit] / 100) * 100;
  const distance = words.distance(value, car.unit);
  return tell(usage.prior === 'declared' ? 'car.usage-declared' : usage.prior === 'declared-set-aside' ? 'car.usage-set-aside' : 'car.usage-generic', { distance });
}
