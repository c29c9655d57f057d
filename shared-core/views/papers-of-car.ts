import type { LocalDate } from '../calendar/local-date.ts';
import { measurements } from '../care/measurement.ts';
import { recalls } from '../care/recall.ts';
import { renewals } from '../care/renewal.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { readings } from '../fleet/reading.ts';
import type { Facts } from '../journal/facts.ts';
import { observations } from '../records/observation.ts';
import { workRecords } from '../records/work-record.ts';

/**
 * The ids of a car's papers, each once, in order of the date they belong to: of its work records, of what was seen, of the
 * renewals, of the readings and of what was measured.
 */
export function papersOfCar(facts: Facts, car: string): readonly string[] {
  const held: { readonly date: LocalDate; readonly papers: readonly string[] }[] = [
    ...facts.ofCar(workRecords, car),
    ...facts.ofCar(observations, car),
    ...facts.ofCar(renewals, car).map((renewal) => ({ date: renewal.on, papers: renewal.papers })),
    ...facts.ofCar(readings, car).map((reading) => ({ date: reading.date, papers: reading.paper === null ? [] : [reading.paper] })),
    ...facts.ofCar(measurements, car).map((one) => ({ date: one.date, papers: one.paper === null ? [] : [one.paper] })),
  ];
  const dated = held.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)).flatMap((one) => one.papers);
  // Sheets that figures of the data card stand on, and letters of recalls, have no day of their own.
  const sheets = [...facts.ofCar(cardFigures, car).flatMap((figure) => figure.paper ?? []), ...facts.ofCar(recalls, car).flatMap((recall) => recall.papers)];
  return [...new Set([...dated, ...sheets])];
}
