import { serviceItems } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { knownFigure, type FigureKind } from '../fleet/known-figures.ts';
import type { Facts } from '../journal/facts.ts';
import { figuresOf } from '../work/figure-refs.ts';
import { taskSheets } from '../work/task-sheet.ts';

/** A figure of the keeper's own that sheets of a car name, and its data card does not hold. */
export interface WantedFigure {
  readonly key: string;
  readonly name: string;
  /** What it must be where it is named; null: anything. */
  readonly kind: FigureKind | null;
  /** The items whose sheets name it. */
  readonly items: readonly { readonly item: string; readonly name: string }[];
}

/** The keeper's own figures that the sheets of a car want and its card lacks, each once. */
export function ownWanted(facts: Facts, car: string): readonly WantedFigure[] {
  const entered = new Set(facts.ofCar(cardFigures, car).map((figure) => figure.key));
  const wanted = new Map<string, WantedFigure>();
  for (const sheet of facts.ofCar(taskSheets, car)) {
    const item = { item: sheet.id, name: facts.get(serviceItems, sheet.id)?.name ?? sheet.id };
    for (const { ref, kind } of sheet.steps.flatMap(figuresOf)) {
      if (entered.has(ref.figure) || knownFigure(ref.figure) !== null) continue;
      const there = wanted.get(ref.figure);
      const items = (there?.items ?? []).filter((one) => one.item !== item.item);
      wanted.set(ref.figure, { key: ref.figure, name: ref.name ?? there?.name ?? ref.figure, kind: there?.kind ?? kind, items: [...items, item] });
    }
  }
  return [...wanted.values()];
}
