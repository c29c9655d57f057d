import type { LocalDate } from '../calendar/local-date.ts';
import { measurements } from '../care/measurement.ts';
import { recalls, settledOn } from '../care/recall.ts';
import { renewals } from '../care/renewal.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { readings } from '../fleet/reading.ts';
import type { Facts } from '../journal/facts.ts';
import { observationsWithPapers, recordsWithPapers, tiedTo } from '../records/tied-papers.ts';

/**
 * The ids of a car's papers, each once, in order of the date they belong to: of its work records, of what was seen, of the
 * renewals, of the readings and of what was measured; those tied to any of these among them. Where only some days are shown, of those.
 */
export function papersOfCar(facts: Facts, car: string, isShown: (date: LocalDate) => boolean = () => true): readonly string[] {
  const held: { readonly date: LocalDate; readonly papers: readonly string[] }[] = [
    ...recordsWithPapers(facts, car),
    ...observationsWithPapers(facts, car),
    ...facts.ofCar(renewals, car).map((renewal) => ({ date: renewal.on, papers: renewal.papers })),
    ...facts.ofCar(readings, car).map((reading) => ({ date: reading.date, papers: reading.paper === null ? [] : [reading.paper] })),
    ...facts.ofCar(measurements, car).map((one) => ({ date: one.date, papers: one.paper === null ? [] : [one.paper] })),
  ];
  const dated = held.filter((one) => isShown(one.date)).sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)).flatMap((one) => one.papers);
  // Sheets that figures of the data card stand on, letters of recalls that are not done, and what is tied to an obligation or to the whole car have no day of their own.
  const recallsShown = facts.ofCar(recalls, car).filter((recall) => {
    const day = settledOn(recall);
    return day === null || isShown(day);
  });
  const sheets = [...facts.ofCar(cardFigures, car).flatMap((figure) => figure.paper ?? []), ...recallsShown.flatMap((recall) => recall.papers)];
  const others = (['obligation', 'car'] as const).flatMap((kind) => [...tiedTo(facts, car, kind).values()].flat());
  return [...new Set([...dated, ...sheets, ...others])];
}
