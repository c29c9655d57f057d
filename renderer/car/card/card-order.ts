import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';

/** Every figure of a card in the order in which it is read. */
export function figuresOf(card: CardView): readonly FigureView[] {
  return card.groups.flatMap((group) => group.figures);
}

/**
 * The next figure that is not entered after one, or the first where none is named; null after the last.
 *
 * @example nextMissing(card, 'coolant-quantity')?.key //=> 'brake-fluid-quantity'
 */
export function nextMissing(card: CardView, after: string | null): FigureView | null {
  const figures = figuresOf(card);
  return figures.slice(figures.findIndex((figure) => figure.key === after) + 1).find((figure) => !figure.entered) ?? null;
}

/** The sources already named on a card, each once: the same handbook is meant more often than not. */
export function sourcesOf(card: CardView): readonly string[] {
  return [...new Set(figuresOf(card).flatMap((figure) => figure.source ?? []))];
}
