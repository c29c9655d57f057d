import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { dueWindow, UNKNOWN_WINDOW, type DueState, type DueWindow } from '../care/due-window.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import type { Facts } from '../journal/facts.ts';
import { compareNames } from '../result/compare-names.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { METRES_IN } from '../units/distance.ts';
import { followUps, followUpSchema, type FollowUp } from '../work/follow-up.ts';
import { followUpTarget, type FollowUpTarget } from './follow-up-span.ts';
import { sayFollowUp, sayPutOff } from './follow-up-words.ts';
import { shownWhenReached } from './odometer-shown.ts';

const date = dateSchema.nullable();
const distance = z.object({ value: z.number(), unit: distanceUnitSchema }).nullable();

/** When a follow-up is to be looked at, by date or by distance, whichever comes first. */
export const followUpViewSchema = z.object({
  followUp: followUpSchema,
  /** The name of the item whose work it follows. */
  itemName: z.string().nullable(),
  /** `late` only past its day or where a reading is at or past its distance; `unknown`: by distance, and nobody knows from where. */
  state: z.enum(['late', 'due', 'ahead', 'unknown']),
  /** From when to look: its day, or the early edge of its distance. */
  from: date,
  earliest: date,
  likely: date,
  latest: date,
  limb: z.enum(['time', 'distance']).nullable(),
  /** What the odometer will show. */
  target: distance,
  /** Nobody read the odometer on the day from which it counts. */
  estimated: z.boolean(),
  lateBy: z.object({ days: z.int(), months: z.int(), distance }).nullable(),
  text: z.string(),
  /** How it was put off; empty where it never was. */
  putOff: z.string(),
});
export type FollowUpView = z.infer<typeof followUpViewSchema>;

const RANK = { late: 0, due: 1, ahead: 2, unknown: 3 } as const;

/** The open follow-ups of a car: those past their day or distance first, then the soonest. */
export function followUpViews(facts: Facts, car: Car, use: CarUse, today: LocalDate): FollowUpView[] {
  const soonest = (one: FollowUpView) => one.likely ?? one.from ?? one.followUp.dueOn ?? '9999';
  return facts
    .ofCar(followUps, car.id)
    .filter((one) => one.doneOn === null)
    .map((one) => followUpView(one, car, use, one.item === null ? null : (facts.get(serviceItems, one.item)?.name ?? null), today))
    .sort((a, b) => RANK[a.state] - RANK[b.state] || (soonest(a) < soonest(b) ? -1 : soonest(a) > soonest(b) ? 1 : compareNames(a.followUp.text, b.followUp.text)));
}

function followUpView(followUp: FollowUp, car: Car, use: CarUse, itemName: string | null, today: LocalDate): FollowUpView {
  const known: KnownDistance = { points: use.points, usage: use.usage, firstRegistered: car.firstRegistered };
  const target = followUpTarget(followUp, use, known);
  const { lateBy, ...window } = windowOf(followUp, target, use, today);
  const past = lateBy?.metres ?? null;
  const shown = {
    state: STATES[window.state],
    from: window.earliest,
    earliest: window.earliest,
    likely: window.likely,
    latest: window.latest,
    limb: window.limb === 'time' || window.limb === 'distance' ? window.limb : null,
    target: target === null ? null : { value: shownWhenReached(use, target.metres, car.unit), unit: car.unit },
    estimated: target?.estimated ?? false,
    lateBy: lateBy === null ? null : { days: lateBy.days ?? 0, months: lateBy.months ?? 0, distance: past === null ? null : { value: Math.round(past / METRES_IN[car.unit]), unit: car.unit } },
  };
  return { followUp, itemName, ...shown, text: sayFollowUp(followUp, shown, today), putOff: sayPutOff(followUp) };
}

/** Its day needs no arranging, so nothing is drawn from the day but the day itself. */
function windowOf({ dueOn, after }: FollowUp, target: FollowUpTarget | null, use: CarUse, today: LocalDate): DueWindow {
  if (dueOn === null && after !== null && target === null) return UNKNOWN_WINDOW;
  return dueWindow({
    today, time: dueOn, printedDate: null, wear: null, wornOut: false, noticeDays: 0,
    distance: target?.span ?? null,
    target: target?.metres ?? null,
    driven: use.points.at(-1)?.metres ?? null,
  });
}

/** What may be due by more use than now is still ahead: only its likely day makes it due. */
const STATES: Readonly<Record<DueState, FollowUpView['state']>> = { late: 'late', 'probably-due': 'due', open: 'ahead', ahead: 'ahead', unknown: 'unknown' };
