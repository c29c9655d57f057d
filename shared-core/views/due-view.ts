import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { renewalOpens } from '../care/keep-the-date.ts';
import { obligations, obligationKindSchema, type Obligation } from '../care/obligation.ts';
import { carsHere } from '../fleet/departure.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';
import { allowanceViews, allowanceViewSchema } from './allowance-view.ts';
import { careOf, type CarCare, type ItemCare } from './car-care.ts';
import { isCaredFor } from './cared-for.ts';
import { doubtfulViews, doubtfulViewSchema } from './doubtful-view.ts';
import { followUpViews, followUpViewSchema } from './follow-ups.ts';
import { LEAST_NOTICE_DAYS, leadTimes } from './notice-days.ts';
import { odometerShown } from './odometer-shown.ts';
import { recallViews, recallViewSchema } from './recall-view.ts';
import { measuredApart, measuredApartSchema } from './measured-apart.ts';
import { sessionViews, sessionViewSchema } from './session-view.ts';
import { bySoonest } from './soonest-first.ts';

const date = dateSchema.nullable();
const distanceShown = z.object({ value: z.number(), unit: distanceUnitSchema });

export const windowViewSchema = z.object({
  item: z.string(),
  name: z.string(),
  state: z.enum(['late', 'probably-due', 'open', 'ahead', 'unknown']),
  earliest: date,
  likely: date,
  latest: date,
  arrangeFrom: date,
  limb: z.enum(['time', 'distance', 'wear', 'printed-date']).nullable(),
  lateBy: z.object({ days: z.int(), months: z.int(), distance: distanceShown.nullable() }).nullable(),
  reason: z.object({ code: z.string(), values: z.record(z.string(), z.union([z.string(), z.number(), z.null()])), text: z.string() }),
});
export type WindowView = z.infer<typeof windowViewSchema>;

export const obligationViewSchema = z.object({
  id: z.string(),
  kind: obligationKindSchema,
  name: z.string(),
  on: dateSchema,
  from: dateSchema,
  /** The first day on which a renewal keeps the date; null where it does not. */
  opens: date,
  late: z.boolean(),
});
export type ObligationView = z.infer<typeof obligationViewSchema>;

export type { DoubtfulView } from './doubtful-view.ts';

export const carDueSchema = z.object({
  id: z.string(),
  name: z.string(),
  odometer: z.object({ low: z.number(), likely: z.number(), high: z.number(), unit: distanceUnitSchema }).nullable(),
  windows: z.array(windowViewSchema),
  obligations: z.array(obligationViewSchema),
  doubtful: z.array(doubtfulViewSchema),
  /** Distance allowances that have not ended, the ones to be passed soonest first. */
  allowances: z.array(allowanceViewSchema),
  /** What measurements say and no window does. */
  measured: z.array(measuredApartSchema),
  /** Recalls that are not done, or are due again. */
  recalls: z.array(recallViewSchema),
  /** What is to be looked at again after a work and is not ticked, the soonest first. */
  followUps: z.array(followUpViewSchema),
});
export type CarDue = z.infer<typeof carDueSchema>;

export const dueViewSchema = z.object({ today: dateSchema, cars: z.array(carDueSchema), sessions: z.array(sessionViewSchema) });

/** Due windows, obligations and doubtful readings of all cars, soonest first, and the sessions in which tasks stand. */
export const showDue = ask({
  request: z.strictObject({}),
  reply: dueViewSchema,
  answer: (facts, _request, moment) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const leads = leadTimes(facts);
    const all = carsHere(facts).map((car) => carDue(facts, careOf(facts, car, moment.today, leads), moment.today));
    return ok({ today: moment.today, cars: all.sort((a, b) => bySoonest(a.windows[0], b.windows[0])), sessions: sessionViews(facts, moment.today) });
  },
});

/** What one car's due windows, obligations and doubtful readings come to. */
export function carDue(facts: Facts, care: CarCare, today: LocalDate): CarDue {
  const { car, use } = care;
  return {
    id: car.id,
    name: car.name,
    odometer: odometerShown(car, use, today),
    windows: care.items.filter(isCaredFor).map((one) => windowView(one, car.unit)).sort(bySoonest),
    obligations: facts.ofCar(obligations, car.id).map((one) => obligationView(one, today)).sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)),
    doubtful: doubtfulViews(use, car.unit),
    allowances: allowanceViews(facts, car, use, today).filter((one) => one.state !== 'ended'),
    measured: [...measuredApart(facts, care.wear, car.unit)],
    recalls: recallViews(facts, car.id, today).filter((recall) => recall.state !== 'done'),
    followUps: followUpViews(facts, car, use, today),
  };
}

/** One due window as all screens say it. */
export function windowView(one: ItemCare, unit: DistanceUnit): WindowView {
  const { lateBy, ...window } = one.window;
  const past = lateBy?.metres ?? null;
  return {
    item: one.item.id,
    name: one.item.name,
    ...window,
    lateBy: lateBy === null ? null : {
      days: lateBy.days ?? 0,
      months: lateBy.months ?? 0,
      distance: past === null ? null : { value: Math.round(past / METRES_IN[unit]), unit },
    },
    reason: { code: one.reason.key, values: { ...one.reason.values }, text: say(one.reason) },
  };
}

/** One obligation as all screens say it. */
export function obligationView(one: Obligation, today: LocalDate): ObligationView {
  const opens = one.keepsDate ? renewalOpens(one.lastValidDay) : null;
  return {
    id: one.id,
    kind: one.kind,
    name: one.name ?? say({ key: `obligation-${one.kind}`, values: {} }),
    on: one.lastValidDay,
    from: addDays(one.lastValidDay, -Math.max(one.noticeDays, LEAST_NOTICE_DAYS)),
    opens,
    late: today > one.lastValidDay,
  };
}
