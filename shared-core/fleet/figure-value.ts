import { ok, refuse, type Result } from '../result/result.ts';
import { depthFromTyped, depthUnitSchema } from '../units/depth.ts';
import { pressureFromTyped, pressureUnitSchema } from '../units/pressure.ts';
import { torqueFromTyped, torqueUnitSchema } from '../units/torque.ts';
import { volumeFromTyped, volumeUnitSchema } from '../units/volume.ts';
import type { FigureValue, JointData } from './card-figure.ts';
import type { FigureKind } from './known-figures.ts';

/** A value as a person gives it: a number with its unit, or a text. */
export interface GivenValue {
  readonly value: number | string;
  readonly unit: string | null;
}

/** What a unit measures; a value without one is a text. Null where the unit is none that a card has. @example kindOfUnit('psi') //=> 'pressure' */
export function kindOfUnit(unit: string | null): FigureKind | null {
  if (unit === null) return 'text';
  if (volumeUnitSchema.safeParse(unit).success) return 'volume';
  if (torqueUnitSchema.safeParse(unit).success) return 'torque';
  if (pressureUnitSchema.safeParse(unit).success) return 'pressure';
  return depthUnitSchema.safeParse(unit).success ? 'depth' : null;
}

/**
 * A value whole in the unit in which its kind is compared, beside what was typed. Without a kind asked for, the unit says it.
 *
 * @example figureValue({ value: 2.2, unit: 'bar' }, null, on) //=> { kind: 'pressure', typed: { value: 2.2, unit: 'bar' }, pascals: 220_000 }
 */
export function figureValue(given: GivenValue, asked: FigureKind | null, on: JointData): Result<FigureValue> {
  const kind = kindOfUnit(given.unit);
  if (kind === null) return refuse('unknown-figure-unit', { unit: (given.unit ?? '').slice(0, 20) }, ['unit']);
  if (asked !== null && asked !== kind) return refuse(`figure-is-${asked}`, {}, [asked === 'text' ? 'value' : 'unit']);
  if (typeof given.value === 'string') return kind === 'text' ? ok({ kind, text: given.value }) : refuse('figure-not-a-number', {}, ['value']);
  return kind === 'text' ? refuse('figure-without-unit', {}, ['unit']) : measured(kind, given.value, given.unit, on);
}

function measured(kind: Exclude<FigureKind, 'text'>, value: number, unit: string | null, on: JointData): Result<FigureValue> {
  switch (kind) {
    case 'volume': {
      const typed = { value, unit: volumeUnitSchema.parse(unit) };
      return counted(volumeFromTyped(typed), (microlitres) => ({ kind, typed, microlitres }));
    }
    case 'pressure': {
      const typed = { value, unit: pressureUnitSchema.parse(unit) };
      return counted(pressureFromTyped(typed), (pascals) => ({ kind, typed, pascals }));
    }
    case 'depth': {
      const typed = { value, unit: depthUnitSchema.parse(unit) };
      return counted(depthFromTyped(typed), (nanometres) => ({ kind, typed, nanometres }));
    }
    case 'torque': {
      const typed = { value, unit: torqueUnitSchema.parse(unit) };
      return counted(torqueFromTyped(typed), (millinewtonMetres) => ({ kind, typed, millinewtonMetres, on }));
    }
  }
}

function counted(whole: Result<number>, value: (whole: number) => FigureValue): Result<FigureValue> {
  return whole.ok ? ok(value(whole.value)) : refuse(whole.refusal.code, whole.refusal.values, ['value']);
}
