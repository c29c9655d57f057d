import type { CardFigure } from '../fleet/card-figure.ts';
import { knownFigure, type FigureKind } from '../fleet/known-figures.ts';
import { readableNumber } from '../units/readable-number.ts';
import { MILLINEWTON_METRES_IN, type TorqueAsTyped, type TorqueUnit } from '../units/torque.ts';
import { unitText } from '../units/unit-text.ts';
import type { FigureRef } from './sheet-step.ts';

/** A figure that a sheet names, with what the card has of it. */
export interface ResolvedFigure {
  readonly key: string;
  readonly name: string;
  readonly kind: FigureKind | null;
  /** Null where it is not entered. */
  readonly figure: CardFigure | null;
  /** Where it is missed, of a known one; empty for the keeper's own. */
  readonly missed: readonly string[];
}

/** What the data card of a car has of a figure. A figure that is there in another kind than the sheet needs counts as not entered. */
export function resolveFigure(card: readonly CardFigure[], ref: FigureRef, kind: FigureKind | null): ResolvedFigure {
  const known = knownFigure(ref.figure);
  const entered = card.find((one) => one.key === ref.figure) ?? null;
  const figure = kind === null || entered?.value.kind === kind ? entered : null;
  return { key: ref.figure, name: known?.name ?? entered?.name ?? ref.name ?? ref.figure, kind: known?.kind ?? kind ?? entered?.value.kind ?? null, figure, missed: known?.missed ?? [] };
}

/** The units that torque wrenches have. */
const SHOWN: readonly TorqueUnit[] = ['Nm', 'lbf-ft', 'lbf-in'];

/** A torque in one unit, as a person reads it. */
export interface ShownTorque {
  readonly unit: TorqueUnit;
  readonly value: number;
  readonly text: string;
}

/**
 * A torque in each unit of a wrench: in its own as it was typed, in the others to three figures.
 *
 * Source: factors of units/torque.ts, NIST SP 811 (2008) B.8.
 * @example torqueInUnits({ value: 30, unit: 'Nm' }).map((one) => one.text) //=> ['30 N·m', '22.1 lbf·ft', '266 lbf·in']
 */
export function torqueInUnits(typed: TorqueAsTyped): readonly ShownTorque[] {
  const units = SHOWN.includes(typed.unit) ? SHOWN : [typed.unit, ...SHOWN];
  return units.map((unit) => {
    const value = unit === typed.unit ? typed.value : Number(readableNumber((typed.value * MILLINEWTON_METRES_IN[typed.unit]) / MILLINEWTON_METRES_IN[unit]));
    return { unit, value, text: `${value} ${unitText(unit)}` };
  });
}
