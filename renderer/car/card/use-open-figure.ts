import { useEffect, useRef, useState } from 'react';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import type { Changed } from '../../ui/change.ts';
import { note } from '../../ui/notices/notice-store.ts';
import { tell } from '../../ui/words/tell.ts';
import { nextMissing } from './card-order.ts';
import { buttonOf } from './figure-row.tsx';
import { isAdded } from './own-figure.ts';
import { questionOf } from './figure-question.tsx';

/** The button that begins a figure of the keeper's own. */
export const ADD_OWN = 'figure-add-own';

/** Which figure's row is a form now, and where the card goes from there. */
export interface OpenFigure {
  /** The figure, or null: none. */
  readonly figure: FigureView | null;
  readonly open: (figure: FigureView) => void;
  readonly close: () => void;
  /** Goes to the next one missing; null where this figure is entered already or of the keeper's own. */
  readonly skip: (() => void) | null;
  readonly saved: (reply: Changed<'card.set'>) => void;
  /** An unlikely torque was answered: what was begun goes on. */
  readonly answered: (figure: FigureView) => void;
}

/**
 * Keeps the one open figure of a card. A missing one that is saved leads to the next one missing; one with a question leads
 * to its answer first. The focus goes where the work goes on.
 */
export function useOpenFigure(card: CardView): OpenFigure {
  const [figure, setFigure] = useState<FigureView | null>(null);
  /** What shall have the focus once it is on the screen. */
  const wish = useRef<string | null>(null);
  /** The figure whose question was come to while filling in. */
  const [asked, setAsked] = useState<string | null>(null);
  useEffect(() => {
    // A question stands only once the card has been asked for again.
    const element = wish.current === null ? null : document.getElementById(wish.current);
    if (element === null) return;
    wish.current = null;
    element.focus();
  });

  const leave = (towards: string) => {
    setFigure(null);
    wish.current = towards;
  };
  const goOn = (from: FigureView) => {
    const next = nextMissing(card, from.key);
    if (next === null) leave(buttonOf(from.key));
    else setFigure(next);
  };
  const filling = figure !== null && !figure.entered && !figure.own;
  return {
    figure,
    open: (next) => {
      wish.current = null;
      setFigure(next);
    },
    close: () => figure !== null && leave(isAdded(figure) ? ADD_OWN : buttonOf(figure.key)),
    skip: filling ? () => goOn(figure) : null,
    saved: ({ figure: { key }, question, undo }) => {
      if (figure === null) return;
      const name = figure.own ? tell('card.own') : figure.name;
      note(tell(question === null ? 'figure-form.saved' : 'figure-form.saved-asks', { name }), undo);
      setAsked(question !== null && filling ? key : null);
      if (question !== null) leave(questionOf(key));
      else if (filling) goOn(figure);
      else leave(isAdded(figure) ? ADD_OWN : buttonOf(key));
    },
    answered: (answered) => (asked === answered.key ? goOn(answered) : leave(buttonOf(answered.key))),
  };
}
