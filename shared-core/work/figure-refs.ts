import type { FigureKind } from '../fleet/known-figures.ts';
import type { FigureRef, SheetStep } from './sheet-step.ts';

/** A figure that a step names, and what kind it must be there; null: any. */
export interface AskedFigure {
  readonly ref: FigureRef;
  readonly kind: FigureKind | null;
  /** Where it stands in the step. */
  readonly path: readonly (string | number)[];
}

/** All figures of the data card that a step names. */
export function figuresOf(step: Pick<SheetStep, 'torques' | 'fluids' | 'figures'>): readonly AskedFigure[] {
  return [
    ...step.torques.flatMap((one, at): AskedFigure[] => (one.by === 'figure' ? [{ ref: { figure: one.figure, name: one.name }, kind: 'torque', path: ['torques', at, 'figure'] }] : [])),
    ...step.fluids.flatMap(({ specification, quantity }, at): AskedFigure[] => [
      ...(specification === null ? [] : [{ ref: specification, kind: 'text' as const, path: ['fluids', at, 'specification'] }]),
      ...(quantity === null ? [] : [{ ref: quantity, kind: 'volume' as const, path: ['fluids', at, 'quantity'] }]),
    ]),
    ...step.figures.map((ref, at): AskedFigure => ({ ref, kind: null, path: ['figures', at, 'figure'] })),
  ];
}
