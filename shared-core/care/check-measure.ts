import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sayKind } from '../result/words/say.ts';
import { canonicalValue, dimensionOf, type Dimension, type TypedValue } from '../units/measured-value.ts';
import { ruleOf, type MeasureKind, type WearWay } from './measure-kind.ts';
import { measurements } from './measurement.ts';
import { sameSubjectName } from './series-limits.ts';

/** What is measured, by its kind, or something else by its name. */
export interface NamedMeasure {
  readonly what: MeasureKind;
  readonly name: string | null;
}

/** Something else needs a name, and only that has one. */
export function checkMeasureName({ what, name }: NamedMeasure): Result<null> {
  if (what === 'other') return name === null ? refuse('measure-needs-name', {}, ['name']) : ok(null);
  return name === null ? ok(null) : refuse('measure-has-name', { what: sayKind('measured', what) }, ['name']);
}

/** Of something else it must be said how it wears; of the rest that is known. */
export function checkMeasureWay({ what }: NamedMeasure, way: WearWay | null): Result<null> {
  if ((what === 'other') === (way !== null)) return ok(null);
  return what === 'other' ? refuse('measure-needs-way', {}, ['way']) : refuse('measure-way-known', { what: sayKind('measured', what) }, ['way']);
}

/**
 * The canonical value of what was typed, where its unit and size suit what is measured. Something else keeps the kind of unit
 * in which it was first measured.
 */
export function checkMeasuredValue(facts: Facts, car: string, measure: NamedMeasure, typed: TypedValue): Result<number> {
  const rule = ruleOf(measure.what);
  const dimension = rule?.dimension ?? dimensionSoFar(facts, car, measure.name);
  if (dimension !== null && dimensionOf(typed.unit) !== dimension) return refuse('measure-unit-differs', { unit: typed.unit, what: wordsOf(measure) }, ['unit']);
  const value = canonicalValue(typed);
  if (!value.ok || rule === null || (value.value >= rule.least && value.value <= rule.most)) return value;
  return refuse('measured-value-absurd', { value: typed.value, unit: typed.unit, what: wordsOf(measure) }, ['value']);
}

function dimensionSoFar(facts: Facts, car: string, name: string | null): Dimension | null {
  const first = facts.ofCar(measurements, car).find((one) => one.what === 'other' && sameSubjectName(one.name, name));
  return first === undefined ? null : dimensionOf(first.typed.unit);
}

function wordsOf({ what, name }: NamedMeasure): string {
  return name ?? sayKind('measured', what);
}
