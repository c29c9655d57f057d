import { measurements } from '../care/measurement.ts';
import { ruleOf } from '../care/measure-kind.ts';
import { serviceItems } from '../care/service-item.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import { sameName } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { canonicalUnit, type MeasuredUnit } from '../units/measured-value.ts';
import type { z } from 'zod';
import type { stepMeasureSchema } from '../work/sheet-step.ts';

type Measured = Pick<z.infer<typeof stepMeasureSchema>, 'kind' | 'name'>;

/** How gauges are marked where measures are not metric. Common practice, no source. */
const AMERICAN: Partial<Readonly<Record<Measured['kind'], MeasuredUnit>>> = { tread: '32nds', 'coolant-protection': 'F' };

/**
 * The unit in which something is read on a car: that of the last time, else that of an item's limit for it, else the one usual where
 * the household is. Null for a thing of the keeper's own that was never measured.
 */
export function unitToRead(facts: Facts, car: string, { kind, name }: Measured): MeasuredUnit | null {
  const isIt = (what: string, called: string | null) => what === kind && (kind !== 'other' || (name !== null && called !== null && sameName(name, called)));
  const read = facts.ofCar(measurements, car).filter((one) => !one.dismissed && isIt(one.what, one.name)).sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)).at(-1);
  if (read !== undefined) return read.typed.unit;
  const limits = facts.ofCar(serviceItems, car).flatMap(({ measure }) => (measure !== null && isIt(measure.kind, measure.name) ? (measure.limit ?? []) : []));
  const limit = limits[0];
  if (limit !== undefined) return limit.unit;
  const rule = ruleOf(kind);
  if (rule === null) return null;
  const isAmerican = facts.get(households, HOUSEHOLD_ID)?.locale === 'en-US';
  return (isAmerican ? AMERICAN[kind] : undefined) ?? canonicalUnit(rule.dimension);
}
