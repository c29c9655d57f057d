import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { allowanceUse, endsOn, type AllowanceUse } from '../care/allowance-use.ts';
import { arrangeFrom } from '../care/arrange-from.ts';
import { allowanceKindSchema, distanceAllowances, distanceAllowanceSchema, type DistanceAllowance } from '../care/distance-allowance.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { Car } from '../fleet/car.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { METRES_IN } from '../units/distance.ts';
import { sayAllowance } from './allowance-words.ts';
import { LEAST_NOTICE_DAYS } from './notice-days.ts';

const date = dateSchema.nullable();
const span = z.object({ earliest: date, likely: date, latest: date });

/** How a distance allowance stands, in its own unit. */
export const allowanceViewSchema = z.object({
  id: z.string(),
  kind: allowanceKindSchema,
  name: z.string(),
  allowance: distanceAllowanceSchema,
  state: z.enum(['not-begun', 'ended', 'passed', 'probably-passed', 'will-pass', 'may-pass', 'within', 'unknown']),
  /** The year or term that is running. */
  from: dateSchema,
  to: date,
  unit: distanceUnitSchema,
  allowed: z.number(),
  used: z.number().nullable(),
  left: z.number().nullable(),
  /** Nobody read the odometer on the first day. */
  estimated: z.boolean(),
  /** When it is passed as the car is used now; null: not before its last day. */
  passes: span,
  /** When it ends: by its last day or by distance, whichever comes first. */
  ends: span,
  /** When it is likely passed, or its last day; null where neither is to be seen to: a year that the next one follows, a warranty that is over. */
  runsOut: date,
  /** From when to talk to the insurer, the lessor or the maker; null where nothing calls for it. */
  arrangeFrom: date,
  /** How much the likely distance on the last day lies above it; negative where some is left. */
  over: z.number().nullable(),
  text: z.string(),
});
export type AllowanceView = z.infer<typeof allowanceViewSchema>;

/** Every distance allowance of a car, the ones to be passed soonest first. */
export function allowanceViews(facts: Facts, car: Car, use: CarUse, today: LocalDate): AllowanceView[] {
  const known: KnownDistance = { points: use.points, usage: use.usage, firstRegistered: car.firstRegistered };
  const soonest = (one: AllowanceView) => one.passes.likely ?? one.to ?? '9999';
  return facts
    .ofCar(distanceAllowances, car.id)
    .map((allowance) => allowanceView(allowance, allowanceUse(allowance, use, known, today), today))
    .sort((a, b) => (soonest(a) < soonest(b) ? -1 : soonest(a) > soonest(b) ? 1 : 0));
}

function allowanceView(allowance: DistanceAllowance, use: AllowanceUse, today: LocalDate): AllowanceView {
  const { value: allowed, unit } = allowance.distance;
  const whole = (metres: number | null) => (metres === null ? null : Math.round(metres / METRES_IN[unit]));
  const used = whole(use.used);
  return {
    id: allowance.id,
    kind: allowance.kind,
    name: allowance.name ?? say({ key: `allowance-${allowance.kind}`, values: {} }),
    allowance,
    state: use.state,
    from: use.from,
    to: use.to,
    unit,
    allowed,
    used,
    left: used === null ? null : Math.max(0, Math.round(allowed - used)),
    estimated: use.estimated,
    passes: use.passes,
    ends: endsOn(use),
    runsOut: runsOut(allowance, use),
    // The end of a year that is followed by the next calls for nothing.
    arrangeFrom: use.state === 'ended' ? null : arrangeFrom(LEAST_NOTICE_DAYS, use.passes.earliest, allowance.to),
    over: whole(use.overAtEnd),
    text: sayAllowance(allowance, use, today),
  };
}

function runsOut({ kind, to }: DistanceAllowance, { state, passes }: AllowanceUse): LocalDate | null {
  if (state === 'ended' || (state === 'passed' && kind === 'warranty')) return null;
  return passes.likely ?? to;
}
