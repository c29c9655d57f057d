import type { Result } from '../../../shared-core/result/result.ts';
import type { FigureView } from '../../../shared-core/views/card-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { withPapers } from '../../ui/form/keep-papers.ts';
import { composeFigure, type FigureDraft } from './figure-draft.ts';

/** Enters the figure, keeping a new paper first. */
export async function sendFigure(draft: FigureDraft, car: string, figure: FigureView): Promise<Result<Changed<'card.set'>>> {
  const whole = composeFigure(draft, car, figure);
  return whole.ok ? withPapers(draft.files, ([kept]) => change('card.set', { ...whole.value, paper: kept ?? whole.value.paper ?? null })) : whole;
}
