import type { FigureKind } from '../fleet/known-figures.ts';
import type { FigureRef, SheetStep } from './sheet-step.ts';

/** A figure that a step names, and what kind it must be there; null: any. */
export interface AskedFigure {
  readonly ref: FigureRef;
  readonly kind: FigureKind | null;
}

/** All figures of the data card that a step names. */
export function figuresOf(step: Pick<SheetStep, 'torques' | 'fluids' | 'figures'>): readonly AskedFigure[] {
  return [
    ...step.torques.flatMap((one): AskedFigure[] => (one.by === 'figure' ? [{ ref: { figure: one.figure, name: one.name }, kind: 'torque' }] : [])),
    ...step.fluids.flatMap(({ specification, quantity }): AskedFigure[] => [
      ...(specification === null ? [] : [{ ref: specification, kind: 'text' as const }]),
      ...(quantity === null ? [] : [{ ref: quantity, kind: 'volume' as const }]),
    ]),
    ...step.figures.map((ref): AskedFigure => ({ ref, kind: null })),
  ];
}
